//! The last lines of a report: what was checked and how much was found.

use std::io::{self, Write};

use crate::diagnostic::{Diagnostic, Severity};
use crate::report::{Checked, Part, STRENGTH_CAUTION, printable};

/// Writes one line a spec, the sum when there are several, which part of all specs they are, and what no rule looks at.
///
/// # Errors
/// What the stream says.
pub fn write_summary(all: &[Checked<'_>], part: Part<'_>, out: &mut impl Write) -> io::Result<()> {
    for checked in all {
        let alone = if checked.is_alone { " (read alone: no project includes it)" } else { "" };
        writeln!(
            out,
            "{}{alone}: {}",
            printable(checked.name()),
            found(checked.findings, Silenced::of(std::slice::from_ref(checked)))
        )?;
    }
    if all.len() > 1 {
        let findings: Vec<_> = all.iter().flat_map(|checked| checked.findings).cloned().collect();
        let silenced = Silenced::of(all);
        writeln!(out, "{}: {}", counted(all.len(), "spec"), found(&findings, silenced))?;
    }
    if let Some(sentence) = part.sentence(all.len()) {
        writeln!(out, "{}", printable(&sentence))?;
    }
    if all.is_empty() { Ok(()) } else { writeln!(out, "{NOT_CHECKED}\n{STRENGTH_CAUTION}") }
}

/// What no rule looks at: a clean report must not be taken for more than it is.
pub(in crate::report) const NOT_CHECKED: &str =
    "not checked: wind, earthquake, drifted snow; `storyrod takedown` names every check that could not run";

/// A count with its noun in the right number.
pub fn counted(count: usize, noun: &str) -> String {
    match (count, noun) {
        (_, "advice") | (1, _) => format!("{count} {noun}"),
        _ => format!("{count} {noun}s"),
    }
}

/// How many findings are told by nobody else than the summary, so that they are not taken for mended.
#[derive(Clone, Copy, Debug, Default)]
pub(in crate::report) struct Silenced {
    /// A baseline holds them.
    pub n_known: usize,
    /// A waiver silences them, or the project switches their rule off.
    pub n_waived: usize,
}

impl Silenced {
    /// In all of them.
    pub fn of(all: &[Checked<'_>]) -> Self {
        let n_waived = all.iter().map(|checked| checked.waived.len()).sum();
        Self { n_known: all.iter().map(|checked| checked.n_known).sum(), n_waived }
    }

    /// How nothing is told beside them.
    pub fn nothing(self) -> &'static str {
        if self.n_known > 0 { "nothing new found" } else { "nothing found" }
    }

    /// Each kind of which there is some.
    pub fn words(self) -> impl Iterator<Item = String> {
        let known =
            (self.n_known > 0).then(|| format!("{} left out", counted(self.n_known, "known finding")));
        let waived = (self.n_waived > 0).then(|| format!("{} waived", self.n_waived));
        known.into_iter().chain(waived)
    }
}

/// How much was found and what is silenced.
fn found(findings: &[Diagnostic], silenced: Silenced) -> String {
    if findings.is_empty() {
        let nothing = [silenced.nothing().to_owned()];
        return nothing.into_iter().chain(silenced.words()).collect::<Vec<_>>().join(", ");
    }
    // What follows from another finding counts with its own severity: a warning's consequence can be an error.
    let all: Vec<&Diagnostic> = findings.iter().flat_map(Diagnostic::with_consequences).collect();
    let of = |severity: Severity| all.iter().filter(|finding| finding.severity == severity).count();
    let counts = Severity::ALL
        .map(|severity| (of(severity), severity.word()))
        .into_iter()
        .filter(|(count, _)| *count > 0)
        .map(|(count, word)| counted(count, word));
    let n_following = all.len() - findings.len();
    let following = (n_following > 0).then(|| format!("{n_following} of them following from another"));
    counts.chain(following).chain(silenced.words()).collect::<Vec<_>>().join(", ")
}

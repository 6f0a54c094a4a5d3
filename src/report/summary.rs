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
        writeln!(out, "{}{alone}: {}", printable(checked.name()), found(checked.findings, checked.n_known))?;
    }
    if all.len() > 1 {
        let findings: Vec<_> = all.iter().flat_map(|checked| checked.findings).cloned().collect();
        let n_known = all.iter().map(|checked| checked.n_known).sum();
        writeln!(out, "{}: {}", counted(all.len(), "spec"), found(&findings, n_known))?;
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

/// How much was found; what a baseline leaves out is told, so that nobody takes it for mended.
fn found(findings: &[Diagnostic], n_known: usize) -> String {
    let known = (n_known > 0).then(|| format!("{} left out", counted(n_known, "known finding")));
    if findings.is_empty() {
        return known.map_or("nothing found".to_owned(), |known| format!("nothing new found, {known}"));
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
    counts.chain(following).chain(known).collect::<Vec<_>>().join(", ")
}

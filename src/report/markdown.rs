//! Findings as a summary: for the page of a build, or the comment on a review.

use std::collections::BTreeMap;
use std::io::{self, Write};

use crate::diagnostic::{Diagnostic, Remedy, Severity};
use crate::report::lines::place_of;
use crate::report::markdown_text::markdown_text;
use crate::report::summary::{NOT_CHECKED, Silenced};
use crate::report::{Checked, Part, STRENGTH_CAUTION, Unusable, counted};

/// So many findings of a file stand open; the rest is folded.
const MOST_OPEN: usize = 10;

/// Writes how much was found in each spec, what it is file by file, and what could not be used.
///
/// # Errors
/// What the stream says.
pub fn write_markdown(
    all: &[Checked<'_>],
    unusable: &[Unusable],
    part: Part<'_>,
    out: &mut impl Write,
) -> io::Result<()> {
    write_counts(all, unusable, out)?;
    if let Some(sentence) = part.sentence(all.len()) {
        writeln!(out, "{}\n", markdown_text(&sentence))?;
    }
    for checked in all.iter().filter(|checked| !checked.findings.is_empty()) {
        write_files(checked, out)?;
    }
    if !unusable.is_empty() {
        writeln!(out, "### Not usable\n")?;
        for unusable in unusable {
            writeln!(out, "- {}", markdown_text(&unusable.to_string()))?;
        }
        writeln!(out)?;
    }
    if all.is_empty() {
        return Ok(());
    }
    // Our own sentences: their back-quotes are meant.
    writeln!(out, "{NOT_CHECKED}\n\n{STRENGTH_CAUTION}")
}

fn write_counts(all: &[Checked<'_>], unusable: &[Unusable], out: &mut impl Write) -> io::Result<()> {
    let sum = |severity| all.iter().map(|checked| checked.count(severity)).sum::<usize>();
    let sums = Severity::ALL.map(|severity| (sum(severity), severity.word()));
    let said: Vec<_> =
        sums.iter().filter(|(count, _)| *count > 0).map(|(count, word)| counted(*count, word)).collect();
    let specs = counted(all.len(), "spec");
    let silenced = Silenced::of(all);
    let found = match (all, said.as_slice()) {
        ([], _) => "nothing checked".to_owned(),
        (_, []) => format!("{} in {specs}", silenced.nothing()),
        (_, said) => format!("{} in {specs}", said.join(", ")),
    };
    let silenced: String = silenced.words().map(|words| format!(", {words}")).collect();
    let left_out = match unusable.len() {
        0 => String::new(),
        count => format!(", {} not usable", counted(count, "input")),
    };
    writeln!(out, "## storyrod: {found}{silenced}{left_out}\n")?;
    let wrong: Vec<_> = all.iter().filter(|checked| !checked.findings.is_empty()).collect();
    if wrong.is_empty() {
        return Ok(());
    }
    writeln!(out, "| spec | errors | warnings | advice |\n| --- | ---: | ---: | ---: |")?;
    for checked in wrong {
        let [errors, warnings, advice] = Severity::ALL.map(|severity| checked.count(severity));
        writeln!(out, "| {} | {errors} | {warnings} | {advice} |", markdown_text(checked.name()))?;
    }
    writeln!(out)
}

/// The findings of a spec, file by file.
fn write_files(checked: &Checked<'_>, out: &mut impl Write) -> io::Result<()> {
    let mut files: BTreeMap<u32, Vec<&Diagnostic>> = BTreeMap::new();
    for finding in checked.findings {
        files.entry(finding.span.file.0).or_default().push(finding);
    }
    for (file, findings) in files {
        let name = checked.names.get(file as usize).map(String::as_str).unwrap_or_default();
        writeln!(out, "### {}\n", markdown_text(name))?;
        let (open, folded) = findings.split_at(findings.len().min(MOST_OPEN));
        write_list(checked, open, out)?;
        if !folded.is_empty() {
            let more = counted(folded.len(), "more finding");
            writeln!(out, "<details>\n<summary>{more}</summary>\n")?;
            write_list(checked, folded, out)?;
            writeln!(out, "</details>\n")?;
        }
    }
    Ok(())
}

fn write_list(checked: &Checked<'_>, findings: &[&Diagnostic], out: &mut impl Write) -> io::Result<()> {
    for finding in findings {
        writeln!(out, "- {}", entry(checked, finding))?;
        for help in &finding.help {
            writeln!(out, "  - cure: {}", markdown_text(help))?;
        }
        for following in finding.with_consequences().into_iter().skip(1) {
            writeln!(out, "  - then {}", entry(checked, following))?;
        }
    }
    writeln!(out)
}

fn entry(checked: &Checked<'_>, finding: &Diagnostic) -> String {
    let place = markdown_text(&place_of(checked, finding.span));
    let message = markdown_text(&finding.message);
    let state = match finding.remedy {
        Remedy::OnPaper => String::new(),
        remedy => format!(" (**{}: {}**)", markdown_text(&finding.standing), remedy.sentence()),
    };
    format!("**{}** {place}: {message} `{}`{state}", finding.severity.word(), finding.rule)
}

//! What is wrong at a place, and why that matters.

use crate::diagnostic::Diagnostic;
use crate::ide::hover::cursor::Cursor;
use crate::ide::hover::markdown::escaped;
use crate::ide::hover::{FindingsBeside, Piece, Worth};
use crate::rules;

/// More findings than this are not told in full.
const MOST_TOLD: usize = 2;

/// More lines of one kind than this are counted.
const MOST_LINES: usize = 6;

/// The groups of rules whose findings tell loads, ratios and capacities.
const OF_STRENGTH: [&str; 6] = ["strength", "bearing", "columns", "foundations", "load_path", "beams"];

/// Roots and consequences at a place, the narrowest first; then why the first of them matters.
pub fn pieces(cursor: &Cursor<'_>, beside: FindingsBeside) -> Vec<Piece> {
    let all = cursor.snapshot.findings.iter().flat_map(Diagnostic::with_consequences);
    let mut here: Vec<_> = all
        .filter(|finding| finding.span.file == cursor.file && finding.span.touches(cursor.offset))
        .collect();
    here.sort_by_key(|finding| finding.span.end - finding.span.start);
    let mut pieces = Vec::new();
    for (at, finding) in here.iter().enumerate() {
        let text = if at < MOST_TOLD { told(finding, beside) } else { in_short(finding) };
        let rule = rules::rule_named(finding.rule);
        let has_figures = rule.is_some_and(|rule| OF_STRENGTH.contains(&rule.group()));
        pieces.push(Piece { span: finding.span, worth: Worth::Most, text, has_figures });
        if let Some(rule) = rule.filter(|_| at == 0) {
            let text = reason(rule.documentation);
            pieces.push(Piece { span: finding.span, worth: Worth::Least, text, has_figures: false });
        }
    }
    pieces
}

/// A rule's documentation up to its examples: what it looks for, why, and its source.
pub fn reason(documentation: &str) -> String {
    let before = documentation.split("## Examples").next().unwrap_or_default().trim();
    before.lines().map(str::trim_start).collect::<Vec<_>>().join("\n")
}

fn told(finding: &Diagnostic, beside: FindingsBeside) -> String {
    let says_all = beside == FindingsBeside::No;
    let mut parts = vec![head(finding)];
    parts.extend(says_all.then(|| escaped(&finding.message)));
    parts.extend(list(finding.notes.iter().map(|note| escaped(note))));
    let following = finding.consequences.iter();
    parts.extend(list(following.map(|one| format!("follows: {}", escaped(&one.message)))));
    let help = finding.help.iter().filter(|_| says_all);
    parts.extend(list(help.map(|help| format!("help: {}", escaped(help)))));
    let basis = finding.basis.as_ref().map(|basis| format!("by {}; ", escaped(basis)));
    parts.push(format!("{}{}", basis.unwrap_or_default(), finding.remedy.sentence()));
    parts.extend(finding.waiver.as_ref().map(|line| format!("to accept it here, write `{line}`")));
    parts.join("\n\n")
}

fn in_short(finding: &Diagnostic) -> String {
    format!("{}: {}", head(finding), escaped(&finding.message))
}

fn head(finding: &Diagnostic) -> String {
    format!("**{}** `{}`", finding.severity.word(), finding.rule)
}

fn list(lines: impl Iterator<Item = String>) -> Option<String> {
    let mut lines: Vec<String> = lines.map(|line| format!("- {line}")).collect();
    let more = lines.len().saturating_sub(MOST_LINES);
    lines.truncate(MOST_LINES);
    if more > 0 {
        lines.push(format!("- and {more} more"));
    }
    (!lines.is_empty()).then(|| lines.join("\n"))
}

#[cfg(test)]
mod tests {
    use crate::ide::hover::tests::LOON_COVE;
    use crate::ide::hover::{FindingsBeside, hover};
    use crate::testing::cursor::in_sample;

    #[test]
    fn what_stands_beside_it_is_not_said_again() {
        let text = LOON_COVE.replace("linoleum on board 5/8\"", "linoleum on board 1-1/8\"");
        let (snapshot, file, offset) = in_sample(&text, "laid out      98'-$05 1/4\"");
        let said = |beside| hover(&snapshot, file, offset, beside).unwrap().text;
        let (whole, behind) = (said(FindingsBeside::No), said(FindingsBeside::Yes));
        for (words, is_beside) in [
            ("1/2\" apart", true),
            ("help: lay it out", true),
            ("lower finish", false),
            ("risers-not-even", false),
        ] {
            assert!(whole.contains(words), "{words}: {whole}");
            assert_eq!(behind.contains(words), !is_beside, "{words}: {behind}");
        }
    }
}

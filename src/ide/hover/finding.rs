//! What is wrong at a place, and why that matters.

use crate::diagnostic::Diagnostic;
use crate::ide::hover::cursor::Cursor;
use crate::ide::hover::markdown::escaped;
use crate::ide::hover::{Piece, Worth};
use crate::rules;

/// More findings than this are not told in full.
const MOST_TOLD: usize = 2;

/// More lines of one kind than this are counted.
const MOST_LINES: usize = 6;

/// The groups of rules whose findings tell loads, ratios and capacities.
const OF_STRENGTH: [&str; 6] = ["strength", "bearing", "columns", "foundations", "load_path", "beams"];

/// Roots and consequences at a place, the narrowest first; then why the first of them matters.
pub fn pieces(cursor: &Cursor<'_>) -> Vec<Piece> {
    let all = cursor.snapshot.findings.iter().flat_map(Diagnostic::with_consequences);
    let mut here: Vec<_> = all
        .filter(|finding| finding.span.file == cursor.file && finding.span.touches(cursor.offset))
        .collect();
    here.sort_by_key(|finding| finding.span.end - finding.span.start);
    let mut pieces = Vec::new();
    for (at, finding) in here.iter().enumerate() {
        let text = if at < MOST_TOLD { told(finding) } else { in_short(finding) };
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

fn told(finding: &Diagnostic) -> String {
    let mut parts = vec![head(finding), escaped(&finding.message)];
    parts.extend(list(finding.notes.iter().map(|note| escaped(note))));
    let following = finding.consequences.iter();
    parts.extend(list(following.map(|one| format!("follows: {}", escaped(&one.message)))));
    parts.extend(list(finding.help.iter().map(|help| format!("help: {}", escaped(help)))));
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

//! What a finding offers as its cure cures it: over every mistake of the sample houses and every example of the rules.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::print_stdout,
    reason = "a test may stop where it fails"
)]

#[path = "support/analysis.rs"]
mod analysis;
#[path = "support/mistakes.rs"]
mod mistakes;

use std::collections::BTreeSet;
use std::fmt::Write as _;

use mistakes::{lists, text_of, with};
use storyrod::diagnostic::{Diagnostic, Fix, Severity};
use storyrod::rules::RULES;

/// Rules that compare a number with where it is stated again: what a fix writes in one place they may miss in another.
const RESTATED: [&str; 4] = ["sheet-differs", "intent-not-kept", "intent-not-level", "claim-not-kept"];

/// Levels that are put right can lie too near the ground: that is then said, rightly.
const LEVELS: [&str; 1] = ["wood-near-grade"];

#[test]
fn a_fix_makes_its_finding_go_and_brings_no_error() {
    let mut report = String::new();
    let mut fixed: BTreeSet<&str> = BTreeSet::new();
    let mut fixes = 0;
    for (id, text) in texts() {
        let before = found(&text);
        for finding in &before {
            let Some(fix) = &finding.fix else { continue };
            fixes += 1;
            fixed.insert(finding.rule);
            let after = found(&applied(&text, fix));
            if after.iter().any(|left| is_same(left, finding)) {
                writeln!(report, "{id}: `{}` leaves {}", fix.title, said(finding)).unwrap();
            }
            // An example is a piece of a house, and lacks much.
            let is_whole = !id.starts_with("example");
            for new in new_errors(&before, &after).filter(|_| is_whole) {
                writeln!(report, "{id}: `{}` for {} brings {}", fix.title, finding.rule, said(new)).unwrap();
            }
        }
    }
    println!("{fixes} fixes of {} rules: {fixed:?}", fixed.len());
    assert!(report.is_empty(), "{report}");
}

#[test]
fn each_choice_makes_its_finding_go() {
    let mut report = String::new();
    let mut chosen: BTreeSet<&str> = BTreeSet::new();
    for (id, text) in texts() {
        for finding in &found(&text) {
            for choice in &finding.choices {
                chosen.insert(finding.rule);
                let after = found(&applied(&text, choice));
                if after.iter().any(|left| is_same(left, finding)) {
                    writeln!(report, "{id}: `{}` leaves {}", choice.title, said(finding)).unwrap();
                }
            }
        }
    }
    println!("choices of {} rules: {chosen:?}", chosen.len());
    assert!(report.is_empty(), "{report}");
}

/// Every mistaken house and every example that fires, with what it is called.
fn texts() -> Vec<(String, String)> {
    let mistaken = lists().into_iter().flat_map(|list| {
        let house = text_of(&list.house);
        list.mistakes.into_iter().map(move |mistake| (mistake.id.clone(), with(&mistake, &house)))
    });
    let examples = RULES.iter().flat_map(|rule| {
        let blocks = rule.documentation.split("```framing,fires\n").skip(1);
        blocks.map(|block| {
            let lines = block.lines().take_while(|line| line.trim() != "```");
            let text: String =
                lines.map(|line| format!("{}\n", line.strip_prefix(' ').unwrap_or(line))).collect();
            (format!("example of {}", rule.slug), text)
        })
    });
    mistaken.chain(examples).collect()
}

fn found(text: &str) -> Vec<Diagnostic> {
    let roots = analysis::of(text).findings;
    roots.iter().flat_map(Diagnostic::with_consequences).cloned().collect()
}

fn applied(text: &str, fix: &Fix) -> String {
    let mut edits: Vec<_> = fix.edits.iter().collect();
    edits.sort_by_key(|edit| edit.span);
    let mut text = text.to_owned();
    for edit in edits.iter().rev() {
        text.replace_range(edit.span.start as usize..edit.span.end as usize, &edit.text);
    }
    text
}

fn is_same(one: &Diagnostic, other: &Diagnostic) -> bool {
    (one.rule, &one.subject, &one.message) == (other.rule, &other.subject, &other.message)
}

/// Errors of a rule about an element that had none of it before.
fn new_errors<'a>(before: &'a [Diagnostic], after: &'a [Diagnostic]) -> impl Iterator<Item = &'a Diagnostic> {
    let known: BTreeSet<_> =
        before.iter().map(|finding| (finding.rule, &finding.subject, finding.severity)).collect();
    after.iter().filter(move |finding| {
        finding.severity == Severity::Error
            && !RESTATED.contains(&finding.rule)
            && !LEVELS.contains(&finding.rule)
            && !known.contains(&(finding.rule, &finding.subject, finding.severity))
    })
}

fn said(finding: &Diagnostic) -> String {
    format!("{} of {}: {}", finding.rule, finding.subject, finding.message)
}

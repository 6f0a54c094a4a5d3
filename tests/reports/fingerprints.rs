//! A finding is known again after an edit that has nothing to do with it.

use std::collections::BTreeSet;

use serde_json::Value;

use crate::checked::{EVERY_MISTAKE, House, results_of, sarif_of};

/// The name under which fingerprints are published.
const MARK: &str = "storyrodFinding/v1";

/// Rule, file and fingerprint of every finding; none is there twice.
fn marks(houses: &[House]) -> BTreeSet<String> {
    let log = sarif_of(houses, &[], None);
    let results = results_of(&log);
    let marks: BTreeSet<_> = results
        .iter()
        .map(|result| {
            let rule = &result["ruleId"];
            format!("{} {rule} {}", file_of(result), result["partialFingerprints"][MARK])
        })
        .collect();
    assert_eq!(marks.len(), results.len());
    assert!(marks.len() >= houses.len());
    marks
}

fn file_of(result: &Value) -> &Value {
    &result["locations"][0]["physicalLocation"]["artifactLocation"]["uri"]
}

/// Every house with its text written otherwise.
fn rewritten(houses: &[House], how: impl Fn(Vec<String>) -> String) -> Vec<House> {
    houses.iter().map(|house| House::of(&house.names[0], &how(elements(house.text())))).collect()
}

/// The elements of a text, each with the lines down to the next one.
fn elements(text: &str) -> Vec<String> {
    let mut elements = vec![String::new()];
    for line in text.lines() {
        if line.starts_with(char::is_alphabetic) {
            elements.push(String::new());
        }
        let element = elements.last_mut().unwrap();
        element.push_str(line);
        element.push('\n');
    }
    elements
}

fn assert_same(before: &[House], after: &[House]) {
    let (before, after) = (marks(before), marks(after));
    let changed: Vec<_> = before.symmetric_difference(&after).collect();
    assert!(changed.is_empty(), "{changed:#?}");
}

#[test]
fn moved_lines_new_comments_and_another_order_make_no_finding_new() {
    let moved = rewritten(&EVERY_MISTAKE, |elements| {
        elements.iter().map(|element| format!("-- a note\n\n{element}\n\n")).collect()
    });
    assert_same(&EVERY_MISTAKE, &moved);
    let turned = rewritten(&EVERY_MISTAKE, |elements| elements.into_iter().rev().collect());
    assert_same(&EVERY_MISTAKE, &turned);
}

const LOW: &str = "footing F1\n  top  90'-0\"\n  topp  1'\n  topp  1'\n";

#[test]
fn equal_findings_are_told_apart_by_a_count() {
    let house = [House::of("pad.framing", LOW)];
    let log = sarif_of(&house, &[], None);
    let of_rule = results_of(&log).iter().filter(|result| result["ruleId"] == "unknown-fact");
    let marks: Vec<_> = of_rule.map(|result| result["partialFingerprints"][MARK].as_str().unwrap()).collect();
    let [first, second] = marks[..] else { panic!("{marks:?}") };
    let (known_by, count) = first.split_once(':').unwrap();
    assert_eq!(count, "1");
    assert_eq!(second, format!("{known_by}:2"));
}

#[test]
fn figures_make_no_finding_new_and_names_do() {
    let mistake = |becomes: &str| {
        let cabin = crate::mistakes::text_of("grammar/samples/first.framing");
        let (old, new) = becomes.split_once(" to ").unwrap();
        assert!(cabin.contains(old));
        let house = House::of("cabin.framing", &cabin.replace(old, new));
        assert!(!house.snapshot.findings.is_empty(), "{becomes}");
        marks(&[house])
    };
    // The walls' tops are 1/2" off, then 1-1/2".
    let by_half = mistake("top           99'-0 1/2\" to top           99'-1\"");
    let by_more = mistake("top           99'-0 1/2\" to top           99'-2\"");
    assert_eq!(by_half, by_more);
    let one = mistake("W1 for to X1 for");
    let other = mistake("W1 for to X2 for");
    assert_ne!(one, other);
}

#[test]
fn a_waiver_leaves_a_finding_known() {
    let cabin = crate::mistakes::text_of("grammar/samples/first.framing").replace("2x10 SPF", "2x12 SPF");
    let waiver = "joists J1 \"Floor joists\"\n  waive  stack-does-not-close because \"later\"";
    let waived = cabin.replace("joists J1 \"Floor joists\"", waiver);
    assert_ne!(waived, cabin);
    let (before, after) = ([House::of("c.framing", &cabin)], [House::of("c.framing", &waived)]);
    assert_eq!(after[0].snapshot.waived.len(), 1);
    assert_same(&before, &after);
}

#[test]
fn the_same_fault_of_two_projects_is_two() {
    let houses = [House::of("a.framing", LOW), House::of("b.framing", LOW)];
    let log = sarif_of(&houses, &[], None);
    let marks: BTreeSet<_> =
        results_of(&log).iter().map(|result| result["partialFingerprints"][MARK].as_str().unwrap()).collect();
    assert_eq!(marks.len(), results_of(&log).len());
}

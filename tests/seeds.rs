//! One-line mistakes in the sample houses: each can be made where its list says, and is found with its numbers.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "helpers of tests are not in tests for clippy"
)]

#[path = "support/mistakes.rs"]
mod mistakes;

use std::collections::HashSet;
use std::fmt::Write as _;
use std::fs;
use std::path::Path;
use std::sync::Arc;

use mistakes::{Finds, Needs, lists, text_of, with};
use storyrod::diagnostic::{Diagnostic, Severity};
use storyrod::inputs::Inputs;
use storyrod::rules::RULES;
use storyrod::snapshot::{Caches, Snapshot, analyse};
use storyrod::syntax::value::Date;
use storyrod::syntax::vocabulary::{ELEMENTS, ElementKind};
use storyrod::syntax::{Opening, Problem, parse_fresh};
use storyrod::text::Source;
use storyrod::verify::limit_state::LimitState;

#[test]
fn every_mistake_changes_one_line_of_its_house_and_still_reads() {
    for list in lists() {
        let house = text_of(&list.house);
        for mistake in &list.mistakes {
            let wrong = with(mistake, &house);
            assert_ne!(wrong, house, "{} changes nothing", mistake.id);
            assert_eq!(
                problems(&wrong).is_empty(),
                !mistake.unread,
                "{}: {:?}",
                mistake.id,
                problems(&wrong)
            );
        }
    }
}

#[test]
fn every_house_reads_without_a_problem() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("grammar/samples");
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        assert_eq!(
            problems(&fs::read_to_string(&path).unwrap()),
            Vec::<Problem>::new(),
            "{}",
            path.display()
        );
    }
}

#[test]
fn the_houses_use_every_element() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("grammar/samples");
    let texts = fs::read_dir(folder).unwrap().map(|entry| fs::read_to_string(entry.unwrap().path()).unwrap());
    let kinds: Vec<ElementKind> = texts
        .flat_map(|text| parse_fresh(&text).chunks)
        .filter_map(|chunk| match &chunk.body.opening {
            Opening::Element(heading) => Some(heading.kind),
            Opening::Nothing | Opening::Include(_) | Opening::Unknown(..) => None,
        })
        .collect();
    for spec in ELEMENTS {
        assert!(kinds.contains(&spec.kind), "no sample has a {}", spec.keyword);
    }
}

#[test]
fn every_mistake_says_what_must_be_found() {
    let mut ids = HashSet::new();
    for list in lists() {
        for mistake in &list.mistakes {
            assert!(ids.insert(mistake.id.clone()), "two mistakes are called {}", mistake.id);
            assert_eq!(mistake.clean, mistake.finds.is_empty(), "{}", mistake.id);
        }
    }
}

#[test]
fn every_house_is_clean() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("grammar/samples");
    let mut report = String::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        for finding in grave(&found(&fs::read_to_string(&path).unwrap())) {
            writeln!(report, "{}: {}", path.file_name().unwrap().display(), said(finding)).unwrap();
        }
    }
    assert!(report.is_empty(), "the samples are not clean:\n{report}");
}

/// Two samples waive `check-not-run` for their basement walls: it must hide nothing else.
#[test]
fn a_waiver_of_checks_not_run_hides_basement_walls_alone() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("grammar/samples");
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let text = fs::read_to_string(&path).unwrap();
        if !text.contains("check-not-run") {
            continue;
        }
        let snapshot = snapshot_of(&text);
        let not_run = snapshot.house.verifications.all().iter().filter(|found| found.outcome.is_err());
        for verification in not_run {
            assert_eq!(
                verification.limit_state,
                LimitState::WallBackfill,
                "{}: {verification:?}",
                path.display()
            );
        }
    }
}

/// Rules that compare a number with where it is stated again, or count what is lost at a gap: that they speak follows from
/// any mistake there.
const CONSEQUENCES: [&str; 5] =
    ["sheet-differs", "intent-not-kept", "intent-not-level", "claim-not-kept", "load-reaches-nothing"];

/// Mistakes that need forces or two versions are found by later rules; only that they read is checked for them.
#[test]
fn every_mistake_is_found_with_its_numbers() {
    let mut report = String::new();
    for list in lists() {
        let house = text_of(&list.house);
        for mistake in list.mistakes.iter().filter(|mistake| mistake.needs == Needs::Geometry) {
            let all = found(&with(mistake, &house));
            for wanted in &mistake.finds {
                if !all.iter().any(|finding| answers(finding, wanted)) {
                    writeln!(report, "{}: no `{}` that says {:?}", mistake.id, wanted.rule, wanted.says)
                        .unwrap();
                }
            }
            for finding in grave(&all) {
                let is_wanted = mistake.finds.iter().any(|wanted| is_one_of(finding.rule, &wanted.rule));
                let is_consequence = CONSEQUENCES.contains(&finding.rule);
                if mistake.clean
                    || !(is_wanted || is_consequence || mistake.may.iter().any(|rule| rule == finding.rule))
                {
                    writeln!(report, "{}: does not follow from it: {}", mistake.id, said(finding)).unwrap();
                }
            }
        }
    }
    assert!(report.is_empty(), "{report}");
}

/// Rules that one changed line of one sample can't make speak: they have tests of files and folders of their own, need
/// a second file, or a line longer than any.
const NEEDS_MORE_THAN_A_LINE: &[&str] = &[
    "line-too-long",
    "too-many-problems",
    "fact-before-element",
    "project-missing",
    "file-empty",
    "include-not-found",
    "include-outside-root",
    "include-circle",
    "include-repeated",
    "include-unreadable",
    "promise-not-checked",
    // Each sample frames its step across the joists; along them it would take new joists and a new wall.
    "step-edge-unframed",
];

#[test]
fn every_rule_has_its_mistake() {
    let lists = lists();
    let mistakes = lists.iter().flat_map(|list| &list.mistakes);
    let found: Vec<&str> = mistakes
        .filter(|mistake| mistake.needs == Needs::Geometry)
        .flat_map(|mistake| &mistake.finds)
        .flat_map(|wanted| wanted.rule.split('|'))
        .collect();
    let without = RULES.iter().map(|rule| rule.slug).filter(|slug| !found.contains(slug));
    let without: Vec<&str> = without.filter(|slug| !NEEDS_MORE_THAN_A_LINE.contains(slug)).collect();
    assert!(without.is_empty(), "no mistake in a whole house makes these speak: {without:?}");
}

/// Everything that is found in a spec of one file, consequences too.
fn found(text: &str) -> Vec<Diagnostic> {
    let snapshot = snapshot_of(text);
    snapshot.findings.iter().flat_map(|finding| finding.with_consequences().into_iter().cloned()).collect()
}

fn snapshot_of(text: &str) -> Snapshot {
    let inputs = Inputs { sources: vec![Source::new("house.framing", text)], includes: Vec::new() };
    let today = Date { year: 2027, month: 6, day: 1 };
    analyse(&Arc::new(inputs), &mut Caches::default(), today, &|| false).unwrap()
}

fn grave(findings: &[Diagnostic]) -> impl Iterator<Item = &Diagnostic> {
    findings.iter().filter(|finding| finding.severity > Severity::Advice)
}

/// True when a finding is of the wanted rule and says every wanted text, each in one of its spellings.
fn answers(finding: &Diagnostic, wanted: &Finds) -> bool {
    let said = said(finding);
    is_one_of(finding.rule, &wanted.rule)
        && wanted.says.iter().all(|text| text.split('|').any(|spelling| said.contains(spelling)))
}

/// True when a rule is one of those that `|` parts.
fn is_one_of(rule: &str, rules: &str) -> bool {
    rules.split('|').any(|one| one == rule)
}

fn said(finding: &Diagnostic) -> String {
    let more =
        finding.notes.iter().chain(&finding.help).fold(String::new(), |all, text| all + "\n    " + text);
    format!("{} ({}): {}{more}", finding.rule, finding.severity.word(), finding.message)
}

fn problems(text: &str) -> Vec<Problem> {
    parse_fresh(text).chunks.iter().flat_map(|chunk| chunk.body.problems.clone()).collect()
}

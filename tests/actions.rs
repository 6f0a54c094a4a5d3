//! Actions of an editor over whole houses: what they leave as it was, and how soon they come.
#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::print_stdout,
    reason = "a test may stop where it fails"
)]

#[path = "support/analysis.rs"]
mod analysis;
#[path = "support/dice.rs"]
mod dice;
#[path = "support/houses.rs"]
mod houses;
#[path = "support/random_specs.rs"]
mod random_specs;

use std::time::{Duration, Instant};

use dice::Dice;
use storyrod::diagnostic::{Diagnostic, Edit};
use storyrod::ide::{ActionKind, Wanted, actions, edits_of};
use storyrod::snapshot::Snapshot;
use storyrod::syntax::format;
use storyrod::text::{FileId, Span};

const FILE: FileId = FileId(0);

/// What is found says what the house is: the order of facts changes none of it.
#[test]
fn ordered_facts_mean_the_same_house() {
    let houses = (0..12).map(houses::house);
    let specs = (0..12).map(|seed| random_specs::every_element(&mut Dice::new(seed)));
    let more = (12..16).map(|seed| random_specs::spec(&mut Dice::new(seed), 20));
    for text in houses.chain(specs).chain(more) {
        // Messages quote the text, so both are written in the one style.
        let text = format(&text);
        let organized = organized(&text);
        let (before, after) = (analysis::of(&text), analysis::of(&organized));
        let (was, is) = (said(&before), said(&after));
        let only = |one: &[Said], other: &[Said]| -> Vec<Said> {
            one.iter().filter(|it| !other.contains(it)).cloned().collect()
        };
        assert_eq!(only(&was, &is), only(&is, &was));
        assert_eq!(organized, self::organized(&organized));
        let mut lines = [&text, &organized].map(|text| words_of_lines(text));
        lines.iter_mut().for_each(|lines| lines.sort());
        assert_eq!(lines[0].len(), lines[1].len(), "no line comes or goes");
    }
}

/// An action touches only what it says, and its edits stand in order without overlap.
#[test]
fn edits_stand_in_order_and_inside_the_text() {
    for seed in 0..3 {
        let text = houses::house(seed).replacen("top           9", "top           8", 2);
        let snapshot = analysis::of(&text);
        let step = (text.len() / 40).max(1);
        for offset in (0..text.len()).step_by(step) {
            let offset = u32::try_from(offset).unwrap();
            for action in actions(&snapshot, Span::new(FILE, offset, offset), &everything()) {
                let edits = edits_of(&snapshot, FILE, &action);
                assert!(edits.windows(2).all(|pair| pair[0].span.end <= pair[1].span.start), "{action:?}");
                assert!(edits.iter().all(|edit| edit.span.end as usize <= text.len()), "{action:?}");
            }
        }
    }
}

/// What an editor asks for whenever the cursor moves.
#[test]
fn ten_thousand_lines_are_answered_at_once() {
    let snapshot = analysis::of(&houses::long_spec(1, 10_000));
    let place = snapshot.findings.last().unwrap().span;
    let longest = |wanted: &Wanted| {
        let started = Instant::now();
        assert!(!actions(&snapshot, place, wanted).is_empty() || wanted.is_automatic);
        started.elapsed()
    };
    let moved = longest(&Wanted { kinds: vec![ActionKind::QuickFix], is_automatic: true });
    let asked = longest(&everything());
    println!("by itself {moved:?}, by a person {asked:?}");
    assert!(moved < Duration::from_millis(50), "{moved:?}");
    assert!(asked < Duration::from_secs(2), "{asked:?}");
}

fn everything() -> Wanted {
    let kinds = [ActionKind::QuickFix, ActionKind::Rewrite, ActionKind::FixAll, ActionKind::Organize];
    Wanted { kinds: kinds.to_vec(), is_automatic: false }
}

fn organized(text: &str) -> String {
    let snapshot = analysis::of(text);
    let wanted = Wanted { kinds: vec![ActionKind::Organize], is_automatic: false };
    let offered = actions(&snapshot, Span::new(FILE, 0, 0), &wanted);
    offered.first().map_or_else(|| text.to_owned(), |it| applied(text, &edits_of(&snapshot, FILE, it)))
}

fn applied(text: &str, edits: &[Edit]) -> String {
    let mut text = text.to_owned();
    for edit in edits.iter().rev() {
        text.replace_range(edit.span.start as usize..edit.span.end as usize, &edit.text);
    }
    text
}

/// Rule, subject and message of a finding.
type Said = (&'static str, String, String);

/// Every finding without its place.
fn said(snapshot: &Snapshot) -> Vec<Said> {
    let all = snapshot.findings.iter().flat_map(Diagnostic::with_consequences);
    let mut said: Vec<_> =
        all.map(|finding| (finding.rule, finding.subject.clone(), finding.message.clone())).collect();
    said.sort();
    said
}

fn words_of_lines(text: &str) -> Vec<String> {
    let lines = text.lines().map(|line| line.split_whitespace().collect::<String>());
    lines.filter(|line| !line.is_empty()).collect()
}

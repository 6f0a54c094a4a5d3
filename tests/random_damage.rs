//! No text makes the tool panic, point outside it, lose what was written, or think for long.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop where it fails")]

#[path = "support/analysis.rs"]
mod analysis;
#[path = "support/damage.rs"]
mod damage;
#[path = "support/dice.rs"]
mod dice;
#[path = "support/houses.rs"]
mod houses;
#[path = "support/reading.rs"]
mod reading;

use std::fmt::Write as _;
use std::fs;
use std::panic::catch_unwind;
use std::path::Path;
use std::time::{Duration, Instant};

use dice::Dice;
use storyrod::diagnostic::Diagnostic;
use storyrod::syntax::format;
use storyrod::text::Span;

/// How often each text is damaged; `STORYROD_DAMAGES` says otherwise.
const DAMAGES: u64 = 20;

/// Far more than a damaged house of five hundred lines ever takes, far less than a blow-up does.
const PATIENCE: Duration = Duration::from_secs(5);

#[test]
fn a_damaged_house_is_still_read_and_checked() {
    let damages = std::env::var("STORYROD_DAMAGES").map_or(DAMAGES, |count| count.parse().unwrap());
    for whole in whole_texts() {
        for seed in 0..damages {
            let text = damage::damaged(&whole, &mut Dice::new(seed));
            if catch_unwind(|| assert_withstood(&text)).is_err() {
                panic!("seed {seed} of the text that begins {:?}:\n{text}", whole.lines().next());
            }
        }
    }
}

/// What can't be read is unknown, not missing: only the text is told to be wrong.
#[test]
fn a_value_that_cant_be_read_makes_no_rule_of_framing_speak() {
    let whole = whole_texts().into_iter().find(|text| text.contains("Loon Cove")).unwrap();
    let lines: Vec<&str> = whole.lines().collect();
    let mut report = String::new();
    for (at, line) in lines.iter().enumerate().filter(|(_, line)| line.starts_with("  ")).step_by(2) {
        // The one style sets the values in one column.
        let Some(phrase) = line.get(..15).filter(|phrase| phrase.ends_with("  ")) else { continue };
        let broken = format!("{phrase} xx");
        let mut changed = lines.clone();
        changed[at] = &broken;
        for finding in analysis::of(&changed.join("\n")).findings {
            if finding.waiver.is_some() {
                writeln!(report, "`{line}` becomes `{broken}`: {}: {}", finding.rule, finding.message)
                    .unwrap();
            }
        }
    }
    assert!(report.is_empty(), "{report}");
}

/// The samples and a house drawn at random.
fn whole_texts() -> Vec<String> {
    let samples = Path::new(env!("CARGO_MANIFEST_DIR")).join("grammar/samples");
    let mut paths: Vec<_> = fs::read_dir(samples).unwrap().map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    let mut texts: Vec<_> = paths.iter().map(|path| fs::read_to_string(path).unwrap()).collect();
    assert!(texts.len() >= 5, "{paths:?}");
    texts.push(houses::house(1));
    texts
}

fn assert_withstood(text: &str) {
    let begun = Instant::now();
    let findings = analysis::of(text).findings;
    assert!(begun.elapsed() < PATIENCE, "took {:?}", begun.elapsed());
    for finding in findings.iter().flat_map(Diagnostic::with_consequences) {
        for span in spans_of(finding) {
            let range = span.start as usize..span.end as usize;
            assert!(text.get(range).is_some(), "{span:?} of {finding:#?}");
        }
    }

    let formatted = format(text);
    assert_eq!(format(&formatted), formatted, "formatted twice");
    assert_eq!(reading::values(&formatted), reading::values(text), "formatted");
}

/// Every place a finding points at.
fn spans_of(finding: &Diagnostic) -> Vec<Span> {
    let edits = finding.fix.iter().flat_map(|fix| &fix.edits);
    let related = finding.related.iter().map(|related| related.span);
    [finding.span].into_iter().chain(related).chain(edits.map(|edit| edit.span)).collect()
}

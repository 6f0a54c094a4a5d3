//! Houses drawn at random are whole and read without a problem.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop where it fails")]

#[path = "support/analysis.rs"]
mod analysis;
#[path = "support/dice.rs"]
mod dice;
#[path = "support/houses.rs"]
mod houses;
#[path = "support/reading.rs"]
mod reading;

use storyrod::diagnostic::Diagnostic;
use storyrod::syntax::format;
use storyrod::units::Length;

#[test]
fn the_same_seed_gives_the_same_house() {
    assert_eq!(houses::house(7), houses::house(7));
    assert_ne!(houses::house(7), houses::house(8));
}

#[test]
fn a_long_spec_has_the_lines_asked_for() {
    let lines = houses::long_spec(1, 10_000).lines().count();
    assert!((10_000..10_300).contains(&lines), "{lines} lines");
}

#[test]
fn names_are_given_once() {
    let text = houses::estate(3, 5);
    let mut headings: Vec<_> =
        text.lines().filter(|line| !line.starts_with([' ', '\u{a0}']) && line.contains('.')).collect();
    let all = headings.len();
    headings.sort_unstable();
    headings.dedup();
    assert_eq!(headings.len(), all);
}

#[test]
fn a_house_reads_and_is_in_the_one_style() {
    for seed in 0..200 {
        let text = houses::house(seed);
        reading::assert_clean(&text);
        assert_eq!(format(&text), text);
    }
    reading::assert_clean(&houses::estate(5, 12));
}

#[test]
fn every_loop_of_a_house_closes_exactly() {
    for seed in 0..200 {
        let text = houses::house(seed);
        let geometry = analysis::of(&text).house.geometry;
        // The datum, two bearing walls and two seats at least.
        assert!(geometry.closures.len() >= 5, "{} loops in\n{text}", geometry.closures.len());
        for closure in &geometry.closures {
            assert_eq!(closure.difference(), Length::ZERO, "seed {seed}: {closure:?}\n{text}");
        }
    }
}

#[test]
fn nothing_is_found_in_a_valid_house() {
    for seed in 0..200 {
        let text = houses::house(seed);
        let findings = found(&text);
        assert!(findings.is_empty(), "seed {seed}: {findings:#?}\n{text}");
    }
}

/// What is found in a house, but for what says that a table is not here: no wall of a basement is in the row that is.
fn found(text: &str) -> Vec<Diagnostic> {
    let findings = analysis::of(text).findings;
    findings.into_iter().filter(|finding| finding.rule != "check-not-run").collect()
}

#[test]
fn every_load_of_a_valid_house_reaches_the_soil() {
    for seed in 0..200 {
        let text = houses::house(seed);
        let forces = analysis::of(&text).house.forces;
        assert!(forces.balance.error() <= 1e-9, "seed {seed}: {:e}\n{text}", forces.balance.error());
        assert!(forces.balance.lost.is_empty(), "seed {seed}: {:?}\n{text}", forces.balance.lost);
        assert!(forces.unstable.is_empty(), "seed {seed}: {:?}\n{text}", forces.unstable);
    }
}

#[test]
fn one_wrong_line_is_one_finding() {
    for seed in 0..30 {
        for (heading, phrase, becomes, rule) in [
            ("wall W1", "top", "98'-2\"", "stack-does-not-close"),
            ("pocket PK2", "seat", "97'-2\"", "stack-does-not-close"),
            ("column C1", "cut", "should be 61\"", "column-length-does-not-close"),
            ("stair S1", "risers", "11", "riser-too-tall"),
            ("project", "frost", "9'-0\"", "frost-depth"),
            ("floor main", "live", "20 psf", "load-below-use"),
        ] {
            let text = with_line(&houses::house(seed), heading, phrase, becomes);
            let findings = found(&text);
            let rules: Vec<_> = findings.iter().map(|finding| (finding.rule, &finding.message)).collect();
            assert!(
                matches!(rules.as_slice(), [(only, _)] if *only == rule),
                "seed {seed} {heading} {phrase}: {rules:?}\n{text}"
            );
        }
    }
}

/// The text with another value of one fact.
fn with_line(text: &str, heading: &str, phrase: &str, becomes: &str) -> String {
    let element = text.find(&format!("{heading} ")).or_else(|| text.find(&format!("{heading}\n"))).unwrap();
    let line = element + text[element..].find(&format!("\n  {phrase} ")).unwrap() + 1;
    let end = line + text[line..].find('\n').unwrap();
    format!("{}  {phrase:<13} {becomes}{}", &text[..line], &text[end..])
}

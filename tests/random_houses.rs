//! Houses drawn at random are whole and read without a problem.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop where it fails")]

#[path = "support/dice.rs"]
mod dice;
#[path = "support/houses.rs"]
mod houses;
#[path = "support/reading.rs"]
mod reading;

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
fn every_line_of_a_house_reads() {
    for seed in 0..60 {
        reading::assert_clean(&houses::house(seed));
    }
    reading::assert_clean(&houses::estate(5, 12));
}

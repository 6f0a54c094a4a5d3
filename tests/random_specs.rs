//! Whatever the vocabulary's forms allow can be read.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop where it fails")]

#[path = "support/dice.rs"]
mod dice;
#[path = "support/random_specs.rs"]
mod random_specs;
#[path = "support/reading.rs"]
mod reading;

use dice::Dice;
use storyrod::syntax::{format, parse_fresh};

#[test]
fn every_element_reads_whatever_its_facts() {
    for seed in 0..30 {
        reading::assert_clean(&random_specs::every_element(&mut Dice::new(seed)));
    }
}

#[test]
fn the_same_seed_gives_the_same_spec() {
    let spec = |seed| random_specs::spec(&mut Dice::new(seed), 20);
    assert_eq!(spec(1), spec(1));
    assert_ne!(spec(1), spec(2));
}

#[test]
fn formatting_keeps_every_value_and_is_done_at_once() {
    for seed in 0..30 {
        let text = random_specs::every_element(&mut Dice::new(seed));
        let formatted = format(&text);
        assert_eq!(format(&formatted), formatted);
        for (was, is) in values(&text).iter().zip(values(&formatted)) {
            assert_eq!(*was, is, "seed {seed}");
        }
        assert_eq!(values(&text).len(), values(&formatted).len());
    }
}

/// Each fact with its labels and values, without their places.
fn values(text: &str) -> Vec<String> {
    let chunks = parse_fresh(text).chunks;
    let facts = chunks.iter().flat_map(|chunk| &chunk.body.facts);
    facts.map(|fact| format!("{} {}", fact.spec.phrase, parts_of(fact))).collect()
}

fn parts_of(fact: &storyrod::syntax::Fact) -> String {
    let values: Vec<_> = fact.parts.iter().map(|part| format!("{} {:?}", part.label, part.value)).collect();
    let debug = values.join(", ");
    let mut pieces = debug.split("LocalSpan {");
    let first = pieces.next().unwrap().to_owned();
    pieces.fold(first, |text, piece| text + piece.split_once('}').unwrap().1)
}

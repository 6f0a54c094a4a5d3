//! Whatever the vocabulary's forms allow can be read.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop where it fails")]

#[path = "support/dice.rs"]
mod dice;
#[path = "support/random_specs.rs"]
mod random_specs;
#[path = "support/reading.rs"]
mod reading;

use dice::Dice;
use storyrod::syntax::format;

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
        for (was, is) in reading::values(&text).iter().zip(reading::values(&formatted)) {
            assert_eq!(*was, is, "seed {seed}");
        }
        assert_eq!(reading::values(&text).len(), reading::values(&formatted).len());
    }
}

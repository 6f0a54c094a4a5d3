//! Real sessions with the language server over its standard input and output.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test fails by panicking"
)]

mod actions;
mod completion;
#[path = "../support/damage.rs"]
mod damage;
#[path = "../support/dice.rs"]
mod dice;
mod documents;
mod edits;
mod features;
mod figures;
mod hierarchies;
mod hints;
mod lifecycle;
mod looks;
mod names;
#[path = "../support/random_specs.rs"]
mod random_specs;
mod session;
mod sheets;
mod steadiness;
mod text;
mod wire;

//! What other programs read of a run, held against their published schemas and their own readers.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)] // helpers of tests

mod checked;
mod fingerprints;
mod junit;
mod markdown;
#[path = "../support/mistakes.rs"]
mod mistakes;
mod sarif;

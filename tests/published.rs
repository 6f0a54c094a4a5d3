//! What published standards, tables and worked examples say, against what the crate works out.
//!
//! The name of a test says of what kind its figures are: `published_…` (read in a copy of the source named beside each
//! case), `derived_…` (computed apart from this crate), `oracle_…` (two independent solvers agree), `from_memory_…` (read
//! nowhere: nothing is confirmed by them).
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)] // a test fails by panicking

#[path = "published/steel.rs"]
mod steel;

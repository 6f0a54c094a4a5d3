//! Helpers for tests: one per kind of test.

pub mod rule_check;

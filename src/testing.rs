//! Helpers for tests: one per kind of test.

pub mod cursor;
pub mod rule_check;

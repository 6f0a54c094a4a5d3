//! Promises of the design.

pub mod intent_clear_bay;

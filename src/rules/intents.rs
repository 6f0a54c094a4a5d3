//! Promises of the design.

pub mod intent_clear_bay;
pub mod intent_not_kept;
pub mod intent_not_level;
pub mod promise_not_checked;

//! Promises of the design.

pub mod drop_unexplained;
pub mod intent_below_ceiling;
pub mod intent_clear_bay;
pub mod intent_face_not_straight;
pub mod intent_not_kept;
pub mod intent_not_level;
pub mod intent_not_over;
pub mod promise_not_checked;

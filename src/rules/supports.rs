//! What members lie on and hang from, in plan.

pub mod beam_end_unsupported;
pub mod bearing_longer_than_support;
pub mod bearing_short;
pub mod joist_end_unsupported;
pub mod support_out_of_place;

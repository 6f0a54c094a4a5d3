//! What members lie on and hang from, in plan.

pub mod back_span_short;
pub mod beam_end_unsupported;
pub mod bearing_longer_than_support;
pub mod bearing_short;
pub mod cantilever_too_long;
pub mod hang_deeper_than_beam;
pub mod hang_without_hanger;
pub mod joist_end_unsupported;
pub mod joists_can_roll;
pub mod lap_too_short;
pub mod splice_off_support;
pub mod support_narrower_than_beam;
pub mod support_out_of_place;

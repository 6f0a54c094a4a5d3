//! Stairs and steps.

pub mod riser_too_tall;
pub mod risers_not_even;
pub mod stair_headroom;
pub mod step_not_whole_risers;

//! Stairs and steps.

pub mod door_over_steps;
pub mod flight_too_tall;
pub mod guard_missing;
pub mod guard_post_unbacked;
pub mod handrail_missing;
pub mod landing_too_small;
pub mod opening_misses_stair;
pub mod riser_too_tall;
pub mod risers_not_even;
pub mod single_riser;
pub mod stair_headroom;
pub mod step_not_whole_risers;
pub mod steps_eat_room;
pub mod threshold_drop;
pub mod tolerance_eats_budget;
pub mod tread_too_short;

//! Floors: what they carry, what goes through them.

pub mod deck_edge_unbacked;
pub mod drain_on_joist;
pub mod drain_without_room;
pub mod duct_blocked_at_step;
pub mod flange_cut;
pub mod hole_beyond_limits;
pub mod layouts_out_of_register;
pub mod load_below_use;
pub mod notch_beyond_limits;
pub mod opening_cuts_carrier;
pub mod opening_underframed;
pub mod step_edge_unframed;

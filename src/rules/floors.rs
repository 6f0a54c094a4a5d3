//! Floors: what they carry, what goes through them.

pub mod drain_on_joist;
pub mod load_below_use;

//! Beams.

pub mod bottoms_differ_on_one_cap;
pub mod flush_beam_projects;
pub mod flush_steel_no_gap;
pub mod nailer_missing;
pub mod nailer_too_wide;
pub mod shim_stack;
pub mod web_crushed;

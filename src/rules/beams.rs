//! Beams.

pub mod flush_beam_projects;
pub mod flush_steel_no_gap;

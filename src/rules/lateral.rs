//! Pushes and pulls from the side and from below: what a plan shows of them. Nothing is designed for them here.

pub mod braced_line_breaks_at_step;
pub mod floors_untied_at_step;
pub mod hold_down_concrete_thin;
pub mod thrust_without_floor;

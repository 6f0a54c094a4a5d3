//! The vertical stack: levels that have to agree.

pub mod ceiling_too_low;
pub mod drop_measured_on_wrong_surface;
pub mod floor_drop_not_at_wall;
pub mod joists_do_not_meet;
pub mod nominal_as_actual;
pub mod shrinkage_splits_levels;
pub mod stack_does_not_close;
pub mod stud_length_by_base;
pub mod unbuildable_fraction;

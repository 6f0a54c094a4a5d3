//! Drawing sheets: what they show, their strings, counts and schedules.

pub mod count_differs;
pub mod mark_unscheduled;
pub mod mirrored_side;
pub mod rounded_away;
pub mod sheet_differs;
pub mod stale_sheet;
pub mod string_does_not_close;

//! Drawing sheets: what they show, their strings, counts and schedules.

pub mod sheet_differs;
pub mod string_does_not_close;

//! Drawing sheets against the house.

pub mod sheet_differs;

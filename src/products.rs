//! What is sold: sizes and properties by standard, one const slice a family, its source in the file's head.
//!
//! The model asks [`section::section_of`] for the section behind a written size; the next size that works is looked
//! for in the slices themselves.

pub mod engineered;
pub mod i_joist;
pub mod lumber;
pub mod panel;
pub mod rolled;
pub mod section;
pub mod species;

//! What is sold, by standard: a family of sizes is one const slice, and its file begins with where the numbers are from.
//!
//! The model asks [`section::section_of`] for the section behind a written size.

pub mod engineered;
pub mod grades;
pub mod i_joist;
pub mod lumber;
pub mod rolled;
pub mod section;
pub mod species;

//! Storyrod: the framing of a house as text, checked.

pub mod diagnostic;
pub mod geometry;
pub mod model;
pub mod products;
pub mod profiles;
pub mod syntax;
pub mod text;
pub mod units;

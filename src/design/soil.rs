//! What soil bears, how footings press on it, and how it presses on walls.
//!
//! Pressures here are at service level: soil is not designed by strength.

pub mod classification;
pub mod pressure;

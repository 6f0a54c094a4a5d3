//! Storyrod: the framing of a house as text, checked.

pub mod cli;
pub mod diagnostic;
pub mod facts;
pub mod geometry;
pub mod house;
pub mod ide;
pub mod inputs;
pub mod model;
pub mod products;
pub mod profiles;
pub mod report;
pub mod rules;
pub mod server;
pub mod snapshot;
pub mod syntax;
#[cfg(test)]
mod testing;
pub mod text;
pub mod units;
pub mod workspace;

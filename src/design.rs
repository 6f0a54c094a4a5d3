//! What published standards say a member can bear: one clause, one function.
//!
//! Nothing here knows a member, a span or a file: numbers in, numbers out, so that an engineer can check each function
//! against the book. Outside of a clause's range there is no value ([`NotCovered`]): never a clamp, never a guess.

pub mod concrete;
pub mod foundation_walls;
pub mod loads;
pub mod prescriptive;
pub mod soil;
pub mod steel;
pub mod wood;

use std::fmt;

use crate::units::Length;

/// A case that a clause gives no value for.
#[derive(Clone, Debug, PartialEq)]
pub enum NotCovered {
    /// A number lies outside of the range of the clause, or is no number at all.
    OutOfRange {
        /// What, by the standard's symbol or in words: `le/d`.
        quantity: &'static str,
        /// Its value.
        value: f64,
        /// The end of the range that it passes.
        limit: f64,
        /// The clause.
        clause: &'static str,
    },
    /// A length lies outside of the range of the clause.
    LengthOutOfRange {
        /// Which.
        quantity: &'static str,
        /// Its value.
        value: Length,
        /// The end of the range that it passes.
        limit: Length,
        /// The clause.
        clause: &'static str,
    },
    /// The method has no rule for such a thing, or a table without a confirmed source is not here.
    NoRule {
        /// What there is no rule for: `a notch on the tension face in the middle third`.
        what: &'static str,
        /// The clause that leaves it out, or why it is not here.
        clause: &'static str,
    },
}

impl fmt::Display for NotCovered {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::OutOfRange { quantity, value, limit, clause } => {
                write!(f, "{quantity} is {value:.3}, the limit is {limit:.3} ({clause})")
            }
            Self::LengthOutOfRange { quantity, value, limit, clause } => {
                write!(f, "{quantity} is {value}, the limit is {limit} ({clause})")
            }
            Self::NoRule { what, clause } => write!(f, "no rule for {what} ({clause})"),
        }
    }
}

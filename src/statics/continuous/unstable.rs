//! Why a member on supports has no answer.

use std::fmt;

use crate::units::Length;

/// Why a member on supports has no answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unstable {
    /// It has no length.
    NoLength,
    /// It rests on nothing.
    NoSupport,
    /// A part of it can move without bending.
    Mechanism {
        /// Where the part begins.
        from: Length,
        /// Where it ends.
        to: Length,
    },
    /// Two supports at one place.
    SamePlace {
        /// Where.
        at: Length,
    },
    /// A stiffness that is no positive number.
    NoRigidity {
        /// Where the stretch ends, or where the spring is.
        at: Length,
    },
    /// The stretches of stiffness do not follow each other to the end of the member.
    Stretches {
        /// Where they stop making sense.
        to: Length,
        /// The length of the member.
        length: Length,
    },
    /// Something lies off the member.
    Off {
        /// What it is.
        what: &'static str,
        /// Where it is.
        at: Length,
        /// The length of the member.
        length: Length,
    },
    /// A load that is no number.
    NotANumber {
        /// Where it begins.
        at: Length,
    },
    /// A couple on a joint that carries no moment: it belongs to neither side.
    CoupleOnHinge {
        /// Where.
        at: Length,
    },
    /// Loads or stiffnesses so large, small or uneven that the arithmetic can't hold the answer.
    BeyondArithmetic,
}

impl fmt::Display for Unstable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoLength => f.write_str("the member has no length"),
            Self::NoSupport => f.write_str("nothing supports the member"),
            Self::Mechanism { from, to } => {
                write!(f, "the part from {from} to {to} can move without bending: a support is missing")
            }
            Self::SamePlace { at } => write!(f, "two supports stand at {at}"),
            Self::NoRigidity { at } => write!(f, "the stiffness at {at} is no positive number"),
            Self::Stretches { to, length } => {
                write!(f, "the stiffness is given up to {to}, the member is {length} long")
            }
            Self::Off { what, at, length } => {
                write!(f, "{what} at {at} is off the member, which is {length} long")
            }
            Self::NotANumber { at } => write!(f, "the load at {at} is no number"),
            Self::CoupleOnHinge { at } => {
                write!(f, "the couple at {at} acts on a joint that carries no moment")
            }
            Self::BeyondArithmetic => f.write_str(
                "its loads or stiffnesses are too large, too small or too uneven to be worked out",
            ),
        }
    }
}

impl std::error::Error for Unstable {}

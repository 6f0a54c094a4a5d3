//! A straight member on supports: reactions, moments, shears and deflections, exact to the rounding of the arithmetic.
//!
//! The unknowns are the moments at supports and joints, and the deflections where nothing rigid holds the member.
//! Between two of these places the member is integrated in closed form, stepped stiffness and shear deformation
//! included, so that short pieces cost no digits; the equations are a narrow band. No place is sampled: a piece
//! between two changes of load or stiffness is a polynomial, and extremes are the roots of its derivative.
//!
//! Source: plane beam theory, with shear deformation where a shear rigidity is given (Timoshenko); small deflections.
//!
//! Signs: loads, couples and deflections as on their types; a reaction is positive upwards.

mod banded;
mod extremes;
mod loading;
mod prepared;
mod response;
mod roots;
mod solution;
mod stability;
mod unstable;

pub use extremes::Extremes;
pub use prepared::Prepared;
pub use response::Response;
pub use unstable::Unstable;

use crate::units::{FlexuralRigidity, Force, Length, LineLoad, Moment, SpringRate};

/// A straight member on supports, from 0 to its length.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Line {
    /// Where it ends.
    pub length: Length,
    /// Its stiffness, stretch after stretch; the last one ends where the member ends.
    pub stretches: Vec<Stretch>,
    /// What it rests on, in any order, no two at one place.
    pub props: Vec<Prop>,
    /// Where it is joined by something that carries shear and no moment.
    /// Over a support the member ends there on both sides.
    pub hinges: Vec<Length>,
}

/// A length of a member with one stiffness.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stretch {
    /// Where it ends; it begins where the one before ends.
    pub to: Length,
    /// Its stiffness in bending.
    pub rigidity: FlexuralRigidity,
    /// Shear modulus times area over the form factor, where a product publishes it; without it shear deforms nothing.
    pub shear_rigidity: Option<Force>,
}

/// A support.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Prop {
    /// Where.
    pub at: Length,
    /// What it holds.
    pub hold: Hold,
    /// How far its foot sinks, down positive.
    pub settlement: Length,
}

/// What a support holds of the member above.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Hold {
    /// Its height.
    Pinned,
    /// Its height and its slope.
    Fixed,
    /// Its height, by a force that grows with the deflection.
    Spring(SpringRate),
}

/// A load on a member.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Push {
    /// A line load that runs straight from one value to another.
    Spread {
        /// Where it begins.
        from: Length,
        /// Where it ends.
        to: Length,
        /// Its value at `from`.
        start: LineLoad,
        /// Its value at `to`.
        end: LineLoad,
    },
    /// A force at one place.
    Point {
        /// Where.
        at: Length,
        /// How much.
        force: Force,
    },
    /// A couple at one place, clockwise positive.
    Couple {
        /// Where.
        at: Length,
        /// How much.
        moment: Moment,
    },
}

impl Line {
    /// The member made ready for any number of load sets, when it can stand.
    pub fn prepare(&self) -> Result<Prepared, Unstable> {
        stability::check(self)?;
        Prepared::of(self)
    }
}

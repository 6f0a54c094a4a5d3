//! Base plates, cap plates and saddles: the bending of a plate beyond the column.
//!
//! Source: AISC Design Guide 1 and Manual part 14 for the plate's reach, AISC 360 F11 for its strength.

mod base;
mod cap;

use crate::design::NotCovered;
use crate::design::steel::{Strength, inches, modulus_over_yield, usual};
use crate::units::{Length, Moment, SectionModulus, Stress};

pub use base::{BasePlate, LoadOnConcrete, Reach, base};
pub use cap::{CapShare, Eccentricity, Overhang, cap_shares, eccentricity, overhang, saddle};

/// The column below or above a plate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Column {
    /// A W shape: depth and flange width.
    WideFlange {
        /// d.
        depth: Length,
        /// bf.
        flange_width: Length,
    },
    /// A tube: its two sides.
    Tube {
        /// Along the plate.
        along: Length,
        /// Across the plate.
        across: Length,
    },
    /// A pipe or round tube: its diameter.
    Pipe {
        /// D.
        outside: Length,
    },
}

impl Column {
    /// Its outside, along the plate and across it.
    pub fn outside(self) -> [Length; 2] {
        match self {
            Self::WideFlange { depth, flange_width } => [depth, flange_width],
            Self::Tube { along, across } => [along, across],
            Self::Pipe { outside } => [outside, outside],
        }
    }

    /// The length of plate that it holds up, along and across; the plate bends from there.
    ///
    /// Source: AISC Design Guide 1: 0.95 d and 0.80 bf of a W shape, 0.95 of a tube both ways; 0.80 D of a pipe from
    /// memory.
    pub fn held(self) -> [Length; 2] {
        let [along, across] = self.outside();
        match self {
            Self::WideFlange { .. } => [along.scaled(0.95), across.scaled(0.80)],
            Self::Tube { .. } => [along.scaled(0.95), across.scaled(0.95)],
            Self::Pipe { .. } => [along.scaled(0.80), across.scaled(0.80)],
        }
    }
}

/// A plate in bending about its weak axis.
///
/// Source: AISC 360-16, -22 §F11.1, Eq. F11-1: Mp = Fy Z, below 1.6 Fy S for a rectangle. It does not twist.
/// Range:  0 < width, 0 < thickness.
/// Result: moment.
pub fn bending(
    width: Length,
    thickness: Length,
    yield_strength: Stress,
) -> Result<Strength<Moment>, NotCovered> {
    const CLAUSE: &str = "AISC 360 F11";
    modulus_over_yield(yield_strength, CLAUSE)?;
    let thickness = inches("t", thickness, CLAUSE)?;
    let plastic_modulus = inches("b", width, CLAUSE)? * thickness.powi(2) / 4.0;
    Ok(usual(yield_strength * SectionModulus::in3(plastic_modulus)))
}

/// The thickness with which a plate of this width allows a moment of service loads: [`bending`] turned round.
fn thickness(moment: Moment, width: Length, yield_strength: Stress) -> Length {
    let plastic_modulus = (moment * 1.67).to_lb_in() / yield_strength.to_psi();
    Length::decimal_inches((4.0 * plastic_modulus / width.to_inches()).sqrt())
}

/// The two ways past a column, or nothing when the plate does not cover it.
fn beyond(plate: Length, column: Length, held: Length, clause: &'static str) -> Result<Length, NotCovered> {
    inches("column", column, clause)?;
    if plate < column {
        return Err(NotCovered::LengthOutOfRange { quantity: "plate", value: plate, limit: column, clause });
    }
    Ok((plate - held).half())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 6 in. of 1/2 in. plate has Z = 6 x 0.25 / 4 = 0.375 in3; x 36 ksi = 13.5 kip-in.
    #[test]
    fn a_plate_by_hand_and_back() {
        let (width, half_inch, fy) = (Length::inches(6), Length::inches(1).half(), Stress::ksi(36.0));
        let strength = bending(width, half_inch, fy).unwrap();
        assert!((strength.nominal.to_kip_in() - 13.5).abs() < 1e-9);
        assert!((thickness(strength.allowable(), width, fy) - half_inch).abs() <= Length::from_units(1));
    }

    #[test]
    fn a_plate_without_thickness_has_no_strength() {
        assert!(bending(Length::inches(6), Length::ZERO, Stress::ksi(36.0)).is_err());
        assert!(bending(Length::inches(6), Length::inches(1), Stress::ksi(f64::NAN)).is_err());
    }
}

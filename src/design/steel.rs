//! Steel members after AISC 360, chapters E to J: columns, beams, webs, filled tubes and plates.
//!
//! A result is a nominal strength with its safety factor (allowable strength design); the resistance factor of strength
//! design stands beside it, because books print both. The 2016 and the 2022 edition give the same numbers here.
//! The clauses were read in the design examples that go with the 2022 edition, in a secondary copy; some, where it says
//! so, in the Structural Steel Designer's Handbook, chapter 5, which follows the 2005 edition. What was read in neither
//! says "from memory".

pub mod bearing;
pub mod combined;
pub mod compression;
pub mod concentrated;
pub mod filled;
pub mod flexure;
pub mod grades;
pub mod plates;
pub mod sections;
pub mod shear;

use std::ops::{Div, Mul};

use crate::design::NotCovered;
use crate::units::{Length, Stress};

/// A strength as a clause gives it, with the two factors that make it safe.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strength<Q> {
    /// Nominal: before any factor.
    pub nominal: Q,
    /// Ω, that divides it in allowable strength design.
    pub safety_factor: f64,
    /// φ, that multiplies it in strength design.
    pub resistance_factor: f64,
}

impl<Q: Copy + Div<f64, Output = Q> + Mul<f64, Output = Q>> Strength<Q> {
    /// What service loads may use of it: nominal over Ω.
    pub fn allowable(self) -> Q {
        self.nominal / self.safety_factor
    }

    /// What factored loads may use of it: nominal times φ.
    pub fn design(self) -> Q {
        self.nominal * self.resistance_factor
    }
}

/// φ 0.90, Ω 1.67: compression (E1), flexure (F1), shear but for most W shapes (G1).
const fn usual<Q>(nominal: Q) -> Strength<Q> {
    Strength { nominal, safety_factor: 1.67, resistance_factor: 0.90 }
}

/// E / Fy, of a yield strength that is a number above zero.
fn modulus_over_yield(yield_strength: Stress, clause: &'static str) -> Result<f64, NotCovered> {
    let ksi = above_zero("Fy in ksi", yield_strength.to_ksi(), clause)?;
    Ok(grades::ELASTIC_MODULUS.to_ksi() / ksi)
}

/// The value itself, when it is a number above zero.
fn above_zero(quantity: &'static str, value: f64, clause: &'static str) -> Result<f64, NotCovered> {
    if !(0.0 < value && value.is_finite()) {
        return Err(NotCovered::OutOfRange { quantity, value, limit: 0.0, clause });
    }
    Ok(value)
}

/// The value itself, when it lies above zero and not above the limit.
fn up_to(quantity: &'static str, value: f64, limit: f64, clause: &'static str) -> Result<f64, NotCovered> {
    above_zero(quantity, value, clause)?;
    if value > limit {
        return Err(NotCovered::OutOfRange { quantity, value, limit, clause });
    }
    Ok(value)
}

/// A length in inches, when it is above zero.
fn inches(quantity: &'static str, length: Length, clause: &'static str) -> Result<f64, NotCovered> {
    if !length.is_positive() {
        return Err(NotCovered::LengthOutOfRange { quantity, value: length, limit: Length::ZERO, clause });
    }
    Ok(length.to_inches())
}

/// A length in inches, when it is not below zero.
fn inches_or_none(quantity: &'static str, length: Length, clause: &'static str) -> Result<f64, NotCovered> {
    if length.is_negative() {
        return Err(NotCovered::LengthOutOfRange { quantity, value: length, limit: Length::ZERO, clause });
    }
    Ok(length.to_inches())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Force;

    /// By hand: 334 kip over 1.67 is 200 kip; times 0.90 it is 300.6 kip.
    #[test]
    fn a_strength_has_two_safe_values() {
        let strength = usual(Force::kip(334.0));
        assert!((strength.allowable().to_kip() - 200.0).abs() < 1e-9);
        assert!((strength.design().to_kip() - 300.6).abs() < 1e-9);
    }

    #[test]
    fn what_is_no_number_has_no_value() {
        assert!(modulus_over_yield(Stress::ksi(f64::NAN), "E3").is_err());
        assert!(modulus_over_yield(Stress::ZERO, "E3").is_err());
        assert!(up_to("x", 1.0, 1.0, "E3").is_ok());
        assert!(up_to("x", 1.000_001, 1.0, "E3").is_err());
        assert!(up_to("x", f64::NAN, 1.0, "E3").is_err());
        assert!(inches("t", Length::ZERO, "E3").is_err());
        assert!(inches_or_none("Lb", Length::ZERO, "F2").is_ok());
        assert!(inches_or_none("Lb", -Length::inches(1), "F2").is_err());
    }
}

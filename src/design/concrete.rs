//! Concrete by ACI 318: footings with bars and without, and what stands on them.
//!
//! Source: ACI 318-14 and 318-19, both known from secondary copies only; the clauses read there are in chapters 13, 14,
//! 22.5, 22.6, 22.8 and 21.2. A coefficient that was not read anywhere says "from memory" where it stands. Normal-weight
//! concrete throughout (lambda = 1), loads at strength level, lengths in inches and stresses in psi inside the formulas.

pub mod bars;
pub mod bearing;
pub mod critical_sections;
pub mod development;
pub mod flexure;
pub mod footing_bars;
pub mod footing_tables;
pub mod one_way_shear;
pub mod plain;
pub mod residential;
pub mod two_way_shear;

use crate::design::NotCovered;
use crate::units::{Area, Length, Stress};

/// An edition of ACI 318. An argument wherever the two differ.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ConcreteCode {
    /// ACI 318-14.
    Aci318_14,
    /// ACI 318-19.
    Aci318_19,
}

impl ConcreteCode {
    /// The edition of a year; `None` for a year whose edition is not here.
    pub const fn of_year(year: u32) -> Option<Self> {
        match year {
            2014 => Some(Self::Aci318_14),
            2019 => Some(Self::Aci318_19),
            _ => None,
        }
    }

    /// As a calculation sheet names it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Aci318_14 => "ACI 318-14",
            Self::Aci318_19 => "ACI 318-19",
        }
    }
}

/// A rectangular section with bars on its tension side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Section {
    /// Width of its compression side, b.
    pub width: Length,
    /// From the compression face to the middle of the bars, d.
    pub depth: Length,
    /// Area of all the bars, As.
    pub steel: Area,
    /// Concrete strength, f'c.
    pub concrete: Stress,
    /// Yield strength of the bars, fy.
    pub yield_strength: Stress,
}

impl Section {
    /// The steel ratio, As / bd.
    pub fn steel_ratio(&self) -> f64 {
        self.steel / (self.width * self.depth)
    }
}

/// The square root of the concrete strength, which the empirical strengths are multiples of.
///
/// Source: ACI 318 table 19.2.1.1 (2,500 psi at least) and §22.5.3.1 (the root at most 100 psi); both from memory.
/// Range:  2,500 psi ≤ f'c ≤ 10,000 psi.
/// Result: a stress; the root is taken of the number of psi.
pub fn root_of_strength(concrete: Stress) -> Result<Stress, NotCovered> {
    let strength =
        within("f'c in psi", concrete.to_psi(), [2_500.0, 10_000.0], "ACI 318 19.2.1.1, 22.5.3.1")?;
    Ok(Stress::psi(strength.sqrt()))
}

/// Refuses a value outside of `low..=high`, and what is no number.
pub(in crate::design) fn within(
    quantity: &'static str,
    value: f64,
    [low, high]: [f64; 2],
    clause: &'static str,
) -> Result<f64, NotCovered> {
    if low <= value && value <= high {
        return Ok(value);
    }
    let limit = if value < low { low } else { high };
    Err(NotCovered::OutOfRange { quantity, value, limit, clause })
}

/// Refuses a length of nothing or less.
pub(in crate::design) fn positive(
    quantity: &'static str,
    value: Length,
    clause: &'static str,
) -> Result<(), NotCovered> {
    if value.is_positive() {
        return Ok(());
    }
    Err(NotCovered::LengthOutOfRange { quantity, value, limit: Length::ZERO, clause })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: the root of 2,500 is 50, of 10,000 is 100.
    #[test]
    fn the_root_is_taken_of_psi() {
        assert!((root_of_strength(Stress::psi(2_500.0)).unwrap().to_psi() - 50.0).abs() < 1e-12);
        assert!((root_of_strength(Stress::ksi(10.0)).unwrap().to_psi() - 100.0).abs() < 1e-12);
    }

    #[test]
    fn weak_strong_and_impossible_concrete_is_not_covered() {
        for psi in [2_499.0, 10_001.0, -3_000.0, f64::NAN, f64::INFINITY] {
            assert!(root_of_strength(Stress::psi(psi)).is_err(), "{psi}");
        }
    }

    /// By hand: 1.24 in2 in 48 by 8 in. is 0.00323.
    #[test]
    fn the_steel_ratio_is_of_the_depth_to_the_bars() {
        let section = Section {
            width: Length::inches(48),
            depth: Length::inches(8),
            steel: Area::sq_in(1.24),
            concrete: Stress::psi(2_500.0),
            yield_strength: Stress::ksi(60.0),
        };
        assert!((section.steel_ratio() - 1.24 / 384.0).abs() < 1e-12);
    }
}

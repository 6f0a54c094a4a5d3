//! Pipes and round tubes in bending: AISC 360 F8.

use crate::design::NotCovered;
use crate::design::steel::flexure::Class;
use crate::design::steel::grades::ELASTIC_MODULUS;
use crate::design::steel::sections::Pipe;
use crate::design::steel::{Strength, inches, modulus_over_yield, up_to, usual};
use crate::units::{Moment, Stress};

/// A pipe in bending.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PipeBending {
    /// D / t.
    pub ratio: f64,
    /// λp, up to which the wall is compact.
    pub compact_limit: f64,
    /// Of the wall.
    pub wall: Class,
    /// Mp.
    pub plastic_moment: Moment,
    /// Mn.
    pub strength: Strength<Moment>,
}

/// A pipe or round tube in bending. It does not twist.
///
/// Source: AISC 360-16, -22 §F8, Eq. F8-1; Eq. F8-2 to F8-4 of a thinner wall and the limit 0.31 E/Fy from memory.
/// Range:  0 < D/t < 0.45 E/Fy.
/// Result: moment, never above Mp.
pub fn pipe(section: &Pipe, yield_strength: Stress) -> Result<PipeBending, NotCovered> {
    const CLAUSE: &str = "AISC 360 F8";
    let modulus_over_yield = modulus_over_yield(yield_strength, CLAUSE)?;
    let ratio = inches("D", section.outside, CLAUSE)? / inches("t", section.wall, CLAUSE)?;
    let ratio = up_to("D/t", ratio, 0.45 * modulus_over_yield, CLAUSE)?;
    let compact_limit = 0.07 * modulus_over_yield;
    let wall = Class::of(ratio, compact_limit, 0.31 * modulus_over_yield);
    let plastic_moment = yield_strength * section.axis.plastic_modulus;
    let buckled = match wall {
        Class::Compact => plastic_moment,
        Class::Noncompact => {
            (ELASTIC_MODULUS * (0.021 / ratio) + yield_strength) * section.axis.elastic_modulus
        }
        Class::Slender => ELASTIC_MODULUS * (0.33 / ratio) * section.axis.elastic_modulus,
    };
    let strength = usual(plastic_moment.min(buckled));
    Ok(PipeBending { ratio, compact_limit, wall, plastic_moment, strength })
}

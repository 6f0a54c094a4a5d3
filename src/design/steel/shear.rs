//! Shear: AISC 360 chapter G.

use crate::design::NotCovered;
use crate::design::steel::sections::{Pipe, Tube, WideFlange};
use crate::design::steel::{Strength, inches, modulus_over_yield, up_to, usual};
use crate::units::{Area, Force, Stress};

/// A section in shear.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shear {
    /// h / t of the web, D / t of a pipe.
    pub ratio: f64,
    /// Cv, what buckling leaves of the yield stress.
    pub coefficient: f64,
    /// Aw, the area that bears the shear; half the area of a pipe.
    pub area: Area,
    /// Vn.
    pub strength: Strength<Force>,
}

/// Shear along the web of a W shape.
///
/// Source: AISC 360-16, -22 §G2.1, Eq. G2-1 to G2-4, kv = 5.34 of a web without stiffeners; Cv1 below 1 from memory.
/// Range:  0 < tw, 0 < h. A web without stiffeners.
/// Result: force, with Ω 1.50 while h/tw <= 2.24 sqrt(E/Fy), Ω 1.67 beyond.
pub fn wide_flange(section: &WideFlange, yield_strength: Stress) -> Result<Shear, NotCovered> {
    const CLAUSE: &str = "AISC 360 G2.1";
    let modulus_over_yield = modulus_over_yield(yield_strength, CLAUSE)?;
    let ratio = inches("h", section.clear_web(), CLAUSE)? / inches("tw", section.web, CLAUSE)?;
    let full_up_to = 1.10 * (5.34 * modulus_over_yield).sqrt();
    let coefficient = if ratio <= full_up_to { 1.0 } else { full_up_to / ratio };
    let area = section.depth * section.web;
    let nominal = yield_strength * 0.6 * area * coefficient;
    let strength = if ratio <= 2.24 * modulus_over_yield.sqrt() {
        Strength { nominal, safety_factor: 1.50, resistance_factor: 1.00 }
    } else {
        usual(nominal)
    };
    Ok(Shear { ratio, coefficient, area, strength })
}

/// Shear along the longer sides of a tube.
///
/// Source: AISC 360-16, -22 §G4, Aw = 2ht, kv = 5; Cv2 of §G2.2 below 1 from memory.
/// Range:  0 < t, 0 < h.
/// Result: force.
pub fn tube(section: &Tube, yield_strength: Stress) -> Result<Shear, NotCovered> {
    const CLAUSE: &str = "AISC 360 G4";
    let modulus_over_yield = modulus_over_yield(yield_strength, CLAUSE)?;
    let ratio = inches("h", section.flat_depth(), CLAUSE)? / inches("t", section.wall, CLAUSE)?;
    let stiffness = 5.0 * modulus_over_yield;
    let coefficient = if ratio <= 1.10 * stiffness.sqrt() {
        1.0
    } else if ratio <= 1.37 * stiffness.sqrt() {
        1.10 * stiffness.sqrt() / ratio
    } else {
        1.51 * stiffness / ratio.powi(2)
    };
    let area = section.flat_depth() * section.wall * 2.0;
    let strength = usual(yield_strength * 0.6 * area * coefficient);
    Ok(Shear { ratio, coefficient, area, strength })
}

/// Shear across a pipe or round tube.
///
/// Source: AISC 360-16, -22 §G5, Eq. G5-1 and G5-2b. Eq. G5-2b (from memory) asks for no length; G5-2a may give more
/// for a thin wall over a short length and is left out, on the safe side.
/// Range:  0 < D/t < 0.45 E/Fy.
/// Result: force.
pub fn pipe(section: &Pipe, yield_strength: Stress) -> Result<Shear, NotCovered> {
    const CLAUSE: &str = "AISC 360 G5";
    let modulus_over_yield = modulus_over_yield(yield_strength, CLAUSE)?;
    let ratio = inches("D", section.outside, CLAUSE)? / inches("t", section.wall, CLAUSE)?;
    let ratio = up_to("D/t", ratio, 0.45 * modulus_over_yield, CLAUSE)?;
    let buckling_over_yield = 0.78 * modulus_over_yield / ratio.powf(1.5);
    let coefficient = (buckling_over_yield / 0.6).min(1.0);
    let area = section.area / 2.0;
    let strength = usual(yield_strength * 0.6 * area * coefficient);
    Ok(Shear { ratio, coefficient, area, strength })
}

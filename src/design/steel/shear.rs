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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::steel::sections::Axis;
    use crate::units::{Length, SecondMoment, SectionModulus};

    const FY: Stress = Stress::ksi(50.0);
    const AXIS: Axis = Axis {
        second_moment: SecondMoment::in4(100.0),
        elastic_modulus: SectionModulus::in3(20.0),
        plastic_modulus: SectionModulus::in3(25.0),
        radius: Length::inches(4),
    };

    fn w_shape(ratio: f64) -> Shear {
        let section = WideFlange {
            area: Area::sq_in(10.0),
            depth: Length::inches(12),
            flange_width: Length::inches(6),
            flange: Length::sixteenths(0, 8),
            web: Length::decimal_inches(10.0 / ratio),
            fillet: Length::inches(1),
            effective_radius: Length::inches(2),
            flange_distance: Length::inches(11),
            torsion: SecondMoment::in4(1.0),
            major: AXIS,
            minor: AXIS,
        };
        wide_flange(&section, FY).unwrap()
    }

    /// By hand at 50 ksi: 0.6 x 50 x 12 x 0.2 = 72 kip at h/tw 50; Ω changes at 2.24 x 24.08 = 53.9; the stress begins to fall
    /// at 1.10 sqrt(5.34 x 580) = 61.2: at 100 to 0.612 (from memory).
    #[test]
    fn w_shapes_by_hand() {
        assert!((w_shape(50.0).strength.nominal.to_kip() - 72.0).abs() < 0.01);
        assert!((w_shape(53.9).strength.safety_factor - 1.50).abs() < 1e-9);
        assert!((w_shape(54.0).strength.safety_factor - 1.67).abs() < 1e-9);
        assert!((w_shape(61.2).coefficient - 1.0).abs() < 1e-9);
        assert!((w_shape(100.0).coefficient - 0.612).abs() < 5e-4);
    }

    /// By hand at 50 ksi, kv 5, from memory: the stress begins to fall at 59.2; at 70 to 0.846; beyond 73.8 with the square:
    /// at 100 to 1.51 x 2,900 / 10,000 = 0.438.
    #[test]
    fn from_memory_thin_tubes_by_hand() {
        let of = |ratio: f64| {
            let wall = Length::decimal_inches(10.0 / (ratio + 3.0));
            let (depth, width) = (Length::inches(10), Length::inches(6));
            let torsion = SecondMoment::in4(1.0);
            let section =
                Tube { area: Area::sq_in(5.0), depth, width, wall, torsion, major: AXIS, minor: AXIS };
            tube(&section, FY).unwrap().coefficient
        };
        assert!((of(59.0) - 1.0).abs() < 1e-9);
        assert!((of(70.0) - 0.846).abs() < 1e-3);
        assert!((of(100.0) - 0.438).abs() < 1e-3);
        assert!((of(73.7) / of(73.8) - 1.0).abs() < 5e-3);
    }

    /// By hand: half of 4 sq in. at 0.6 x 35 is 42 kip while the wall is thick; 0.78 x 29,000 / 35 / D/t^1.5 = 0.6 at D/t 105
    /// (from memory).
    #[test]
    fn pipes_by_hand() {
        let of = |ratio: f64| {
            let (outside, wall) = (Length::inches(50), Length::decimal_inches(50.0 / ratio));
            pipe(&Pipe { area: Area::sq_in(4.0), outside, wall, axis: AXIS }, Stress::ksi(35.0))
        };
        assert!((of(20.0).unwrap().strength.nominal.to_kip() - 42.0).abs() < 1e-9);
        assert!((of(104.0).unwrap().coefficient - 1.0).abs() < 1e-9);
        assert!(of(106.0).unwrap().coefficient < 1.0);
        // 0.45 x 29,000 / 35 = 372.9.
        assert!(of(372.0).is_ok());
        assert!(of(373.0).is_err());
        assert!(of(f64::INFINITY).is_err());
    }
}

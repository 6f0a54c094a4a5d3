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
/// Source: AISC 360-16, -22 §F8, Eq. F8-1; Eq. F8-2 to F8-4 of a thinner wall as in the handbook, p. 5.22; the
/// limit 0.31 E/Fy from memory.
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::steel::sections::Axis;
    use crate::units::{Area, Length, SecondMoment, SectionModulus};

    /// A ring of 100 in. with S = 100 and Z = 127 in3; only its wall varies.
    fn with_ratio(ratio: f64) -> Result<PipeBending, NotCovered> {
        let axis = Axis {
            second_moment: SecondMoment::in4(5_000.0),
            elastic_modulus: SectionModulus::in3(100.0),
            plastic_modulus: SectionModulus::in3(127.0),
            radius: Length::inches(35),
        };
        let wall = Length::decimal_inches(100.0 / ratio);
        let section = Pipe { area: Area::sq_in(10.0), outside: Length::inches(100), wall, axis };
        pipe(&section, Stress::ksi(50.0))
    }

    /// By hand at 50 ksi: λp = 40.6, λr = 179.8, the end at 261. At D/t 100: (0.021 x 290 + 50) x 100 = 5,609 kip-in; at 200:
    /// 0.33 x 145 x 100 = 4,785 kip-in.
    #[test]
    fn thin_walls_by_hand() {
        let of = |ratio| with_ratio(ratio).unwrap();
        assert_eq!(of(40.0).wall, Class::Compact);
        assert!((of(40.0).strength.nominal.to_kip_in() - 6_350.0).abs() < 1e-6);
        assert_eq!(of(100.0).wall, Class::Noncompact);
        assert!((of(100.0).strength.nominal.to_kip_in() - 5_609.0).abs() < 1.0);
        assert_eq!(of(200.0).wall, Class::Slender);
        assert!((of(200.0).strength.nominal.to_kip_in() - 4_785.0).abs() < 1.0);
    }

    #[test]
    fn no_value_outside_of_the_range() {
        assert!(with_ratio(260.9).is_ok());
        assert!(with_ratio(261.1).is_err());
        assert!(with_ratio(f64::INFINITY).is_err());
    }
}

//! Concrete without bars: pads, strips and walls, ACI 318 chapter 14.
//!
//! Source: chapter 14 of ACI 318-19, read in a secondary copy; the same numbers in 318-14 from memory. The chapter leaves
//! out columns, and footings in the higher seismic categories with exceptions for detached houses of one and two families
//! up to three storeys (§14.1.4): whether it may be used at all is for the local code.

use crate::design::NotCovered;
use crate::design::concrete::{positive, root_of_strength};
use crate::units::{Force, Length, Moment, SectionModulus, Stress};

/// Strength reduction of plain concrete, whatever acts: ACI 318 table 21.2.1.
pub const PHI: f64 = 0.60;

/// What the underside of plain concrete was poured on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CastOn {
    /// Soil, uneven and loose at the face.
    Soil,
    /// Forms.
    Forms,
}

/// The strength of a plain section, and what it comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlainFlexure {
    /// Sm.
    pub section_modulus: SectionModulus,
    /// Mn.
    pub nominal: Moment,
    /// Phi Mn.
    pub design: Moment,
}

/// The shear strength of a plain section, and what it comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlainShear {
    /// The strength over √f'c times the area.
    pub coefficient: f64,
    /// Vn.
    pub nominal: Force,
    /// Phi Vn.
    pub design: Force,
}

/// The thickness of a plain footing that counts for its strength.
///
/// Source: ACI 318 §14.5.1.7 (2 in. less when cast on soil) and §14.3.2.1 (8 in. at least), read in a secondary copy.
/// Range:  8 in. thick or more; a thinner footing stands by a prescriptive code or not at all.
/// Result: h.
pub fn footing_thickness(thickness: Length, cast_on: CastOn) -> Result<Length, NotCovered> {
    const LEAST: Length = Length::inches(8);
    if thickness < LEAST {
        return Err(NotCovered::LengthOutOfRange {
            quantity: "thickness of a plain footing",
            value: thickness,
            limit: LEAST,
            clause: "ACI 318 14.3.2.1",
        });
    }
    Ok(match cast_on {
        CastOn::Soil => thickness - Length::inches(2),
        CastOn::Forms => thickness,
    })
}

/// The moment that a plain rectangular section bears.
///
/// Source: ACI 318 §14.5.2.1: the less of 5√f'c Sm and 0.85 f'c Sm.
/// Range:  2,500 psi ≤ f'c ≤ 10,000 psi.
/// Result: of the whole width, for a section `thickness` deep.
pub fn flexure(width: Length, thickness: Length, concrete: Stress) -> Result<PlainFlexure, NotCovered> {
    let root = root_of_strength(concrete)?;
    positive("b", width, "ACI 318 14.5.2")?;
    positive("h", thickness, "ACI 318 14.5.2")?;
    let section_modulus = SectionModulus::in3(width.to_inches() * thickness.to_inches().powi(2) / 6.0);
    let nominal = (root * 5.0).min(concrete * 0.85) * section_modulus;
    Ok(PlainFlexure { section_modulus, nominal, design: nominal * PHI })
}

/// The shear that a plain section bears across its whole width.
///
/// Source: ACI 318 table 14.5.5.1(a): 4/3 √f'c b h, at `h` from the cut.
/// Range:  2,500 psi ≤ f'c ≤ 10,000 psi.
/// Result: of the whole width.
pub fn one_way_shear(width: Length, thickness: Length, concrete: Stress) -> Result<PlainShear, NotCovered> {
    let root = root_of_strength(concrete)?;
    positive("b", width, "ACI 318 14.5.5")?;
    positive("h", thickness, "ACI 318 14.5.5")?;
    Ok(shear(4.0 / 3.0, root, width, thickness))
}

/// The load that a column can press through a plain footing.
///
/// Source: ACI 318 table 14.5.5.1(b, c): 4/3 (1 + 2/β) √f'c, at most 2.66 √f'c, on a perimeter at `h/2` from the cut.
/// Range:  2,500 psi ≤ f'c ≤ 10,000 psi; concrete on all four sides.
/// Result: of the whole perimeter. `sides` are those of what punches, at the cut.
pub fn two_way_shear(
    sides: [Length; 2],
    perimeter: Length,
    thickness: Length,
    concrete: Stress,
) -> Result<PlainShear, NotCovered> {
    let root = root_of_strength(concrete)?;
    let [one, other] = sides;
    for (quantity, value) in [("c1", one), ("c2", other), ("bo", perimeter), ("h", thickness)] {
        positive(quantity, value, "ACI 318 14.5.5")?;
    }
    let aspect = one.max(other) / one.min(other);
    let coefficient = (4.0 / 3.0 * (1.0 + 2.0 / aspect)).min(2.66);
    Ok(shear(coefficient, root, perimeter, thickness))
}

fn shear(coefficient: f64, root: Stress, length: Length, thickness: Length) -> PlainShear {
    let nominal = root * (length * thickness) * coefficient;
    PlainShear { coefficient, nominal, design: nominal * PHI }
}

#[cfg(test)]
mod tests {
    use super::*;

    const WEAK: Stress = Stress::psi(2_500.0);

    #[test]
    fn soil_takes_two_inches_and_eight_is_the_least() {
        let inches = Length::inches;
        assert_eq!(footing_thickness(inches(8), CastOn::Soil), Ok(inches(6)));
        assert_eq!(footing_thickness(inches(8), CastOn::Forms), Ok(inches(8)));
        assert!(footing_thickness(Length::decimal_inches(7.99), CastOn::Forms).is_err());
    }

    /// By hand: 12 by 10 in., 2,500 psi: Sm = 12 x 100/6 = 200 in3; 5 x 50 x 200 = 50,000 lb-in, phi 30,000; shear 4/3 x 50 x 120
    /// = 8,000 lb, phi 4,800.
    #[test]
    fn a_foot_of_ten_inches() {
        let (width, thickness) = (Length::inches(12), Length::inches(10));
        let bending = flexure(width, thickness, WEAK).unwrap();
        assert!((bending.section_modulus.to_in3() - 200.0).abs() < 1e-9);
        assert!((bending.design.to_lb_in() - 30_000.0).abs() < 1e-6);
        let shear = one_way_shear(width, thickness, WEAK).unwrap();
        assert!((shear.nominal.to_lb() - 8_000.0).abs() < 1e-6);
        assert!((shear.design.to_lb() - 4_800.0).abs() < 1e-6);
    }

    /// By hand: a square gives 4/3 x 3 = 4, cut to 2.66; β = 4 gives 4/3 x 1.5 = 2.
    #[test]
    fn punching_falls_with_the_aspect() {
        let coefficient = |one, other| {
            let sides = [Length::inches(one), Length::inches(other)];
            two_way_shear(sides, Length::inches(64), Length::inches(10), WEAK).unwrap().coefficient
        };
        assert!((coefficient(6, 6) - 2.66).abs() < 1e-12);
        assert!((coefficient(16, 4) - 2.0).abs() < 1e-12);
        assert!((coefficient(4, 16) - 2.0).abs() < 1e-12);
    }

    #[test]
    fn nothing_and_weak_concrete_have_no_strength() {
        let (foot, nothing) = (Length::inches(12), Length::ZERO);
        for concrete in [Stress::psi(2_000.0), Stress::psi(f64::NAN)] {
            assert!(flexure(foot, foot, concrete).is_err());
            assert!(one_way_shear(foot, foot, concrete).is_err());
            assert!(two_way_shear([foot; 2], foot, foot, concrete).is_err());
        }
        assert!(flexure(nothing, foot, WEAK).is_err());
        assert!(one_way_shear(foot, nothing, WEAK).is_err());
        assert!(two_way_shear([nothing; 2], foot, foot, WEAK).is_err());
    }
}

//! Punching: shear on the four sides of a block of concrete round a column.

use crate::design::NotCovered;
use crate::design::concrete::one_way_shear::{SizeEffect, size_factor};
use crate::design::concrete::{ConcreteCode, positive, root_of_strength};
use crate::units::{Force, Length, Stress};

/// Strength reduction of shear: ACI 318 table 21.2.1.
const PHI: f64 = 0.75;

/// Where a column stands on its slab or footing, for the length of the punched perimeter.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ColumnPlace {
    /// Concrete on all four sides.
    Interior,
    /// Concrete on three sides.
    Edge,
    /// Concrete on two sides.
    Corner,
}

impl ColumnPlace {
    /// The number of sides times ten, αs: ACI 318 §22.6.5.3.
    const fn sides_factor(self) -> f64 {
        match self {
            Self::Interior => 40.0,
            Self::Edge => 30.0,
            Self::Corner => 20.0,
        }
    }
}

/// What is punched through what.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Punching {
    /// The two sides in plan of what punches: the width that the critical section starts from, each way.
    pub sides: [Length; 2],
    /// Where it stands.
    pub place: ColumnPlace,
    /// The perimeter, bo.
    pub perimeter: Length,
    /// From the compression face to the middle of the bars, d: the mean of the two ways.
    pub depth: Length,
    /// Concrete strength, f'c.
    pub concrete: Stress,
}

/// The punching strength, and what it comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TwoWayShear {
    /// Long over short side of what punches, β.
    pub aspect: f64,
    /// The size factor, 1 where it is waived or the edition has none.
    pub size_factor: f64,
    /// 4, 2 + 4/β and 2 + αs d/bo.
    pub coefficients: [f64; 3],
    /// The least of them.
    pub coefficient: f64,
    /// The stress vc.
    pub stress: Stress,
    /// Vc.
    pub nominal: Force,
    /// Phi Vc.
    pub design: Force,
}

/// The length of the perimeter at half the depth all round a rectangle.
///
/// Source: ACI 318 §22.6.4.1, read in a secondary copy: at d/2 from the sides, corners square.
/// Range:  positive sides and depth; concrete on all four sides.
/// Result: bo.
pub fn interior_perimeter(sides: [Length; 2], depth: Length) -> Result<Length, NotCovered> {
    let [long, short] = sides;
    for (quantity, value) in [("c1", long), ("c2", short), ("d", depth)] {
        positive(quantity, value, "ACI 318 22.6.4.1")?;
    }
    Ok((long + short + depth * 2) * 2)
}

/// The load that a column can press through a slab or footing without stirrups.
///
/// Source: ACI 318 table 22.6.5.2 (the least of three), read in a secondary copy; the size factor in 318-19 only, waived for
///         footings by §13.2.6.2.
/// Range:  2,500 psi ≤ f'c ≤ 10,000 psi; no moment handed from column to footing, which §8.4.4.2 adds.
/// Result: of the whole perimeter.
pub fn strength(
    code: ConcreteCode,
    punching: &Punching,
    size_effect: SizeEffect,
) -> Result<TwoWayShear, NotCovered> {
    let root = root_of_strength(punching.concrete)?;
    let [one, other] = punching.sides;
    for (quantity, value) in [("c1", one), ("c2", other), ("bo", punching.perimeter), ("d", punching.depth)] {
        positive(quantity, value, "ACI 318 22.6.5")?;
    }

    let aspect = one.max(other) / one.min(other);
    let size_factor = size_factor(code, punching.depth, size_effect)?;
    let spread = punching.depth / punching.perimeter;
    let coefficients = [4.0, 2.0 + 4.0 / aspect, 2.0 + punching.place.sides_factor() * spread];
    let coefficient = coefficients.into_iter().fold(f64::INFINITY, f64::min);
    let stress = root * (coefficient * size_factor);
    let nominal = stress * (punching.perimeter * punching.depth);
    Ok(TwoWayShear { aspect, size_factor, coefficients, coefficient, stress, nominal, design: nominal * PHI })
}

#[cfg(test)]
mod tests {
    use super::ConcreteCode::{Aci318_14, Aci318_19};
    use super::SizeEffect::{Counted, Waived};
    use super::*;

    fn square(side: i64, depth: i64) -> Punching {
        let (sides, depth) = ([Length::inches(side); 2], Length::inches(depth));
        Punching {
            sides,
            place: ColumnPlace::Interior,
            perimeter: interior_perimeter(sides, depth).unwrap(),
            depth,
            concrete: Stress::psi(2_500.0),
        }
    }

    /// By hand: 6 in. square, d 8: bo = 4 x 14 = 56 in.; 4 x 50 x 56 x 8 = 89,600 lb, phi 67,200 lb.
    #[test]
    fn a_small_square_is_governed_by_four() {
        for code in [Aci318_14, Aci318_19] {
            let found = strength(code, &square(6, 8), Waived).unwrap();
            assert!((found.nominal.to_lb() - 89_600.0).abs() < 0.01);
            assert!((found.design.to_lb() - 67_200.0).abs() < 0.01);
        }
    }

    /// By hand: 4 by 16 in.: β 4, 2 + 4/4 = 3.
    #[test]
    fn a_long_column_is_governed_by_its_aspect() {
        let sides = [Length::inches(4), Length::inches(16)];
        let depth = Length::inches(8);
        let perimeter = interior_perimeter(sides, depth).unwrap();
        assert_eq!(perimeter, Length::inches(72));
        for sides in [sides, [sides[1], sides[0]]] {
            let found = strength(Aci318_14, &Punching { sides, perimeter, ..square(6, 8) }, Waived).unwrap();
            assert!((found.coefficient - 3.0).abs() < 1e-12);
        }
    }

    /// By hand: 76 in. square, d 4: bo 320 in.; 2 + 40 x 4/320 = 2.5; at an edge 2 + 30/80 = 2.375, a corner 2.25.
    #[test]
    fn a_wide_column_is_governed_by_its_perimeter() {
        for (place, coefficient) in
            [(ColumnPlace::Interior, 2.5), (ColumnPlace::Edge, 2.375), (ColumnPlace::Corner, 2.25)]
        {
            let found = strength(Aci318_14, &Punching { place, ..square(76, 4) }, Waived).unwrap();
            assert!((found.coefficient - coefficient).abs() < 1e-12);
        }
    }

    /// By hand: at d = 30 in. the size factor is √(2/4); only 318-19 has it, and footings are let off.
    #[test]
    fn footings_are_let_off_the_size_factor() {
        let factor = |code, effect| strength(code, &square(12, 30), effect).unwrap().size_factor;
        assert!((factor(Aci318_19, Counted) - 0.5_f64.sqrt()).abs() < 1e-12);
        assert!((factor(Aci318_19, Waived) - 1.0).abs() < 1e-12);
        assert!((factor(Aci318_14, Counted) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn nothing_has_no_strength() {
        let nothing = Length::ZERO;
        for broken in [
            Punching { depth: nothing, ..square(6, 8) },
            Punching { perimeter: nothing, ..square(6, 8) },
            Punching { sides: [nothing; 2], ..square(6, 8) },
            Punching { concrete: Stress::psi(f64::NAN), ..square(6, 8) },
        ] {
            assert!(strength(Aci318_14, &broken, Waived).is_err());
        }
        assert!(interior_perimeter([nothing; 2], Length::inches(8)).is_err());
    }
}

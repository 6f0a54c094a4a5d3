//! Compression together with bending, also of a load that stands off the column's centre.

use crate::design::NotCovered;
use crate::units::{Length, Stress};

/// One of the two directions of bending of a column.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Direction {
    /// fb from loads across the column; zero where there are none.
    pub bending: Stress,
    /// How far the axial load stands off the centre in this direction.
    pub eccentricity: Length,
    /// The side of the section in this direction.
    pub depth: Length,
    /// Fb' of bending in this direction, C_L counted.
    pub allowable_bending: Stress,
    /// FcE of buckling in this direction.
    pub critical_buckling: Stress,
}

/// Axial load with bending about both axes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Combined {
    /// fc.
    pub compression: Stress,
    /// Fc', C_P of both directions counted.
    pub allowable_compression: Stress,
    /// Bending that the strong axis bears: across the narrow face.
    pub strong: Direction,
    /// Bending that the weak axis bears.
    pub weak: Direction,
    /// FbE of lateral buckling under `strong`; `None` where it can't buckle so (C_L = 1 by rule).
    pub lateral_buckling: Option<Stress>,
}

/// The interaction of compression and bending, term by term.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Interaction {
    /// (fc / Fc')².
    pub compression: f64,
    /// The term of the strong axis; `None` where buckling leaves it nothing to bend with.
    pub strong: Option<f64>,
    /// The term of the weak axis; `None` as above.
    pub weak: Option<f64>,
    /// The larger of fc / FcE1 and fc / FcE2 + (fb1 / FbE)²: stability, also no more than 1.
    pub stability: f64,
    /// The larger of the sum of the terms and the stability: 1 is full.
    pub ratio: f64,
}

/// How full a column is under axial load with bending.
///
/// Source: NDS 2018 §15.4.1, Eqs. 15.4-1 and 15.4-2, from memory; without eccentricity it is §3.9.2, Eqs. 3.9-3 and 3.9-4.
/// Range:  compression, bending stresses at least 0; allowable and critical stresses above 0. A column loaded up to FcE or
///         FbE is more than full: its ratio is that of its stability, at least 1.
/// Result: the terms and their sum.
pub fn interaction(combined: &Combined) -> Result<Interaction, NotCovered> {
    let Combined { compression, allowable_compression, strong, weak, lateral_buckling } = combined;
    let toward_strong = share("fc / FcE1", *compression, strong.critical_buckling)?;
    let toward_weak = share("fc / FcE2", *compression, weak.critical_buckling)?;
    let compression_term = share("fc / Fc'", *compression, *allowable_compression)?.powi(2);
    let strong_off_centre = off_centre(*compression, strong);
    let lateral = match lateral_buckling {
        Some(critical) => share("fb1 / FbE", strong.bending + strong_off_centre, *critical)?,
        None => 0.0,
    };
    let toward_both = toward_weak + lateral.powi(2);

    // 0.234: a load off the centre bends a column more in its middle as the column bows (§15.4).
    let strong_stress = strong.bending + strong_off_centre * (1.0 + 0.234 * toward_strong);
    let weak_gain = 1.0 + 0.234 * toward_weak + 0.234 * lateral.powi(2);
    let weak_stress = weak.bending + off_centre(*compression, weak) * weak_gain;
    let bent_strong = share("fb1 / Fb1'", strong_stress, strong.allowable_bending)?;
    let bent_weak = share("fb2 / Fb2'", weak_stress, weak.allowable_bending)?;

    let amplified = |bent: f64, used: f64| (used < 1.0).then(|| bent / (1.0 - used));
    let strong_term = amplified(bent_strong, toward_strong);
    let weak_term = amplified(bent_weak, toward_both);
    let stability = toward_strong.max(toward_both);
    let sum = strong_term.zip(weak_term).map(|(strong, weak)| compression_term + strong + weak);
    Ok(Interaction {
        compression: compression_term,
        strong: strong_term,
        weak: weak_term,
        stability,
        ratio: sum.unwrap_or(compression_term).max(stability),
    })
}

/// fc (6 e / d): the bending stress of a load off the centre, before the column bows.
fn off_centre(compression: Stress, direction: &Direction) -> Stress {
    compression * (6.0 * (direction.eccentricity.abs() / direction.depth))
}

/// How much of a stress is used, where both are what they must be.
fn share(quantity: &'static str, stress: Stress, of: Stress) -> Result<f64, NotCovered> {
    let ratio = stress / of;
    if !(0.0 <= ratio && ratio.is_finite()) {
        return Err(NotCovered::OutOfRange { quantity, value: ratio, limit: 0.0, clause: "NDS 2018 3.9.2" });
    }
    Ok(ratio)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A column with round numbers: fc 400 of Fc' 800, FcE 1000 strong and 800 weak, Fb' 1000, nothing else.
    fn column() -> Combined {
        let direction = |critical: f64| Direction {
            bending: Stress::ZERO,
            eccentricity: Length::ZERO,
            depth: Length::inches(6),
            allowable_bending: Stress::psi(1_000.0),
            critical_buckling: Stress::psi(critical),
        };
        Combined {
            compression: Stress::psi(400.0),
            allowable_compression: Stress::psi(800.0),
            strong: direction(1_000.0),
            weak: direction(800.0),
            lateral_buckling: None,
        }
    }

    /// By hand, NDS Eq. 3.9-3: (400 / 800)² = 0.25, and 300 / (1000 x (1 - 0.4)) = 0.5: 0.75.
    #[test]
    fn bending_about_one_axis_by_hand() {
        let mut combined = column();
        combined.strong.bending = Stress::psi(300.0);
        let interaction = interaction(&combined).unwrap();
        assert!((interaction.compression - 0.25).abs() < 1e-9);
        assert!((interaction.strong.unwrap() - 0.5).abs() < 1e-9);
        assert!((interaction.ratio - 0.75).abs() < 1e-9);
    }

    /// By hand, NDS Eq. 15.4-1: e = 1 in. on 6 in. is 400 psi, grown by 1 + 0.234 x 0.4 to 437.44; / (1000 x 0.6) = 0.72907.
    #[test]
    fn a_load_off_the_centre_by_hand() {
        let mut combined = column();
        combined.strong.eccentricity = Length::inches(1);
        let interaction = interaction(&combined).unwrap();
        assert!((interaction.strong.unwrap() - 0.729_066_667).abs() < 1e-6);
        // The other way from the centre it is the same.
        combined.strong.eccentricity = -Length::inches(1);
        assert_eq!(super::interaction(&combined).unwrap(), interaction);
    }

    /// By hand, NDS Eq. 3.9-3 with both axes: fb1 300, FbE 3000, fb2 100: weak 100 / (1000 x (1 - 0.5 - 0.01)) = 0.20408.
    #[test]
    fn bending_about_both_axes_by_hand() {
        let mut combined = column();
        combined.strong.bending = Stress::psi(300.0);
        combined.weak.bending = Stress::psi(100.0);
        combined.lateral_buckling = Some(Stress::psi(3_000.0));
        let interaction = interaction(&combined).unwrap();
        assert!((interaction.weak.unwrap() - 0.204_082).abs() < 1e-6);
        assert!((interaction.stability - 0.51).abs() < 1e-9);
    }

    /// At FcE of the weak axis, and past FbE, nothing is left to bend with: the column is full or more.
    #[test]
    fn a_buckled_column_is_more_than_full() {
        let combined = Combined { compression: Stress::psi(800.0), ..column() };
        let buckled = interaction(&combined).unwrap();
        assert_eq!(buckled.weak, None);
        assert!((buckled.ratio - 1.0).abs() < 1e-9);

        let combined = Combined { compression: Stress::psi(2_000.0), ..column() };
        let buckled = interaction(&combined).unwrap();
        assert_eq!((buckled.strong, buckled.weak), (None, None));
        assert!((buckled.stability - 2.5).abs() < 1e-9);
        assert!((buckled.ratio - 6.25).abs() < 1e-9, "(2000 / 800)²");

        let mut combined = column();
        combined.strong.bending = Stress::psi(300.0);
        combined.lateral_buckling = Some(Stress::psi(300.0));
        assert!((interaction(&combined).unwrap().ratio - 1.5).abs() < 1e-9);
    }

    #[test]
    fn what_is_no_stress_is_not_covered() {
        for compression in [f64::NAN, -1.0] {
            let combined = Combined { compression: Stress::psi(compression), ..column() };
            assert!(interaction(&combined).is_err(), "{compression}");
        }
        assert!(interaction(&Combined { allowable_compression: Stress::ZERO, ..column() }).is_err());
        let mut combined = column();
        combined.weak.critical_buckling = Stress::ZERO;
        assert!(interaction(&combined).is_err());
        combined = column();
        combined.strong.depth = Length::ZERO;
        assert!(interaction(&combined).is_err());
    }

    #[test]
    fn more_load_is_never_better() {
        let ratio = |compression: f64, eccentricity: i64| {
            let mut combined = Combined { compression: Stress::psi(compression), ..column() };
            combined.weak.eccentricity = Length::sixteenths(0, eccentricity);
            interaction(&combined).unwrap().ratio
        };
        for step in 1..10 {
            assert!(ratio(60.0 * f64::from(step), 4) > ratio(60.0 * f64::from(step - 1), 4));
            assert!(ratio(400.0, i64::from(step)) >= ratio(400.0, i64::from(step - 1)));
        }
    }
}

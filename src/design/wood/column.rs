//! Columns: how much of the crushing strength buckling leaves.

use crate::design::NotCovered;
use crate::units::{Length, Stress};

/// What a column is made of: how straight it can be counted on to be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Straightness {
    /// Sawn lumber and timbers.
    Sawn,
    /// Round poles and piles.
    Round,
    /// Glulam and composite lumber.
    Glued,
}

impl Straightness {
    /// c of NDS 2018 §3.7.1.5.
    const fn c(self) -> f64 {
        match self {
            Self::Sawn => 0.8,
            Self::Round => 0.85,
            Self::Glued => 0.9,
        }
    }
}

/// How the two ends of a column are held.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ends {
    /// Both against turning and sway.
    FixedFixed,
    /// One against turning, both against sway.
    FixedPinned,
    /// Both against sway only: the usual case.
    PinnedPinned,
    /// One held fully, the other free.
    FixedFree,
}

/// The length that a column buckles over.
///
/// Source: NDS 2018 §3.7.1.2 and appendix G, recommended design values, from memory: 0.65, 0.8, 1.0 and 2.1.
/// Range:  any length between points held sideways.
/// Result: le.
pub fn effective_length(ends: Ends, length: Length) -> Length {
    length.scaled(match ends {
        Ends::FixedFixed => 0.65,
        Ends::FixedPinned => 0.8,
        Ends::PinnedPinned => 1.0,
        Ends::FixedFree => 2.1,
    })
}

/// One of the two directions that a column can buckle in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Axis {
    /// le.
    pub effective_length: Length,
    /// The side of the section in the direction it buckles in.
    pub depth: Length,
}

/// Stability in one direction, with the values on the way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ColumnStability {
    /// le/d.
    pub slenderness: f64,
    /// FcE: the stress at which it buckles.
    pub critical_buckling: Stress,
    /// C_P.
    pub factor: f64,
}

/// The share of the crushing strength that a column keeps once buckling in one direction is counted.
///
/// Source: NDS 2018 §3.7.1.5, Eq. 3.7-1; an older form with K E in place of 0.822 Emin' read in a copy of low grade.
/// Range:  0 < le/d ≤ 50 (§3.7.1.4); Fc* and Emin' above 0. Fc* has every factor but C_P.
/// Result: le/d, FcE, and 0 < C_P < 1.
pub fn column_stability(
    crushing: Stress,
    modulus_for_stability: Stress,
    axis: Axis,
    straightness: Straightness,
) -> Result<ColumnStability, NotCovered> {
    let slenderness = axis.effective_length / axis.depth;
    if !(0.0 < slenderness && slenderness <= MAX_SLENDERNESS) {
        return Err(NotCovered::OutOfRange {
            quantity: "le/d",
            value: slenderness,
            limit: MAX_SLENDERNESS,
            clause: "NDS 2018 3.7.1.4",
        });
    }
    let critical_buckling = modulus_for_stability * (0.822 / slenderness.powi(2));
    let ratio = critical_buckling / crushing;
    if !(0.0 < ratio && ratio.is_finite()) {
        return Err(NotCovered::OutOfRange {
            quantity: "FcE / Fc*",
            value: ratio,
            limit: 0.0,
            clause: "NDS 2018 3.7.1.5",
        });
    }
    let c = straightness.c();
    let mean = (1.0 + ratio) / (2.0 * c);
    let factor = mean - (mean.powi(2) - ratio / c).sqrt();
    Ok(ColumnStability { slenderness, critical_buckling, factor })
}

/// NDS 2018 §3.7.1.4. The 75 that it allows while a house is being built is not used.
const MAX_SLENDERNESS: f64 = 50.0;

/// Stability in both directions.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BothAxes {
    /// Across the larger side, or in the plane of the laminations of a built-up column.
    pub strong: ColumnStability,
    /// Across the smaller side, or across the laminations, with their fastening counted.
    pub weak: ColumnStability,
    /// C_P: the smaller of the two.
    pub factor: f64,
}

/// The share of the crushing strength that a solid column keeps, the worse of both directions.
///
/// Source: NDS 2018 §3.7.1.3.
/// Range:  each direction as [`column_stability`].
/// Result: both directions and the smaller C_P.
pub fn solid_column(
    crushing: Stress,
    modulus_for_stability: Stress,
    strong: Axis,
    weak: Axis,
    straightness: Straightness,
) -> Result<BothAxes, NotCovered> {
    let strong = column_stability(crushing, modulus_for_stability, strong, straightness)?;
    let weak = column_stability(crushing, modulus_for_stability, weak, straightness)?;
    Ok(BothAxes { strong, weak, factor: strong.factor.min(weak.factor) })
}

/// What joins the laminations of a built-up column, by the rules for it (NDS 2018 §15.3.3 and 15.3.4).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fastening {
    /// Nails.
    Nailed,
    /// Bolts.
    Bolted,
}

/// The laminations of a built-up column.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Laminations {
    /// How many.
    pub count: u32,
    /// The true thickness of one.
    pub thickness: Length,
    /// What joins them.
    pub fastening: Fastening,
}

/// The share of the crushing strength that a mechanically built-up column keeps, the worse of both directions.
///
/// Source: NDS 2018 §15.3.1 and 15.3.2, from memory: K_f 1 in the plane of the laminations, across them 0.6 nailed and
/// 0.75 bolted.
/// Range:  2 to 5 laminations of the same depth and at least 1-1/2 in., fastened by §15.3.3 or 15.3.4; each direction as
///         [`column_stability`]. `strong` is in the plane of the laminations, `weak` across them.
/// Result: both directions, K_f counted in the weak one, and the smaller C_P.
pub fn built_up_column(
    crushing: Stress,
    modulus_for_stability: Stress,
    strong: Axis,
    weak: Axis,
    laminations: Laminations,
) -> Result<BothAxes, NotCovered> {
    let Laminations { count, thickness, fastening } = laminations;
    if !(2..=5).contains(&count) {
        return Err(NotCovered::OutOfRange {
            quantity: "laminations",
            value: f64::from(count),
            limit: if count < 2 { 2.0 } else { 5.0 },
            clause: "NDS 2018 15.3.1",
        });
    }
    if thickness < THINNEST_LAMINATION {
        return Err(NotCovered::LengthOutOfRange {
            quantity: "thickness of a lamination",
            value: thickness,
            limit: THINNEST_LAMINATION,
            clause: "NDS 2018 15.3.1",
        });
    }
    let slip = match fastening {
        Fastening::Nailed => 0.6,
        Fastening::Bolted => 0.75,
    };
    let solid = solid_column(crushing, modulus_for_stability, strong, weak, Straightness::Sawn)?;
    let weak = ColumnStability { factor: solid.weak.factor * slip, ..solid.weak };
    Ok(BothAxes { weak, factor: solid.strong.factor.min(weak.factor), ..solid })
}

/// NDS 2018 §15.3.1, from memory.
const THINNEST_LAMINATION: Length = Length::sixteenths(1, 8);

#[cfg(test)]
mod tests {
    use super::*;

    fn axis(effective_length: i64, depth: Length) -> Axis {
        Axis { effective_length: Length::inches(effective_length), depth }
    }

    /// A textbook on the mechanics of materials, problem 11.9-31, read in a copy of low grade: 3.5 x 7.25 in., Fc 1000 psi,
    /// E 1.3e6 with K 0.3, c 0.8: at 96 in. le/d 27.43 and C_P 0.4464. K E is 0.822 Emin'.
    #[test]
    fn a_textbook_column_from_a_copy_of_low_grade() {
        let modulus = Stress::psi(0.3 * 1.3e6 / 0.822);
        let column = column_stability(
            Stress::psi(1_000.0),
            modulus,
            axis(96, Length::sixteenths(3, 8)),
            Straightness::Sawn,
        )
        .unwrap();
        assert!((column.slenderness - 27.43).abs() < 0.005);
        assert!((column.critical_buckling.to_psi() - 518.4).abs() < 0.05);
        assert!((column.factor - 0.446_4).abs() < 0.000_1);
    }

    /// By hand, FcE = Fc* and c = 0.8: mean = 2 / 1.6 = 1.25; 1.25 - sqrt(1.5625 - 1.25) = 0.6910. With c = 0.9:
    /// 1.1111 - sqrt(1.2346 - 1.1111) = 0.7597.
    #[test]
    fn a_column_by_hand() {
        // le/d = 10: FcE = 0.822 x 1e6 / 100 = 8220.
        let factor = |straightness| {
            let depth = Length::inches(10);
            column_stability(Stress::psi(8_220.0), Stress::psi(1e6), axis(100, depth), straightness)
                .unwrap()
                .factor
        };
        assert!((factor(Straightness::Sawn) - 0.691_0).abs() < 5e-5);
        assert!((factor(Straightness::Glued) - 0.759_7).abs() < 5e-5);
        assert!(factor(Straightness::Round) > factor(Straightness::Sawn));
    }

    #[test]
    fn the_ends_of_the_range() {
        let at = |inches| {
            let one = Length::inches(1);
            column_stability(Stress::psi(1e3), Stress::psi(5e5), axis(inches, one), Straightness::Sawn)
        };
        assert!(at(50).is_ok());
        assert!(matches!(at(51), Err(NotCovered::OutOfRange { quantity: "le/d", .. })));
        assert!(at(0).is_err());
        let six = Length::inches(6);
        for (crushing, modulus) in [(0.0, 5e5), (f64::NAN, 5e5), (1e3, 0.0), (1e3, f64::NAN)] {
            let column = column_stability(
                Stress::psi(crushing),
                Stress::psi(modulus),
                axis(96, six),
                Straightness::Sawn,
            );
            assert!(column.is_err());
        }
    }

    #[test]
    fn strength_falls_with_length_and_never_exceeds_crushing() {
        let factors: Vec<f64> = (1..=15)
            .map(|feet| {
                let depth = Length::sixteenths(3, 8);
                let axis = axis(feet * 11, depth);
                column_stability(Stress::psi(1_350.0), Stress::psi(5.8e5), axis, Straightness::Sawn)
                    .unwrap()
                    .factor
            })
            .collect();
        assert!(factors.windows(2).all(|pair| pair[0] > pair[1]));
        assert!(factors.iter().all(|factor| 0.0 < *factor && *factor < 1.0));
    }

    /// By hand from the numbers above: a square of two laminations with FcE = Fc* keeps 0.6910 in their plane and
    /// 0.6 x 0.6910 = 0.4146 across them when nailed, 0.5182 when bolted.
    #[test]
    fn laminations_slip() {
        let ten = Length::inches(10);
        let built_up = |count, thickness, fastening| {
            let laminations = Laminations { count, thickness, fastening };
            built_up_column(
                Stress::psi(8_220.0),
                Stress::psi(1e6),
                axis(100, ten),
                axis(100, ten),
                laminations,
            )
        };
        let five = Length::inches(5);
        let nailed = built_up(2, five, Fastening::Nailed).unwrap();
        assert!((nailed.strong.factor - 0.691_0).abs() < 5e-5);
        assert!((nailed.factor - 0.414_6).abs() < 5e-5);
        assert!((built_up(2, five, Fastening::Bolted).unwrap().factor - 0.518_2).abs() < 1e-4);
        assert!(built_up(1, five, Fastening::Nailed).is_err());
        assert!(built_up(6, five, Fastening::Nailed).is_err());
        assert!(built_up(5, Length::inches(1), Fastening::Nailed).is_err());
    }

    /// NDS appendix G, recommended values, from memory.
    #[test]
    fn ends_shorten_or_lengthen_it() {
        let length = |ends| effective_length(ends, Length::inches(100)).to_inches();
        assert!((length(Ends::FixedFixed) - 65.0).abs() < 1e-6);
        assert!((length(Ends::FixedPinned) - 80.0).abs() < 1e-6);
        assert!((length(Ends::PinnedPinned) - 100.0).abs() < 1e-6);
        assert!((length(Ends::FixedFree) - 210.0).abs() < 1e-6);
    }
}

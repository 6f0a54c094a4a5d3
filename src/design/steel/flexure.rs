//! Beams: AISC 360 chapter F, with the width-to-thickness limits of table B4.1b.

mod pipes;
mod tubes;
mod wide_flanges;

use crate::design::NotCovered;
use crate::design::steel::up_to;
use crate::units::Moment;

pub use pipes::{PipeBending, pipe};
pub use tubes::{About, EffectiveFlange, TubeBending, TubeTwist, tube};
pub use wide_flanges::{MajorBending, MinorBending, wide_flange, wide_flange_about_minor};

/// How soon a part of a section buckles by itself (table B4.1b).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Class {
    /// Not before the whole section yields.
    Compact,
    /// After it begins to yield.
    Noncompact,
    /// Before it yields.
    Slender,
}

impl Class {
    /// By the ratio and the two limits λp and λr.
    fn of(ratio: f64, compact: f64, noncompact: f64) -> Self {
        if ratio <= compact {
            Self::Compact
        } else if ratio <= noncompact {
            Self::Noncompact
        } else {
            Self::Slender
        }
    }
}

/// How much a varying moment helps against lateral-torsional buckling, Cb, of a length between two braces.
///
/// Source: AISC 360-16, -22 §F1, Eq. F1-1. At the free end of a cantilever without brace Cb is 1.0 (F1).
/// Range:  a moment somewhere in that length, none greater than the largest.
/// Result: dimensionless, at least 1. The moments are those at the quarter points and the largest one; signs don't count.
pub fn moment_gradient(
    [quarter, middle, three_quarters]: [Moment; 3],
    largest: Moment,
) -> Result<f64, NotCovered> {
    const CLAUSE: &str = "AISC 360 F1";
    let of_largest = |moment: Moment| {
        let ratio = moment.abs() / largest.abs();
        // No moment at a quarter point is as good as any.
        if moment == Moment::ZERO && ratio.is_finite() {
            Ok(0.0)
        } else {
            up_to("M/Mmax", ratio, 1.0, CLAUSE)
        }
    };
    let (a, b, c) = (of_largest(quarter)?, of_largest(middle)?, of_largest(three_quarters)?);
    Ok(12.5 / (2.5 + 3.0 * a + 4.0 * b + 3.0 * c))
}

/// Cb itself, when it is one.
fn at_least_one(gradient: f64) -> Result<f64, NotCovered> {
    if !(1.0 <= gradient && gradient.is_finite()) {
        return Err(NotCovered::OutOfRange {
            quantity: "Cb",
            value: gradient,
            limit: 1.0,
            clause: "AISC 360 F1",
        });
    }
    Ok(gradient)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn gradient(moments: [f64; 3], largest: f64) -> f64 {
        moment_gradient(moments.map(Moment::kip_ft), Moment::kip_ft(largest)).unwrap()
    }

    /// The moment of a uniform load on a simple span of one, as a share of the largest.
    fn parabola(x: f64) -> f64 {
        4.0 * x * (1.0 - x)
    }

    fn segment(from: f64, to: f64, largest: f64) -> f64 {
        let at = |share: f64| parabola(from + share * (to - from));
        gradient([at(0.25), at(0.5), at(0.75)], largest)
    }

    /// AISC Manual table 3-1 and design examples v16.0 F.1, read in a secondary copy: uniform load without brace 1.14,
    /// braced at midspan 1.30, at third points 1.01 in the middle and 1.46 (1.45 in the table) at the ends.
    #[test]
    fn published_factors_of_a_uniform_load() {
        assert!((segment(0.0, 1.0, 1.0) - 1.14).abs() < 0.005);
        assert!((segment(0.0, 0.5, 1.0) - 1.30).abs() < 0.005);
        assert!((segment(1.0 / 3.0, 2.0 / 3.0, 1.0) - 1.01).abs() < 0.005);
        assert!((segment(0.0, 1.0 / 3.0, parabola(1.0 / 3.0)) - 1.46).abs() < 0.01);
    }

    #[test]
    fn an_even_moment_helps_nothing_and_signs_do_not_count() {
        assert!((gradient([5.0, 5.0, 5.0], 5.0) - 1.0).abs() < 1e-12);
        assert!((gradient([5.0, -5.0, 5.0], -5.0) - 1.0).abs() < 1e-12);
        assert!((gradient([0.0, 0.0, 0.0], 5.0) - 5.0).abs() < 1e-12);
    }

    #[test]
    fn no_value_without_a_moment_or_with_a_greater_one() {
        let none = moment_gradient([Moment::ZERO; 3], Moment::ZERO);
        assert!(none.is_err());
        assert!(moment_gradient([Moment::kip_ft(2.0); 3], Moment::kip_ft(1.0)).is_err());
        assert!(moment_gradient([Moment::kip_ft(f64::NAN); 3], Moment::kip_ft(1.0)).is_err());
    }
}

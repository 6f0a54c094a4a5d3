//! Larger pieces are weaker by the square inch: size, flat use, volume, depth.

use crate::design::NotCovered;
use crate::units::Length;

/// One row of the size factors.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SizeFactors {
    /// On Fb, bent on edge.
    pub bending: f64,
    /// On Ft.
    pub tension: f64,
    /// On Fc.
    pub compression: f64,
}

/// Which column of size factors a piece of dimension lumber takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Graded {
    /// Select structural, No.1 & better, No.1, No.2 and No.3.
    Visually,
    /// Stud. Wider than 6 in. nominal it takes the factors of No.3.
    Stud,
    /// Southern pine, whose values go by width.
    SouthernPine,
}

/// The size factors, C_F, of dimension lumber.
///
/// Source: NDS Supplement 2018, notes of table 4A, read in a secondary copy of a handbook; southern pine (1 up to 12 in.,
/// 0.9 beyond) and a Stud of 8 in. from memory of tables 4A and 4B. The factor of 1.1 on some 4 in. thick southern
/// pine is not taken, on the safe side.
/// Range:  true thickness above 0 and up to 4 in., true width above 0. A true width stands for the nominal one next above
///         it, so that a full-sawn piece has the factor of its name.
/// Result: three factors.
pub fn size_factors(graded: Graded, thickness: Length, width: Length) -> Result<SizeFactors, NotCovered> {
    if !(thickness.is_positive() && thickness <= Length::inches(4)) {
        return Err(NotCovered::LengthOutOfRange {
            quantity: "thickness",
            value: thickness,
            limit: Length::inches(4),
            clause: "NDS Supplement 2018 table 4A",
        });
    }
    if !width.is_positive() {
        return Err(no_width(width));
    }
    let is_four = thickness > Length::inches(3);
    let up_to = |inches| width <= Length::inches(inches);
    let factors = |bending, bending_of_four, tension, compression| SizeFactors {
        bending: if is_four { bending_of_four } else { bending },
        tension,
        compression,
    };
    Ok(match graded {
        Graded::SouthernPine if up_to(12) => factors(1.0, 1.0, 1.0, 1.0),
        Graded::SouthernPine => factors(0.9, 0.9, 0.9, 0.9),
        Graded::Stud if up_to(4) => factors(1.1, 1.1, 1.1, 1.05),
        Graded::Stud if up_to(6) => factors(1.0, 1.0, 1.0, 1.0),
        Graded::Stud | Graded::Visually => match () {
            () if up_to(4) => factors(1.5, 1.5, 1.5, 1.15),
            () if up_to(5) => factors(1.4, 1.4, 1.4, 1.1),
            () if up_to(6) => factors(1.3, 1.3, 1.3, 1.1),
            () if up_to(8) => factors(1.2, 1.3, 1.2, 1.05),
            () if up_to(10) => factors(1.1, 1.2, 1.1, 1.0),
            () if up_to(12) => factors(1.0, 1.1, 1.0, 1.0),
            () => factors(0.9, 1.0, 0.9, 0.9),
        },
    })
}

const fn no_width(width: Length) -> NotCovered {
    NotCovered::LengthOutOfRange {
        quantity: "depth",
        value: width,
        limit: Length::ZERO,
        clause: "NDS Supplement 2018 tables 4A to 4D",
    }
}

/// The size factor, C_F, of a timber's bending.
///
/// Source: NDS Supplement 2018, notes of table 4D: (12 / d)^(1/9) where d is over 12 in.; formula read in a secondary copy.
/// Range:  depth above 0.
/// Result: 0 < C_F ≤ 1.
pub fn timber_size_factor(depth: Length) -> Result<f64, NotCovered> {
    if !depth.is_positive() {
        return Err(no_width(depth));
    }
    if depth <= Length::inches(12) {
        return Ok(1.0);
    }
    Ok((Length::inches(12) / depth).powf(1.0 / 9.0))
}

/// The flat use factor, C_fu, of dimension lumber bent about its weak axis.
///
/// Source: NDS Supplement 2018, notes of tables 4A and 4B, from memory.
/// Range:  true thickness above 0 and up to 4 in., true width above 0.
/// Result: 1 to 1.2.
pub fn flat_use_factor(thickness: Length, width: Length) -> Result<f64, NotCovered> {
    // The same range as the size factors'.
    size_factors(Graded::Visually, thickness, width)?;
    let is_four = thickness > Length::inches(3);
    let up_to = |inches| width <= Length::inches(inches);
    Ok(match () {
        () if up_to(3) => 1.0,
        () if up_to(4) => {
            if is_four {
                1.0
            } else {
                1.1
            }
        }
        () if up_to(5) => {
            if is_four {
                1.05
            } else {
                1.1
            }
        }
        () if up_to(8) => {
            if is_four {
                1.05
            } else {
                1.15
            }
        }
        () => {
            if is_four {
                1.1
            } else {
                1.2
            }
        }
    })
}

/// The volume factor, C_V, of glulam in bending. It is not taken together with C_L: the smaller holds.
///
/// Source: NDS 2018 §5.3.6, Eq. 5.3-1, formula read in a secondary copy. Editions before 2005 had a factor for the kind
/// of load as well, which later ones leave out (from memory): none is taken.
/// Range:  all three lengths above 0; `exponent` x above 0: 10, of southern pine 20.
/// Result: 0 < C_V ≤ 1; `between_zero_moments` is the length between points of zero moment.
pub fn volume_factor(
    between_zero_moments: Length,
    depth: Length,
    breadth: Length,
    exponent: f64,
) -> Result<f64, NotCovered> {
    const CLAUSE: &str = "NDS 2018 5.3.6";
    for (quantity, value) in [
        ("length between points of zero moment", between_zero_moments),
        ("depth", depth),
        ("breadth", breadth),
    ] {
        if !value.is_positive() {
            return Err(NotCovered::LengthOutOfRange {
                quantity,
                value,
                limit: Length::ZERO,
                clause: CLAUSE,
            });
        }
    }
    let ratio = (Length::feet(21) / between_zero_moments)
        * (Length::inches(12) / depth)
        * (Length::sixteenths(5, 2) / breadth);
    Ok(ratio.powf(1.0 / checked_exponent(exponent, CLAUSE)?).min(1.0))
}

fn checked_exponent(exponent: f64, clause: &'static str) -> Result<f64, NotCovered> {
    if !(0.0 < exponent && exponent.is_finite()) {
        return Err(NotCovered::OutOfRange {
            quantity: "x of the exponent 1/x",
            value: exponent,
            limit: 0.0,
            clause,
        });
    }
    Ok(exponent)
}

/// The depth factor of composite lumber's bending, (12 / d)^m.
///
/// Source: NDS 2018 §8.3.6 leaves it to the maker; m = 0.136 is typical of laminated veneer lumber, from memory.
/// Range:  depth above 0; 0 ≤ m < 1. A piece shallower than 3-1/2 in. has the factor of 3-1/2 in.
/// Result: above 1 below 12 in. of depth, below 1 above it.
pub fn composite_depth_factor(depth: Length, exponent: f64) -> Result<f64, NotCovered> {
    if !depth.is_positive() {
        return Err(no_width(depth));
    }
    if !(0.0..1.0).contains(&exponent) {
        return Err(NotCovered::OutOfRange {
            quantity: "exponent of the depth factor",
            value: exponent,
            limit: 1.0,
            clause: "NDS 2018 8.3.6",
        });
    }
    Ok((Length::inches(12) / depth.max(SHALLOWEST)).powf(exponent))
}

/// Evaluation reports of laminated veneer lumber, from memory.
const SHALLOWEST: Length = Length::sixteenths(3, 8);

#[cfg(test)]
mod tests {
    use super::*;

    fn close(one: f64, other: f64, tolerance: f64) -> bool {
        (one - other).abs() <= tolerance
    }

    /// A handbook's table of size factors, read in a secondary copy: the row of 8 in. is 1.2, of 4 in. thick lumber 1.3,
    /// tension 1.2, compression 1.05.
    #[test]
    fn thick_lumber_has_a_column_of_its_own() {
        let eight = Length::sixteenths(7, 4);
        let thin = size_factors(Graded::Visually, Length::sixteenths(1, 8), eight).unwrap();
        assert!(
            close(thin.bending, 1.2, 1e-9)
                && close(thin.tension, 1.2, 1e-9)
                && close(thin.compression, 1.05, 1e-9)
        );
        let thick = size_factors(Graded::Visually, Length::sixteenths(3, 8), eight).unwrap();
        assert!(close(thick.bending, 1.3, 1e-9) && close(thick.tension, 1.2, 1e-9));
    }

    #[test]
    fn a_piece_has_the_factor_of_its_nominal_width() {
        let two = Length::sixteenths(1, 8);
        let bending = |width| size_factors(Graded::Visually, two, width).unwrap().bending;
        // Dressed, green and full-sawn 2x10.
        for width in [Length::sixteenths(9, 4), Length::sixteenths(9, 8), Length::inches(10)] {
            assert!(close(bending(width), 1.1, 1e-9));
        }
        assert!(close(bending(Length::sixteenths(13, 4)), 0.9, 1e-9));
        let pine = |width| size_factors(Graded::SouthernPine, two, width).unwrap().bending;
        assert!(
            close(pine(Length::sixteenths(5, 8)), 1.0, 1e-9)
                && close(pine(Length::sixteenths(13, 4)), 0.9, 1e-9)
        );
        let stud = |width| size_factors(Graded::Stud, two, width).unwrap().bending;
        assert!(
            close(stud(Length::sixteenths(3, 8)), 1.1, 1e-9)
                && close(stud(Length::sixteenths(7, 4)), 1.2, 1e-9)
        );
    }

    #[test]
    fn a_timber_is_no_dimension_lumber() {
        let five = Length::sixteenths(4, 8);
        assert!(size_factors(Graded::Visually, five, five).is_err());
        assert!(size_factors(Graded::Visually, Length::ZERO, five).is_err());
        assert!(size_factors(Graded::Visually, Length::inches(4), Length::inches(4)).is_ok());
        assert!(flat_use_factor(five, five).is_err());
    }

    /// By hand: at 12 in. 1; at 24 in. (1/2)^(1/9) = 0.9259.
    #[test]
    fn deep_timbers_are_weaker() {
        assert!(close(timber_size_factor(Length::inches(12)).unwrap(), 1.0, 1e-9));
        assert!(close(timber_size_factor(Length::inches(24)).unwrap(), 0.925_9, 5e-5));
        assert!(timber_size_factor(Length::ZERO).is_err());
    }

    /// By hand, from the formula: 42 ft, 12 by 5-1/8 in. is (1/2)^(1/10) = 0.9330; 21 ft is 1; anything smaller stays 1.
    #[test]
    fn large_beams_are_weaker() {
        let factor = |feet, depth| {
            volume_factor(Length::feet(feet), Length::inches(depth), Length::sixteenths(5, 2), 10.0)
        };
        assert!(close(factor(42, 12).unwrap(), 0.933_0, 5e-5));
        assert!(close(factor(21, 12).unwrap(), 1.0, 1e-9));
        assert!(close(factor(10, 9).unwrap(), 1.0, 1e-9));
        assert!(factor(0, 12).is_err());
        let inch = Length::inches(12);
        assert!(volume_factor(inch, inch, inch, 0.0).is_err());
        assert!(volume_factor(inch, inch, inch, f64::NAN).is_err());
    }

    /// By hand: 24 in. with m = 0.136 is 2^-0.136 = 0.9100; a 2 in. strip counts as 3-1/2.
    #[test]
    fn composite_lumber_has_a_declared_exponent() {
        assert!(close(composite_depth_factor(Length::inches(24), 0.136).unwrap(), 0.910_0, 5e-5));
        let least = composite_depth_factor(Length::sixteenths(3, 8), 0.136).unwrap();
        assert!(close(composite_depth_factor(Length::inches(2), 0.136).unwrap(), least, 1e-12));
        assert!(composite_depth_factor(Length::inches(12), f64::NAN).is_err());
        assert!(composite_depth_factor(Length::inches(12), 1.0).is_err());
    }

    /// NDS Supplement, notes of table 4A, from memory: 2x4 flat 1.1, 2x10 flat 1.2, 4x4 1.
    #[test]
    fn flat_use_from_memory() {
        let two = Length::sixteenths(1, 8);
        let four = Length::sixteenths(3, 8);
        assert!(close(flat_use_factor(two, four).unwrap(), 1.1, 1e-9));
        assert!(close(flat_use_factor(two, Length::sixteenths(9, 4)).unwrap(), 1.2, 1e-9));
        assert!(close(flat_use_factor(four, four).unwrap(), 1.0, 1e-9));
    }
}

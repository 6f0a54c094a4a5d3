//! Bearing: across the grain on a support, and on the end of the grain.

use crate::design::NotCovered;
use crate::units::{Force, Length, Stress};

/// The stress across the grain, fc-perp.
///
/// Source: NDS 2018 §3.10.2.
/// Range:  breadth and length of the contact above 0. Load duration never acts on what it is held against.
/// Result: fc-perp.
pub fn bearing_stress(force: Force, breadth: Length, length: Length) -> Stress {
    force / (breadth * length)
}

/// The length of bearing that a reaction needs across the grain.
///
/// Source: NDS 2018 §3.10.2.
/// Range:  `allowable` (Fc-perp') and breadth above 0.
/// Result: lb, without any bearing area factor.
pub fn required_length(reaction: Force, breadth: Length, allowable: Stress) -> Result<Length, NotCovered> {
    let inches = reaction.to_lb() / (allowable.to_psi() * breadth.to_inches());
    if !(0.0 <= inches && inches.is_finite()) {
        return Err(NotCovered::OutOfRange {
            quantity: "bearing needed, inches",
            value: inches,
            limit: 0.0,
            clause: "NDS 2018 3.10.2",
        });
    }
    Ok(Length::decimal_inches(inches))
}

/// The bearing area factor, C_b: fibres beside a short bearing help, where there are any.
///
/// Source: NDS 2018 §3.10.4, Eq. 3.10-2, formula read in a secondary copy; its limits of 6 and 3 in. from memory.
/// Range:  length above 0, `from_end` at least 0: the distance from the nearer end of the member to the bearing.
/// Result: above 1 for less than 6 in. at least 3 in. from the end, else 1.
pub fn bearing_area_factor(length: Length, from_end: Length) -> Result<f64, NotCovered> {
    const CLAUSE: &str = "NDS 2018 3.10.4";
    if !length.is_positive() || from_end.is_negative() {
        let (quantity, value) = if from_end.is_negative() {
            ("distance from the end", from_end)
        } else {
            ("length of bearing", length)
        };
        return Err(NotCovered::LengthOutOfRange { quantity, value, limit: Length::ZERO, clause: CLAUSE });
    }
    if length >= Length::inches(6) || from_end < Length::inches(3) {
        return Ok(1.0);
    }
    Ok((length + Length::sixteenths(0, 6)) / length)
}

/// The allowable stress across the grain that keeps its dent to 0.02 in., where a dent matters.
///
/// Source: NDS 2018 §4.2.6, read in a secondary copy.
/// Range:  the tabulated value, which allows 0.04 in.
/// Result: Fc-perp for 0.02 in.
pub fn shallow_dent(tabulated: Stress) -> Stress {
    tabulated * 0.73
}

/// True where wood that bears end on end needs a metal plate between.
///
/// Source: NDS 2018 §3.10.1.3, read in a secondary copy.
/// Range:  `stress` is fc on the end, `allowable` Fc*: every factor but C_P. What is no number needs the plate.
/// Result: true above three quarters of Fc*.
pub fn end_needs_a_plate(stress: Stress, allowable: Stress) -> bool {
    let stays_below = stress <= allowable * 0.75;
    !stays_below
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 1275 lb on 1-1/2 by 2 in. is 425 psi, and at 425 psi it needs 2 in.
    #[test]
    fn bearing_by_hand() {
        let breadth = Length::sixteenths(1, 8);
        let stress = bearing_stress(Force::lb(1_275.0), breadth, Length::inches(2));
        assert!((stress.to_psi() - 425.0).abs() < 1e-9);
        let needed = |allowable| required_length(Force::lb(1_275.0), breadth, Stress::psi(allowable));
        assert_eq!(needed(425.0), Ok(Length::inches(2)));
        assert!(needed(0.0).is_err());
        assert!(needed(f64::NAN).is_err());
    }

    /// NDS table 3.10.4, from memory, printed to two places: 0.5 in. 1.75, 1 in. 1.38, 1-1/2 in. 1.25, 4 in. 1.10, 6 in. 1.
    #[test]
    fn short_bearings_gain_away_from_the_end() {
        let factor = |sixteenths, from_end: i64| {
            bearing_area_factor(Length::sixteenths(0, sixteenths), Length::inches(from_end)).unwrap()
        };
        for (sixteenths, printed) in [(8, 1.75), (16, 1.38), (24, 1.25), (64, 1.10), (96, 1.0)] {
            assert!((factor(sixteenths, 3) - printed).abs() < 0.007, "{sixteenths}/16 in.");
        }
        assert!((factor(24, 0) - 1.0).abs() < 1e-9);
        assert!((factor(24, 2) - 1.0).abs() < 1e-9);
        assert!(bearing_area_factor(Length::ZERO, Length::inches(9)).is_err());
        assert!(bearing_area_factor(Length::inches(2), Length::inches(-1)).is_err());
    }

    /// By hand: 425 x 0.73 = 310.25 psi.
    #[test]
    fn a_shallow_dent_allows_less() {
        assert!((shallow_dent(Stress::psi(425.0)).to_psi() - 310.25).abs() < 1e-9);
    }

    #[test]
    fn a_heavy_end_needs_a_plate() {
        let allowable = Stress::psi(1_000.0);
        assert!(!end_needs_a_plate(Stress::psi(750.0), allowable));
        assert!(end_needs_a_plate(Stress::psi(751.0), allowable));
        assert!(end_needs_a_plate(Stress::psi(f64::NAN), allowable));
    }
}

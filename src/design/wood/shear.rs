//! Shear along the grain, and what a notch leaves of it.

use crate::design::NotCovered;
use crate::units::{Force, Length, LineLoad, Stress};

/// The shear stress of a rectangle, fv.
///
/// Source: NDS 2018 §3.4.2, Eq. 3.4-2.
/// Range:  breadth and depth above 0.
/// Result: fv, the largest over the depth.
pub fn shear_stress(shear: Force, breadth: Length, depth: Length) -> Stress {
    shear / (breadth * depth) * 1.5
}

/// The shear that a rectangle bears, V'.
///
/// Source: NDS 2018 §3.4.2, Eq. 3.4-2.
/// Range:  `allowable` is Fv'.
/// Result: V'.
pub fn shear_capacity(allowable: Stress, breadth: Length, depth: Length) -> Force {
    allowable * (breadth * depth) * (2.0 / 3.0)
}

/// The shear at a support once the uniform load within a depth of it is left out.
///
/// Source: NDS 2018 §3.4.3.1, read in a secondary copy.
/// Range:  the member bears on one whole face and is loaded on the other; never at a hanger, a notch, or for a load from
///         below. `load` is the uniform load beside the support, `shear` the shear at its face.
/// Result: V; zero where the whole shear comes from within a depth.
pub fn shear_a_depth_away(shear: Force, load: LineLoad, depth: Length) -> Force {
    (shear.abs() - load * depth).max(Force::ZERO)
}

/// The share of a point load that counts for the shear at a support nearer than the depth.
///
/// Source: NDS 2018 §3.4.3.1, from memory.
/// Range:  as [`shear_a_depth_away`]; distance from the face of the support at least 0, depth above 0.
/// Result: 0 to 1.
pub fn share_of_a_near_load(distance: Length, depth: Length) -> Result<f64, NotCovered> {
    const CLAUSE: &str = "NDS 2018 3.4.3.1";
    if distance.is_negative() || !depth.is_positive() {
        let (quantity, value) =
            if distance.is_negative() { ("distance from the support", distance) } else { ("depth", depth) };
        return Err(NotCovered::LengthOutOfRange { quantity, value, limit: Length::ZERO, clause: CLAUSE });
    }
    Ok((distance / depth).min(1.0))
}

/// The shear that a sawn member bears at an end notched on its tension face, as at a bottom edge over a support.
///
/// Source: NDS 2018 §3.4.3.2(a), Eq. 3.4-3: the square of what is left, where editions before 2001 had its first power.
/// Range:  a notch above 0 and up to a quarter of the depth (§4.4.3, read in a copy of low grade).
/// Result: Vr'.
pub fn notched_on_the_tension_face(
    allowable: Stress,
    breadth: Length,
    depth: Length,
    notch: Length,
) -> Result<Force, NotCovered> {
    let left = left_by(notch, depth)?;
    Ok(shear_capacity(allowable, breadth, left) * (left / depth).powi(2))
}

/// The shear that a sawn member bears at an end notched on its compression face, as at a top edge over a support.
///
/// Source: NDS 2018 §3.4.3.2(e), Eq. 3.4-5, from memory.
/// Range:  a notch above 0 and up to a quarter of the depth; `reach` is the notch's length past the inner face of the
///         support, at least 0. A notch that reaches further than what it leaves of the depth leaves only that.
/// Result: Vr'.
pub fn notched_on_the_compression_face(
    allowable: Stress,
    breadth: Length,
    depth: Length,
    notch: Length,
    reach: Length,
) -> Result<Force, NotCovered> {
    let left = left_by(notch, depth)?;
    if reach.is_negative() {
        return Err(NotCovered::LengthOutOfRange {
            quantity: "reach of the notch",
            value: reach,
            limit: Length::ZERO,
            clause: "NDS 2018 3.4.3.2",
        });
    }
    if reach > left {
        return Ok(shear_capacity(allowable, breadth, left));
    }
    let lost = reach.scaled(notch / left);
    Ok(shear_capacity(allowable, breadth, depth - lost))
}

/// The depth that a notch leaves, dn.
fn left_by(notch: Length, depth: Length) -> Result<Length, NotCovered> {
    let deepest = depth.scaled(0.25);
    if !(notch.is_positive() && notch <= deepest) {
        return Err(NotCovered::LengthOutOfRange {
            quantity: "depth of the end notch",
            value: notch,
            limit: deepest,
            clause: "NDS 2018 4.4.3",
        });
    }
    Ok(depth - notch)
}

#[cfg(test)]
mod tests {
    use super::*;

    const BREADTH: Length = Length::sixteenths(1, 8);
    const DEPTH: Length = Length::sixteenths(9, 4);

    /// Textbook on wood design, problem 6.1, read in a secondary copy: 1000 lb on a 4x8 is 59.1 psi.
    #[test]
    fn a_published_stress() {
        let stress = shear_stress(Force::lb(1_000.0), Length::sixteenths(3, 8), Length::sixteenths(7, 4));
        assert!((stress.to_psi() - 59.1).abs() < 0.05);
    }

    /// By hand: 480 lb less 60 plf on 9-1/4 in., 46.25 lb, is 433.75 lb.
    #[test]
    fn load_beside_the_support_goes_straight_down() {
        let shear = shear_a_depth_away(Force::lb(480.0), LineLoad::plf(60.0), DEPTH);
        assert!((shear.to_lb() - 433.75).abs() < 1e-9);
        let short = shear_a_depth_away(Force::lb(20.0), LineLoad::plf(60.0), DEPTH);
        assert!(short.to_lb().abs() < 1e-9);
    }

    /// By hand: halfway between face and depth counts half.
    #[test]
    fn a_near_load_counts_in_part() {
        let share = |inches| share_of_a_near_load(Length::inches(inches), Length::inches(10));
        assert_eq!(share(0), Ok(0.0));
        assert_eq!(share(5), Ok(0.5));
        assert_eq!(share(20), Ok(1.0));
        assert!(share(-1).is_err());
        assert!(share_of_a_near_load(Length::inches(1), Length::ZERO).is_err());
    }

    /// By hand: 2/3 x 180 x 1.5 x 9.25 = 1665 lb; with 2 in. off, 2/3 x 180 x 1.5 x 7.25 x (7.25 / 9.25)² = 801.7 lb. The
    /// first power would give 1022.8 lb.
    #[test]
    fn a_notch_counts_with_its_square() {
        let allowable = Stress::psi(180.0);
        assert!((shear_capacity(allowable, BREADTH, DEPTH).to_lb() - 1_665.0).abs() < 1e-9);
        let left = notched_on_the_tension_face(allowable, BREADTH, DEPTH, Length::inches(2)).unwrap();
        assert!((left.to_lb() - 801.7).abs() < 0.05);
    }

    #[test]
    fn a_notch_deeper_than_a_quarter_is_not_covered() {
        let notched = |notch| notched_on_the_tension_face(Stress::psi(180.0), BREADTH, DEPTH, notch);
        assert!(notched(DEPTH.scaled(0.25)).is_ok());
        assert!(notched(DEPTH.scaled(0.251)).is_err());
        assert!(notched(Length::ZERO).is_err());
    }

    /// By hand, 12 in. deep with 3 in. off the top, Fv' 180 on 1-1/2 in. (2/3 x 180 x 1.5 = 180 lb an inch): nothing past
    /// the support leaves 12 in., 3 in. past leave 12 - 3 / 9 x 3 = 11 in., 9 in. and more leave 9 in.
    #[test]
    fn a_notch_in_the_top_counts_with_its_reach() {
        let capacity = |reach: i64| {
            let (depth, notch) = (Length::feet(1), Length::inches(3));
            notched_on_the_compression_face(Stress::psi(180.0), BREADTH, depth, notch, Length::inches(reach))
                .unwrap()
                .to_lb()
        };
        assert!((capacity(0) - 12.0 * 180.0).abs() < 1e-6);
        assert!((capacity(3) - 11.0 * 180.0).abs() < 1e-6);
        assert!((capacity(9) - 9.0 * 180.0).abs() < 1e-6);
        assert!((capacity(30) - 9.0 * 180.0).abs() < 1e-6);
    }
}

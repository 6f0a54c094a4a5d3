//! Properties of a rectangular section, standing on edge.

use crate::units::{Length, SecondMoment, SectionModulus};

/// The elastic section modulus of a rectangle about the axis across its depth.
///
/// Source: NDS 2018 §3.3.2.1, S = b d² / 6.
/// Range:  any sides; plies side by side count with their whole breadth.
/// Result: S.
pub fn section_modulus(breadth: Length, depth: Length) -> SectionModulus {
    SectionModulus::in3(breadth.to_inches() * depth.to_inches().powi(2) / 6.0)
}

/// The second moment of area of a rectangle about the axis across its depth.
///
/// Source: NDS 2018 §3.3.2.2, I = b d³ / 12.
/// Range:  any sides; plies side by side count with their whole breadth.
/// Result: I.
pub fn second_moment(breadth: Length, depth: Length) -> SecondMoment {
    SecondMoment::in4(breadth.to_inches() * depth.to_inches().powi(3) / 12.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand, 2 x 6 in.: S = 2 x 36 / 6 = 12; I = 2 x 216 / 12 = 36. A 4x8 has S 30.66 and I 111.1: textbook on wood
    /// design, problem 6.1, read in a secondary copy.
    #[test]
    fn a_rectangle_by_hand_and_by_the_book() {
        let (two, six) = (Length::inches(2), Length::inches(6));
        assert!((section_modulus(two, six).to_in3() - 12.0).abs() < 1e-9);
        assert!((second_moment(two, six).to_in4() - 36.0).abs() < 1e-9);
        let (breadth, depth) = (Length::sixteenths(3, 8), Length::sixteenths(7, 4));
        assert!((section_modulus(breadth, depth).to_in3() - 30.66).abs() < 0.005);
        assert!((second_moment(breadth, depth).to_in4() - 111.1).abs() < 0.05);
    }
}

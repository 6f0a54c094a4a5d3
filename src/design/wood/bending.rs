//! Bending: the stress, and the span it is worked out for.

use crate::units::{Length, Moment, SectionModulus, Stress};

/// The bending stress, fb.
///
/// Source: NDS 2018 §3.3.2.1.
/// Range:  a section modulus above 0.
/// Result: fb, of the sign of the moment.
pub fn bending_stress(moment: Moment, modulus: SectionModulus) -> Stress {
    moment / modulus
}

/// The span that moments of a simple beam are worked out for: the clear span and half of what bearing each end needs.
///
/// Source: NDS 2018 §3.2.1, read in a copy of low grade.
/// Range:  a beam on two supports; one that runs on is measured between the middles of its bearings.
/// Result: the design span.
pub fn design_span(clear: Length, required_bearings: [Length; 2]) -> Length {
    let [left, right] = required_bearings;
    clear + left.half() + right.half()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Textbook on wood design, problem 6.1, read in a secondary copy: 48,000 in-lb on 30.66 in³ is 1566 psi.
    #[test]
    fn a_published_stress() {
        let stress = bending_stress(Moment::lb_in(48_000.0), SectionModulus::in3(30.66));
        assert!((stress.to_psi() - 1_566.0).abs() < 0.5);
    }

    /// By hand: 168 in. clear with 1 in. needed at each end is 169 in.
    #[test]
    fn half_of_each_bearing_belongs_to_the_span() {
        let span = design_span(Length::inches(168), [Length::inches(1), Length::inches(1)]);
        assert_eq!(span, Length::inches(169));
    }
}

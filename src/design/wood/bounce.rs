//! How lively a floor is, beyond what a code asks: advice, never a check of strength.

use std::f64::consts::PI;

use crate::design::NotCovered;
use crate::units::{FlexuralRigidity, Force, Length};

/// The sag in the middle of a simple floor span that feels firm under a load of one kilonewton (225 lb).
///
/// Source: the Canadian criterion for wood floors, from memory: 2.0 mm up to 3 m, 8.0 / L^1.3 up to 5.5 m, 2.55 / L^0.63 up
/// to 9.9 m, 0.6 mm beyond. Its branches meet where they join.
/// Range:  span above 0. The sag to compare it with is that of the floor, a joist's share of the load counted.
/// Result: the limit.
pub fn firm_sag(span: Length) -> Result<Length, NotCovered> {
    if !span.is_positive() {
        return Err(NotCovered::LengthOutOfRange {
            quantity: "span",
            value: span,
            limit: Length::ZERO,
            clause: "Canadian floor vibration criterion, from memory",
        });
    }
    let metres = span / Length::millimetres(1_000);
    let millimetres = match () {
        () if metres < 3.0 => 2.0,
        () if metres < 5.5 => 8.0 / metres.powf(1.3),
        () if metres < 9.9 => 2.55 / metres.powf(0.63),
        () => 0.6,
    };
    Ok(Length::millimetres(1).scaled(millimetres))
}

/// The load that [`firm_sag`] is for.
pub const FIRM_LOAD: Force = Force::kn(1.0);

/// The sag of one simple joist under a point load in its middle, none of it shared.
///
/// Source: engineering mechanics, P l³ / 48 E I.
/// Range:  EI above 0.
/// Result: the sag; a real floor shares the load between joists and sags less.
pub fn sag_under_a_point_load(
    load: Force,
    span: Length,
    rigidity: FlexuralRigidity,
) -> Result<Length, NotCovered> {
    let inches = load.to_lb() * span.to_inches().powi(3) / (48.0 * rigidity.to_lb_in2());
    if !(0.0..1e6).contains(&inches) {
        return Err(NotCovered::OutOfRange {
            quantity: "sag, inches",
            value: inches,
            limit: 0.0,
            clause: "engineering mechanics",
        });
    }
    Ok(Length::decimal_inches(inches))
}

/// The lowest frequency of a simple joist, in hertz.
///
/// Source: the wood-floor frequency rule, from memory: (π / 2) sqrt(g E I / W l³), g 386 in/s².
/// Range:  EI, weight and span above 0. `weight` is the whole of what the joist carries and is.
/// Result: f, in Hz.
pub fn frequency(rigidity: FlexuralRigidity, weight: Force, span: Length) -> Result<f64, NotCovered> {
    let squared = 386.0 * rigidity.to_lb_in2() / (weight.to_lb() * span.to_inches().powi(3));
    if !(0.0 < squared && squared.is_finite()) {
        return Err(NotCovered::OutOfRange {
            quantity: "square of the frequency",
            value: squared,
            limit: 0.0,
            clause: "wood-floor frequency rule, from memory",
        });
    }
    Ok(PI / 2.0 * squared.sqrt())
}

/// The frequency of joists on a girder that gives, in hertz.
///
/// Source: 1 / f² = 1 / fj² + 1 / fg², from memory.
/// Range:  both above 0.
/// Result: below either.
pub fn frequency_on_a_girder(joists: f64, girder: f64) -> Result<f64, NotCovered> {
    let combined = (joists.powi(-2) + girder.powi(-2)).powf(-0.5);
    if !(0.0 < joists && 0.0 < girder && combined.is_finite()) {
        return Err(NotCovered::OutOfRange {
            quantity: "frequency, Hz",
            value: joists.min(girder),
            limit: 0.0,
            clause: "wood-floor frequency rule, from memory",
        });
    }
    Ok(combined)
}

/// The frequency below which people feel an occupied wood floor, in hertz: from memory.
pub const LIVELY_BELOW: f64 = 14.0;

#[cfg(test)]
mod tests {
    use super::*;

    /// From memory of the criterion: 6 m 0.8247 mm, 11 m 0.6 mm; by hand, 2 m 2 mm and 4 m 8 / 4^1.3 = 1.3195 mm.
    #[test]
    fn longer_floors_must_be_stiffer() {
        let limit = |millimetres| firm_sag(Length::millimetres(millimetres)).unwrap().to_inches() * 25.4;
        for (span, sag) in [(2_000, 2.0), (4_000, 1.319_5), (6_000, 0.824_7), (11_000, 0.6)] {
            assert!((limit(span) - sag).abs() < 0.000_5, "{span} mm");
        }
        // The branches meet.
        assert!((limit(5_499) - limit(5_500)).abs() < 0.002);
        assert!((limit(9_899) - limit(9_900)).abs() < 0.002);
        assert!(firm_sag(Length::ZERO).is_err());
    }

    /// By hand: P 48 lb, l 100 in., EI 1e6: 1 in. And 193 lb: f = π/2 sqrt(386e6 / (193 x 1e6)) = 2.2214 Hz.
    #[test]
    fn a_joist_by_hand() {
        let (span, rigidity) = (Length::inches(100), FlexuralRigidity::lb_in2(1e6));
        assert!(
            (sag_under_a_point_load(Force::lb(48.0), span, rigidity).unwrap().to_inches() - 1.0).abs() < 1e-5
        );
        assert!((frequency(rigidity, Force::lb(193.0), span).unwrap() - 2.221_4).abs() < 5e-5);
        assert!(frequency(rigidity, Force::ZERO, span).is_err());
        assert!(frequency(FlexuralRigidity::ZERO, Force::lb(193.0), span).is_err());
        assert!(sag_under_a_point_load(Force::lb(48.0), span, FlexuralRigidity::ZERO).is_err());
    }

    /// By hand: 15 and 20 Hz make 1 / sqrt(1/225 + 1/400) = 12 Hz.
    #[test]
    fn a_girder_makes_a_floor_livelier() {
        assert!((frequency_on_a_girder(15.0, 20.0).unwrap() - 12.0).abs() < 1e-9);
        assert!(frequency_on_a_girder(0.0, 20.0).is_err());
        assert!(frequency_on_a_girder(15.0, f64::NAN).is_err());
    }
}

//! Deflection: how far, in time, and with shear.

use crate::design::NotCovered;
use crate::design::wood::Stuff;
use crate::units::{FlexuralRigidity, Force, Length, LineLoad, Stress};

/// Where wood serves, and whether it came seasoned.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Moisture {
    /// Seasoned, and dry in service.
    Dry,
    /// Wet in service, or unseasoned when it was loaded.
    WetOrUnseasoned,
}

/// The creep factor, Kcr: how many times the sag of lasting load grows in time.
///
/// Source: NDS 2018 §3.5.2, from memory.
/// Range:  I-joists in dry service alone.
/// Result: 1.5 or 2.
pub fn creep_factor(stuff: Stuff, moisture: Moisture) -> Result<f64, NotCovered> {
    match (moisture, stuff) {
        (Moisture::Dry, _) => Ok(1.5),
        (Moisture::WetOrUnseasoned, Stuff::IJoist) => {
            Err(NotCovered::NoRule { what: "creep of a wet I-joist", clause: "NDS 2018 3.5.2" })
        }
        (Moisture::WetOrUnseasoned, Stuff::Dimension | Stuff::Timber | Stuff::Glulam | Stuff::Composite) => {
            Ok(2.0)
        }
    }
}

/// The sag in the long run.
///
/// Source: NDS 2018 §3.5.2, Eq. 3.5-1.
/// Range:  `lasting` is the sag at once under load that stays, `passing` under load that goes.
/// Result: the sum, the lasting part grown.
pub fn in_the_long_run(lasting: Length, passing: Length, creep_factor: f64) -> Length {
    lasting.scaled(creep_factor) + passing
}

/// The length that the limit of a cantilever's sag is taken of.
///
/// Source: the residential code, table R301.7, read in a secondary copy.
/// Range:  any reach past the support.
/// Result: twice the reach.
pub fn cantilever_span_for_limit(reach: Length) -> Length {
    reach * 2
}

/// Sag in the middle of a simple span under uniform load, by bending.
///
/// Source: NDS 2018 §3.5.1: usual methods of engineering mechanics, 5 w l⁴ / 384 E I.
/// Range:  EI above 0.
/// Result: the sag.
pub fn by_bending(load: LineLoad, span: Length, rigidity: FlexuralRigidity) -> Result<Length, NotCovered> {
    let total = (load * span).to_lb();
    measured(5.0 * total * span.to_inches().powi(3) / (384.0 * rigidity.to_lb_in2()))
}

/// The shear rigidity of a rectangle of composite lumber.
///
/// Source: usual evaluation reports, from memory: G = E / 16, and 6/5 for the uneven shear over a rectangle.
/// Range:  any section.
/// Result: GA / 1.2, the force that shears it by an angle of 1.
pub fn composite_shear_rigidity(modulus: Stress, breadth: Length, depth: Length) -> Force {
    modulus * (breadth * depth) / (16.0 * 1.2)
}

/// The shear rigidity behind an I-joist's coefficient K, whose sag is w l² / K.
///
/// Source: ANSI/APA PRI-400, from memory; a uniform load shears a span by w l² / 8 GA.
/// Range:  any K.
/// Result: K / 8.
pub fn i_joist_shear_rigidity(coefficient: Force) -> Force {
    coefficient / 8.0
}

/// Sag in the middle of a simple span under uniform load, by shear.
///
/// Source: engineering mechanics, w l² / 8 GA.
/// Range:  shear rigidity above 0.
/// Result: the sag.
pub fn by_shear(load: LineLoad, span: Length, shear_rigidity: Force) -> Result<Length, NotCovered> {
    measured((load * span) / shear_rigidity * span.to_inches() / 8.0)
}

/// Inches as a length, when they are a sag.
fn measured(inches: f64) -> Result<Length, NotCovered> {
    if !(0.0..1e6).contains(&inches) {
        return Err(NotCovered::OutOfRange {
            quantity: "sag, inches",
            value: inches,
            limit: 0.0,
            clause: "NDS 2018 3.5.1",
        });
    }
    Ok(Length::decimal_inches(inches))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 0.1 in. of lasting sag at 1.5, and 0.3 in. of passing sag, is 0.45 in.
    #[test]
    fn lasting_sag_grows() {
        let tenth = Length::hundredths(10);
        let sag = in_the_long_run(tenth, Length::hundredths(30), 1.5);
        assert!((sag.to_inches() - 0.45).abs() < 1e-5);
        assert_eq!(creep_factor(Stuff::Glulam, Moisture::Dry), Ok(1.5));
        assert_eq!(creep_factor(Stuff::Dimension, Moisture::WetOrUnseasoned), Ok(2.0));
        assert!(creep_factor(Stuff::IJoist, Moisture::WetOrUnseasoned).is_err());
    }

    /// By hand: 12 plf on 100 in. with EI 1e6: 5 x 1 x 100⁴ / 384e6 = 1.3021 in.; GA 1250 lb: 1 x 100² / (8 x 1250) = 1 in.
    #[test]
    fn simple_spans_by_hand() {
        let (load, span) = (LineLoad::plf(12.0), Length::inches(100));
        let sag = by_bending(load, span, FlexuralRigidity::lb_in2(1e6)).unwrap();
        assert!((sag.to_inches() - 1.302_1).abs() < 5e-5);
        let sag = by_shear(load, span, Force::lb(1_250.0)).unwrap();
        assert!((sag.to_inches() - 1.0).abs() < 1e-5);
        assert!(by_bending(load, span, FlexuralRigidity::ZERO).is_err());
        assert!(by_shear(load, span, Force::lb(f64::NAN)).is_err());
    }

    /// Usual evaluation reports, from memory, print the sag of laminated veneer lumber as 270 w L⁴ / (E b d³) +
    /// 28.8 w L² / (E b d), w in plf and L in ft. The second term, by hand: w = 100, L = 10, E = 2e6, b d = 1.75 x 10: 0.008229 in.
    #[test]
    fn composite_lumber_shears() {
        let (breadth, depth) = (Length::sixteenths(1, 12), Length::inches(10));
        let rigidity = composite_shear_rigidity(Stress::psi(2e6), breadth, depth);
        let sag = by_shear(LineLoad::plf(100.0), Length::feet(10), rigidity).unwrap();
        assert!((sag.to_inches() - 0.008_229).abs() < 5e-6);
    }

    /// By hand: K 1e6 lb, 12 plf on 100 in.: 1 x 100² / 1e6 = 0.01 in.
    #[test]
    fn an_i_joist_shears_by_its_coefficient() {
        let rigidity = i_joist_shear_rigidity(Force::lb(1e6));
        let sag = by_shear(LineLoad::plf(12.0), Length::inches(100), rigidity).unwrap();
        assert!((sag.to_inches() - 0.01).abs() < 5e-6);
    }

    /// The residential code, table R301.7, read in a secondary copy.
    #[test]
    fn a_cantilever_counts_twice() {
        assert_eq!(cantilever_span_for_limit(Length::feet(4)), Length::feet(8));
    }
}

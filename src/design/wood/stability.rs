//! Beams that can roll or buckle sideways.

use crate::design::NotCovered;
use crate::units::{Length, Stress};

/// How a beam between two lateral supports is loaded, for its effective length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Loading {
    /// One span, uniform load.
    Uniform,
    /// One span, a point load at its centre, nothing that holds it there.
    PointAtCentre,
    /// One span, a point load at its centre that also holds it there; `unsupported` is half the span.
    PointAtCentreHeld,
    /// One span, two equal point loads at its thirds that also hold it there.
    PointsAtThirdsHeld,
    /// A cantilever, uniform load.
    CantileverUniform,
    /// A cantilever, a point load at its end.
    CantileverPoint,
    /// Anything else.
    Any,
}

/// The effective length for lateral buckling of a beam.
///
/// Source: NDS 2018 table 3.3.3, from memory; the factor 1.11 read in a secondary copy.
/// Range:  `unsupported` and `depth` above 0.
/// Result: le.
pub fn effective_length(loading: Loading, unsupported: Length, depth: Length) -> Result<Length, NotCovered> {
    for (quantity, value) in [("unsupported length", unsupported), ("depth", depth)] {
        if !value.is_positive() {
            return Err(NotCovered::LengthOutOfRange {
                quantity,
                value,
                limit: Length::ZERO,
                clause: "NDS 2018 table 3.3.3",
            });
        }
    }
    let slenderness = unsupported / depth;
    let short_or_long = |short: f64, long: f64| {
        if slenderness < 7.0 { unsupported.scaled(short) } else { unsupported.scaled(long) + depth * 3 }
    };
    Ok(match loading {
        Loading::Uniform => short_or_long(2.06, 1.63),
        Loading::PointAtCentre => short_or_long(1.80, 1.37),
        Loading::PointAtCentreHeld => unsupported.scaled(1.11),
        Loading::PointsAtThirdsHeld => unsupported.scaled(1.68),
        Loading::CantileverUniform => short_or_long(1.33, 0.90),
        Loading::CantileverPoint => short_or_long(1.87, 1.44),
        Loading::Any if slenderness > 14.3 => unsupported.scaled(1.84),
        Loading::Any => short_or_long(2.06, 1.63),
    })
}

/// Lateral stability of a beam, with the values on the way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BeamStability {
    /// RB.
    pub slenderness: f64,
    /// FbE: the bending stress at which it buckles.
    pub critical_buckling: Stress,
    /// C_L.
    pub factor: f64,
}

/// The share of the bending strength that a beam keeps once it can buckle sideways.
///
/// Source: NDS 2018 §3.3.3.6 to 3.3.3.8, Eqs. 3.3-5 and 3.3-6; the limit of 50 read in a secondary copy.
/// Range:  `bending` (Fb*: all factors but C_L, C_V and C_fu) and Emin' above 0; 0 < RB ≤ 50. A beam no deeper than broad,
///         or held along its compressed edge and at its bearings, has C_L = 1 (§3.3.3.1, 3.3.3.3) and doesn't come here.
/// Result: RB, FbE, and 0 < C_L < 1.
pub fn beam_stability(
    bending: Stress,
    modulus_for_stability: Stress,
    effective_length: Length,
    breadth: Length,
    depth: Length,
) -> Result<BeamStability, NotCovered> {
    let area = effective_length.to_inches() * depth.to_inches();
    let slenderness = (area / breadth.to_inches().powi(2)).sqrt();
    if !(0.0 < slenderness && slenderness <= MAX_SLENDERNESS) {
        return Err(NotCovered::OutOfRange {
            quantity: "RB",
            value: slenderness,
            limit: MAX_SLENDERNESS,
            clause: "NDS 2018 3.3.3.7",
        });
    }
    let critical_buckling = modulus_for_stability * (1.20 / slenderness.powi(2));
    let factor = factor_of(critical_buckling / bending)?;
    Ok(BeamStability { slenderness, critical_buckling, factor })
}

/// NDS 2018 §3.3.3.7.
const MAX_SLENDERNESS: f64 = 50.0;

/// C_L from the ratio of the buckling stress to Fb*.
///
/// Source: NDS 2018 Eq. 3.3-6.
/// Range:  a ratio above 0.
/// Result: 0 < C_L < 1.
pub fn factor_of(ratio: f64) -> Result<f64, NotCovered> {
    if !(0.0 < ratio && ratio.is_finite()) {
        return Err(NotCovered::OutOfRange {
            quantity: "FbE / Fb*",
            value: ratio,
            limit: 0.0,
            clause: "NDS 2018 3.3.3.8",
        });
    }
    let mean = (1.0 + ratio) / 1.9;
    Ok(mean - (mean.powi(2) - ratio / 0.95).sqrt())
}

/// What holds a sawn beam sideways by rule of proportion, in place of a calculation.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum LateralSupport {
    /// Nothing.
    None,
    /// Its ends are held against rolling.
    EndsHeld,
    /// Its compressed edge is held in line along its length, and its ends are held.
    EdgeHeld,
    /// Bridging or blocking no further apart than 8 ft as well, or both edges held.
    BridgedOrBothEdges,
    /// Both edges held in line along its length.
    BothEdgesHeld,
}

/// The lateral support that a sawn bending member needs by its proportions.
///
/// Source: NDS 2018 §4.4.1.2; the older building code's same rule read in a copy of low grade.
/// Range:  0 < `ratio` ≤ 7, the depth over the breadth by nominal sides; a ratio between two rows takes the next row.
/// Result: the least support with which C_L may be taken as 1.
pub fn lateral_support(ratio: f64) -> Result<LateralSupport, NotCovered> {
    if !(0.0 < ratio && ratio <= 7.0) {
        return Err(NotCovered::OutOfRange {
            quantity: "nominal depth / breadth",
            value: ratio,
            limit: 7.0,
            clause: "NDS 2018 4.4.1",
        });
    }
    Ok(match () {
        () if ratio <= 2.0 => LateralSupport::None,
        () if ratio <= 4.0 => LateralSupport::EndsHeld,
        () if ratio <= 5.0 => LateralSupport::EdgeHeld,
        () if ratio <= 6.0 => LateralSupport::BridgedOrBothEdges,
        () => LateralSupport::BothEdgesHeld,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Textbook on wood design, problem 6.3, read in a secondary copy: lu 48 in., le 53.28 in., RB 5.62 for a 4x8.
    #[test]
    fn a_published_effective_length() {
        let (breadth, depth) = (Length::sixteenths(3, 8), Length::sixteenths(7, 4));
        let length = effective_length(Loading::PointAtCentreHeld, Length::inches(48), depth).unwrap();
        assert!((length.to_inches() - 53.28).abs() < 1e-6);
        let stable =
            beam_stability(Stress::psi(1_625.0), Stress::psi(620_000.0), length, breadth, depth).unwrap();
        assert!((stable.slenderness - 5.62).abs() < 0.005);
        // By hand: 1.2 x 620,000 / (53.28 x 7.25 / 12.25) = 23,594 psi.
        assert!((stable.critical_buckling.to_psi() - 23_594.0).abs() < 1.0);
    }

    /// A reference manual's example quoted in a copy of low grade: FbE / Fb* = 2.83 gives 0.974.
    #[test]
    fn a_factor_from_a_copy_of_low_grade() {
        assert!((factor_of(2.83).unwrap() - 0.974).abs() < 0.000_6);
    }

    /// By hand, 10 in. deep: 60 in. is 6 deep, 2.06 x 60 = 123.6; 100 in. 1.63 x 100 + 30 = 193; 200 in. otherwise
    /// loaded 1.84 x 200 = 368.
    #[test]
    fn effective_lengths_by_hand() {
        let ten = Length::inches(10);
        let length =
            |loading, inches| effective_length(loading, Length::inches(inches), ten).unwrap().to_inches();
        assert!((length(Loading::Uniform, 60) - 123.6).abs() < 1e-6);
        assert!((length(Loading::Uniform, 100) - 193.0).abs() < 1e-6);
        assert!((length(Loading::Any, 100) - 193.0).abs() < 1e-6);
        assert!((length(Loading::Any, 200) - 368.0).abs() < 1e-6);
        assert!((length(Loading::CantileverPoint, 60) - 112.2).abs() < 1e-6);
        assert!(effective_length(Loading::Any, Length::ZERO, ten).is_err());
    }

    #[test]
    fn a_beam_too_slender_has_no_factor() {
        let at = |inches: i64| {
            let one = Length::inches(1);
            beam_stability(Stress::psi(1_000.0), Stress::psi(5e5), Length::inches(inches), one, one)
        };
        assert!(at(2_500).is_ok(), "RB is 50");
        assert!(at(2_501).is_err());
        assert!(at(0).is_err());
        assert!(
            beam_stability(
                Stress::ZERO,
                Stress::psi(5e5),
                Length::inches(9),
                Length::inches(1),
                Length::inches(1)
            )
            .is_err()
        );
        assert!(factor_of(f64::NAN).is_err());
    }

    #[test]
    fn stability_falls_with_length() {
        let factors: Vec<f64> = (1..40)
            .map(|feet| {
                let length = Length::feet(feet);
                let (breadth, depth) = (Length::sixteenths(3, 8), Length::sixteenths(11, 4));
                beam_stability(Stress::psi(1_000.0), Stress::psi(5.8e5), length, breadth, depth)
                    .unwrap()
                    .factor
            })
            .collect();
        assert!(factors.windows(2).all(|pair| pair[0] > pair[1]));
        assert!(factors.iter().all(|factor| 0.0 < *factor && *factor < 1.0));
    }

    /// NDS §4.4.1 by the older building code's rule, read in a copy of low grade: 3:1 ends held, 5:1 one edge held.
    #[test]
    fn slender_joists_are_held() {
        assert_eq!(lateral_support(3.0), Ok(LateralSupport::EndsHeld));
        assert_eq!(lateral_support(5.0), Ok(LateralSupport::EdgeHeld));
        assert_eq!(lateral_support(6.0), Ok(LateralSupport::BridgedOrBothEdges));
        assert_eq!(lateral_support(7.0), Ok(LateralSupport::BothEdgesHeld));
        assert_eq!(lateral_support(2.0), Ok(LateralSupport::None));
        assert!(lateral_support(8.0).is_err());
        assert!(lateral_support(f64::NAN).is_err());
    }
}

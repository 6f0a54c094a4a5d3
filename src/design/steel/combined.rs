//! Compression and bending together: AISC 360 H1, with the amplifier of appendix 8.

use crate::design::NotCovered;
use crate::design::steel::{above_zero, up_to};
use crate::units::Force;

/// The two together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Interaction {
    /// `H1-1a` or `H1-1b`.
    pub equation: &'static str,
    /// At most 1 where it holds.
    pub ratio: f64,
}

/// Compression with bending about one or both axes.
///
/// Source: AISC 360-16, -22 §H1.1, Eq. H1-1a, H1-1b, from memory.
/// Range:  doubly symmetric shapes; no ratio below zero.
/// Result: the sum. Each ratio is required over available; the moments are amplified ones.
pub fn interaction(axial: f64, [major, minor]: [f64; 2]) -> Result<Interaction, NotCovered> {
    for (quantity, value) in [("Pr/Pc", axial), ("Mrx/Mcx", major), ("Mry/Mcy", minor)] {
        if !(0.0 <= value && value.is_finite()) {
            return Err(NotCovered::OutOfRange { quantity, value, limit: 0.0, clause: "AISC 360 H1.1" });
        }
    }
    Ok(if axial >= 0.2 {
        Interaction { equation: "H1-1a", ratio: axial + 8.0 / 9.0 * (major + minor) }
    } else {
        Interaction { equation: "H1-1b", ratio: axial / 2.0 + major + minor }
    })
}

/// How much a load along a bent column adds to the moment that bends it, B1.
///
/// Source: AISC 360-16, -22 appendix 8, Eq. A-8-3, α = 1.6 for service loads, from memory.
/// Range:  0 < Pe1, 0 <= 1.6 Pr < Pe1, 0 < Cm <= 1. The ends don't move sideways. Cm is 1.0 on the safe side.
/// Result: dimensionless, at least 1.
pub fn amplifier(axial: Force, elastic_load: Force, moment_shape: f64) -> Result<f64, NotCovered> {
    const CLAUSE: &str = "AISC 360 A-8.2.1";
    above_zero("Pe1 in kips", elastic_load.to_kip(), CLAUSE)?;
    up_to("Cm", moment_shape, 1.0, CLAUSE)?;
    let share = 1.6 * (axial / elastic_load);
    if !(0.0..1.0).contains(&share) {
        return Err(NotCovered::OutOfRange {
            quantity: "1.6 Pr/Pe1",
            value: share,
            limit: 1.0,
            clause: CLAUSE,
        });
    }
    Ok((moment_shape / (1.0 - share)).max(1.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 0.5 + 8/9 x 0.45 = 0.9; 0.1/2 + 0.6 + 0.2 = 0.85. Both equations give 0.2 + 8/9 m and 0.1 + m at Pr/Pc 0.2,
    /// which meet at m = 0.9.
    #[test]
    fn from_memory_both_equations_by_hand() {
        let steep = interaction(0.5, [0.45, 0.0]).unwrap();
        assert_eq!(steep.equation, "H1-1a");
        assert!((steep.ratio - 0.9).abs() < 1e-12);
        let flat = interaction(0.1, [0.6, 0.2]).unwrap();
        assert_eq!(flat.equation, "H1-1b");
        assert!((flat.ratio - 0.85).abs() < 1e-12);
        let (below, at) =
            (interaction(0.2 - 1e-12, [0.9, 0.0]).unwrap(), interaction(0.2, [0.9, 0.0]).unwrap());
        assert_eq!((below.equation, at.equation), ("H1-1b", "H1-1a"));
        assert!((below.ratio - at.ratio).abs() < 1e-9);
    }

    /// By hand: Pe1 100 kip, Pr 12.5 kip: 1 / (1 - 0.2) = 1.25.
    #[test]
    fn from_memory_the_amplifier_by_hand() {
        let of = |axial| amplifier(Force::kip(axial), Force::kip(100.0), 1.0);
        assert!((of(12.5).unwrap() - 1.25).abs() < 1e-12);
        assert!((of(0.0).unwrap() - 1.0).abs() < 1e-12);
        assert!(of(62.5).is_err());
        assert!(of(-1.0).is_err());
        assert!(of(f64::NAN).is_err());
    }

    #[test]
    fn no_value_for_what_is_no_share() {
        assert!(interaction(-0.1, [0.0, 0.0]).is_err());
        assert!(interaction(0.1, [f64::NAN, 0.0]).is_err());
        assert!(interaction(0.1, [0.0, f64::INFINITY]).is_err());
    }
}

//! Bearing of a column, a plate or a post on concrete.

use crate::design::NotCovered;
use crate::design::concrete::{positive, root_of_strength};
use crate::units::{Area, Force, Length, Stress};

/// With or without bars, which decides the strength reduction.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reinforcement {
    /// With bars: phi 0.65, ACI 318 table 21.2.1.
    Bars,
    /// Plain: phi 0.60, ACI 318 table 21.2.1.
    Plain,
}

/// The bearing strength of concrete, and what it comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bearing {
    /// The loaded area, A1.
    pub loaded: Area,
    /// The area that it spreads to, A2.
    pub spread: Area,
    /// √(A2/A1), at most 2.
    pub confinement: f64,
    /// Bn.
    pub nominal: Force,
    /// Phi Bn.
    pub design: Force,
}

/// The load that concrete bears on a part of its top, with no bar counted across the joint.
///
/// Source: ACI 318 table 22.8.3.2 (14.5.6.1 for plain concrete): √(A2/A1) 0.85 f'c A1, the root at most 2, read in a secondary
///         copy; the wedge that A2 is the base of, one down in two out, from memory.
/// Range:  2,500 psi ≤ f'c ≤ 10,000 psi; a loaded rectangle inside of the supporting one, centred.
/// Result: the footing's side of the joint. The column's own concrete bears 0.85 f'c of its area: the same function with the
///         column as its own support.
pub fn strength(
    loaded: [Length; 2],
    support: [Length; 2],
    thickness: Length,
    concrete: Stress,
    reinforcement: Reinforcement,
) -> Result<Bearing, NotCovered> {
    const CLAUSE: &str = "ACI 318 22.8.3.2";
    root_of_strength(concrete)?;
    let [b, l] = loaded;
    positive("side of the loaded area", b, CLAUSE)?;
    positive("side of the loaded area", l, CLAUSE)?;
    positive("thickness", thickness, CLAUSE)?;
    for (loaded, support) in loaded.into_iter().zip(support) {
        if loaded > support {
            return Err(NotCovered::LengthOutOfRange {
                quantity: "side of the loaded area",
                value: loaded,
                limit: support,
                clause: CLAUSE,
            });
        }
    }

    let [one, other] = support;
    let reach = (one - b).half().min((other - l).half()).min(thickness * 2);
    let spread = (b + reach * 2) * (l + reach * 2);
    let loaded = b * l;
    let confinement = (spread / loaded).sqrt().min(2.0);
    let phi = match reinforcement {
        Reinforcement::Bars => 0.65,
        Reinforcement::Plain => 0.60,
    };
    let nominal = concrete * loaded * (0.85 * confinement);
    Ok(Bearing { loaded, spread, confinement, nominal, design: nominal * phi })
}

/// The least area of dowels from a footing into a cast column or pedestal on it.
///
/// Source: ACI 318 §16.3.4.1: 0.005 of the column's area; from memory, one worked example agrees.
/// Range:  cast-in-place columns and pedestals. Posts of wood and steel have their anchors instead.
/// Result: area of all the dowels.
pub fn least_dowels(column: Area) -> Area {
    column * 0.005
}

#[cfg(test)]
mod tests {
    use super::*;

    fn bearing(loaded: i64, support: i64, thickness: i64) -> Bearing {
        strength(
            [Length::inches(loaded); 2],
            [Length::inches(support); 2],
            Length::inches(thickness),
            Stress::psi(2_500.0),
            Reinforcement::Bars,
        )
        .unwrap()
    }

    /// By hand: an 8 in. plate on an equal pier bears 0.85 x 2,500 x 64 = 136,000 lb, phi 88,400; on a 12 in. pier √(144/64) =
    /// 1.5 times that; on a wide pad twice.
    #[test]
    fn a_wider_support_bears_up_to_twice() {
        assert!((bearing(8, 8, 12).nominal.to_lb() - 136_000.0).abs() < 1e-6);
        assert!((bearing(8, 8, 12).design.to_lb() - 88_400.0).abs() < 1e-6);
        assert!((bearing(8, 12, 12).confinement - 1.5).abs() < 1e-12);
        assert!((bearing(8, 48, 12).confinement - 2.0).abs() < 1e-12);
    }

    /// By hand: 2 in. of thickness spread an 8 in. plate to 8 + 2 x 4 = 16 in. and no further, √(256/64) = 2; 1 in. to 12 in.
    #[test]
    fn a_thin_support_spreads_less() {
        assert!((bearing(8, 48, 2).spread.to_sq_in() - 256.0).abs() < 1e-9);
        assert!((bearing(8, 48, 1).confinement - 1.5).abs() < 1e-12);
    }

    #[test]
    fn plain_concrete_is_reduced_more() {
        let side = [Length::inches(8); 2];
        let bearing = |reinforcement| {
            strength(side, side, Length::inches(8), Stress::psi(2_500.0), reinforcement).unwrap().design
        };
        assert!((bearing(Reinforcement::Plain) / bearing(Reinforcement::Bars) - 0.60 / 0.65).abs() < 1e-12);
    }

    #[test]
    fn what_overhangs_or_is_nothing_is_not_covered() {
        let bears = |loaded: i64, support: i64, thickness: i64, psi: f64| {
            let sides = |inches| [Length::inches(inches); 2];
            let concrete = Stress::psi(psi);
            strength(sides(loaded), sides(support), Length::inches(thickness), concrete, Reinforcement::Bars)
                .is_ok()
        };
        assert!(bears(8, 8, 12, 2_500.0));
        assert!(!bears(9, 8, 12, 2_500.0));
        assert!(!bears(0, 8, 12, 2_500.0));
        assert!(!bears(8, 8, 0, 2_500.0));
        assert!(!bears(8, 8, 12, f64::NAN));
    }

    /// By hand: 0.5 % of 18 by 18 in. is 1.62 in2.
    #[test]
    fn dowels_are_a_two_hundredth() {
        assert!((least_dowels(Area::sq_in(324.0)).to_sq_in() - 1.62).abs() < 1e-9);
    }
}

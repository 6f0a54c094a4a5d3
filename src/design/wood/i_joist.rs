//! I-joists: capacities that load duration acts on, and the blocks that carry a load past them.

use crate::design::NotCovered;
use crate::units::{Area, Force, Length, Moment, Stress};

/// The moment that an I-joist bears.
///
/// Source: NDS 2018 table 7.3.1, from memory: load duration acts on it, a repetitive member factor doesn't.
/// Range:  dry service, compressed flange held all along (C_L = 1).
/// Result: Mr'.
pub fn moment_capacity(reference: Moment, duration: f64) -> Moment {
    reference * duration
}

/// The shear that an I-joist bears.
///
/// Source: NDS 2018 table 7.3.1, from memory. No load near a support is left out: §3.4.3.1 is for rectangles.
/// Range:  dry service, no hole there.
/// Result: Vr'.
pub fn shear_capacity(reference: Force, duration: f64) -> Force {
    reference * duration
}

/// The reaction that an I-joist bears on a support.
///
/// Source: NDS 2018 table 7.3.1, and ANSI/APA PRI-400, both from memory.
/// Range:  bearing at least `stated`, the length that the reference reaction is given for; what a longer one gains is not
///         taken.
/// Result: Rr'.
pub fn reaction_capacity(
    reference: Force,
    stated: Length,
    bearing: Length,
    duration: f64,
) -> Result<Force, NotCovered> {
    if bearing < stated {
        return Err(NotCovered::LengthOutOfRange {
            quantity: "bearing of the I-joist",
            value: bearing,
            limit: stated,
            clause: "ANSI/APA PRI-400, from memory",
        });
    }
    Ok(reference * duration)
}

/// Blocks that stand beside an I-joist's web and carry a post's load to what lies below.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SquashBlocks {
    /// Their area under the load, all of them.
    pub area: Area,
    /// Fc* of the blocks, every factor but C_P: they are short, and the joist holds them.
    pub crushing: Stress,
    /// Fc-perp' of the plate or beam they stand on; `None` where they stand on concrete or steel.
    pub support: Option<Stress>,
}

/// The load that squash blocks carry. The joist beside them counts for nothing.
///
/// Source: NDS 2018 §3.10.1 on their ends, §3.10.2 on what they stand on; that blocks carry the whole load is common practice.
/// Range:  blocks cut longer than the joist is deep, of full length in one piece.
/// Result: the smaller of the two.
pub fn squash_block_capacity(blocks: &SquashBlocks) -> Force {
    let crushing = blocks.crushing * blocks.area;
    blocks.support.map_or(crushing, |support| crushing.min(support * blocks.area))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 2500 lb under snow is 2500 x 1.15 = 2875 lb.
    #[test]
    fn load_duration_acts_on_capacities() {
        let (stated, duration) = (Length::sixteenths(3, 8), 1.15);
        let reaction = |bearing| reaction_capacity(Force::lb(2_500.0), stated, bearing, duration);
        assert!((reaction(stated).unwrap().to_lb() - 2_875.0).abs() < 1e-9);
        assert!((reaction(Length::inches(9)).unwrap().to_lb() - 2_875.0).abs() < 1e-9);
        assert!(reaction(Length::sixteenths(3, 7)).is_err());
        assert!((shear_capacity(Force::lb(1_000.0), 1.25).to_lb() - 1_250.0).abs() < 1e-9);
        assert!((moment_capacity(Moment::lb_ft(1_000.0), 0.9).to_lb_ft() - 900.0).abs() < 1e-9);
    }

    /// By hand: two 2x4 blocks, 2 x 1.5 x 3.5 = 10.5 sq in: 1322.5 psi on their ends is 13,886 lb, 425 psi on the plate
    /// below 4462.5 lb.
    #[test]
    fn the_plate_below_governs() {
        let blocks = SquashBlocks {
            area: Area::sq_in(10.5),
            crushing: Stress::psi(1_322.5),
            support: Some(Stress::psi(425.0)),
        };
        assert!((squash_block_capacity(&blocks).to_lb() - 4_462.5).abs() < 1e-6);
        let on_steel = SquashBlocks { support: None, ..blocks };
        assert!((squash_block_capacity(&on_steel).to_lb() - 13_886.25).abs() < 1e-6);
    }
}

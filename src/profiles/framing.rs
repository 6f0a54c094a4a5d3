//! Limits of joists and beams: bearing, laps, cuts, openings, cantilevers, sag, drains.
//!
//! Sources: the residential code, sections R301.7, R502 and P3005; each row says in what copy it was read, if in any.

use crate::profiles::Status::{CommonPractice, Confirmed, FromMemory, LowGradeCopy};
use crate::profiles::{Factor, Limit, LimitValue, OneIn};
use crate::units::{Area, Length};

const COPY: &str = "read in a secondary copy";
const LOW: &str = "read in a copy of low grade";

limits! {
    /// Bearing of joists and beams on wood or metal.
    BEARING_ON_WOOD: Length = Length::sixteenths(1, 8), "bearing-on-wood", "R502.6", LowGradeCopy(LOW);
    /// Bearing of joists and beams on concrete or masonry.
    BEARING_ON_CONCRETE: Length = Length::inches(3), "bearing-on-concrete", "R502.6", LowGradeCopy(LOW);
    /// Nominal area of a sill under a joist on concrete or masonry.
    SILL_BEARING_AREA: Area = Area::sq_in(48.0), "sill-bearing-area", "R502.6", LowGradeCopy(LOW);
    /// Bearing of an I-joist at its end.
    I_JOIST_END_BEARING: Length = Length::sixteenths(1, 12), "i-joist-end-bearing", "ANSI/APA PRI-400", FromMemory;
    /// Bearing of an I-joist that runs through.
    I_JOIST_INNER_BEARING: Length = Length::sixteenths(3, 8), "i-joist-inner-bearing", "ANSI/APA PRI-400", FromMemory;
    /// Joists lap over a support.
    JOIST_LAP: Length = Length::inches(3), "joist-lap", "R502.6.1", Confirmed(COPY);
    /// A lapped joist runs past its support by no more.
    LAP_OVERHANG: Length = Length::inches(12), "lap-overhang", "-", CommonPractice;
    /// A notch is no deeper than this share of the depth.
    NOTCH_DEPTH: OneIn = OneIn(6), "notch-depth", "R502.8.1", LowGradeCopy(LOW);
    /// A notch is no longer than this share of the depth.
    NOTCH_LENGTH: OneIn = OneIn(3), "notch-length", "R502.8.1", LowGradeCopy(LOW);
    /// The middle share of the span that takes no notch.
    NOTCH_FREE_MIDDLE: OneIn = OneIn(3), "notch-free-middle", "R502.8.1", LowGradeCopy(LOW);
    /// A notch at the end is no deeper than this share of the depth.
    END_NOTCH_DEPTH: OneIn = OneIn(4), "end-notch-depth", "R502.8.1", LowGradeCopy(LOW);
    /// A hole is no wider than this share of the depth.
    HOLE_DIAMETER: OneIn = OneIn(3), "hole-diameter", "R502.8.1", LowGradeCopy(LOW);
    /// A hole keeps this far from edges, notches and other holes.
    HOLE_EDGE: Length = Length::inches(2), "hole-edge", "R502.8.1", LowGradeCopy(LOW);
    /// A longer header is doubled.
    HEADER_SINGLE: Length = Length::feet(4), "header-single", "R502.10", Confirmed(COPY);
    /// A longer header hangs in hangers.
    HEADER_WITHOUT_HANGER: Length = Length::feet(6), "header-without-hanger", "R502.10", FromMemory;
    /// Longer tail joists hang in hangers or stand on a ledger strip.
    TAIL_WITHOUT_HANGER: Length = Length::feet(12), "tail-without-hanger", "R502.10", FromMemory;
    /// A single trimmer serves where the header is this near the trimmer's bearing.
    TRIMMER_SINGLE: Length = Length::feet(3), "trimmer-single", "R502.10", FromMemory;
    /// Blocks between doubled joists that are held apart stand no further apart.
    SPLIT_JOIST_BLOCKS: Length = Length::feet(4), "split-joist-blocks", "R502.4", Confirmed(COPY);
    /// Rows of bridging stand no further apart in joists deeper than 2x12.
    BRIDGING_SPACING: Length = Length::feet(8), "bridging-spacing", "R502.7.1", FromMemory;
    /// A cantilever that carries is no longer than this times the nominal depth, but by the tables.
    CANTILEVER_PER_DEPTH: Factor = Factor(1.0), "cantilever-per-depth", "R502.3.3", LowGradeCopy("2009 text, read in a copy of low grade");
    /// A cantilever under wall and roof has a back span this many times its length.
    BACK_SPAN_UNDER_ROOF: Factor = Factor(3.0), "back-span-under-roof", "R502.3.3(1)", FromMemory;
    /// A cantilever of a balcony has a back span this many times its length.
    BACK_SPAN_BALCONY: Factor = Factor(2.0), "back-span-balcony", "R502.3.3(2)", LowGradeCopy(LOW);
    /// A deck's edge reaches past the last member under it by no more.
    DECK_OVERHANG: Length = Length::sixteenths(0, 12), "deck-overhang", "-", CommonPractice;
    /// Sag of floors under live load, a share of the span.
    DEFLECTION_LIVE: OneIn = OneIn(360), "deflection-live", "R301.7", Confirmed(COPY);
    /// Sag of floors under all load, a share of the span.
    DEFLECTION_TOTAL: OneIn = OneIn(240), "deflection-total", "IBC 1604.3", Confirmed(COPY);
    /// Sag of rafters, and of beams that carry roof and walls alone, under snow or roof live load, a share of the span.
    DEFLECTION_OTHER: OneIn = OneIn(240), "deflection-other", "R301.7", FromMemory;
    /// Sag of rafters under all load, a share of the span.
    DEFLECTION_RAFTER_TOTAL: OneIn = OneIn(180), "deflection-rafter-total", "IBC 1604.3", FromMemory;
    /// Sag under load that goes, of a beam that takes a post's load aside, a share of the span.
    DEFLECTION_TRANSFER: OneIn = OneIn(480), "deflection-transfer", "-", CommonPractice;
    /// Sag under live load that a stiff floor keeps to, a share of the span.
    DEFLECTION_TARGET: OneIn = OneIn(480), "deflection-target", "-", CommonPractice;
    /// Members that hold a beam's compressed edge stand no further apart.
    BRACE_SPACING: Length = Length::inches(24), "brace-spacing", "-", CommonPractice;
    /// A hung joist reaches below its carrier by no more.
    HANGER_SEAT_DROP: Length = Length::sixteenths(0, 4), "hanger-seat-drop", "-", CommonPractice;
    /// A hanger is at least this many times as tall as its joist.
    HANGER_HEIGHT: Factor = Factor(0.6), "hanger-height", "-", CommonPractice;
    /// A nailer stands over the flange by no more on each side.
    NAILER_OVERHANG: Length = Length::sixteenths(0, 4), "nailer-overhang", "-", CommonPractice;
    /// A squash block is longer than the joist is deep.
    SQUASH_BLOCK_PROUD: Length = Length::sixteenths(0, 1), "squash-block-proud", "-", CommonPractice;
    /// A post stands off its beam's centre line by no more.
    POST_OFF_LINE: Length = Length::sixteenths(0, 8), "post-off-line", "-", CommonPractice;
    /// A post stands off its beam's centre line by no more than this share of the beam's width.
    POST_OFF_LINE_SHARE: OneIn = OneIn(6), "post-off-line-share", "-", CommonPractice;
    /// Fall of a drain up to 2-1/2 in.
    DRAIN_FALL_SMALL: OneIn = OneIn(48), "drain-fall-small", "P3005.3", LowGradeCopy(LOW);
    /// Fall of a drain of 3 in. and larger.
    DRAIN_FALL: OneIn = OneIn(96), "drain-fall", "P3005.3", LowGradeCopy(LOW);
    /// The largest drain that falls as small ones do, outside.
    DRAIN_SMALL: Length = Length::sixteenths(2, 14), "drain-small", "P3005.3", FromMemory;
    /// A fitting is thicker than its pipe by this.
    DRAIN_FITTING: Length = Length::sixteenths(0, 8), "drain-fitting", "-", CommonPractice;
    /// Wood between a drain's hole and the joist beside it.
    DRAIN_CLEARANCE: Length = Length::sixteenths(0, 8), "drain-clearance", "-", CommonPractice;
    /// Hole in the deck for the flange of a 3 in. drain.
    CLOSET_HOLE: Length = Length::sixteenths(4, 8), "closet-hole", "-", FromMemory;
    /// A toilet's drain from the finished wall behind it.
    TOILET_ROUGH_IN: Length = Length::inches(12), "toilet-rough-in", "-", CommonPractice;
    /// A toilet's centre from a side wall.
    TOILET_SIDE: Length = Length::inches(15), "toilet-side", "P2705.1, the section from memory", Confirmed(COPY);
    /// A bore nearer the face of a member has a plate over it.
    NAIL_PLATE: Length = Length::sixteenths(1, 4), "nail-plate", "P2603.2.1", FromMemory;
}

#[cfg(test)]
mod tests {
    use super::*;

    /// IRC R502.6, read in a copy of low grade: on wood 1-1/2 in. passes and 1-1/4 fails; on concrete 2-1/2 fails; a sill
    /// of 48 sq in passes.
    #[test]
    fn bearing_agrees_with_the_published_cases() {
        assert!(Length::decimal_inches(1.5) >= BEARING_ON_WOOD.value);
        assert!(Length::decimal_inches(1.25) < BEARING_ON_WOOD.value);
        assert!(Length::decimal_inches(2.5) < BEARING_ON_CONCRETE.value);
        assert!((SILL_BEARING_AREA.value.to_sq_in() - 48.0).abs() < 1e-9);
    }

    /// IRC R502.6.1, read in a secondary copy: joists lap at least 3 in.
    #[test]
    fn laps_agree_with_the_published_case() {
        assert_eq!(JOIST_LAP.value, Length::inches(3));
    }

    /// IRC R502.8.1, the row of a 2x10 printed in a copy of low grade: hole 3.083, notch 1.542 deep and 3.083 long, end
    /// notch 2.3125, edge 2.
    #[test]
    fn cuts_agree_with_the_published_row() {
        let depth = 9.25;
        let share = |one_in: OneIn| depth / f64::from(one_in.0);
        assert!((share(HOLE_DIAMETER.value) - 3.083).abs() < 0.0005);
        assert!((share(NOTCH_DEPTH.value) - 1.542).abs() < 0.0005);
        assert!((share(NOTCH_LENGTH.value) - 3.083).abs() < 0.0005);
        assert!((share(END_NOTCH_DEPTH.value) - 2.3125).abs() < 0.0005);
        assert_eq!(HOLE_EDGE.value, Length::inches(2));
    }

    /// IRC Table R502.3.1(2), read in a secondary copy: its spans are made for L/360 under live load.
    #[test]
    fn sag_agrees_with_the_published_table() {
        assert_eq!(DEFLECTION_LIVE.value, OneIn(360));
    }

    /// IRC P3005.3, read in a copy of low grade: 1/8 in. a foot for drains of 3 and 4 in. By arithmetic, a 2 in. drain at
    /// 1/4 in. a foot falls 3 in. in 12 ft.
    #[test]
    fn drains_agree_with_the_published_case() {
        let fall = |run: Length, one_in: OneIn| run.shared_by(one_in.0).map(|share| share.rounded());
        assert_eq!(fall(Length::feet(1), DRAIN_FALL.value), Some(Length::sixteenths(0, 2)));
        assert_eq!(fall(Length::feet(12), DRAIN_FALL_SMALL.value), Some(Length::inches(3)));
    }
}

//! Cap plates and saddles.

use crate::design::NotCovered;
use crate::design::steel::plates::{Column, beyond, thickness};
use crate::design::steel::{above_zero, inches, inches_or_none, modulus_over_yield};
use crate::units::{Force, Length, LineLoad, Moment, Stress};

/// What a cap gives to each of two members that meet on it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CapShare {
    /// The length that the member bears on.
    pub length: Length,
    /// From the middle of the cap to the middle of that length.
    pub arm: Length,
}

/// The cap's length divided between two members that meet on it.
///
/// Source: statics.
/// Range:  the joint lies on the cap, with some length left on both sides of the gap.
/// Result: first the side from which `joint`, the middle of the gap, is measured.
pub fn cap_shares(cap: Length, joint: Length, gap: Length) -> Result<[CapShare; 2], NotCovered> {
    const CLAUSE: &str = "statics";
    inches_or_none("gap", gap, CLAUSE)?;
    let (first, second) = (joint - gap.half(), cap - joint - gap.half());
    inches("bearing before the joint", first, CLAUSE)?;
    inches("bearing behind the joint", second, CLAUSE)?;
    let share = |length: Length| CapShare { length, arm: (cap - length).half() };
    Ok([share(first), share(second)])
}

/// How far from the column's axis the sum of the reactions acts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Eccentricity {
    /// ΣR.
    pub load: Force,
    /// ΣR·a, towards positive arms.
    pub moment: Moment,
    /// e = ΣR·a / ΣR, towards positive arms.
    pub from_axis: Length,
}

/// The moment that unequal reactions put on the column below.
///
/// Source: statics.
/// Range:  0 < ΣR. Each reaction with its arm from the column's axis, one side positive, the other negative.
/// Result: moment and the arm of the sum.
pub fn eccentricity(reactions: &[(Force, Length)]) -> Result<Eccentricity, NotCovered> {
    let load: Force = reactions.iter().map(|(reaction, _)| *reaction).sum();
    let moment: Moment = reactions.iter().map(|(reaction, arm)| *reaction * *arm).sum();
    above_zero("sum of reactions in lb", load.to_lb(), "statics")?;
    let from_axis = Length::decimal_inches(moment.to_lb_in() / load.to_lb());
    Ok(Eccentricity { load, moment, from_axis })
}

/// A plate that bends beyond the column under what lies on it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Overhang {
    /// From where the column holds it to its edge.
    pub reach: Length,
    /// The load on each length of it.
    pub line: LineLoad,
    /// At the edge of what the column holds.
    pub moment: Moment,
    /// The thickness it needs.
    pub thickness: Length,
}

/// One side of a plate beyond the column, under a service reaction spread evenly over `bearing` from the plate's edge.
///
/// Source: statics of a cantilever from the edge of what the column holds; AISC 360-16, -22 §F11, Ω 1.67. That the
/// reaction is spread evenly is common practice for wood.
/// Range:  0 < width, 0 < bearing, 0 < R.
/// Result: the thickness needed, none without overhang. `width` lies across the overhang.
pub fn overhang(
    reach: Length,
    width: Length,
    reaction: Force,
    bearing: Length,
    yield_strength: Stress,
) -> Result<Overhang, NotCovered> {
    const CLAUSE: &str = "AISC 360 F11";
    modulus_over_yield(yield_strength, CLAUSE)?;
    inches("width", width, CLAUSE)?;
    inches("bearing", bearing, CLAUSE)?;
    inches_or_none("overhang", reach, CLAUSE)?;
    above_zero("R in lb", reaction.to_lb(), CLAUSE)?;
    let line = reaction / bearing;
    let loaded = reach.min(bearing);
    let moment = line * loaded * (reach - loaded.scaled(0.5));
    Ok(Overhang { reach, line, moment, thickness: thickness(moment, width, yield_strength) })
}

/// The seat of a saddle or cap that one member lies on from end to end, both ways past the column.
///
/// Source: as [`overhang`]; each way by itself.
/// Range:  the seat covers the column.
/// Result: along the member, then across it.
pub fn saddle(
    column: Column,
    [along, across]: [Length; 2],
    reaction: Force,
    yield_strength: Stress,
) -> Result<[Overhang; 2], NotCovered> {
    const CLAUSE: &str = "statics";
    let ([depth, width], [held_along, held_across]) = (column.outside(), column.held());
    let reach_along = beyond(along, depth, held_along, CLAUSE)?;
    let reach_across = beyond(across, width, held_across, CLAUSE)?;
    Ok([
        overhang(reach_along, across, reaction, along, yield_strength)?,
        overhang(reach_across, along, reaction, across, yield_strength)?,
    ])
}

#[cfg(test)]
mod tests {
    use super::*;

    const FY: Stress = Stress::ksi(36.0);

    /// By hand: a 7 in. cap with the joint 3 in. from one end and 1/2 in. of gap leaves 2-3/4 and 3-3/4 in.; their middles
    /// lie 2-1/8 and 1-5/8 in. from the middle of the cap.
    #[test]
    fn a_cap_is_shared_at_the_joint() {
        let [first, second] =
            cap_shares(Length::inches(7), Length::inches(3), Length::sixteenths(0, 8)).unwrap();
        assert_eq!((first.length, second.length), (Length::sixteenths(2, 12), Length::sixteenths(3, 12)));
        assert_eq!((first.arm, second.arm), (Length::sixteenths(2, 2), Length::sixteenths(1, 10)));
        assert!(cap_shares(Length::inches(7), Length::ZERO, Length::ZERO).is_err());
        assert!(cap_shares(Length::inches(7), Length::inches(7), Length::ZERO).is_err());
        assert!(cap_shares(Length::inches(7), Length::inches(3), -Length::inches(1)).is_err());
    }

    /// By hand: 6,000 lb at 2 in. against 2,000 lb at 2 in.: 8,000 lb-in, 1 in. from the axis of 8,000 lb.
    #[test]
    fn unequal_reactions_bend_the_column() {
        let arm = Length::inches(2);
        let found = eccentricity(&[(Force::lb(6_000.0), arm), (Force::lb(2_000.0), -arm)]).unwrap();
        assert!((found.moment.to_lb_in() - 8_000.0).abs() < 1e-9);
        assert_eq!(found.from_axis, Length::inches(1));
        assert!(eccentricity(&[]).is_err());
        assert!(eccentricity(&[(Force::lb(100.0), arm), (Force::lb(-100.0), -arm)]).is_err());
        assert!(eccentricity(&[(Force::lb(f64::NAN), arm)]).is_err());
    }

    /// By hand: 4,000 lb on 4 in. is 1,000 lb an inch; 2 in. beyond the column 1,000 x 2 x 1 = 2,000 lb-in; 6 in. beyond,
    /// all of it counts: 4,000 x (6 - 2) = 16,000 lb-in.
    #[test]
    fn an_overhang_by_hand() {
        let of =
            |reach| overhang(reach, Length::inches(5), Force::lb(4_000.0), Length::inches(4), FY).unwrap();
        assert!((of(Length::inches(2)).moment.to_lb_in() - 2_000.0).abs() < 1e-6);
        assert!((of(Length::inches(6)).moment.to_lb_in() - 16_000.0).abs() < 1e-6);
        assert_eq!(of(Length::ZERO).thickness, Length::ZERO);
    }

    /// By hand: a 4 in. tube holds 3.8 in.; a seat of 6 by 5 reaches 1.1 and 0.6 in. beyond; 6,000 lb is 1,000 lb an inch
    /// along and 1,200 across: 605 and 216 lb-in.
    #[test]
    fn a_saddle_bends_both_ways() {
        let side = Length::inches(4);
        let column = Column::Tube { along: side, across: side };
        let seat = [Length::inches(6), Length::inches(5)];
        let [along, across] = saddle(column, seat, Force::lb(6_000.0), FY).unwrap();
        assert!((along.moment.to_lb_in() - 605.0).abs() < 0.01);
        assert!((across.moment.to_lb_in() - 216.0).abs() < 0.01);
        assert!(saddle(column, [Length::inches(3), side], Force::lb(6_000.0), FY).is_err());
    }

    #[test]
    fn no_value_without_a_load() {
        let of =
            |load| overhang(Length::inches(2), Length::inches(5), Force::lb(load), Length::inches(4), FY);
        assert!(of(0.0).is_err());
        assert!(of(-5.0).is_err());
        assert!(of(f64::NAN).is_err());
    }
}

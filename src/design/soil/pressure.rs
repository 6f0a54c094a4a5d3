//! The pressure under footings.

use crate::design::NotCovered;
use crate::units::{Area, AreaLoad, Force, Length};

/// How an allowable soil pressure is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// All that presses on the soil counts: the load, the footing and what lies on it.
    Gross,
    /// What the footing adds to the ground it replaced: its own weight is left out.
    Net,
}

/// The pressure under a footing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ContactPressure {
    /// The load over the whole area.
    pub mean: AreaLoad,
    /// At the edge or corner pressed most.
    pub largest: AreaLoad,
    /// At the edge or corner pressed least; zero where the footing lifts.
    pub least: AreaLoad,
    /// The share of the footing's length that touches the soil.
    pub contact: f64,
}

/// The pressure under a rectangular footing whose load may stand off its middle.
///
/// Source: statics of soil that only presses, with even stiffness: P/A (1 ± 6ex/B ± 6ey/L) inside of the kern, 2P / 3L(B/2 - e)
///         beyond it. Common practice.
/// Range:  a load that presses. Off one way: inside of the footing. Off both ways: inside of the kern, ex/B + ey/L ≤ 1/6; the
///         footing lifts at a corner beyond that, and there is no closed formula here.
/// Result: gross counts `own_weight` (footing and soil over it, centred), net leaves it out.
pub fn contact_pressure(
    basis: Basis,
    load: Force,
    own_weight: Force,
    sides: [Length; 2],
    off_centre: [Length; 2],
) -> Result<ContactPressure, NotCovered> {
    const CLAUSE: &str = "statics of a footing on soil";
    let [side, other_side] = sides;
    for value in sides {
        if !value.is_positive() {
            return Err(NotCovered::LengthOutOfRange {
                quantity: "side of the footing",
                value,
                limit: Length::ZERO,
                clause: CLAUSE,
            });
        }
    }
    let total = match basis {
        Basis::Gross => load + own_weight,
        Basis::Net => load,
    };
    if !(load >= Force::ZERO && total > Force::ZERO && total.is_finite()) {
        return Err(NotCovered::OutOfRange {
            quantity: "load in lb",
            value: load.to_lb(),
            limit: 0.0,
            clause: CLAUSE,
        });
    }

    // The own weight pulls the resultant back towards the middle.
    let towards_edge = |off: Length, side: Length| off.abs() / side * (load / total);
    let [off, other_off] = off_centre;
    let shares = [towards_edge(off, side), towards_edge(other_off, other_side)];
    let mean = AreaLoad::from(total / (side * other_side));

    let [one, other] = shares;
    if one + other <= KERN {
        let swing = 6.0 * (one + other);
        return Ok(ContactPressure {
            mean,
            largest: mean * (1.0 + swing),
            least: mean * (1.0 - swing),
            contact: 1.0,
        });
    }
    if one.min(other) > 0.0 {
        return Err(NotCovered::OutOfRange {
            quantity: "ex/B + ey/L",
            value: one + other,
            limit: KERN,
            clause: CLAUSE,
        });
    }
    let share = one.max(other);
    if share >= 0.5 {
        return Err(NotCovered::OutOfRange { quantity: "e/B", value: share, limit: 0.5, clause: CLAUSE });
    }
    let contact = 3.0 * (0.5 - share);
    Ok(ContactPressure { mean, largest: mean * (2.0 / contact), least: AreaLoad::ZERO, contact })
}

/// How far off its middle, over its side, a footing's load may stand before the far edge lifts.
const KERN: f64 = 1.0 / 6.0;

/// The area of footing that a centred load needs.
///
/// Source: the load over the allowable pressure, less the footing's own weight where that counts. Common practice.
/// Range:  an allowable pressure above the footing's own weight.
/// Result: plan area. Each combination has its own, and a lower pressure allowed under dead load alone can govern.
pub fn area_for(
    basis: Basis,
    load: Force,
    allowable: AreaLoad,
    own_weight: AreaLoad,
) -> Result<Area, NotCovered> {
    let left = match basis {
        Basis::Gross => allowable - own_weight,
        Basis::Net => allowable,
    };
    if !(left > AreaLoad::ZERO && load >= Force::ZERO && load.is_finite()) {
        return Err(NotCovered::OutOfRange {
            quantity: "pressure left for the load, in psf",
            value: left.to_psf(),
            limit: 0.0,
            clause: "statics of a footing on soil",
        });
    }
    Ok(Area::sq_ft(load.to_lb() / left.to_psf()))
}

/// The pressure under a round footing whose load may stand off its middle.
///
/// Source: statics of soil that only presses, with even stiffness: P/A (1 ± 8e/D) inside of the kern, an eighth of the
///         diameter. Common practice.
/// Range:  a load that presses, no further off than the kern: beyond it there is no closed formula here.
/// Result: as [`contact_pressure`].
pub fn round_contact_pressure(
    basis: Basis,
    load: Force,
    own_weight: Force,
    diameter: Length,
    off_centre: Length,
) -> Result<ContactPressure, NotCovered> {
    const KERN: f64 = 1.0 / 8.0;
    let side = square_of_equal_area(diameter);
    let mean = contact_pressure(basis, load, own_weight, [side; 2], [Length::ZERO; 2])?.mean;
    let area = side * side;
    let share = off_centre.abs() / diameter * (load / (mean * area));
    if !(0.0..=KERN).contains(&share) {
        return Err(NotCovered::OutOfRange {
            quantity: "e/D",
            value: share,
            limit: KERN,
            clause: "statics of a footing on soil",
        });
    }
    let swing = 8.0 * share;
    Ok(ContactPressure { mean, largest: mean * (1.0 + swing), least: mean * (1.0 - swing), contact: 1.0 })
}

/// The side of the square with the area of a circle: √π/2 of the diameter.
pub fn square_of_equal_area(diameter: Length) -> Length {
    diameter.scaled(std::f64::consts::PI.sqrt() / 2.0)
}

/// The stretch of footing that a point load presses on, spread by what lies between: solid wall, the footing itself.
///
/// Source: common practice: one in one down through solid concrete or masonry, evenly over that length.
/// Range:  a load between the ends, a wall without an opening inside of the spread.
/// Result: from where to where. It reaches no further than an end: there the wall that returns takes its share.
pub fn point_spread(
    at: Length,
    bearing: Length,
    height: Length,
    (low, high): (Length, Length),
) -> Result<(Length, Length), NotCovered> {
    const CLAUSE: &str = "common practice: spread at one in one";
    let reach = bearing.half() + height;
    let stretch = ((at - reach).max(low), (at + reach).min(high));
    if bearing.is_negative() || height.is_negative() || stretch.0 >= stretch.1 {
        return Err(NotCovered::LengthOutOfRange {
            quantity: "length that the point load spreads to",
            value: stretch.1 - stretch.0,
            limit: Length::ZERO,
            clause: CLAUSE,
        });
    }
    Ok(stretch)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pad(load: f64, own: f64, off: [f64; 2]) -> Result<ContactPressure, NotCovered> {
        let off = off.map(Length::decimal_inches);
        contact_pressure(Basis::Gross, Force::lb(load), Force::lb(own), [Length::feet(4); 2], off)
    }

    /// By hand: 24,000 lb on 4 by 4 ft with 150 psf of its own: 1,650 psf gross, 1,500 net.
    #[test]
    fn gross_counts_the_footing_and_net_does_not() {
        let sides = [Length::feet(4); 2];
        let mean = |basis| {
            contact_pressure(basis, Force::kip(24.0), Force::kip(2.4), sides, [Length::ZERO; 2])
                .unwrap()
                .mean
                .to_psf()
        };
        assert!((mean(Basis::Gross) - 1_650.0).abs() < 1e-9);
        assert!((mean(Basis::Net) - 1_500.0).abs() < 1e-9);
    }

    /// By hand: 32,000 lb on 4 by 4 ft is 2,000 psf. 4 in. off is 1/12: 3,000 and 1,000. 8 in. off is the kern: 4,000 and 0.
    /// 12 in. off is 1/4: contact 3 x 1/4 = 0.75, 2 x 2,000/0.75 = 5,333 psf.
    #[test]
    fn off_one_way() {
        let near = |off: f64, largest: f64, least: f64, contact: f64| {
            let found = pad(32_000.0, 0.0, [off, 0.0]).unwrap();
            assert!((found.largest.to_psf() - largest).abs() < 0.01, "{found:?}");
            assert!((found.least.to_psf() - least).abs() < 0.01, "{found:?}");
            assert!((found.contact - contact).abs() < 1e-6, "{found:?}");
        };
        near(0.0, 2_000.0, 2_000.0, 1.0);
        near(4.0, 3_000.0, 1_000.0, 1.0);
        near(-4.0, 3_000.0, 1_000.0, 1.0);
        near(8.0, 4_000.0, 0.0, 1.0);
        near(12.0, 5_333.333, 0.0, 0.75);
        assert!(pad(32_000.0, 0.0, [23.9, 0.0]).is_ok());
        assert!(pad(32_000.0, 0.0, [24.0, 0.0]).is_err());
    }

    /// By hand: 2 in. off each way is 1/24 + 1/24: 2,000 (1 ± 0.5). 5 in. each way is 10/48, beyond the kern.
    #[test]
    fn off_both_ways_only_inside_of_the_kern() {
        let found = pad(32_000.0, 0.0, [2.0, 2.0]).unwrap();
        assert!((found.largest.to_psf() - 3_000.0).abs() < 0.01);
        assert!((found.least.to_psf() - 1_000.0).abs() < 0.01);
        assert!(pad(32_000.0, 0.0, [5.0, 5.0]).is_err());
        assert!(pad(32_000.0, 0.0, [12.0, 0.1]).is_err());
    }

    /// By hand: 16,000 lb 8 in. off with 16,000 lb of its own stands 4 in. off: 3,000 and 1,000 psf.
    #[test]
    fn its_own_weight_brings_the_load_back() {
        let found = pad(16_000.0, 16_000.0, [8.0, 0.0]).unwrap();
        assert!((found.largest.to_psf() - 3_000.0).abs() < 0.01);
    }

    /// Pressure over the touching part adds up to the load, however far off it stands.
    #[test]
    fn what_presses_adds_up() {
        for off in 0..23 {
            let found = pad(32_000.0, 0.0, [f64::from(off), 0.0]).unwrap();
            let sum = (found.largest + found.least) / 2.0 * Area::sq_ft(16.0 * found.contact);
            assert!((sum.to_lb() - 32_000.0).abs() < 0.5, "{off}: {found:?}");
        }
    }

    #[test]
    fn loads_that_lift_and_no_footing_have_no_pressure() {
        for load in [-1.0, f64::NAN, f64::INFINITY] {
            assert!(pad(load, 10.0, [0.0; 2]).is_err(), "{load}");
        }
        let none = [Length::ZERO, Length::feet(4)];
        let load = Force::kip(1.0);
        assert!(contact_pressure(Basis::Net, load, Force::ZERO, none, [Length::ZERO; 2]).is_err());
    }

    /// By hand: 24,000 lb over 1,500 psf is 16 sq ft net; over 1,500 less 150 it is 17.78 gross.
    #[test]
    fn the_area_that_a_load_needs() {
        let area = |basis, allowable| {
            area_for(basis, Force::kip(24.0), AreaLoad::psf(allowable), AreaLoad::psf(150.0))
        };
        assert!((area(Basis::Net, 1_500.0).unwrap().to_sq_ft() - 16.0).abs() < 1e-9);
        assert!((area(Basis::Gross, 1_500.0).unwrap().to_sq_ft() - 17.777_777_8).abs() < 1e-6);
        assert!(area(Basis::Gross, 150.0).is_err());
        assert!(area(Basis::Net, f64::NAN).is_err());
    }

    /// By hand: 2,000 lb on a 16 in. pier, 1.39626 sq ft, is 1,432.4 psf; 1 in. off adds 8/16 of it. 2 in. is the kern.
    #[test]
    fn a_round_pier() {
        let pier = |off: f64| {
            let (load, diameter) = (Force::kip(2.0), Length::inches(16));
            round_contact_pressure(Basis::Net, load, Force::ZERO, diameter, Length::decimal_inches(off))
        };
        assert!((pier(0.0).unwrap().largest.to_psf() - 1_432.39).abs() < 0.01);
        assert!((pier(1.0).unwrap().largest.to_psf() - 2_148.59).abs() < 0.01);
        assert!(pier(2.0).unwrap().least.to_psf().abs() < 0.01);
        assert!(pier(2.01).is_err());
    }

    /// By hand: 6 in. at the top of a 4 ft wall spreads to 0.5 + 2 x 4 = 8.5 ft. With an end 3 ft away 1.25 ft of that is cut off.
    #[test]
    fn a_point_load_spreads_down_a_wall() {
        let (bearing, height) = (Length::inches(6), Length::feet(4));
        let under = |at| point_spread(at, bearing, height, (Length::ZERO, Length::feet(40)));
        assert_eq!(under(Length::feet(20)), Ok((Length::inches(189), Length::inches(291))));
        assert_eq!(under(Length::feet(3)), Ok((Length::ZERO, Length::inches(87))));
        assert!(under(Length::feet(50)).is_err());
    }
}

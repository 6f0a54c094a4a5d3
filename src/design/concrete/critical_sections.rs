//! Where a footing is cut to look at it, and what acts on the cut.

use crate::design::NotCovered;
use crate::design::concrete::{positive, within};
use crate::units::{AreaLoad, Force, Length, Moment};

/// What stands on a footing, one way across it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Support {
    /// A concrete column, pedestal or wall.
    Concrete {
        /// Its width.
        width: Length,
    },
    /// A column on a steel base plate.
    BasePlate {
        /// Width of the column.
        column: Length,
        /// Width of the plate.
        plate: Length,
    },
    /// A masonry wall.
    Masonry {
        /// Its thickness.
        width: Length,
    },
}

/// The width between the two cuts of a footing, one on each side of what stands on it.
///
/// Source: ACI 318 table 13.2.7.1, read in a secondary copy: the face of concrete; halfway from the face of a steel column to
///         the edge of its plate; halfway from the middle to the face of masonry.
/// Range:  positive widths, a plate at least as wide as its column.
/// Result: one way across; shear sections are measured from the same place (§13.2.7.2).
pub fn critical_width(support: Support) -> Result<Length, NotCovered> {
    const CLAUSE: &str = "ACI 318 table 13.2.7.1";
    match support {
        Support::Concrete { width } => {
            positive("width of the column", width, CLAUSE)?;
            Ok(width)
        }
        Support::Masonry { width } => {
            positive("thickness of the wall", width, CLAUSE)?;
            Ok(width.half())
        }
        Support::BasePlate { column, plate } => {
            positive("width of the column", column, CLAUSE)?;
            if plate < column {
                return Err(NotCovered::LengthOutOfRange {
                    quantity: "width of the plate",
                    value: plate,
                    limit: column,
                    clause: CLAUSE,
                });
            }
            Ok((column + plate).half())
        }
    }
}

/// How far a footing reaches past the cut, on its longer side.
///
/// Source: geometry.
/// Range:  a footing that reaches past the cut on both sides, or just to it.
/// Result: zero or more. `off_centre` is how far what stands on the footing is from its middle, to either side.
pub fn cantilever(
    footing_side: Length,
    critical_width: Length,
    off_centre: Length,
) -> Result<Length, NotCovered> {
    let centred = (footing_side - critical_width).half();
    if centred < off_centre.abs() {
        return Err(NotCovered::LengthOutOfRange {
            quantity: "off centre",
            value: off_centre.abs(),
            limit: centred,
            clause: "the footing ends under what stands on it",
        });
    }
    Ok(centred + off_centre.abs())
}

/// The pressure that bends and shears a footing.
///
/// Source: ACI 318 §13.2.6 with the footing's own weight left out, which lies on the soil without bending anything.
/// Range:  a load that presses; spread evenly. For a load off centre the largest pressure under the footing takes its
///         place, on the safe side.
/// Result: factored load over the area.
pub fn net_pressure(factored_load: Force, sides: [Length; 2]) -> Result<AreaLoad, NotCovered> {
    let [one, other] = sides;
    positive("side of the footing", one, "ACI 318 13.2.6")?;
    positive("side of the footing", other, "ACI 318 13.2.6")?;
    within("Pu in lb", factored_load.to_lb(), [0.0, f64::MAX], "ACI 318 13.2.6")?;
    Ok(AreaLoad::from(factored_load / (one * other)))
}

/// The moment at the cut, of the whole width of a footing.
///
/// Source: statics of a cantilever under even pressure.
/// Range:  none.
/// Result: q b l²/2.
pub fn moment(pressure: AreaLoad, width: Length, cantilever: Length) -> Moment {
    pressure * width * cantilever * cantilever / 2.0
}

/// The shear across the whole width of a footing, some way out from the cut.
///
/// Source: statics; ACI 318 §22.5 looks at it at `d` from the cut, §14.5.5 for plain concrete at `h`.
/// Range:  none.
/// Result: the pressure beyond the section; zero where the section lies past the edge, because nothing is beyond it.
pub fn one_way_shear(pressure: AreaLoad, width: Length, cantilever: Length, section_at: Length) -> Force {
    pressure * width * (cantilever - section_at).max(Length::ZERO)
}

/// The load that punches a block out of a footing.
///
/// Source: statics; ACI 318 §22.6.4 puts the sides of the block `d/2` outside of the cut, §14.5.5 for plain concrete `h/2`.
/// Range:  positive sides, and a block that keeps inside of the footing on all four sides: one that passes an edge has the
///         shorter perimeter of an edge column. The moment of a load off centre, which §8.4.4.2 adds, is not in it.
/// Result: the load less the pressure under the block; zero where the block is as wide as the footing either way, because
///         there nothing can be punched through and the shear across the footing is all there is.
pub fn two_way_shear(
    factored_load: Force,
    footing: [Length; 2],
    critical_widths: [Length; 2],
    off_centre: [Length; 2],
    depth: Length,
) -> Result<Force, NotCovered> {
    let pressure = net_pressure(factored_load, footing)?;
    let block = critical_widths.map(|width| width + depth);
    let [block_one, block_other] = block;
    let [one, other] = footing;
    if block_one >= one || block_other >= other {
        return Ok(Force::ZERO);
    }
    for ((side, block), off) in footing.into_iter().zip(block).zip(off_centre) {
        let room = (side - block).half();
        if off.abs() > room {
            return Err(NotCovered::LengthOutOfRange {
                quantity: "off centre",
                value: off.abs(),
                limit: room,
                clause: "ACI 318 22.6.4: the punched perimeter passes the edge",
            });
        }
    }
    Ok(factored_load - pressure * (block_one * block_other))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 12 in. of concrete 12; a 4 in. column on an 8 in. plate 6; an 8 in. masonry wall 4.
    #[test]
    fn the_cut_is_nearer_under_steel_and_masonry() {
        let inches = Length::inches;
        assert_eq!(critical_width(Support::Concrete { width: inches(12) }), Ok(inches(12)));
        let on_plate = |column, plate| {
            critical_width(Support::BasePlate { column: inches(column), plate: inches(plate) })
        };
        assert_eq!(on_plate(4, 8), Ok(inches(6)));
        assert_eq!(on_plate(8, 8), Ok(inches(8)));
        assert!(on_plate(8, 6).is_err());
        assert_eq!(critical_width(Support::Masonry { width: inches(8) }), Ok(inches(4)));
        assert!(critical_width(Support::Masonry { width: Length::ZERO }).is_err());
    }

    /// By hand: 48 in. over 6 in. leaves 21 in. each side; 2 in. off centre 23 in. on the longer.
    #[test]
    fn the_longer_side_counts() {
        let reach = |off| cantilever(Length::inches(48), Length::inches(6), Length::inches(off));
        assert_eq!(reach(0), Ok(Length::inches(21)));
        assert_eq!(reach(2), Ok(Length::inches(23)));
        assert_eq!(reach(-2), Ok(Length::inches(23)));
        assert_eq!(reach(21), Ok(Length::inches(42)));
        assert!(reach(22).is_err());
        assert!(cantilever(Length::inches(5), Length::inches(6), Length::ZERO).is_err());
    }

    /// By hand: 32 kip on 4 by 4 ft is 2,000 psf. At 18 in. the moment is 2,000 x 4 x 1.5²/2 = 9,000 lb-ft; the shear 6 in. out
    /// 2,000 x 4 x 1 = 8,000 lb. A block of 12 in. punches 32,000 - 2,000 = 30,000 lb.
    #[test]
    fn a_pad_of_two_thousand() {
        let sides = [Length::feet(4); 2];
        let load = Force::kip(32.0);
        let pressure = net_pressure(load, sides).unwrap();
        assert!((pressure.to_psf() - 2_000.0).abs() < 1e-9);
        let (width, reach) = (Length::feet(4), Length::inches(18));
        assert!((moment(pressure, width, reach).to_lb_ft() - 9_000.0).abs() < 1e-6);
        assert!((one_way_shear(pressure, width, reach, Length::inches(6)).to_lb() - 8_000.0).abs() < 1e-6);
        let punched = |off| {
            let off_centre = [Length::inches(off), Length::ZERO];
            two_way_shear(load, sides, [Length::inches(4); 2], off_centre, Length::inches(8))
        };
        assert!((punched(0).unwrap().to_lb() - 30_000.0).abs() < 1e-6);
        // By hand: the block of 12 in. has 18 in. of room on each side.
        assert!(punched(18).is_ok() && punched(-18).is_ok());
        assert!(punched(19).is_err() && punched(-19).is_err());
    }

    /// Statics: beyond the edge there is no pressure, and a block as wide as the footing presses straight on the soil.
    #[test]
    fn a_section_past_the_edge_carries_nothing() {
        let pressure = AreaLoad::psf(2_000.0);
        let (width, reach) = (Length::feet(2), Length::inches(9));
        assert_eq!(one_way_shear(pressure, width, reach, Length::inches(10)), Force::ZERO);
        let (post, centred) = ([Length::inches(6); 2], [Length::ZERO; 2]);
        let deep = two_way_shear(Force::kip(8.0), [width; 2], post, centred, Length::inches(18));
        assert_eq!(deep, Ok(Force::ZERO));
    }

    #[test]
    fn no_load_no_footing_no_pressure() {
        let side = Length::feet(4);
        assert!(net_pressure(Force::kip(-1.0), [side; 2]).is_err());
        assert!(net_pressure(Force::lb(f64::NAN), [side; 2]).is_err());
        assert!(net_pressure(Force::kip(1.0), [side, Length::ZERO]).is_err());
    }
}

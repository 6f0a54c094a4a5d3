//! Strip footings by the residential code's tables: a second opinion beside the pressure that a house really brings.
//!
//! Source: IRC tables R403.1(1) and R403.1(3), rows of 30 psf and 2,000 psf, read in a secondary copy (a handout
//! on perimeter footings). Nothing else of the tables is here: other loads and soils have no value.

use crate::design::NotCovered;
use crate::units::{AreaLoad, Length};

/// What stands on the strip.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Walls {
    /// Light frame: R403.1(1).
    LightFrame,
    /// Cast concrete or fully grouted masonry: R403.1(3).
    Concrete,
}

/// What is below the first floor.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Below {
    /// A slab on the ground.
    Slab,
    /// A crawl space.
    CrawlSpace,
    /// A basement.
    Basement,
}

/// The house that a table row is about.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct House {
    /// Storeys, one to three.
    pub storeys: u32,
    /// What is below the first floor.
    pub below: Below,
    /// Its width, across the bearing walls, with a bearing wall in the middle.
    pub width: Length,
    /// Snow, or live load of the roof.
    pub roof_load: AreaLoad,
    /// Allowable pressure of the soil.
    pub soil: AreaLoad,
}

/// The size of a strip footing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Strip {
    /// Its width.
    pub width: Length,
    /// Its thickness.
    pub thickness: Length,
}

/// The least strip footing of a house by the residential code's tables.
///
/// Source: IRC tables R403.1(1) and R403.1(3), and their note b for other widths than 32 ft: 2 in. of footing width and 1 in. of
///         thickness for each 2 ft, never thinner than 6 in.; R403.1.1: never narrower than 12 in.
/// Range:  one to three storeys, 30 psf, 2,000 psf; a bearing wall in the middle of the house.
/// Result: a part of 2 ft counts as the whole, on the wide side.
pub fn least_strip(walls: Walls, house: &House) -> Result<Strip, NotCovered> {
    const CLAUSE: &str = "IRC table R403.1: only the rows of 30 psf and 2,000 psf are here";
    let is = |load: AreaLoad, row: f64| (load.to_psf() - row).abs() < 1e-6;
    if !is(house.roof_load, 30.0) {
        return Err(NotCovered::NoRule { what: "another roof or snow load than 30 psf", clause: CLAUSE });
    }
    if !is(house.soil, 2_000.0) {
        return Err(NotCovered::NoRule { what: "another soil than 2,000 psf", clause: CLAUSE });
    }
    if !house.width.is_positive() {
        return Err(NotCovered::LengthOutOfRange {
            quantity: "width of the house",
            value: house.width,
            limit: Length::ZERO,
            clause: CLAUSE,
        });
    }
    let Some((_, _, width, thickness)) =
        rows(walls).iter().find(|(storeys, below, _, _)| *storeys == house.storeys && *below == house.below)
    else {
        return Err(NotCovered::NoRule { what: "more than three storeys", clause: CLAUSE });
    };
    let steps = ((house.width - Length::feet(32)) / Length::feet(2)).ceil();
    let inch = Length::inches(1);
    Ok(Strip {
        width: (inch.times(*width) + inch.scaled(2.0 * steps)).max(Length::inches(12)),
        thickness: (inch.times(*thickness) + inch.scaled(steps)).max(Length::inches(6)),
    })
}

/// Storeys, what is below, width and thickness in inches.
type Row = (u32, Below, i64, i64);

const fn rows(walls: Walls) -> &'static [Row] {
    use Below::{Basement, CrawlSpace, Slab};
    match walls {
        Walls::LightFrame => &[
            (1, Slab, 12, 6),
            (1, CrawlSpace, 12, 6),
            (1, Basement, 14, 6),
            (2, Slab, 12, 6),
            (2, CrawlSpace, 13, 6),
            (2, Basement, 17, 6),
            (3, Slab, 12, 6),
            (3, CrawlSpace, 15, 6),
            (3, Basement, 20, 6),
        ],
        Walls::Concrete => &[
            (1, Slab, 12, 6),
            (1, CrawlSpace, 15, 6),
            (1, Basement, 20, 6),
            (2, Slab, 18, 6),
            (2, CrawlSpace, 22, 6),
            (2, Basement, 27, 8),
            (3, Slab, 25, 7),
            (3, CrawlSpace, 29, 9),
            (3, Basement, 33, 12),
        ],
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const HOUSE: House = House {
        storeys: 2,
        below: Below::Basement,
        width: Length::feet(32),
        roof_load: AreaLoad::psf(30.0),
        soil: AreaLoad::psf(2_000.0),
    };

    fn strip(house: House) -> Result<[i64; 2], NotCovered> {
        least_strip(Walls::LightFrame, &house).map(|strip| {
            [strip.width, strip.thickness].map(|length| length.to_units() / Length::UNITS_PER_INCH)
        })
    }

    /// By hand from note b: 17 by 6 at 32 ft; 40 ft is four steps, 25 by 10; 33 ft one step, 19 by 7; 28 ft two less, 13 by 6.
    #[test]
    fn wider_houses_have_wider_footings() {
        for (feet, size) in [(32, [17, 6]), (40, [25, 10]), (33, [19, 7]), (28, [13, 6]), (12, [12, 6])] {
            assert_eq!(strip(House { width: Length::feet(feet), ..HOUSE }), Ok(size), "{feet} ft");
        }
    }

    #[test]
    fn other_rows_have_no_value() {
        assert!(strip(House { storeys: 4, ..HOUSE }).is_err());
        assert!(strip(House { storeys: 0, ..HOUSE }).is_err());
        assert!(strip(House { soil: AreaLoad::psf(1_500.0), ..HOUSE }).is_err());
        assert!(strip(House { soil: AreaLoad::psf(f64::NAN), ..HOUSE }).is_err());
        assert!(strip(House { roof_load: AreaLoad::psf(50.0), ..HOUSE }).is_err());
        assert!(strip(House { width: Length::ZERO, ..HOUSE }).is_err());
    }
}

//! Strip footings of the residential code before 2015, where that edition is still in force.
//!
//! The tables of later editions are with the other clauses of footings, in [`crate::design::concrete::footing_tables`].

use crate::design::NotCovered;
use crate::units::{AreaLoad, Length};

/// What the walls above a footing are made of, in editions before 2015.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Walls {
    /// Light frame.
    Frame,
    /// Light frame with brick veneer, or hollow masonry of 8 in.
    VeneerOrHollow,
    /// Solid or fully grouted masonry of 8 in.
    Solid,
}

/// The least width of a strip footing, by the superseded table.
///
/// Source: table R403.1 of the residential code before 2015, as adopted, read in a secondary copy. Its cell for two storeys
/// of solid masonry on 1500 psf is misprinted in that copy and left out.
/// Range:  one to three storeys; soil of 1500 psf or better, the column next below holds.
/// Result: the width.
pub fn least_width(walls: Walls, storeys: u32, soil: AreaLoad) -> Result<Length, NotCovered> {
    const CLAUSE: &str = "R403.1 before 2015";
    let psf = soil.to_psf();
    let column = SOILS.iter().rposition(|listed| *listed <= psf).ok_or(NotCovered::OutOfRange {
        quantity: "soil, psf",
        value: psf,
        limit: 1_500.0,
        clause: CLAUSE,
    })?;
    WIDTHS
        .iter()
        .find(|row| row.0 == walls && row.1 == storeys)
        .and_then(|row| row.2.get(column).copied().flatten())
        .map(Length::inches)
        .ok_or(NotCovered::NoRule { what: "a footing of these walls and storeys", clause: CLAUSE })
}

/// Soil, in psf, of the columns of [`WIDTHS`].
const SOILS: [f64; 4] = [1_500.0, 2_000.0, 3_000.0, 4_000.0];

/// Walls, storeys, widths in inches.
const WIDTHS: &[(Walls, u32, [Option<i64>; 4])] = &[
    (Walls::Frame, 1, [Some(12), Some(12), Some(12), Some(12)]),
    (Walls::Frame, 2, [Some(15), Some(12), Some(12), Some(12)]),
    (Walls::Frame, 3, [Some(23), Some(17), Some(12), Some(12)]),
    (Walls::VeneerOrHollow, 1, [Some(12), Some(12), Some(12), Some(12)]),
    (Walls::VeneerOrHollow, 2, [Some(21), Some(16), Some(12), Some(12)]),
    (Walls::VeneerOrHollow, 3, [Some(32), Some(24), Some(16), Some(12)]),
    (Walls::Solid, 1, [Some(16), Some(12), Some(12), Some(12)]),
    (Walls::Solid, 2, [None, Some(21), Some(14), Some(12)]),
    (Walls::Solid, 3, [Some(42), Some(32), Some(21), Some(16)]),
];

#[cfg(test)]
mod tests {
    use super::*;

    fn solid(storeys: u32, psf: f64) -> Result<Length, NotCovered> {
        least_width(Walls::Solid, storeys, AreaLoad::psf(psf))
    }

    /// Table R403.1 before 2015, read in a secondary copy: three storeys of solid masonry, 42 in. on 1500 psf.
    #[test]
    fn a_published_width() {
        assert_eq!(solid(3, 1_500.0), Ok(Length::inches(42)));
        assert_eq!(solid(2, 2_500.0), Ok(Length::inches(21)), "the column next below");
        assert_eq!(solid(3, 9_000.0), Ok(Length::inches(16)));
    }

    #[test]
    fn beyond_the_table_there_is_no_width() {
        assert!(solid(3, 1_499.0).is_err());
        assert!(solid(3, f64::NAN).is_err());
        assert!(solid(4, 2_000.0).is_err());
        assert!(solid(2, 1_500.0).is_err(), "misprinted in the copy");
    }
}

//! Headers and girders of outer walls that the residential code tabulates.
//!
//! Source: table R602.7(1) of the residential code (2018 and 2021), read in a secondary copy: No.2 lumber of Douglas
//! fir-larch, hem-fir, southern pine or spruce-pine-fir; two rows of what they support, ground snow of 50 and 70 psf.
//! Other rows and columns of the table were not read.

use crate::design::NotCovered;
use crate::design::prescriptive::headers::Supports::{Roof, RoofAndFloor};
use crate::units::{AreaLoad, Length};

/// What a header holds up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Supports {
    /// Roof and ceiling.
    Roof,
    /// Roof, ceiling, and one floor that bears on the middle of the house as well.
    RoofAndFloor,
}

/// A tabulated header.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Header {
    /// The longest span.
    pub span: Length,
    /// Jack studs at each end.
    pub jack_studs: u32,
}

/// The longest span of a header of 2 in. plies, by the nominal depth of a ply.
///
/// Source: table R602.7(1); that building widths between two columns may be interpolated is its note.
/// Range:  ground snow up to 70 psf (the column next above holds), building width 12 to 36 ft, measured across the
///         ridge; top of the header held: one that is not keeps 0.70 of the span of 2x8 and deeper ([`UNHELD`]).
/// Result: span, and jack studs of the wider column.
pub fn header(
    supports: Supports,
    plies: u32,
    nominal_depth: u32,
    ground_snow: AreaLoad,
    building_width: Length,
) -> Result<Header, NotCovered> {
    let [fifty, seventy] = ROWS
        .iter()
        .find(|row| row.supports == supports && row.plies == plies && row.nominal_depth == nominal_depth)
        .map(|row| row.cells)
        .ok_or(NotCovered::NoRule { what: "a header of this make", clause: CLAUSE })?;
    let psf = ground_snow.to_psf();
    let [narrow, middle, wide] = if (0.0..=50.0).contains(&psf) {
        fifty
    } else if 50.0 < psf && psf <= 70.0 {
        seventy
    } else {
        return Err(NotCovered::OutOfRange {
            quantity: "ground snow, psf",
            value: psf,
            limit: 70.0,
            clause: CLAUSE,
        });
    };
    let feet = Length::feet;
    match building_width {
        width if width < feet(12) => Err(out_of_width(width, feet(12))),
        width if width <= feet(24) => Ok(between(narrow, middle, width - feet(12))),
        width if width <= feet(36) => Ok(between(middle, wide, width - feet(24))),
        width => Err(out_of_width(width, feet(36))),
    }
}

/// The share of its span that a header of 2x8 and deeper keeps when nothing holds its top: note of table R602.7(1).
pub const UNHELD: f64 = 0.70;

const CLAUSE: &str = "R602.7(1), as far as it is here";

const fn out_of_width(value: Length, limit: Length) -> NotCovered {
    NotCovered::LengthOutOfRange { quantity: "building width", value, limit, clause: CLAUSE }
}

/// A cell between two columns 12 ft apart, `past` the narrower one.
fn between(narrow: Cell, wide: Cell, past: Length) -> Header {
    let share = past / Length::feet(12);
    let (narrow_span, wide_span) = (Length::inches(narrow.0), Length::inches(wide.0));
    let jack_studs = if past == Length::ZERO { narrow.1 } else { wide.1 };
    Header { span: narrow_span - (narrow_span - wide_span).scaled(share), jack_studs }
}

/// Span in inches, jack studs at each end.
type Cell = (i64, u32);

struct Row {
    supports: Supports,
    plies: u32,
    nominal_depth: u32,
    /// Ground snow 50 and 70 psf; building width 12, 24, 36 ft.
    cells: [[Cell; 3]; 2],
}

const fn row(supports: Supports, plies: u32, nominal_depth: u32, cells: [[Cell; 3]; 2]) -> Row {
    Row { supports, plies, nominal_depth, cells }
}

const ROWS: &[Row] = &[
    row(Roof, 2, 6, [[(61, 1), (47, 1), (39, 2)], [(54, 1), (42, 2), (35, 2)]]),
    row(Roof, 2, 8, [[(77, 1), (60, 2), (50, 2)], [(69, 1), (53, 2), (45, 2)]]),
    row(Roof, 2, 10, [[(92, 2), (71, 2), (59, 2)], [(81, 2), (63, 2), (53, 2)]]),
    row(Roof, 2, 12, [[(108, 2), (83, 2), (70, 2)], [(96, 2), (74, 2), (62, 3)]]),
    row(Roof, 3, 10, [[(115, 1), (88, 2), (74, 2)], [(102, 1), (79, 2), (66, 2)]]),
    row(Roof, 3, 12, [[(135, 2), (104, 2), (88, 2)], [(120, 2), (93, 2), (78, 2)]]),
    row(RoofAndFloor, 2, 6, [[(53, 1), (42, 2), (36, 2)], [(49, 1), (39, 2), (33, 2)]]),
    row(RoofAndFloor, 2, 8, [[(67, 2), (53, 2), (45, 2)], [(62, 2), (49, 2), (42, 2)]]),
    row(RoofAndFloor, 2, 10, [[(80, 2), (63, 2), (53, 2)], [(73, 2), (58, 2), (49, 2)]]),
    row(RoofAndFloor, 2, 12, [[(94, 2), (74, 2), (63, 3)], [(86, 2), (68, 2), (58, 3)]]),
    row(RoofAndFloor, 3, 10, [[(100, 1), (79, 2), (67, 2)], [(92, 2), (73, 2), (62, 2)]]),
    row(RoofAndFloor, 3, 12, [[(118, 2), (92, 2), (79, 2)], [(108, 2), (85, 2), (73, 2)]]),
];

#[cfg(test)]
mod tests {
    use super::*;

    fn two_by_ten(snow: f64, feet: i64) -> Result<Header, NotCovered> {
        header(Roof, 2, 10, AreaLoad::psf(snow), Length::feet(feet))
    }

    /// Table R602.7(1), read in two secondary copies: 2-2x10 under roof and ceiling, 50 psf, 24 ft: 5 ft 11 in. By its
    /// note, 18 ft is halfway from 7 ft 8 in. to it: 81.5 in.
    #[test]
    fn a_published_cell_and_one_between() {
        assert_eq!(two_by_ten(50.0, 24), Ok(Header { span: Length::inches(71), jack_studs: 2 }));
        assert_eq!(two_by_ten(50.0, 18).unwrap().span, Length::sixteenths(81, 8));
        assert_eq!(two_by_ten(55.0, 24), two_by_ten(70.0, 24));
        assert_eq!(two_by_ten(0.0, 24), two_by_ten(50.0, 24));
    }

    #[test]
    fn beyond_the_table_there_is_no_span() {
        assert!(two_by_ten(70.1, 24).is_err());
        assert!(two_by_ten(f64::NAN, 24).is_err());
        assert!(two_by_ten(50.0, 11).is_err());
        assert!(two_by_ten(50.0, 37).is_err());
        assert!(two_by_ten(50.0, 12).is_ok() && two_by_ten(50.0, 36).is_ok());
        assert!(header(Roof, 4, 10, AreaLoad::psf(50.0), Length::feet(24)).is_err());
    }

    #[test]
    fn every_row_falls_with_width_and_snow() {
        for row in ROWS {
            for cells in row.cells {
                assert!(cells.windows(2).all(|pair| pair[0].0 > pair[1].0 && pair[0].1 <= pair[1].1));
            }
            let [fifty, seventy] = row.cells;
            assert!(fifty.iter().zip(seventy).all(|(fifty, seventy)| fifty.0 > seventy.0));
        }
    }
}

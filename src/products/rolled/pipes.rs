//! Pipes, standard (STD) and extra strong (XS), by nominal size.
//!
//! Source: AISC Shapes Database v15.0 in US units, from a copy open to the public. Version 16.0 has the same values for
//! these shapes.
//! The outside diameter of the 5 in. size is published as 5.563, rounded from 5-9/16.

use crate::products::rolled::{Axis, Outline, Rolled};
use crate::units::{Area, Length, LineLoad, SecondMoment};

/// The pipes, by nominal size.
#[allow(clippy::approx_constant, reason = "a published size may come near a multiple of pi")]
#[rustfmt::skip] // one row a line, as in the table
pub const PIPES: &[Rolled] = &[
    shape("Pipe3STD", 7.58, 2.07, [3.0, 3.5, 0.216, 0.201], [2.85, 1.63, 2.19, 1.17], 5.69),
    shape("Pipe3XS", 10.3, 2.83, [3.0, 3.5, 0.3, 0.28], [3.7, 2.11, 2.91, 1.14], 7.4),
    shape("Pipe3-1/2STD", 9.12, 2.5, [3.5, 4.0, 0.226, 0.211], [4.52, 2.26, 3.03, 1.34], 9.04),
    shape("Pipe3-1/2XS", 12.5, 3.43, [3.5, 4.0, 0.318, 0.296], [5.94, 2.97, 4.07, 1.31], 11.9),
    shape("Pipe4STD", 10.8, 2.96, [4.0, 4.5, 0.237, 0.221], [6.82, 3.03, 4.05, 1.51], 13.6),
    shape("Pipe4XS", 15.0, 4.14, [4.0, 4.5, 0.337, 0.315], [9.12, 4.05, 5.53, 1.48], 18.2),
    shape("Pipe5STD", 14.6, 4.01, [5.0, 5.563, 0.258, 0.241], [14.3, 5.14, 6.83, 1.88], 28.6),
    shape("Pipe5XS", 20.8, 5.73, [5.0, 5.563, 0.375, 0.349], [19.5, 7.02, 9.5, 1.85], 39.0),
    shape("Pipe8XS", 43.4, 11.9, [8.0, 8.625, 0.5, 0.465], [100.0, 23.1, 31.0, 2.89], 199.0),
    shape("Pipe10STD", 40.5, 11.5, [10.0, 10.75, 0.365, 0.34], [151.0, 28.1, 36.9, 3.68], 302.0),
];

/// One row: mark, lb/ft, in2; inches of nominal size, outside diameter, nominal and design wall; in4, in3, in3, in. of
/// either axis; in4 of torsion.
const fn shape(
    mark: &'static str,
    weight: f64,
    area: f64,
    [nominal, outside, wall, design_wall]: [f64; 4],
    axis: [f64; 4],
    torsion: f64,
) -> Rolled {
    Rolled {
        mark,
        weight: LineLoad::plf(weight),
        area: Area::sq_in(area),
        outline: Outline::Pipe {
            nominal: Length::decimal_inches(nominal),
            outside: Length::decimal_inches(outside),
            wall: Length::decimal_inches(wall),
            design_wall: Length::decimal_inches(design_wall),
        },
        major: Axis::published(axis),
        minor: Axis::published(axis),
        torsion: SecondMoment::in4(torsion),
    }
}

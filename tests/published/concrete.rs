//! Footings, soil, foundation walls, loads and what bears on posts: clauses of ACI 318, ASCE 7 and NDS, tables of the
//! building codes, statics. Steel's cases stand in the same file; their checker stands in `steel.rs`.

#[path = "concrete/footings.rs"]
mod footings;
#[path = "concrete/loads.rs"]
mod loads;
#[path = "concrete/soil.rs"]
mod soil;
#[path = "concrete/walls.rs"]
mod walls;
#[path = "concrete/wood_bearing.rs"]
mod wood_bearing;

use storyrod::units::Length;

use crate::cases::Case;
use crate::{Book, Checker, steel};

pub const BOOK: Book = Book {
    text: include_str!("../data/steel-and-concrete.toml"),
    checkers: &[
        Checker { standard: "ACI 318", check: footings::check },
        Checker { standard: "building codes, soil and strip footings", check: soil::check },
        Checker { standard: "building codes, foundation walls", check: walls::check },
        Checker { standard: "ASCE 7", check: loads::check },
        Checker { standard: "NDS", check: wood_bearing::check },
        Checker { standard: "AISC 360 and its design guides", check: steel::check },
    ],
    unanswered: &[
        ("SB-*", "continuous members have a test of their own"),
        ("PT-*", "continuous members have a test of their own"),
        ("HOUSE-HA", "a takedown through a whole house has a test of its own"),
    ],
};

/// An input in inches.
fn inches(case: &Case, key: &str) -> Length {
    Length::decimal_inches(case.number(key))
}

/// An input in feet.
fn feet(case: &Case, key: &str) -> Length {
    Length::decimal_inches(case.number(key) * 12.0)
}

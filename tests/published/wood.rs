//! Wood, floors and stairs: span tables, clauses of the NDS, sizes, and limits of the residential code.

#[path = "wood/clauses.rs"]
mod clauses;
#[path = "wood/limits.rs"]
mod limits;
#[path = "wood/products.rs"]
mod products;
#[path = "wood/spans.rs"]
mod spans;
#[path = "wood/tables.rs"]
mod tables;

use storyrod::units::Length;

use crate::cases::Case;
use crate::{Book, Checker};

pub const BOOK: Book = Book {
    text: include_str!("../data/wood-and-floors.toml"),
    checkers: &[
        Checker { standard: "residential code, joist spans", check: spans::check },
        Checker { standard: "residential code, other tables", check: tables::check },
        Checker { standard: "residential code, limits", check: limits::check },
        Checker { standard: "NDS", check: clauses::check },
        Checker { standard: "sizes, weights and products", check: products::check },
    ],
    unanswered: &[
        ("r5023-3-2-*", "cantilever tables were read in copies of low grade alone: none is in the crate"),
        ("ukna-a-*", "a European annex on floor vibration: the crate takes one criterion"),
        ("cd-impact", "impact is no case of gravity load that is followed down"),
        ("stair-count-9ft", "the count of risers belongs to a spec: the stair tests have it"),
        ("fire-*", "membranes below floors are outside of the format"),
        ("anchor-count-22ft", "bolts are declared one by one: the sill rules count them"),
        ("r3017-*", "ceilings and rafters are outside of the format"),
        ("subfloor-16", "panel thickness by spacing is no limit of a profile"),
        ("dead-2x*", "dead load is declared, not estimated from an assembly"),
        ("dead-same-*", "dead load is declared, not estimated from an assembly"),
        ("dead-tile", "dead load is declared, not estimated from an assembly"),
        ("snow-flat", "roof snow is declared, not worked out from ground snow"),
    ],
};

/// An input in inches.
fn inches(case: &Case, key: &str) -> Length {
    Length::decimal_inches(case.number(key))
}

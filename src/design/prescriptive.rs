//! Tables of the residential code, as a second opinion beside a calculation.
//!
//! Only cells that were read in a usable copy are here. What is not has a name below, so that a check can say which table
//! to open instead of guessing.

pub mod footings;
pub mod headers;
pub mod joist_spans;

use crate::design::NotCovered;

/// The tables of cantilevered joists: read in a copy of low grade, or not at all.
pub const CANTILEVERS: NotCovered =
    not_here("cantilevered joists by table", "R502.3.3(1) and (2), table not available here");

/// The table of girders and headers in inner walls: from memory at best.
pub const INNER_GIRDERS: NotCovered =
    not_here("girders and headers of inner walls by table", "R602.7(2), table not available here");

const fn not_here(what: &'static str, clause: &'static str) -> NotCovered {
    NotCovered::NoRule { what, clause }
}

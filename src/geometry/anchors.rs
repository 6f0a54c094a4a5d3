//! Anchor bolts: what wood they go through, and how near the concrete's edge they stand.

use crate::geometry::band::{self, Band};
use crate::model::Model;
use crate::model::element::Common;
use crate::model::field::Field;
use crate::model::foundation::{Anchor, Wall};
use crate::text::Span;
use crate::units::Length;

/// The bolts along one wall or shelf.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bolts<'a> {
    /// The wall or shelf.
    pub of: &'a Common,
    /// What is said of them.
    pub anchor: &'a Anchor,
    /// Where.
    pub span: Span,
    /// The wood they go through, with its gasket: sills, else the soles that stand on the concrete. `None` while that
    /// isn't known.
    pub wood: Option<Length>,
    /// From the middle of the sill, where they stand, to the nearest edge of the concrete. `None` while it isn't known.
    pub edge: Option<Length>,
}

/// Every line of bolts in a house.
pub fn bolts(model: &Model) -> Vec<Bolts<'_>> {
    let walls = model.walls.iter().filter_map(|wall| {
        let (anchor, span) = wall.anchor.stated()?;
        Some(Bolts {
            of: &wall.common,
            anchor,
            span,
            wood: wood_on(model, wall),
            edge: edge_of_wall(model, wall),
        })
    });
    let shelves = model.shelves.iter().filter_map(|shelf| {
        let (anchor, span) = shelf.anchor.stated()?;
        let wood = shelf.sill.value().and_then(|sill| sill.height());
        let edge = || {
            let strip = band::of(model, shelf.common.id)?;
            let middle = band::bearing_surface(model, shelf.common.id)?.centre();
            let is_high = band::is_high_side(shelf.side?, strip.axis)?;
            // Behind it the wall goes on: only the nose is an edge.
            Some(if is_high { strip.across.1 - middle } else { middle - strip.across.0 })
        };
        Some(Bolts {
            of: &shelf.common,
            anchor,
            span,
            wood,
            edge: edge().filter(|_| shelf.sill.value().is_some()),
        })
    });
    walls.chain(shelves).collect()
}

fn wood_on(model: &Model, wall: &Wall) -> Option<Length> {
    match &wall.sill {
        Field::Stated(sill, _) | Field::Assumed(sill, _) => sill.height(),
        Field::Broken(_) => None,
        Field::Missing => {
            let mut standing = model.walls.iter().filter(|above| {
                above.stands_on.value().and_then(|stand| stand.on.reference()?.target) == Some(wall.common.id)
            });
            standing.find_map(|above| above.sole.value()?.height())
        }
    }
}

/// From the middle of a wall's sill to the nearer face of the concrete there: shelves take theirs away.
fn edge_of_wall(model: &Model, wall: &Wall) -> Option<Length> {
    wall.sill.value()?;
    let whole = band::of_wall(wall)?;
    let middle = band::bearing_surface(model, wall.common.id)?.centre();
    let cut_by = |shelf: &&crate::model::foundation::Shelf| {
        shelf.wall.value().and_then(|of| of.target) == Some(wall.common.id)
    };
    let mut concrete = whole.across;
    for shelf in model.shelves.iter().filter(cut_by) {
        let Band { across: (low, high), .. } = band::of(model, shelf.common.id)?;
        concrete = if low == whole.across.0 { (high, concrete.1) } else { (concrete.0, low) };
    }
    Some((middle - concrete.0).min(concrete.1 - middle))
}

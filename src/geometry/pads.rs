//! Footings in plan: pads and piers, wider places of strips, and the strips themselves.

use crate::geometry::band::{self, Band};
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::foundation::{Footing, FootingSize, Slab};
use crate::model::plan::{Axis, PlanPoint, PlanRect};
use crate::syntax::value::Side;
use crate::text::Span;
use crate::units::Length;

/// One pad, pier or wider place of a strip.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Pad {
    /// The footing it is poured as.
    pub footing: ElementId,
    /// What it covers; the square round it for a round pier.
    pub rect: PlanRect,
}

/// One strip under one wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Strip {
    /// The footing it is poured as.
    pub footing: ElementId,
    /// The wall on it.
    pub wall: ElementId,
    /// What it covers: as long as the wall with its corners, as wide as the footing.
    pub band: Band,
}

/// The pads and piers of a footing.
pub fn pads_of(footing: &Footing) -> Vec<Pad> {
    let sides = match footing.size.get() {
        Some(FootingSize::Pad(x, y, _)) => (x, y),
        Some(FootingSize::Round(diameter, _)) => (diameter, diameter),
        Some(FootingSize::Strip(..)) | None => return Vec::new(),
    };
    let pad = |at: &PlanPoint| Pad { footing: footing.common.id, rect: around(at, sides, at.span) };
    footing.at.iter().map(pad).collect()
}

/// The strips of a footing, one a wall.
pub fn strips_of(model: &Model, footing: &Footing) -> Vec<Strip> {
    let Some(FootingSize::Strip(width, _)) = footing.size.get() else { return Vec::new() };
    let walls = footing.under.iter().filter_map(|wall| model.wall(wall.target?));
    walls
        .filter_map(|wall| {
            let band = band::of_wall(wall)?;
            let centre = band.centre() + offset(footing, band.axis);
            let across = (centre - width.half(), centre - width.half() + width);
            Some(Strip { footing: footing.common.id, wall: wall.common.id, band: Band { across, ..band } })
        })
        .collect()
}

/// The slab that covers a place.
pub fn slab_over<'a>(model: &'a Model, at: &PlanPoint) -> Option<&'a Slab> {
    model.slabs.iter().find(|slab| slab.fill.iter().any(|rect| rect.contains(at)))
}

fn around(at: &PlanPoint, (x, y): (Length, Length), span: Span) -> PlanRect {
    let range = |middle: Length, side: Length| (middle - side.half(), middle - side.half() + side);
    PlanRect { x: range(at.x, x), y: range(at.y, y), span }
}

/// How far a strip lies off its wall's centre, across a wall along `axis`.
fn offset(footing: &Footing, axis: Axis) -> Length {
    match (footing.offset.get(), axis) {
        (Some((by, Side::North)), Axis::X) | (Some((by, Side::East)), Axis::Y) => by,
        (Some((by, Side::South)), Axis::X) | (Some((by, Side::West)), Axis::Y) => -by,
        (Some(_), _) | (None, _) => Length::ZERO,
    }
}

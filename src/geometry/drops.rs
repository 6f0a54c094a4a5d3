//! Floors that step from one another, and the concrete that steps under them.

use crate::geometry::Geometry;
use crate::geometry::carried::Carried;
use crate::geometry::surfaces::{Surface, joist_bottom};
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::field::Field;
use crate::model::foundation::Sill;
use crate::text::Span;
use crate::units::Length;

/// A step in the concrete between two floors.
#[derive(Clone, Debug, PartialEq)]
pub struct WallStep {
    /// The higher side.
    pub upper: StepSide,
    /// The lower side.
    pub lower: StepSide,
    /// From the stated level of the one down to that of the other.
    pub stated: Length,
    /// From finish to finish.
    pub finishes_apart: Option<Length>,
}

/// One side of a step.
#[derive(Clone, Debug, PartialEq)]
pub struct StepSide {
    /// The floor.
    pub floor: ElementId,
    /// Its joists.
    pub joists: ElementId,
    /// The wall or shelf they bear on.
    pub carrier: ElementId,
    /// Where the carrier's level stands.
    pub span: Span,
    /// Elevation of the deck.
    pub deck: Length,
    /// Deck, joists and sills, from the deck down to the concrete.
    pub stack: Length,
}

impl WallStep {
    /// What the two floors need.
    pub fn needed(&self) -> Length {
        self.decks_apart() + self.lower.stack - self.upper.stack
    }

    /// From deck to deck.
    pub fn decks_apart(&self) -> Length {
        self.upper.deck - self.lower.deck
    }
}

/// The pairs of floors that step: the upper, the lower, as their `steps` lines and their levels say.
pub fn stepping_floors(model: &Model, geometry: &Geometry) -> Vec<(ElementId, ElementId)> {
    let finish = |floor: ElementId| {
        let levels = geometry.floors.get(floor.index as usize)?;
        levels.finish.as_ref().ok().map(|finish| finish.total())
    };
    let steps = model.floors.iter().filter_map(|floor| {
        let other = model.floor(floor.steps.value()?.from.target?)?.common.id;
        let is_upper = finish(floor.common.id)? >= finish(other)?;
        Some(if is_upper { (floor.common.id, other) } else { (other, floor.common.id) })
    });
    steps.collect()
}

/// Where floors step with the concrete under them stated on both sides.
pub fn wall_steps(model: &Model, geometry: &Geometry, carried: &Carried<'_>) -> Vec<WallStep> {
    let finish = |floor: ElementId| {
        let levels = geometry.floors.get(floor.index as usize)?;
        levels.finish.as_ref().ok().map(|finish| finish.total())
    };
    stepping_floors(model, geometry)
        .into_iter()
        .filter_map(|(upper, lower)| {
            let (upper_side, upper_level) = side_of(model, geometry, carried, upper)?;
            let (lower_side, lower_level) = side_of(model, geometry, carried, lower)?;
            let finishes_apart = finish(upper).zip(finish(lower)).map(|(upper, lower)| upper - lower);
            let stated = upper_level - lower_level;
            Some(WallStep { upper: upper_side, lower: lower_side, stated, finishes_apart })
        })
        .collect()
}

/// The first wall or shelf of stated level under a floor, and that level: a shelf before a wall, for it is cut for the
/// step.
fn side_of(
    model: &Model,
    geometry: &Geometry,
    carried: &Carried<'_>,
    floor: ElementId,
) -> Option<(StepSide, Length)> {
    let deck = geometry.floors.get(floor.index as usize)?.subfloor.as_ref().ok()?.total();
    let fields = carried.fields_of(floor);
    let carriers = fields.iter().flat_map(|joists| {
        let on = joists.supports.iter().filter_map(|support| support.on.reference()?.target);
        on.filter_map(move |on| Some((joists, concrete(model, on)?)))
    });
    let (joists, carrier) = carriers.min_by_key(|(_, carrier)| !carrier.is_shelf)?;
    let bottom = joist_bottom(&geometry.floors, joists).ok()?.total();
    let sill = match carrier.sill.value() {
        Some(sill) => sill.height()?,
        None if carrier.sill.is_missing() => Length::ZERO,
        None => return None,
    };
    let level = geometry.surfaces.of(carrier.id, Surface::Top).ok()?.total();
    let side = StepSide {
        floor,
        joists: joists.common.id,
        carrier: carrier.id,
        span: carrier.span,
        deck,
        stack: deck - bottom + sill,
    };
    Some((side, level))
}

/// Concrete of stated level that joists bear on.
struct Concrete<'a> {
    id: ElementId,
    span: Span,
    sill: &'a Field<Sill>,
    is_shelf: bool,
}

fn concrete(model: &Model, on: ElementId) -> Option<Concrete<'_>> {
    if let Some(shelf) = model.shelf(on) {
        let (_, span) = shelf.top.stated()?;
        return Some(Concrete { id: on, span, sill: &shelf.sill, is_shelf: true });
    }
    let wall = model.wall(on).filter(|wall| wall.kind.get().is_some_and(|kind| kind.is_mineral()))?;
    let (_, span) = wall.top.stated()?;
    Some(Concrete { id: on, span, sill: &wall.sill, is_shelf: false })
}

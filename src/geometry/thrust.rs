//! Ground that leans on a wall, and the floor that is to hold its top.

use crate::geometry::Geometry;
use crate::geometry::band::{self, Band, is_high_side};
use crate::geometry::carried::Carried;
use crate::geometry::enclosure::{lies_on, outdoor_grades};
use crate::geometry::surfaces::{Surface, joist_bottom, joist_top};
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::foundation::Wall;
use crate::model::framing::Joists;
use crate::model::site::Below;
use crate::model::support::Contact;
use crate::syntax::value::Side;
use crate::units::Length;

/// How far a field's edge may lie from a wall and still belong to it: furring, a first joist held off.
const REACH: Length = Length::inches(4);

/// Joists this far above or below a wall's top are another storey's.
const STOREY: Length = Length::feet(2);

/// A wall that ground leans on, with the joists that run along its top.
#[derive(Clone, Copy, Debug)]
pub struct Leaning<'a> {
    /// The wall.
    pub wall: &'a Wall,
    /// The joists beside it.
    pub joists: &'a Joists,
    /// How much higher the ground is outside than what is inside at the wall's foot.
    pub fill: Length,
    /// Blocking in the first bays holds it.
    pub is_blocked: bool,
}

/// Concrete walls with ground on one side whose top is beside joists that run along them, and carries none that run to
/// them.
pub fn leaning_walls<'a>(model: &'a Model, geometry: &Geometry, carried: &Carried<'a>) -> Vec<Leaning<'a>> {
    let walls = model.walls.iter().filter(|wall| wall.kind.get().is_some_and(|kind| kind.is_mineral()));
    walls.filter_map(|wall| leaning(model, geometry, carried, wall)).collect()
}

fn leaning<'a>(
    model: &'a Model,
    geometry: &Geometry,
    carried: &Carried<'a>,
    wall: &'a Wall,
) -> Option<Leaning<'a>> {
    let band = band::of_wall(wall)?;
    let top = geometry.surfaces.of(wall.common.id, Surface::Top).ok()?.total();
    let highest = outdoor_grades(model, wall).into_iter().max_by_key(|grade| grade.elevation)?;
    let outside_is_high = is_high_side(highest.side?, band.axis)?;
    if is_held_by_joists(model, carried, wall) {
        return None;
    }
    let joists = model.joists.iter().find(|joists| {
        let level = joist_bottom(&geometry.floors, joists).ok().zip(joist_top(&geometry.floors, joists).ok());
        let is_at_top = level.is_some_and(|(bottom, joist_top)| {
            bottom.total() - top < STOREY && top - joist_top.total() < STOREY
        });
        is_at_top && joists.run.get() == Some(band.axis) && runs_beside(joists, &band, !outside_is_high)
    })?;
    let inside = inside_level(model, geometry, joists, wall, &band, outside_is_high)?;
    let is_blocked = joists.blocked.iter().any(|blocking| {
        blocking.value.beside.as_ref().and_then(|beside| beside.target) == Some(wall.common.id)
    });
    Some(Leaning { wall, joists, fill: highest.elevation - inside, is_blocked })
}

/// Joists end on the wall, on a shelf in it or on a ledger at it.
fn is_held_by_joists(model: &Model, carried: &Carried<'_>, wall: &Wall) -> bool {
    let id = Some(wall.common.id);
    let holds = |on: ElementId| !carried.joists_on(on).is_empty();
    let named = model.joists.iter().flat_map(|joists| &joists.supports).any(|support| {
        matches!(support.by, Contact::Hangs(_)) && support.on.reference().and_then(|on| on.target) == id
    });
    let mut shelves = model.shelves.iter();
    named
        || holds(wall.common.id)
        || shelves.any(|shelf| shelf.wall.value().and_then(|of| of.target) == id && holds(shelf.common.id))
}

fn runs_beside(joists: &Joists, band: &Band, inside_is_high: bool) -> bool {
    joists.fill.iter().any(|rect| {
        let (low, high) = rect.on(band.axis.across());
        let edge = if inside_is_high { low } else { high };
        let (from, to) = rect.on(band.axis);
        let is_beside = band.across.0 - REACH <= edge && edge <= band.across.1 + REACH;
        let middle = (band.along.0 + band.along.1).half();
        is_beside && from <= middle && middle <= to
    })
}

/// The level at the wall's inner foot: a slab, ground that is stated there, or what the floor above says is below it.
fn inside_level(
    model: &Model,
    geometry: &Geometry,
    joists: &Joists,
    wall: &Wall,
    band: &Band,
    outside_is_high: bool,
) -> Option<Length> {
    let slab =
        model.slabs.iter().find(|slab| slab.fill.iter().any(|rect| lies_on(rect, band, !outside_is_high)));
    if let Some(slab) = slab {
        return slab.top.get();
    }
    let is_inside =
        |side: Side| is_high_side(side, band.axis).is_some_and(|is_high| is_high != outside_is_high);
    let ground = wall.grades.iter().filter(|grade| grade.side.is_some_and(is_inside));
    if let Some(lowest) = ground.map(|grade| grade.elevation).min() {
        return Some(lowest);
    }
    let floor = model.floor(joists.floor.value()?.target?)?;
    match floor.over.value()? {
        Below::Crawl(ground) => Some(*ground),
        Below::Basement(floor) => {
            let levels = geometry.floors.get(floor.target?.index as usize)?;
            Some(levels.subfloor.as_ref().ok()?.total())
        }
        Below::Outside => None,
    }
}

//! Doors: the level of their threshold, and where their leaf swings.

use crate::geometry::band;
use crate::geometry::carried::Carried;
use crate::geometry::flights::direction_of;
use crate::geometry::levels::FloorLevels;
use crate::geometry::sum::{Derived, Sum, Unknown};
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::openings::{Door, Swing, Threshold};
use crate::model::plan::{PlanPoint, PlanRect};
use crate::syntax::value::Side;
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

/// The floor a door belongs to: the one its wall stands on, else the one it swings into.
pub fn floor_of(model: &Model, door: &Door) -> Option<ElementId> {
    let wall = door.wall.value().and_then(|wall| model.wall(wall.target?));
    let stands = wall.and_then(|wall| wall.stands_on.value()?.on.reference()?.target);
    let swings = match door.swings.value() {
        Some(Swing::Into(floor)) => floor.target,
        Some(Swing::Side(_)) | None => None,
    };
    stands.filter(|on| on.kind == ElementKind::Floor).or(swings)
}

/// The top of a door's threshold.
///
/// # Errors
/// [`Unknown`] when the floor it belongs to has no level.
pub fn threshold(model: &Model, floors: &[FloorLevels], door: &Door) -> Derived {
    let id = door.common.id;
    match door.threshold.get().ok_or(Unknown { of: Some(id), fact: "threshold" })? {
        Threshold::At(elevation) => {
            Ok(Sum::start(elevation, format!("threshold of {}", door.common.name), id, door.threshold.span()))
        }
        Threshold::AboveFinish(above) => {
            let floor = floor_of(model, door).ok_or(Unknown { of: Some(id), fact: "in" })?;
            let levels = floors.get(floor.index as usize).ok_or(Unknown { of: Some(id), fact: "in" })?;
            Ok(levels.finish.clone()?.plus(above, "threshold", id, door.threshold.span()))
        }
    }
}

/// The side of its wall towards which a door opens: the one stated, else the one where the floor it swings into lies.
pub fn swing_side(model: &Model, carried: &Carried<'_>, door: &Door) -> Option<Side> {
    match door.swings.value()? {
        Swing::Side(side) => Some(*side),
        Swing::Into(floor) => side_of(model, carried, door, floor.target?),
    }
}

/// The side of a door's wall on which a floor lies; `None` when it lies on both or on neither.
pub fn side_of(model: &Model, carried: &Carried<'_>, door: &Door, floor: ElementId) -> Option<Side> {
    let at = door.at.value()?;
    let band = band::of_wall(model.wall(door.wall.value()?.target?)?)?;
    let sides = [Side::North, Side::South, Side::East, Side::West];
    let mut found = sides.into_iter().filter(|side| {
        let is_across = band::is_high_side(*side, band.axis).is_some();
        is_across && covers(model, carried, floor, &moved(at, *side, Length::feet(2)))
    });
    let first = found.next()?;
    found.next().is_none().then_some(first)
}

/// What a door's leaf sweeps in plan: a square as wide as the door.
pub fn sweep(model: &Model, carried: &Carried<'_>, door: &Door) -> Option<PlanRect> {
    let at = door.at.value()?;
    let [width, _] = *door.size.value()?;
    let side = swing_side(model, carried, door)?;
    let (axis, is_up) = direction_of(side)?;
    let along = |place: Length| (place - width.half(), place + width.half());
    let away = |place: Length| if is_up { (place, place + width) } else { (place - width, place) };
    let (x, y) = match axis {
        crate::model::plan::Axis::X => (away(at.x), along(at.y)),
        crate::model::plan::Axis::Y => (along(at.x), away(at.y)),
    };
    Some(PlanRect { x, y, span: at.span })
}

fn covers(model: &Model, carried: &Carried<'_>, floor: ElementId, place: &PlanPoint) -> bool {
    let framed = carried.fields_of(floor).iter().flat_map(|joists| &joists.fill);
    let slab = model.floor(floor).and_then(|floor| model.slab(floor.on.value()?.target?));
    framed.chain(slab.iter().flat_map(|slab| &slab.fill)).any(|rect| rect.contains(place))
}

fn moved(place: &PlanPoint, side: Side, by: Length) -> PlanPoint {
    let mut moved = *place;
    match side {
        Side::North => moved.y += by,
        Side::South => moved.y = moved.y - by,
        Side::East => moved.x += by,
        Side::West => moved.x = moved.x - by,
        Side::Left | Side::Right => {}
    }
    moved
}

//! How far what stands above lies off what is below, in plan.

use crate::geometry::band;
use crate::geometry::plan_contacts::foothold_on;
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::foundation::Wall;
use crate::model::plan::{Axis, PlanPoint};
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

/// From the middle of a wall to the middle of the wall, beam or ledger below it, across. `None` when the two are not
/// parallel or one isn't known.
pub fn wall_offset(model: &Model, wall: &Wall, below: ElementId) -> Option<Length> {
    let (above, below) = (band::of_wall(wall)?, band::of(model, below)?);
    (above.axis == below.axis).then(|| (above.centre() - below.centre()).abs())
}

/// How far one element lies off another in plan: between two lines across, from a point to a line across, between two
/// points the larger of both directions. `None` where one has no place in plan, or two lines cross.
pub fn offset(model: &Model, above: ElementId, below: ElementId) -> Option<Length> {
    if let Some(point) = point_of(model, above) {
        if let Some(other) = point_of(model, below) {
            return Some((point.x - other.x).abs().max((point.y - other.y).abs()));
        }
        let foothold = foothold_on(model, &point, below)?;
        return Some(foothold.off_centre.max(foothold.outside));
    }
    let line = band::of(model, above)?;
    match point_of(model, below) {
        Some(point) => Some((point.on(line.axis.across()) - line.centre()).abs()),
        None => {
            let other = band::of(model, below)?;
            (line.axis == other.axis).then(|| (line.centre() - other.centre()).abs())
        }
    }
}

fn point_of(model: &Model, element: ElementId) -> Option<PlanPoint> {
    let at = element.index as usize;
    match element.kind {
        ElementKind::Column => model.column(element)?.at.get(),
        ElementKind::Door => model.door(element)?.at.get(),
        ElementKind::Window => model.windows.get(at)?.at.get(),
        ElementKind::Pocket => model.pocket(element)?.at.get(),
        ElementKind::Drain => model.drains.get(at)?.at.get(),
        ElementKind::Footing => match model.footing(element)?.at.as_slice() {
            [only] => Some(*only),
            _ => None,
        },
        _ => None,
    }
}

/// The middle of an element in plan. `None` for what has no place of its own.
pub fn middle_of(model: &Model, element: ElementId) -> Option<(Length, Length)> {
    if let Some(point) = point_of(model, element) {
        return Some((point.x, point.y));
    }
    if let Some(band) = band::of(model, element) {
        let middle = |(low, high): (Length, Length)| (low + high).half();
        return Some((middle(band.on(Axis::X)), middle(band.on(Axis::Y))));
    }
    let rects = match element.kind {
        ElementKind::Joists => &model.joists_of(element)?.fill,
        ElementKind::Opening => &model.opening(element)?.fill,
        ElementKind::Slab => &model.slab(element)?.fill,
        ElementKind::Roof => &model.roofs.get(element.index as usize)?.fill,
        _ => return None,
    };
    let rect = rects.first()?;
    Some(((rect.x.0 + rect.x.1).half(), (rect.y.0 + rect.y.1).half()))
}

//! What a stair covers in plan.

use crate::geometry::flights::direction_of;
use crate::model::plan::{Axis, PlanRect};
use crate::model::stairs::Stair;
use crate::units::Length;

/// The flight from its bottom riser to its top nosing, as wide as the stair. `None` for a skew or unknown one.
pub fn flight(stair: &Stair) -> Option<PlanRect> {
    let top = stair.top.value()?;
    let (axis, is_up) = direction_of(stair.climbs.get()?)?;
    let run = stair.tread.get()?.times(i64::from(stair.risers.get()?) - 1);
    let half = stair.width.get()?.half();
    let across = |place: Length| (place - half, place + half);
    let along = |place: Length| if is_up { (place - run, place) } else { (place, place + run) };
    let (x, y) = match axis {
        Axis::X => (along(top.x), across(top.y)),
        Axis::Y => (across(top.x), along(top.y)),
    };
    Some(PlanRect { x, y, span: top.span })
}

/// By how much two rectangles overlap along each axis, when they do.
pub fn overlap(one: &PlanRect, other: &PlanRect) -> Option<(Length, Length)> {
    let common = |a: (Length, Length), b: (Length, Length)| a.1.min(b.1) - a.0.max(b.0);
    let (x, y) = (common(one.x, other.x), common(one.y, other.y));
    (x.is_positive() && y.is_positive()).then_some((x, y))
}

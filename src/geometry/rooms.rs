//! How deep the room is that a flight comes down into.

use crate::geometry::carried::Carried;
use crate::geometry::flights::direction_of;
use crate::model::Model;
use crate::model::stairs::{Foot, Stair};
use crate::units::Length;

/// From the top nosing to the far edge of the lower floor's joists or slab, along the flight; `None` when the flight's
/// line does not cross them.
pub fn depth_along(model: &Model, carried: &Carried<'_>, stair: &Stair) -> Option<Length> {
    let Foot::Floor(floor) = stair.from.value()? else { return None };
    let floor = floor.target?;
    let top = stair.top.value()?;
    let (axis, climbs_up) = direction_of(stair.climbs.get()?)?;
    let slab = model.floor(floor).and_then(|floor| model.slab(floor.on.value()?.target?));
    let joists = carried.fields_of(floor).iter().flat_map(|joists| &joists.fill);
    let crossed = joists.chain(slab.into_iter().flat_map(|slab| &slab.fill)).filter(|rect| {
        let (low, high) = rect.on(axis.across());
        low <= top.on(axis.across()) && top.on(axis.across()) <= high
    });
    let far = crossed.map(|rect| {
        let (low, high) = rect.on(axis);
        if climbs_up { top.on(axis) - low } else { high - top.on(axis) }
    });
    far.max().filter(|depth| depth.is_positive())
}

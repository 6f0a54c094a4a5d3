//! Bearing walls that run along the joists they stand on.

use crate::geometry::band::{self, Band};
use crate::geometry::carried::Carried;
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::foundation::Wall;
use crate::model::framing::Joists;
use crate::syntax::vocabulary::ElementKind;

/// A bearing wall along joists.
#[derive(Clone, Copy, Debug)]
pub struct AlongJoists<'a> {
    /// The wall.
    pub wall: &'a Wall,
    /// The joists under it.
    pub joists: &'a Joists,
}

/// Every bearing wall on a floor whose joists run along it, unless it is said to stand over something that runs along it
/// too: then that carries it.
pub fn along_joists<'a>(model: &'a Model, carried: &Carried<'a>) -> Vec<AlongJoists<'a>> {
    let bearing = model.walls.iter().filter(|wall| wall.bearing.get() == Some(true));
    let along = bearing.filter_map(|wall| {
        let stand = wall.stands_on.value()?;
        let on = stand.on.reference()?.target?;
        let over = match &stand.over {
            Some(over) => Some(over.target?),
            None => None,
        };
        let band = band::of_wall(wall)?;
        if over.and_then(|over| band::of(model, over)).is_some_and(|below| below.axis == band.axis) {
            return None;
        }
        let joists = under(model, carried, on, over, &band)?;
        Some(AlongJoists { wall, joists })
    });
    along.collect()
}

/// The field that a wall stands on and that runs along it, under the wall's middle.
fn under<'a>(
    model: &'a Model,
    carried: &Carried<'a>,
    on: ElementId,
    over: Option<ElementId>,
    band: &Band,
) -> Option<&'a Joists> {
    let named = [Some(on), over].into_iter().flatten().find_map(|id| model.joists_of(id));
    let of_floor = if on.kind == ElementKind::Floor { carried.fields_of(on) } else { &[] };
    let middle = (band.along.0 + band.along.1).half();
    named.into_iter().chain(of_floor.iter().copied()).find(|joists| {
        let runs_along = joists.run.get() == Some(band.axis);
        runs_along
            && joists.fill.iter().any(|rect| {
                let (low, high) = rect.on(band.axis.across());
                let (from, to) = rect.on(band.axis);
                low <= band.centre() && band.centre() <= high && from <= middle && middle <= to
            })
    })
}

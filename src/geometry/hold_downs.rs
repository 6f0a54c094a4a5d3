//! The concrete that a hold-down of a framed wall is cast into.

use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::foundation::Wall;
use crate::model::plan::Station;
use crate::units::Length;

/// Walls that stand on one another, at the most.
const MOST_STOREYS: usize = 8;

/// Concrete under a framed wall at one place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Concrete {
    /// The wall it is.
    pub wall: ElementId,
    /// How thick it is there.
    pub thick: Length,
    /// A shelf has been cut beside it: it is the upstand.
    pub shelf: Option<ElementId>,
}

/// The concrete below a wall at a place along it: down through pony walls and whatever it is said to stand over. Beside
/// a shelf only the upstand is left. `None` where something else is below, or a thickness isn't known.
pub fn concrete_under(model: &Model, wall: &Wall, at: &Station) -> Option<Concrete> {
    let mut below = below_of(wall)?;
    for _ in 0..MOST_STOREYS {
        if let Some(shelf) = model.shelf(below) {
            let wall = model.wall(shelf.wall.value()?.target?)?;
            return Some(Concrete { wall: wall.common.id, thick: wall.thick.get()?, shelf: None });
        }
        let wall = model.wall(below)?;
        if !wall.kind.get()?.is_mineral() {
            below = below_of(wall)?;
            continue;
        }
        let is_here = |reach: Option<(Station, Station)>| {
            reach.is_none_or(|(from, to)| from.at.min(to.at) <= at.at && at.at <= from.at.max(to.at))
        };
        let shelf = model
            .shelves
            .iter()
            .find(|shelf| shelf.wall.value().and_then(|of| of.target) == Some(below) && is_here(shelf.reach));
        let cut = match shelf {
            Some(shelf) => shelf.width.get()?,
            None => Length::ZERO,
        };
        let shelf = shelf.map(|shelf| shelf.common.id);
        return Some(Concrete { wall: below, thick: wall.thick.get()? - cut, shelf });
    }
    None
}

fn below_of(wall: &Wall) -> Option<ElementId> {
    let stand = wall.stands_on.value()?;
    stand.over.as_ref().or(stand.on.reference())?.target
}

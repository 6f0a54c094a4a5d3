//! From where to where an element reaches in height.

use crate::geometry::Geometry;
use crate::geometry::sum::Sum;
use crate::geometry::surfaces::{Surface, joist_bottom, joist_top};
use crate::model::Model;
use crate::model::element::ElementId;
use crate::syntax::vocabulary::ElementKind;

/// An element's lower and upper ends.
#[derive(Clone, Debug, PartialEq)]
pub struct Extent {
    /// Its underside.
    pub bottom: Sum,
    /// Its top.
    pub top: Sum,
}

/// From where to where an element reaches; a floor is its joists. `None` where one of the two isn't known.
pub fn extent_of(model: &Model, geometry: &Geometry, element: ElementId) -> Option<Extent> {
    let floors = &geometry.floors;
    let (bottom, top) = match element.kind {
        ElementKind::Floor => {
            let levels = floors.get(element.index as usize)?;
            (levels.joist_bottom.clone(), levels.joist_top.clone())
        }
        ElementKind::Joists => {
            let joists = model.joists_of(element)?;
            (joist_bottom(floors, joists), joist_top(floors, joists))
        }
        ElementKind::Column => {
            let stack = geometry.columns.get(element.index as usize)?;
            (stack.foot.clone(), stack.head.clone())
        }
        _ => (geometry.surfaces.of(element, Surface::Bottom), geometry.surfaces.of(element, Surface::Top)),
    };
    Some(Extent { bottom: bottom.ok()?, top: top.ok()? })
}

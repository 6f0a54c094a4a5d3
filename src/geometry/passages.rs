//! Where a pipe or a duct goes from the joists of one floor in among those of another.

use crate::geometry::Geometry;
use crate::geometry::carried::Carried;
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::plan::Axis;
use crate::units::Length;

/// A straight way in plan along one axis.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Way {
    /// The axis it runs along.
    pub axis: Axis,
    /// Where it begins on that axis.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
    /// Its place across.
    pub at: Length,
}

impl Way {
    /// Its two ends, the smaller first.
    pub fn ends(&self) -> (Length, Length) {
        (self.from.min(self.to), self.from.max(self.to))
    }
}

/// A floor whose joists a way reaches into from those of another.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Passage {
    /// The floor it comes to.
    pub to: ElementId,
    /// Where its joists begin, along the way.
    pub at: Length,
    /// The joists of both floors lie side by side over this height; less than nothing where they pass each other.
    pub shared: Length,
    /// The undersides of both are level: what hangs below the one goes on below the other.
    pub is_level_below: bool,
    /// The floor it comes to is the lower one.
    pub is_down: bool,
}

/// The floors that a way reaches into when it leaves the joists of its own. A floor whose levels aren't known is left
/// out.
pub fn passages(
    model: &Model,
    geometry: &Geometry,
    carried: &Carried<'_>,
    own: ElementId,
    way: &Way,
) -> Vec<Passage> {
    let is_in_own = strip_of(carried, own, way).is_some();
    let others = model.floors.iter().map(|floor| floor.common.id).filter(|floor| *floor != own && is_in_own);
    others
        .filter_map(|other| {
            let (low, high) = strip_of(carried, other, way)?;
            let space = |floor: ElementId| geometry.floors.get(floor.index as usize)?.joist_space();
            let (upper, lower) = (space(own)?, space(other)?);
            Some(Passage {
                to: other,
                at: if way.from <= way.to { low } else { high },
                shared: upper.1.min(lower.1) - upper.0.max(lower.0),
                is_level_below: upper.0 == lower.0,
                is_down: lower.1 < upper.1,
            })
        })
        .collect()
}

/// The stretch of a way that lies among the joists of a floor.
fn strip_of(carried: &Carried<'_>, floor: ElementId, way: &Way) -> Option<(Length, Length)> {
    let (low, high) = way.ends();
    let rects = carried.fields_of(floor).iter().flat_map(|joists| &joists.fill);
    let crossed = rects.filter(|rect| {
        let (from, to) = rect.on(way.axis.across());
        from < way.at && way.at < to
    });
    let strips = crossed.map(|rect| (rect.on(way.axis).0.max(low), rect.on(way.axis).1.min(high)));
    strips.filter(|(from, to)| from < to).reduce(|one, other| (one.0.min(other.0), one.1.max(other.1)))
}

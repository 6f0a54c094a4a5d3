//! Places in plan, with their coordinates: x grows east, y grows north, both exact.

use crate::text::Span;
use crate::units::Length;

/// One of the two directions of the grid.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Axis {
    /// West to east.
    X,
    /// South to north.
    Y,
}

impl Axis {
    /// The other direction.
    pub const fn across(self) -> Self {
        match self {
            Self::X => Self::Y,
            Self::Y => Self::X,
        }
    }
}

/// A coordinate on one axis, named by a grid line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Station {
    /// The axis its grid line cuts.
    pub axis: Axis,
    /// The coordinate.
    pub at: Length,
    /// Where it stands in the text.
    pub span: Span,
}

/// A place in plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PlanPoint {
    /// East of the origin.
    pub x: Length,
    /// North of the origin.
    pub y: Length,
    /// Where it stands in the text.
    pub span: Span,
}

impl PlanPoint {
    /// The coordinate on one axis.
    pub const fn on(&self, axis: Axis) -> Length {
        match axis {
            Axis::X => self.x,
            Axis::Y => self.y,
        }
    }
}

/// An upright rectangle. Invariant: `x.0 <= x.1` and `y.0 <= y.1` (lowering puts them in order).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PlanRect {
    /// West and east edges.
    pub x: (Length, Length),
    /// South and north edges.
    pub y: (Length, Length),
    /// Where it stands in the text.
    pub span: Span,
}

impl PlanRect {
    /// The two edges on one axis.
    pub const fn on(&self, axis: Axis) -> (Length, Length) {
        match axis {
            Axis::X => self.x,
            Axis::Y => self.y,
        }
    }

    /// True when a place lies in it or on its edge.
    pub fn contains(&self, place: &PlanPoint) -> bool {
        self.x.0 <= place.x && place.x <= self.x.1 && self.y.0 <= place.y && place.y <= self.y.1
    }
}

/// A straight line, from its beginning to its end as written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PlanLine {
    /// Its beginning.
    pub from: PlanPoint,
    /// Its end.
    pub to: PlanPoint,
    /// Where it stands in the text.
    pub span: Span,
}

impl PlanLine {
    /// The axis it runs along; `None` for a skew line or a point.
    pub fn axis(&self) -> Option<Axis> {
        match (self.from.x == self.to.x, self.from.y == self.to.y) {
            (false, true) => Some(Axis::X),
            (true, false) => Some(Axis::Y),
            (true, true) | (false, false) => None,
        }
    }

    /// Its two ends on one axis, the smaller first.
    pub fn on(&self, axis: Axis) -> (Length, Length) {
        let (a, b) = (self.from.on(axis), self.to.on(axis));
        (a.min(b), a.max(b))
    }
}

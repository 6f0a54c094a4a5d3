//! What acts on an element: how much of each case, where in plan, and where it is from.

use crate::model::element::ElementId;
use crate::model::plan::{Axis, PlanPoint};
use crate::statics::cases::{ByCase, Case};
use crate::text::Span;
use crate::units::{AreaLoad, Force, Length, LineLoad};

/// A place in plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Spot {
    /// East of the origin.
    pub x: Length,
    /// North of the origin.
    pub y: Length,
}

impl Spot {
    /// The place with this coordinate on an axis and that one across it.
    pub const fn at(axis: Axis, along: Length, across: Length) -> Self {
        match axis {
            Axis::X => Self { x: along, y: across },
            Axis::Y => Self { x: across, y: along },
        }
    }

    /// How far it is from another place, in inches.
    pub fn distance(self, other: Self) -> f64 {
        (self.x - other.x).to_inches().hypot((self.y - other.y).to_inches())
    }

    /// Its coordinate on an axis.
    pub const fn on(&self, axis: Axis) -> Length {
        match axis {
            Axis::X => self.x,
            Axis::Y => self.y,
        }
    }
}

impl From<&PlanPoint> for Spot {
    fn from(point: &PlanPoint) -> Self {
        Self { x: point.x, y: point.y }
    }
}

/// How much acts where.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Acting {
    /// On an upright rectangle of the plan.
    Area {
        /// West and east edges.
        x: (Length, Length),
        /// South and north edges.
        y: (Length, Length),
        /// How much on each foot square.
        load: ByCase<AreaLoad>,
    },
    /// Along a stretch of a line.
    Spread {
        /// The axis that the line runs along.
        axis: Axis,
        /// Its coordinate across.
        across: Length,
        /// Where the stretch begins.
        from: Length,
        /// Where it ends, not before.
        to: Length,
        /// How much on each foot.
        load: ByCase<LineLoad>,
    },
    /// At a point.
    Point {
        /// Where.
        at: Spot,
        /// How much.
        force: ByCase<Force>,
    },
}

impl Acting {
    /// All of it.
    pub fn total(&self) -> ByCase<Force> {
        match self {
            Self::Area { x, y, load } => load.map(|load| load * (x.1 - x.0) * (y.1 - y.0)),
            Self::Spread { from, to, load, .. } => load.map(|load| load * (*to - *from)),
            Self::Point { force, .. } => *force,
        }
    }

    /// How much lies on each foot, when it lies along a line.
    pub const fn each_foot(&self) -> Option<ByCase<LineLoad>> {
        match self {
            Self::Spread { load, .. } => Some(*load),
            Self::Area { .. } | Self::Point { .. } => None,
        }
    }

    /// Its stretch on an axis.
    pub fn reach(&self, axis: Axis) -> (Length, Length) {
        match self {
            Self::Area { x, y, .. } => match axis {
                Axis::X => *x,
                Axis::Y => *y,
            },
            Self::Spread { axis: own, across, from, to, .. } => {
                if *own == axis {
                    (*from, *to)
                } else {
                    (*across, *across)
                }
            }
            Self::Point { at, .. } => (at.on(axis), at.on(axis)),
        }
    }

    /// Its middle in plan.
    pub fn middle(&self) -> Spot {
        let middle = |axis| {
            let (low, high) = self.reach(axis);
            (low + high).half()
        };
        Spot { x: middle(Axis::X), y: middle(Axis::Y) }
    }

    /// What of it lies between two coordinates of an axis; `None` when nothing does. A point on the upper edge stays out,
    /// so that parts that meet share nothing.
    pub fn between(&self, axis: Axis, (low, high): (Length, Length)) -> Option<Self> {
        let (begins, ends) = self.reach(axis);
        if begins == ends {
            return (low <= begins && begins < high).then_some(*self);
        }
        let (begins, ends) = (begins.max(low), ends.min(high));
        if begins >= ends {
            return None;
        }
        let mut part = *self;
        match &mut part {
            Self::Area { x, y, .. } => match axis {
                Axis::X => *x = (begins, ends),
                Axis::Y => *y = (begins, ends),
            },
            Self::Spread { from, to, .. } => (*from, *to) = (begins, ends),
            Self::Point { .. } => {}
        }
        Some(part)
    }
}

impl Acting {
    /// What of it lies between two coordinates of an axis, a point on either of them too.
    pub fn up_to(&self, axis: Axis, (low, high): (Length, Length)) -> Option<Self> {
        let (begins, ends) = self.reach(axis);
        if begins == ends {
            return (low <= begins && begins <= high).then_some(*self);
        }
        self.between(axis, (low, high))
    }

    /// What of it lies below a coordinate of an axis; a point on it does not.
    pub fn below(&self, axis: Axis, at: Length) -> Option<Self> {
        self.between(axis, (Length::from_units(i64::MIN), at))
    }

    /// What of it lies above a coordinate of an axis; a point on it does not.
    pub fn above(&self, axis: Axis, at: Length) -> Option<Self> {
        let (begins, ends) = self.reach(axis);
        if begins == ends {
            return (begins > at).then_some(*self);
        }
        self.between(axis, (at, Length::from_units(i64::MAX)))
    }
}

/// Where an action is from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Source {
    /// The element's own weight.
    Weight,
    /// The load of a floor, an area of it or a roof.
    AreaOf(ElementId),
    /// A load declared as a fact of the element, in this line.
    Declared(Span),
    /// A load that is an element.
    Load(ElementId),
    /// What another element hands on.
    From(ElementId),
}

/// What acts on an element.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Action {
    /// Where it is from.
    pub source: Source,
    /// How much of it, where.
    pub acting: Acting,
}

/// What takes a load.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Receiver {
    /// An element of the spec.
    Element(ElementId),
    /// Something that stands already and isn't described.
    Outside,
    /// The ground.
    Soil,
    /// Nothing: the load is lost, for this reason.
    Nothing(Lost),
}

impl Receiver {
    /// The element, when it is one.
    pub const fn element(self) -> Option<ElementId> {
        match self {
            Self::Element(element) => Some(element),
            Self::Outside | Self::Soil | Self::Nothing(_) => None,
        }
    }
}

/// Why a load reaches nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Lost {
    /// The element names nothing that carries it.
    NoSupport,
    /// Nothing that carries it reaches this place.
    NotReached,
    /// The member is held in too few places to stand.
    Unstable,
    /// It runs in a circle.
    Circle,
    /// A line on the way can't be read, or names nothing: reported there.
    Unreadable,
    /// Loads are followed along the two axes of the grid only.
    Skew,
}

impl Lost {
    /// The reason in words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::NoSupport => "nothing is named that carries it",
            Self::NotReached => "nothing that carries it reaches this place",
            Self::Unstable => "the member is held in too few places to stand",
            Self::Circle => "the supports run in a circle",
            Self::Unreadable => "a line on the way can't be read or names nothing",
            Self::Skew => "loads are followed along the two axes of the grid only",
        }
    }
}

/// What an element hands on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Handed {
    /// To what.
    pub to: Receiver,
    /// How much, where.
    pub acting: Acting,
}

/// The case that a spec's word names; `None` for wind, earth and others that are not followed down.
pub fn case_of(word: &str) -> Option<Case> {
    match word {
        "dead" => Some(Case::Dead),
        "live" | "sleeping" => Some(Case::Live),
        "roof-live" => Some(Case::RoofLive),
        "snow" => Some(Case::Snow),
        _ => None,
    }
}

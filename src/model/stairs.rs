//! Stairs, landings and stoops.

use crate::model::element::{Common, Reference};
use crate::model::field::{Field, Given};
use crate::model::member::Member;
use crate::model::plan::PlanPoint;
use crate::model::support::Stand;
use crate::syntax::value::Side;
use crate::text::Span;
use crate::units::Length;

/// A stair or a flight of steps.
#[derive(Clone, Debug)]
pub struct Stair {
    /// What every element has.
    pub common: Common,
    /// The lower floor, or grade.
    pub from: Field<Foot>,
    /// The upper floor.
    pub to: Field<Reference>,
    /// How many risers.
    pub risers: Field<u32>,
    /// Tread depth, nosing to nosing.
    pub tread: Field<Length>,
    /// Width.
    pub width: Field<Length>,
    /// The middle of the top nosing.
    pub top: Field<PlanPoint>,
    /// The direction of going up.
    pub climbs: Field<Side>,
    /// The finishes the stringers were cut for: lower, upper.
    pub laid_out: Field<(Length, Length)>,
    /// The opening it passes.
    pub opening: Field<StairOpening>,
    /// Landings.
    pub landings: Vec<StairLanding>,
    /// How far a tread stands past the riser below it. Assumed nothing.
    pub nosing: Field<Length>,
    /// Handrails: side and height.
    pub handrails: Vec<Given<(Option<Side>, Length)>>,
    /// Guards: side and height.
    pub guards: Vec<Given<(Option<Side>, Length)>>,
    /// Stringers.
    pub stringers: Field<Member>,
    /// Thickness of the treads. Assumed 1".
    pub tread_stock: Field<Length>,
}

/// Where a stair begins.
#[derive(Clone, Debug, PartialEq)]
pub enum Foot {
    /// On a floor.
    Floor(Reference),
    /// On the ground.
    Grade,
}

/// The opening a stair passes.
#[derive(Clone, Debug, PartialEq)]
pub enum StairOpening {
    /// An opening of the spec.
    Named(Reference),
    /// This long, from the top nosing along the run.
    Long(Length),
}

/// A landing of a stair.
#[derive(Clone, Debug, PartialEq)]
pub struct StairLanding {
    /// `top`, `bottom` or `mid`.
    pub place: Box<str>,
    /// How deep, in the direction of travel.
    pub depth: Length,
    /// Its elevation, for one in the middle.
    pub at: Option<Length>,
    /// The line.
    pub span: Span,
}

/// A landing inside the house.
#[derive(Clone, Debug)]
pub struct Landing {
    /// What every element has.
    pub common: Common,
    /// What it has in common with a stoop.
    pub body: LandingBody,
}

/// An outdoor landing at a door.
#[derive(Clone, Debug)]
pub struct Stoop {
    /// What every element has.
    pub common: Common,
    /// What it has in common with a landing.
    pub body: LandingBody,
}

/// A landing or stoop.
#[derive(Clone, Debug)]
pub struct LandingBody {
    /// Concrete, framed or existing.
    pub kind: Field<Box<str>>,
    /// Of what, when framed.
    pub member: Option<Member>,
    /// At this door.
    pub door: Field<Reference>,
    /// At this place.
    pub at: Field<PlanPoint>,
    /// Width, and depth in the direction of travel.
    pub size: Field<[Length; 2]>,
    /// Elevation of its top.
    pub top: Field<Length>,
    /// The gap to a wall: how wide, `open`, `flashed` or `filled`, to which wall.
    pub gap: Field<Gap>,
    /// Steps down to grade.
    pub steps_down: Field<(u32, Option<Length>)>,
    /// What it stands on.
    pub stands_on: Field<Stand>,
    /// Fall for water.
    pub slope: Field<Length>,
}

/// The gap between a stoop and a wall.
#[derive(Clone, Debug, PartialEq)]
pub struct Gap {
    /// How wide.
    pub width: Length,
    /// `open`, `flashed` or `filled`.
    pub how: Box<str>,
    /// To which wall.
    pub wall: Option<Reference>,
}

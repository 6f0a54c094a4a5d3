//! Openings, doors, windows, headers, jacks, squash blocks, drains, holes, notches and ducts.

use crate::model::element::{Common, Reference};
use crate::model::field::{Field, Given};
use crate::model::member::Member;
use crate::model::plan::{PlanPoint, PlanRect, Station};
use crate::model::site::DeclaredLoad;
use crate::model::support::{Connector, Stand, Support};
use crate::syntax::value::Side;
use crate::units::Length;

/// An opening in a floor or wall.
#[derive(Clone, Debug)]
pub struct Opening {
    /// What every element has.
    pub common: Common,
    /// In which floor.
    pub floor: Field<Reference>,
    /// In which wall.
    pub wall: Field<Reference>,
    /// The floor opening's edges.
    pub fill: Vec<PlanRect>,
    /// The wall opening's place.
    pub at: Field<PlanPoint>,
    /// The wall opening's width and height.
    pub size: Field<[Length; 2]>,
    /// Trimmers each side: how many of what.
    pub trimmers: Field<(u32, Member)>,
    /// Headers: how many of what, held how.
    pub headers: Field<Headers>,
    /// What holds the tail joists.
    pub tails: Field<Connector>,
    /// The floor's load counts as if there were no opening. Assumed so.
    pub keeps_load: Field<bool>,
}

/// Headers of a floor opening.
#[derive(Clone, Debug, PartialEq)]
pub struct Headers {
    /// How many pieces side by side.
    pub count: u32,
    /// Of what.
    pub member: Member,
    /// Held by.
    pub by: Option<Connector>,
}

/// A door.
#[derive(Clone, Debug)]
pub struct Door {
    /// What every element has.
    pub common: Common,
    /// In which wall.
    pub wall: Field<Reference>,
    /// Its middle.
    pub at: Field<PlanPoint>,
    /// Width and height.
    pub size: Field<[Length; 2]>,
    /// The side its hinge is on.
    pub hinge: Field<Side>,
    /// What it swings into.
    pub swings: Field<Swing>,
    /// Its threshold.
    pub threshold: Field<Threshold>,
    /// The landing outside.
    pub landing: Field<Reference>,
}

/// What a door swings into.
#[derive(Clone, Debug, PartialEq)]
pub enum Swing {
    /// The room of a floor.
    Into(Reference),
    /// A side.
    Side(Side),
}

/// How high a threshold is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Threshold {
    /// At this elevation.
    At(Length),
    /// This far above the finish.
    AboveFinish(Length),
}

/// A window.
#[derive(Clone, Debug)]
pub struct Window {
    /// What every element has.
    pub common: Common,
    /// In which wall.
    pub wall: Field<Reference>,
    /// Its middle.
    pub at: Field<PlanPoint>,
    /// Width and height.
    pub size: Field<[Length; 2]>,
}

/// A header over an opening in a wall.
#[derive(Clone, Debug)]
pub struct Header {
    /// What every element has.
    pub common: Common,
    /// Over which door, window or opening.
    pub over: Field<Reference>,
    /// Of what.
    pub size: Field<Member>,
    /// The jacks it bears on.
    pub supports: Vec<Support>,
    /// Declared loads.
    pub loads: Vec<DeclaredLoad>,
    /// Elevation of its top.
    pub top: Field<Length>,
}

/// Jack studs at an opening.
#[derive(Clone, Debug)]
pub struct Jacks {
    /// What every element has.
    pub common: Common,
    /// At which opening.
    pub at: Field<Reference>,
    /// On this side only; both without.
    pub side: Option<Side>,
    /// How many each side, of what.
    pub size: Field<(u32, Member)>,
    /// King studs each side.
    pub kings: Field<u32>,
    /// What they stand on.
    pub stands_on: Field<Stand>,
    /// Squash blocks under each, said here: how many pieces of what.
    pub squash: Field<(u32, Member)>,
}

/// Squash blocks under a column or jacks.
#[derive(Clone, Debug)]
pub struct Squash {
    /// What every element has.
    pub common: Common,
    /// Under what.
    pub under: Field<Reference>,
    /// On this side only, of jacks on both.
    pub side: Option<Side>,
    /// How many pieces of what.
    pub size: Field<(u32, Member)>,
    /// How long.
    pub length: Field<Length>,
    /// What they stand on.
    pub stands_on: Field<Stand>,
}

/// A drain through a floor.
#[derive(Clone, Debug)]
pub struct Drain {
    /// What every element has.
    pub common: Common,
    /// Through which floor.
    pub floor: Field<Reference>,
    /// Its centre.
    pub at: Field<PlanPoint>,
    /// The hole it needs.
    pub hole: Field<Length>,
    /// Outside diameter of the pipe.
    pub pipe: Field<Length>,
    /// How it runs: to which side, how far, falling by how much in a foot.
    pub runs: Vec<Given<DrainRun>>,
}

/// One run of a drain.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DrainRun {
    /// To which side.
    pub side: Side,
    /// How far.
    pub length: Length,
    /// Fall in one foot.
    pub fall: Option<Length>,
}

/// A hole in a member.
#[derive(Clone, Debug)]
pub struct Hole {
    /// What every element has.
    pub common: Common,
    /// In what.
    pub member: Field<Reference>,
    /// Where along it; in each without.
    pub at: Option<Station>,
    /// In each member of the field.
    pub is_in_each: bool,
    /// A diameter, or width and height.
    pub size: Field<HoleSize>,
    /// Its lower edge above the member's bottom.
    pub above_bottom: Field<Length>,
}

/// A hole's size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum HoleSize {
    /// Diameter.
    Round(Length),
    /// Width along the member, height.
    Rectangle(Length, Length),
}

/// A notch in a member.
#[derive(Clone, Debug)]
pub struct Notch {
    /// What every element has.
    pub common: Common,
    /// In what.
    pub member: Field<Reference>,
    /// Where along it.
    pub at: Field<Station>,
    /// Length along the member, depth.
    pub size: Field<[Length; 2]>,
    /// In the top edge, else in the bottom.
    pub is_in_top: Field<bool>,
}

/// A duct through a floor.
#[derive(Clone, Debug)]
pub struct Duct {
    /// What every element has.
    pub common: Common,
    /// In which floor.
    pub floor: Field<Reference>,
    /// Its line.
    pub from: Field<crate::model::plan::PlanLine>,
    /// Width and height.
    pub size: Field<[Length; 2]>,
}

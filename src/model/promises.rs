//! Promises of the design, sheets and hold points.

use crate::model::element::{Assertion, Common, Reference};
use crate::model::field::{Field, Given};
use crate::model::plan::{PlanLine, PlanRect};
use crate::syntax::value::{Date, FactName};
use crate::text::Span;
use crate::units::Length;

/// A promise of the design.
#[derive(Clone, Debug)]
pub struct Intent {
    /// What every element has.
    pub common: Common,
    /// What it promises.
    pub promises: Vec<Promise>,
    /// Who wanted it.
    pub for_: Field<Box<str>>,
}

/// One line of an intent.
#[derive(Clone, Debug, PartialEq)]
pub enum Promise {
    /// Facts stand so to each other.
    Holds(Assertion),
    /// Nothing comes below a floor's ceiling, in a part of the plan or all of it.
    NothingBelowCeiling(Reference, Option<PlanRect>, Span),
    /// No column stands inside.
    NoColumn(PlanRect, Span),
    /// One thing stands over another.
    Over(Reference, Reference, Option<Length>, Span),
    /// Two things meet.
    Meeting(Reference, Reference, Span),
    /// No step between two floors.
    StepFree(Reference, Reference, Span),
    /// Two things are level.
    Level(Reference, Reference, Option<Length>, Span),
    /// A wall's face is straight.
    StraightFace(Reference, PlanLine, Span),
}

/// A drawing sheet.
#[derive(Clone, Debug)]
pub struct Sheet {
    /// What every element has.
    pub common: Common,
    /// The numbers it shows.
    pub shows: Vec<Assertion>,
    /// How many of what it counts.
    pub counts: Vec<Given<(u32, Box<str>)>>,
    /// The marks it schedules.
    pub schedules: Vec<Reference>,
    /// Strings of dimensions: the parts and the whole.
    pub strings: Vec<Given<(Vec<Length>, Length)>>,
    /// Sheets it refers to.
    pub refers_to: Vec<Reference>,
    /// When it was last compared with the spec.
    pub checked: Field<Date>,
    /// Its scale, as words.
    pub scale: Field<Box<str>>,
}

/// A point where the work waits for a measurement.
#[derive(Clone, Debug)]
pub struct HoldPoint {
    /// What every element has.
    pub common: Common,
    /// Before what.
    pub before: Field<Box<str>>,
    /// What is measured. The span is the line.
    pub shoot: Vec<Given<FactName>>,
    /// How far off is still good.
    pub tolerance: Field<Length>,
}

//! Why so much: a reaction taken apart, down to the loads of the spec.

use crate::geometry::Geometry;
use crate::model::Model;
use crate::model::element::ElementId;
use crate::statics::action::{Acting, Action, Receiver, Source};
use crate::statics::cases::ByCase;
use crate::statics::takedown::{Takedown, through};
use crate::text::Span;
use crate::units::Force;

/// Part of a reaction, with what it comes from in its turn. A leaf is a load of the spec.
#[derive(Clone, Debug, PartialEq)]
pub struct Contribution {
    /// Where it is from.
    pub from: Contributor,
    /// How much of the reaction it is.
    pub force: ByCase<Force>,
    /// What makes it up; empty for a load of the spec.
    pub of: Vec<Contribution>,
}

/// Where part of a reaction is from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Contributor {
    /// The weight of an element.
    Weight(ElementId),
    /// The load of a floor, an area or a roof, on this field.
    AreaOf(ElementId, ElementId),
    /// A load stated on an element, in this line.
    Declared(ElementId, Span),
    /// A load that is an element.
    Load(ElementId),
    /// Another element.
    Element(ElementId),
}

/// How much of something a load makes.
type Influence<'a> = &'a dyn Fn(&Acting) -> ByCase<Force>;

/// Everything that acts on an element, each as a whole.
pub fn on(model: &Model, geometry: &Geometry, takedown: &Takedown, element: ElementId) -> Vec<Contribution> {
    parts(model, geometry, takedown, element, &Acting::total)
}

/// Everything that acts on an element, each as a whole and not taken apart any further.
pub fn directly_on(takedown: &Takedown, element: ElementId) -> Vec<Contribution> {
    shares(takedown, element, &Acting::total)
}

/// What makes up the reaction of one element on another.
pub fn of_reaction(
    model: &Model,
    geometry: &Geometry,
    takedown: &Takedown,
    element: ElementId,
    on: Receiver,
) -> Vec<Contribution> {
    let influence = |acting: &Acting| {
        let action = Action { source: Source::Weight, acting: *acting };
        let outcome = through(model, geometry, &takedown.headers, element, &[action]);
        let there = outcome.handed.iter().filter(|handed| handed.to == on);
        there.fold(ByCase::default(), |sum, handed| sum + handed.acting.total())
    };
    parts(model, geometry, takedown, element, &influence)
}

fn parts(
    model: &Model,
    geometry: &Geometry,
    takedown: &Takedown,
    element: ElementId,
    influence: Influence<'_>,
) -> Vec<Contribution> {
    let mut found = shares(takedown, element, influence);
    for part in &mut found {
        if let Contributor::Element(above) = part.from {
            let through_above = |acting: &Acting| {
                let action = Action { source: Source::Weight, acting: *acting };
                let outcome = through(model, geometry, &takedown.headers, above, &[action]);
                let here = outcome.handed.iter().filter(|handed| handed.to == Receiver::Element(element));
                here.fold(ByCase::default(), |sum, handed| sum + influence(&handed.acting))
            };
            part.of = parts(model, geometry, takedown, above, &through_above);
        }
    }
    found
}

fn shares(takedown: &Takedown, element: ElementId, influence: Influence<'_>) -> Vec<Contribution> {
    let mut found: Vec<Contribution> = Vec::new();
    for action in takedown.on(element) {
        let force = influence(&action.acting);
        if force == ByCase::default() {
            continue;
        }
        let from = match action.source {
            Source::Weight => Contributor::Weight(element),
            Source::AreaOf(area) => Contributor::AreaOf(area, element),
            Source::Declared(span) => Contributor::Declared(element, span),
            Source::Load(load) => Contributor::Load(load),
            Source::From(other) => Contributor::Element(other),
        };
        match found.iter_mut().find(|part| part.from == from) {
            Some(part) => part.force += force,
            None => found.push(Contribution { from, force, of: Vec::new() }),
        }
    }
    found
}

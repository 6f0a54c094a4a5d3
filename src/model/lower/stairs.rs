//! Stairs, landings and stoops.

use crate::model::lower::every::common;
use crate::model::lower::reader::Reader;
use crate::model::stairs::{Foot, Gap, Landing, LandingBody, Stair, StairLanding, StairOpening, Stoop};
use crate::syntax::Fact;
use crate::syntax::value::Side;
use crate::units::Length;

/// A stair.
pub fn stair(reader: &mut Reader<'_, '_>) -> Stair {
    Stair {
        common: common(reader),
        from: reader.field("from", |reader, fact| match fact.has("grade") {
            true => Some(Foot::Grade),
            false => reader.reference(fact, "lower").map(Foot::Floor),
        }),
        to: reader.field("from", |reader, fact| reader.reference(fact, "upper")),
        risers: reader.field("risers", |reader, fact| reader.count(fact, "value")),
        tread: reader.field("tread", |reader, fact| reader.positive(fact, "value")),
        width: reader.field("width", |reader, fact| reader.positive(fact, "value")),
        top: reader.field("top", |reader, fact| reader.point(fact, "point")),
        climbs: reader.field("climbs", |_, fact| fact.side("side")),
        laid_out: reader.field("laid out", |_, fact| Some((fact.length("lower")?, fact.length("upper")?))),
        opening: reader.field("opening", |reader, fact| match fact.has("value") {
            true => reader.positive(fact, "value").map(StairOpening::Long),
            false => reader.reference(fact, "opening").map(StairOpening::Named),
        }),
        landings: reader.list("landing", |reader, fact| {
            let depth = reader.positive(fact, "deep")?;
            let place = reader.words(fact, "place")?;
            Some(StairLanding { place, depth, at: fact.length("at"), span: reader.span(fact.span) })
        }),
        nosing: reader.field("nosing", |reader, fact| reader.not_negative(fact, "value")).or_assumed(
            Length::ZERO,
            "treads without nosing",
            "no line says one",
        ),
        handrails: reader.given("handrail", height_at_side),
        guards: reader.given("guard", height_at_side),
        stringers: reader.field("stringers", |reader, fact| reader.member(fact)),
        tread_stock: reader.field("tread stock", |reader, fact| reader.positive(fact, "value")).or_assumed(
            Length::inches(1),
            "treads 1\" thick",
            "common practice",
        ),
    }
}

fn height_at_side(reader: &mut Reader<'_, '_>, fact: &Fact) -> Option<(Option<Side>, Length)> {
    Some((fact.side("side"), reader.positive(fact, "high")?))
}

/// A landing inside.
pub fn landing(reader: &mut Reader<'_, '_>) -> Landing {
    Landing { common: common(reader), body: body(reader) }
}

/// An outdoor landing at a door.
pub fn stoop(reader: &mut Reader<'_, '_>) -> Stoop {
    Stoop { common: common(reader), body: body(reader) }
}

fn body(reader: &mut Reader<'_, '_>) -> LandingBody {
    let is_at_door = reader.fact("at").is_some_and(|fact| fact.has("door"));
    let at = match is_at_door {
        true => Default::default(),
        false => reader.field("at", |reader, fact| reader.point(fact, "point")),
    };
    let door = match is_at_door {
        true => reader.field("at", |reader, fact| reader.reference(fact, "door")),
        false => Default::default(),
    };
    LandingBody {
        kind: reader.field("kind", |reader, fact| reader.words(fact, "value")),
        member: reader.fact("kind").and_then(|fact| reader.member(fact)),
        door,
        at,
        size: reader.field("size", |reader, fact| reader.dimensions(fact, "size")),
        top: reader.field("top", |_, fact| fact.length("value")),
        gap: reader.field("gap", |reader, fact| {
            let width = reader.not_negative(fact, "value")?;
            Some(Gap { width, how: reader.words(fact, "how")?, wall: reader.reference(fact, "wall") })
        }),
        steps_down: reader.field("steps down", |reader, fact| {
            let (risers, height) = (reader.count(fact, "risers"), reader.positive(fact, "at"));
            Some((risers?, Some(height?)))
        }),
        stands_on: reader.stands_on(),
        slope: reader.field("slope", |reader, fact| reader.not_negative(fact, "value")),
    }
}

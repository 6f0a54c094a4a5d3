//! Openings, doors, windows, headers, jacks, squash blocks, drains, holes, notches and ducts.

use crate::model::lower::every::common;
use crate::model::lower::reader::Reader;
use crate::model::openings::{
    Door, Drain, DrainRun, Duct, Header, Headers, Hole, HoleSize, Jacks, Notch, Opening, Squash, Swing,
    Threshold, Window,
};
use crate::units::Length;

/// An opening.
pub fn opening(reader: &mut Reader<'_, '_>) -> Opening {
    let common = common(reader);
    reader.decide_once("floor", "in");
    if reader.fact("in").is_some() {
        reader.need("at");
        reader.need("size");
    } else if reader.is_missing("in") {
        for phrase in ["floor", "fill", "trimmers", "headers"] {
            reader.need(phrase);
        }
    }
    Opening {
        common,
        floor: reader.field("floor", |reader, fact| reader.reference(fact, "floor")),
        wall: reader.field("in", |reader, fact| reader.reference(fact, "wall")),
        fill: reader.list("fill", |reader, fact| reader.rect(fact)),
        at: reader.field("at", |reader, fact| reader.point(fact, "point")),
        size: reader.field("size", |reader, fact| reader.dimensions(fact, "size")),
        trimmers: reader.field("trimmers", |reader, fact| reader.counted_member(fact)),
        headers: reader.field("headers", |reader, fact| {
            let (count, member) = reader.counted_member(fact)?;
            let count = if fact.has("count") { count } else { member.plies };
            let by = fact.has("connector").then(|| reader.connector(fact));
            Some(Headers { count, member, by })
        }),
        tails: reader.field("tails", |reader, fact| Some(reader.connector(fact))),
        keeps_load: reader.field("loads", |_, fact| Some(fact.word("value")? == "kept")).or_assumed(
            true,
            "the floor's load stays",
            "the stair in it weighs and carries as much",
        ),
    }
}

/// A door.
pub fn door(reader: &mut Reader<'_, '_>) -> Door {
    Door {
        common: common(reader),
        wall: reader.field("in", |reader, fact| reader.reference(fact, "wall")),
        at: reader.field("at", |reader, fact| reader.point(fact, "point")),
        size: reader.field("size", |reader, fact| reader.dimensions(fact, "size")),
        hinge: reader.field("hinge", |_, fact| fact.side("side")),
        swings: reader.field("swings", |reader, fact| match fact.side("side") {
            Some(side) => Some(Swing::Side(side)),
            None => reader.reference(fact, "floor").map(Swing::Into),
        }),
        threshold: reader
            .field("threshold", |reader, fact| match fact.length("value") {
                Some(elevation) => Some(Threshold::At(elevation)),
                None => reader.not_negative(fact, "above").map(Threshold::AboveFinish),
            })
            .or_assumed(
                Threshold::AboveFinish(Length::ZERO),
                "level with the finish",
                "no line says otherwise",
            ),
        landing: reader.field("landing", |reader, fact| reader.reference(fact, "landing")),
    }
}

/// A window.
pub fn window(reader: &mut Reader<'_, '_>) -> Window {
    Window {
        common: common(reader),
        wall: reader.field("in", |reader, fact| reader.reference(fact, "wall")),
        at: reader.field("at", |reader, fact| reader.point(fact, "point")),
        size: reader.field("size", |reader, fact| reader.dimensions(fact, "size")),
    }
}

/// A header.
pub fn header(reader: &mut Reader<'_, '_>) -> Header {
    Header {
        common: common(reader),
        over: reader.field("over", |reader, fact| reader.reference(fact, "opening")),
        size: reader.field("size", |reader, fact| reader.member(fact)),
        supports: reader.supports(),
        loads: reader.declared_loads(None),
        top: reader.field("top", |_, fact| fact.length("value")),
    }
}

/// Jack studs.
pub fn jacks(reader: &mut Reader<'_, '_>) -> Jacks {
    Jacks {
        common: common(reader),
        at: reader.field("at", |reader, fact| reader.reference(fact, "opening")),
        side: reader.fact("at").and_then(|fact| fact.side("side")),
        size: reader.field("size", |reader, fact| reader.counted_member(fact)),
        kings: reader.field("kings", |_, fact| fact.count("value")).or_assumed(
            1,
            "one king stud each side",
            "common practice",
        ),
        stands_on: reader.stands_on(),
        squash: reader.field("squash", |reader, fact| reader.counted_member(fact)),
    }
}

/// Squash blocks.
pub fn squash(reader: &mut Reader<'_, '_>) -> Squash {
    Squash {
        common: common(reader),
        under: reader.field("under", |reader, fact| reader.reference(fact, "post")),
        side: reader.fact("under").and_then(|fact| fact.side("side")),
        size: reader.field("size", |reader, fact| reader.counted_member(fact)),
        length: reader.field("length", |reader, fact| reader.positive(fact, "value")),
        stands_on: reader.stands_on(),
    }
}

/// A drain.
pub fn drain(reader: &mut Reader<'_, '_>) -> Drain {
    Drain {
        common: common(reader),
        floor: reader.field("floor", |reader, fact| reader.reference(fact, "floor")),
        at: reader.field("at", |reader, fact| reader.point(fact, "point")),
        hole: reader.field("hole", |reader, fact| reader.positive(fact, "value")),
        pipe: reader.field("pipe", |reader, fact| reader.positive(fact, "value")),
        runs: reader.given("runs", |reader, fact| {
            let length = reader.positive(fact, "value")?;
            Some(DrainRun { side: fact.side("side")?, length, fall: reader.not_negative(fact, "slope") })
        }),
    }
}

/// A hole.
pub fn hole(reader: &mut Reader<'_, '_>) -> Hole {
    let at = reader.fact("at");
    Hole {
        common: common(reader),
        member: reader.field("in", |reader, fact| reader.reference(fact, "element")),
        at: at.and_then(|fact| reader.station(fact, "at")),
        is_in_each: at.is_some_and(|fact| fact.has("each")),
        size: reader.field("size", |reader, fact| match fact.has("dia") {
            true => reader.positive(fact, "dia").map(HoleSize::Round),
            false => {
                let [width, height] = reader.dimensions(fact, "size")?;
                Some(HoleSize::Rectangle(width, height))
            }
        }),
        above_bottom: reader.field("above bottom", |reader, fact| reader.not_negative(fact, "value")),
    }
}

/// A notch.
pub fn notch(reader: &mut Reader<'_, '_>) -> Notch {
    Notch {
        common: common(reader),
        member: reader.field("in", |reader, fact| reader.reference(fact, "element")),
        at: reader.field("at", |reader, fact| reader.station(fact, "at")),
        size: reader.field("size", |reader, fact| reader.dimensions(fact, "size")),
        is_in_top: reader.field("edge", |_, fact| Some(fact.word("value")? == "top")),
    }
}

/// A duct.
pub fn duct(reader: &mut Reader<'_, '_>) -> Duct {
    Duct {
        common: common(reader),
        floor: reader.field("floor", |reader, fact| reader.reference(fact, "floor")),
        from: reader.field("from", |reader, fact| reader.line(fact)),
        size: reader.field("size", |reader, fact| reader.dimensions(fact, "size")),
    }
}

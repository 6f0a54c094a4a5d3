//! Walls, shelves, pockets, ledgers, footings and slabs.

use crate::model::field::{Assumption, Field};
use crate::model::foundation::{
    Anchor, Bars, Fastening, Footing, FootingKind, FootingSize, Grade, HoldDown, Ledger, LinePlace, LocalPad,
    Pedestal, Plates, Pocket, Shelf, Sill, SillPlace, Slab, Studs, TopPlace, Wall, WallKind,
};
use crate::model::lower::every::common;
use crate::model::lower::reader::Reader;
use crate::model::lower::site::soil;
use crate::model::plan::{Axis, Station};
use crate::model::problem::ModelProblemKind;
use crate::profiles::foundations;
use crate::syntax::Fact;
use crate::syntax::value::{Load, Value};
use crate::units::{Length, Stress};

/// A wall.
pub fn wall(reader: &mut Reader<'_, '_>) -> Wall {
    let common = common(reader);
    let kind = reader.field("kind", |_, fact| match fact.word("value")? {
        "concrete" => Some(WallKind::Concrete),
        "masonry" => Some(WallKind::Masonry),
        "framed" => Some(WallKind::Framed),
        "pony" => Some(WallKind::Pony),
        _ => None,
    });
    for phrase in needs_of(kind.get()) {
        reader.need(phrase);
    }
    let from = reader.field("from", |reader, fact| reader.line(fact));
    let axis = from.value().and_then(|line| line.axis());
    let studs = reader.field("studs", |reader, fact| {
        let (member, spacing) = (reader.member(fact), reader.positive(fact, "at"));
        Some(Studs { member: member?, spacing: spacing? })
    });
    let is_framed = matches!(kind.get(), Some(WallKind::Framed | WallKind::Pony));
    let mut thick = reader.field("thick", |reader, fact| reader.positive(fact, "value"));
    let stud = studs.value().and_then(|studs| studs.member.depth());
    if let (Field::Missing, Some(depth)) = (&thick, stud) {
        let assumption = Assumption { what: "as thick as its studs are deep", ground: "the studs' depth" };
        thick = Field::Assumed(depth, assumption);
    }
    let (top, raked) = tops(reader, axis);
    let mut bearing = reader.field("bearing", |_, fact| Some(fact.word("value")? == "yes"));
    if kind.get() == Some(WallKind::Pony) {
        bearing = bearing.or_assumed(true, "a pony wall bears", "common practice");
    }
    let mut weight = reader.field("weight", |reader, fact| reader.load(fact, "value"));
    if kind.get() == Some(WallKind::Concrete) {
        let density = reader.lowering.model.limits().of(&foundations::CONCRETE_WEIGHT).value;
        weight = weight.or_assumed(Load::Volume(density), "concrete's weight", "common practice");
    }
    let (mut sole, mut plates) = (counted_plates(reader, "sole"), counted_plates(reader, "plates"));
    if is_framed {
        sole = sole.or_assumed(Plates { count: 1, member: None }, "one sole plate", "common practice");
        plates = plates.or_assumed(Plates { count: 2, member: None }, "two top plates", "common practice");
    }
    Wall {
        common,
        kind,
        line: reader.field("line", line_place).or_assumed(
            LinePlace::Centre,
            "its line is its centre",
            "no line says which face",
        ),
        thick,
        top,
        raked,
        sill: reader.field("sill", sill),
        grades: reader.list("grade", |reader, fact| {
            let at = match fact.has("at") {
                true => Some(reader.station_on(fact, "at", axis)?),
                false => None,
            };
            let span = reader.span(fact.span);
            Some(Grade { elevation: fact.length("value")?, side: fact.side("side"), at, span })
        }),
        has_no_grade: reader.facts("grade").any(|fact| fact.has("none")),
        anchor: reader.field("anchor", anchor),
        studs,
        sole,
        plates,
        height: reader.field("height", |reader, fact| reader.positive(fact, "value")),
        sheathed: reader.field("sheathed", |_, fact| {
            if fact.has("both sides") {
                return Some(Box::from("both sides"));
            }
            fact.side("side").map(|side| Box::from(side.word()))
        }),
        bearing,
        weight,
        loads: reader.declared_loads(axis),
        hold_downs: reader.list("hold down", |reader, fact| {
            let (at, concrete) = (reader.station_on(fact, "at", axis), reader.positive(fact, "concrete"));
            let (words, capacity) = (reader.words(fact, "words")?, reader.force(fact, "capacity"));
            let source = reader.source(fact);
            Some(HoldDown {
                at: at?,
                words,
                capacity,
                concrete: concrete?,
                source,
                span: reader.span(fact.span),
            })
        }),
        brace: reader.field("brace", |reader, fact| reader.words(fact, "value")),
        stands_on: reader.stands_on(),
        from,
    }
}

/// What a wall of this kind needs beside what every wall needs.
const fn needs_of(kind: Option<WallKind>) -> &'static [&'static str] {
    match kind {
        Some(WallKind::Concrete) => &["thick", "top"],
        Some(WallKind::Masonry) => &["thick", "top", "weight"],
        Some(WallKind::Framed) => &["studs", "bearing", "weight"],
        Some(WallKind::Pony) => &["studs", "weight"],
        None => &[],
    }
}

/// A wall's top, and where it slopes its tops by their places.
fn tops(reader: &mut Reader<'_, '_>, axis: Option<Axis>) -> (Field<Length>, Vec<(Length, Station)>) {
    let mut raked = Vec::new();
    let top = reader.field("top", |reader, fact| {
        let mut last = None;
        for part in &fact.parts {
            match (&part.value, last) {
                (Value::Length(top), _) => last = Some(*top),
                (_, Some(top)) => raked.extend(reader.on_axis(part, axis).map(|station| (top, station))),
                (_, None) => {}
            }
        }
        fact.length("value")
    });
    (top, raked)
}

fn line_place(reader: &mut Reader<'_, '_>, fact: &Fact) -> Option<LinePlace> {
    let held = match fact.has("held") {
        true => reader.not_negative(fact, "held")?,
        false => Length::ZERO,
    };
    Some(fact.side("side").map_or(LinePlace::Centre, |side| LinePlace::Face(side, held)))
}

fn counted_plates(reader: &mut Reader<'_, '_>, phrase: &str) -> Field<Plates> {
    reader.field(phrase, |reader, fact| {
        let (count, member) = reader.counted_member(fact)?;
        Some(Plates { count, member: Some(member) })
    })
}

fn anchor(reader: &mut Reader<'_, '_>, fact: &Fact) -> Option<Anchor> {
    let [diameter, length] = reader.dimensions(fact, "size")?;
    Some(Anchor { diameter, length, spacing: reader.positive(fact, "at")? })
}

fn sill(reader: &mut Reader<'_, '_>, fact: &Fact) -> Option<Sill> {
    let (count, member) = reader.counted_member(fact)?;
    let place = match fact.side("side") {
        Some(side) if fact.has("held") => SillPlace::HeldIn(reader.not_negative(fact, "held")?, side),
        Some(side) => SillPlace::HeldIn(Length::ZERO, side),
        None => SillPlace::Centred,
    };
    Some(Sill { count, member, place, gasket: reader.not_negative(fact, "gasket") })
}

/// A shelf.
pub fn shelf(reader: &mut Reader<'_, '_>) -> Shelf {
    Shelf {
        common: common(reader),
        wall: reader.field("in", |reader, fact| reader.reference(fact, "wall")),
        side: reader.fact("in").and_then(|fact| fact.side("side")),
        reach: reader.fact("in").and_then(|fact| reader.stretch(fact, None)),
        top: reader.field("top", |_, fact| fact.length("value")),
        width: reader.field("width", |reader, fact| reader.positive(fact, "value")),
        sill: reader.field("sill", sill),
        anchor: reader.field("anchor", anchor),
    }
}

/// A beam pocket.
pub fn pocket(reader: &mut Reader<'_, '_>) -> Pocket {
    let open = reader.fact("open");
    Pocket {
        common: common(reader),
        wall: reader.field("in", |reader, fact| reader.reference(fact, "wall")),
        side: reader.fact("in").and_then(|fact| fact.side("side")),
        at: reader.field("at", |reader, fact| reader.point(fact, "point")),
        seat: reader.field("seat", |_, fact| fact.length("value")),
        width: reader.field("width", |reader, fact| reader.positive(fact, "value")),
        depth: reader.field("depth", |reader, fact| reader.positive(fact, "value")),
        height: reader.field("height", |reader, fact| reader.positive(fact, "value")),
        plate: reader.field("plate", |reader, fact| reader.dimensions(fact, "size")),
        grout: reader.field("grout", |reader, fact| reader.not_negative(fact, "value")),
        shim: reader.field("shim", |reader, fact| reader.not_negative(fact, "value")),
        is_open_at_top: open.is_some_and(|fact| fact.has("at top")),
        open_end: open.and_then(|fact| fact.side("side")),
    }
}

/// A ledger.
pub fn ledger(reader: &mut Reader<'_, '_>) -> Ledger {
    Ledger {
        common: common(reader),
        on: reader.field("on", |reader, fact| reader.reference(fact, "support")),
        side: reader.fact("on").and_then(|fact| fact.side("side")),
        from: reader.field("from", |reader, fact| reader.line(fact)),
        size: reader.field("size", |reader, fact| reader.member(fact)),
        top: reader.field("top", |_, fact| fact.length("value")),
        fastened: reader.field("fastened", |reader, fact| {
            let words = reader.words(fact, "words")?;
            Some(Fastening { words, capacity: reader.load(fact, "capacity"), source: reader.source(fact) })
        }),
    }
}

/// A footing.
pub fn footing(reader: &mut Reader<'_, '_>) -> Footing {
    let common = common(reader);
    let kind = footing_kind(reader);
    match kind.get() {
        Some(FootingKind::Pad | FootingKind::Pier) => reader.need("at"),
        Some(FootingKind::Strip | FootingKind::Stepped) => reader.need("under"),
        None if reader.is_missing("at") && reader.is_missing("under") => reader.need("kind"),
        None => {}
    }
    Footing {
        common,
        at: reader.list("at", |reader, fact| reader.point(fact, "point")),
        under: reader.fact("under").map(|fact| reader.references(fact, "wall")).unwrap_or_default(),
        offset: reader.field("offset", |_, fact| Some((fact.length("value")?, fact.side("side")?))),
        size: reader.field("size", |reader, fact| footing_size(reader, fact, kind.get())),
        top: reader.field("top", |reader, fact| match fact.length("below") {
            Some(below) => Some(TopPlace::BelowSlab(below, reader.reference(fact, "slab")?)),
            None => fact.length("value").map(TopPlace::At),
        }),
        steps: reader.given("step", |reader, fact| {
            let (down, at) = (reader.positive(fact, "down"), reader.station(fact, "at"));
            Some((down?, at?))
        }),
        local_pads: reader.list("local pad", |reader, fact| {
            let (size, at) = (reader.dimensions(fact, "size"), reader.point(fact, "point"));
            Some(LocalPad { size: size?, at: at?, span: reader.span(fact.span) })
        }),
        pedestal: reader.field("pedestal", |reader, fact| {
            let size = reader.dimensions(fact, "size")?;
            let top = match fact.length("above") {
                Some(above) => TopPlace::AboveSlab(above, reader.reference(fact, "slab")?),
                None => TopPlace::At(fact.length("top")?),
            };
            Some(Pedestal { size, top })
        }),
        bars: reader.given("bars", bars),
        concrete: concrete(reader),
        soil: reader.field("soil", soil),
        kind,
    }
}

fn footing_kind(reader: &mut Reader<'_, '_>) -> Field<FootingKind> {
    let kind = reader.field("kind", |_, fact| match fact.word("value")? {
        "pad" => Some(FootingKind::Pad),
        "strip" => Some(FootingKind::Strip),
        "pier" => Some(FootingKind::Pier),
        "stepped" => Some(FootingKind::Stepped),
        _ => None,
    });
    if reader.fact("at").is_some() {
        return kind.or_assumed(FootingKind::Pad, "a pad", "it has `at`");
    }
    if reader.fact("under").is_some() {
        return kind.or_assumed(FootingKind::Strip, "a strip", "it has `under`");
    }
    kind
}

fn footing_size(reader: &mut Reader<'_, '_>, fact: &Fact, kind: Option<FootingKind>) -> Option<FootingSize> {
    let size = if fact.has("round") {
        let (round, thick) = (reader.positive(fact, "round"), reader.positive(fact, "thick"));
        FootingSize::Round(round?, thick?)
    } else if fact.dimensions("size")?.len() == 2 {
        let [width, thickness] = reader.dimensions(fact, "size")?;
        FootingSize::Strip(width, thickness)
    } else {
        let [width, length, thickness] = reader.dimensions(fact, "size")?;
        FootingSize::Pad(width, length, thickness)
    };
    let fits = match (kind, size) {
        (None, _)
        | (Some(FootingKind::Pad | FootingKind::Pier), FootingSize::Pad(..) | FootingSize::Round(..))
        | (Some(FootingKind::Strip | FootingKind::Stepped), FootingSize::Strip(..)) => return Some(size),
        (Some(FootingKind::Pad | FootingKind::Pier), FootingSize::Strip(..)) => "width x length x thickness",
        (Some(FootingKind::Strip | FootingKind::Stepped), FootingSize::Pad(..) | FootingSize::Round(..)) => {
            "width x thickness"
        }
    };
    let span = reader.part_span(fact, "size");
    reader.report(span, ModelProblemKind::SizeOfOtherKind(fits));
    None
}

fn bars(reader: &mut Reader<'_, '_>, fact: &Fact) -> Option<Bars> {
    let Value::Bar(number) = fact.part("bar")?.value else { return None };
    let is_each_way = fact.word("how") == Some("each way");
    let cover = reader.positive(fact, "cover");
    Some(Bars { count: reader.count(fact, "count")?, number, is_each_way, cover })
}

fn concrete(reader: &mut Reader<'_, '_>) -> Field<Stress> {
    let least = reader.lowering.model.limits().of(&foundations::CONCRETE_STRENGTH).value;
    let stated = reader.field("concrete", |reader, fact| {
        let strength = fact.stress("value")?;
        if strength <= Stress::psi(0.0) {
            let span = reader.part_span(fact, "value");
            reader.report(span, ModelProblemKind::NotPositive(fact.spec.phrase));
            return None;
        }
        Some(strength)
    });
    stated.or_assumed(least, "the least concrete strength of the profile", "IRC R402.2")
}

/// A slab.
pub fn slab(reader: &mut Reader<'_, '_>) -> Slab {
    Slab {
        common: common(reader),
        fill: reader.list("fill", |reader, fact| reader.rect(fact)),
        top: reader.field("top", |_, fact| fact.length("value")),
        thick: reader.field("thick", |reader, fact| reader.positive(fact, "value")),
        insulation: reader.field("insulation", |reader, fact| reader.not_negative(fact, "value")),
        base: reader.field("base", |reader, fact| {
            reader.not_negative(fact, "value")?;
            Some(reader.words(fact, "words").unwrap_or_default())
        }),
        concrete: concrete(reader),
        joints: reader.list("joint", |reader, fact| {
            reader.reference(fact, "post").or_else(|| reader.reference(fact, "wall"))
        }),
    }
}

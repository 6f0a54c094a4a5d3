//! Declared products, joists, beams and columns.

use crate::model::field::Given;
use crate::model::framing::{
    Base, Beam, BeamHole, BeamSet, Blocking, Bracing, Cap, Column, Joists, Nailer, Packing, Product, Rim,
    Spacing, Tie,
};
use crate::model::lower::every::common;
use crate::model::lower::reader::{Reader, words_of};
use crate::model::lower::site::run;
use crate::model::plan::Axis;
use crate::model::problem::ModelProblemKind;
use crate::products::engineered::{COMPOSITE_WEIGHT, GLULAM_WEIGHT};
use crate::products::i_joist::IJoist;
use crate::products::section::{Make, Named, Section, Size, section_of, solid_weight};
use crate::products::species::UNNAMED_WEIGHT;
use crate::syntax::Fact;
use crate::syntax::value::{Load, Section as WrittenSection, Value};
use crate::units::{Density, Force, Length, LineLoad, Stress};

/// A declared product.
pub fn product(reader: &mut Reader<'_, '_>) -> Product {
    let product = Product {
        common: common(reader),
        kind: reader.field("kind", |reader, fact| reader.words(fact, "value")),
        size: reader.fact("kind").and_then(|fact| product_size(reader, fact)),
        outline: reader
            .fact("kind")
            .filter(|fact| fact.word("value") == Some("rolled"))
            .and_then(|fact| fact.dimensions("size").map(Box::from)),
        values: reader
            .facts("values")
            .collect::<Vec<_>>()
            .into_iter()
            .flat_map(|fact| values(reader, fact))
            .collect(),
        capacities: reader.facts("values").flat_map(capacities).collect(),
        width: reader.field("width", |reader, fact| reader.positive(fact, "value")),
        weight: reader.field("weight", |reader, fact| match reader.load(fact, "value")? {
            load @ (Load::Line(_) | Load::Volume(_)) => Some(load),
            Load::Area(_) | Load::Point(_) => reader.other_load(fact, "value", "plf or pcf"),
        }),
        cross_grain: reader.field("cross grain", |reader, fact| reader.words(fact, "value")),
    };
    if let Some(section) = declared_section(reader, &product) {
        reader.lowering.products.insert(product.common.id, section);
    }
    product
}

fn product_size(reader: &mut Reader<'_, '_>, fact: &Fact) -> Option<WrittenSection> {
    if let Some([first, second, ..]) = fact.dimensions("size") {
        let (first, second) = (*first, *second);
        // A rolled shape is told depth first, all others width first.
        let (width, depth) =
            if fact.word("value") == Some("rolled") { (second, first) } else { (first, second) };
        return reader
            .is_positive(fact, "size", &[width, depth])
            .then_some(WrittenSection::Built(width, depth));
    }
    if fact.has("depth") {
        return reader.positive(fact, "depth").map(WrittenSection::Depth);
    }
    reader.positive(fact, "dia").map(WrittenSection::FilledPipe)
}

/// Declared values: each symbol stands before its value. What is not more than nothing is no value.
fn values(reader: &mut Reader<'_, '_>, fact: &Fact) -> Vec<(Box<str>, Given<Value>)> {
    let mut found = Vec::new();
    for (symbol, part) in fact.parts_of("symbol").filter_map(words_of).zip(fact.parts_of("value")) {
        let span = reader.span(part.span);
        let is_positive = match part.value {
            Value::Stress(stress) => stress > Stress::ZERO,
            Value::Load(Load::Point(force)) => force > Force::ZERO,
            Value::Load(Load::Volume(density)) => density > Density::ZERO,
            Value::Number(number) => number > 0.0,
            _ => true,
        };
        if is_positive {
            found.push((symbol, Given { value: part.value.clone(), span }));
        } else {
            reader.report(span, ModelProblemKind::NotPositive(fact.spec.phrase));
        }
    }
    found
}

/// Declared capacities: a length behind one says up to where it holds.
fn capacities(fact: &Fact) -> Vec<(Force, Option<Length>)> {
    let mut capacities: Vec<(Force, Option<Length>)> = Vec::new();
    let mut is_capacity = false;
    for part in &fact.parts {
        match (part.label, &part.value) {
            ("symbol", Value::Word(word)) => is_capacity = **word == *"capacity",
            ("value", Value::Load(Load::Point(force))) if is_capacity => capacities.push((*force, None)),
            ("at", Value::Length(length)) => {
                if let Some(last) = capacities.last_mut() {
                    last.1 = Some(*length);
                }
            }
            _ => {}
        }
    }
    capacities
}

/// The section that a product states; `None` for a hanger and for what is not stated.
fn declared_section(reader: &mut Reader<'_, '_>, product: &Product) -> Option<Section> {
    let kind: &str = product.kind.value()?;
    let (width, depth, make) = match (product.size.as_ref()?, kind) {
        (WrittenSection::Built(width, depth), "glulam") => (*width, *depth, Make::Glulam),
        (WrittenSection::Built(width, depth), "timber") => {
            (*width, *depth, Make::Sawn { species: None, is_timber: true })
        }
        (WrittenSection::Built(width, depth), "rolled") => (*width, *depth, Make::DeclaredSteel),
        (WrittenSection::Built(width, depth), _) => (*width, *depth, Make::Composite),
        (WrittenSection::FilledPipe(diameter), _) => (*diameter, *diameter, Make::FilledPipe),
        (WrittenSection::Depth(depth), _) => {
            reader.need("width");
            (product.width.get()?, *depth, Make::IJoist(None))
        }
        _ => return None,
    };
    let width = product.width.get().unwrap_or(width);
    let piece_weight = declared_weight(reader, product, make, width, depth)?;
    Some(Section { pieces: 1, piece_width: width, depth, make, piece_weight })
}

fn declared_weight(
    reader: &mut Reader<'_, '_>,
    product: &Product,
    make: Make,
    width: Length,
    depth: Length,
) -> Option<LineLoad> {
    let solid = |density: Density| Some(solid_weight(width, depth, density));
    match (product.weight.value(), make) {
        (Some(Load::Line(weight)), _) => return Some(*weight),
        (Some(Load::Volume(density)), Make::Glulam | Make::Composite | Make::Sawn { .. }) => {
            return solid(*density);
        }
        (Some(_) | None, _) => {}
    }
    match make {
        Make::Glulam => solid(GLULAM_WEIGHT),
        Make::Composite | Make::RimBoard => solid(COMPOSITE_WEIGHT),
        Make::Sawn { .. } => solid(UNNAMED_WEIGHT),
        Make::IJoist(_) => Some(IJoist { series: 0, depth, flange_width: width }.weight()),
        Make::FilledPipe | Make::DeclaredSteel | Make::Rolled(_) => {
            let named =
                Named { pieces: 1, size: Size::FilledPipe(depth), make: None, species: None, grade: None };
            let listed = if make == Make::FilledPipe { section_of(&named).ok() } else { None };
            if listed.is_none() {
                reader.need("weight");
            }
            listed.map(|section| section.piece_weight)
        }
    }
}

/// A field of joists.
pub fn joists(reader: &mut Reader<'_, '_>) -> Joists {
    let common = common(reader);
    let run = reader.field("run", run);
    let (along, across) = (run.get(), run.get().map(Axis::across));
    Joists {
        common,
        floor: reader.field("floor", |reader, fact| reader.reference(fact, "floor")),
        size: reader.field("size", |reader, fact| reader.member(fact)),
        fill: reader.list("fill", |reader, fact| reader.rect(fact)),
        run,
        spacing: reader.field("spacing", |reader, fact| {
            let (step, origin) = (reader.positive(fact, "value"), reader.station_on(fact, "from", across));
            Some(Spacing { step: step?, origin: origin? })
        }),
        rim: reader.field("rim", rim),
        supports: reader.supports(),
        joints: reader.joints(),
        is_span_by_grid: reader.fact("span").is_some(),
        blocked: reader.given("blocked", |reader, fact| {
            let at = match fact.has("at") {
                true => Some(reader.station_on(fact, "at", along)?),
                false => None,
            };
            let is_solid = fact.word("how") == Some("solid");
            let over = reader.reference(fact, "support");
            Some(Blocking { is_solid, over, at, beside: reader.reference(fact, "wall") })
        }),
        doubled: reader.given("doubled", |reader, fact| reader.reference(fact, "wall")),
        deck_edges: reader.list("deck edge", |reader, fact| reader.station(fact, "value")),
        cantilevers: reader.given("cantilever", |reader, fact| {
            let (past, by) = (reader.reference(fact, "support"), reader.positive(fact, "by"));
            Some((past?, by?))
        }),
    }
}

fn rim(reader: &mut Reader<'_, '_>, fact: &Fact) -> Option<Rim> {
    if fact.has("none") {
        return Some(Rim::None);
    }
    if fact.has("value") {
        return reader.positive(fact, "value").map(Rim::Thick);
    }
    // A rim board is told by its thickness: it is as deep as the joists.
    if let WrittenSection::Depth(thickness) = fact.member("member")?.section {
        return reader.is_positive(fact, "member", &[thickness]).then_some(Rim::Thick(thickness));
    }
    reader.member(fact).map(Rim::Member)
}

/// A beam.
pub fn beam(reader: &mut Reader<'_, '_>) -> Beam {
    let common = common(reader);
    let from = reader.field("from", |reader, fact| reader.line(fact));
    let axis = from.value().and_then(|line| line.axis());
    Beam {
        common,
        size: reader.field("size", |reader, fact| reader.member(fact)),
        set: reader.field("set", set),
        joints: reader.joints(),
        is_span_by_grid: reader.fact("span").is_some(),
        supports: reader.supports(),
        nailer: reader.field("nailer", |reader, fact| {
            Some(Nailer { member: reader.member(fact)?, is_bolted: fact.has("bolted") })
        }),
        packing: reader.field("packing", packing),
        is_laid_flat: reader.fact("laid").is_some_and(|fact| fact.word("value") == Some("flat")),
        braced: reader.field("braced", |reader, fact| {
            if fact.has("none") {
                return Some(Bracing::None);
            }
            if fact.has("at") {
                return reader.positive(fact, "at").map(Bracing::At);
            }
            reader.reference(fact, "joists").map(Bracing::By)
        }),
        loads: reader.declared_loads(axis),
        transfers: reader.given("transfers", |reader, fact| {
            let (post, to) = (reader.reference(fact, "post"), reader.reference(fact, "support"));
            Some((post?, to?))
        }),
        holes: reader.list("hole", |reader, fact| {
            let (diameter, at) = (reader.positive(fact, "dia"), reader.station_on(fact, "at", axis));
            let above_bottom = reader.not_negative(fact, "above");
            let span = reader.span(fact.span);
            Some(BeamHole { diameter: diameter?, at: Some(at?), above_bottom, span })
        }),
        stiffeners: reader.list("stiffener", |reader, fact| match fact.has("at") {
            true => reader.station_on(fact, "at", axis),
            false => None,
        }),
        no_stiffener: reader
            .fact("stiffener")
            .filter(|fact| fact.has("none"))
            .map(|fact| reader.span(fact.span)),
        from,
    }
}

fn set(reader: &mut Reader<'_, '_>, fact: &Fact) -> Option<BeamSet> {
    let how = fact.word("how")?;
    if how == "top" {
        return fact.length("top").map(BeamSet::Top);
    }
    let floor = reader.reference(fact, "floor")?;
    let mut by = |label: &str| match fact.has(label) {
        true => reader.not_negative(fact, label),
        false => Some(Length::ZERO),
    };
    match how {
        "flush in" => Some(BeamSet::Flush(floor, by("held")?)),
        "dropped under" => Some(BeamSet::Dropped(floor, by("packed")?)),
        "upset in" => Some(BeamSet::Upset(floor, by("by")?)),
        _ => None,
    }
}

fn packing(reader: &mut Reader<'_, '_>, fact: &Fact) -> Option<Packing> {
    let what = match fact.has("member") {
        true => reader.member(fact)?.text,
        false => reader.words(fact, "how")?,
    };
    let place = reader.words(fact, "words")?;
    Some(Packing { words: format!("{what} {place}").into(), side: fact.side("side") })
}

/// A column.
pub fn column(reader: &mut Reader<'_, '_>) -> Column {
    Column {
        common: common(reader),
        at: reader.field("at", |reader, fact| reader.point(fact, "point")),
        size: reader.field("size", |reader, fact| reader.member(fact)),
        stands_on: reader.stands_on(),
        cap: reader.field("cap", cap),
        base: reader.field("base", base),
        shim: reader.field("shim", |reader, fact| reader.not_negative(fact, "value")),
        length: reader.field("length", |reader, fact| reader.positive(fact, "value")),
        braced: reader.field("braced", |reader, fact| match fact.has("none") {
            true => Some(None),
            false => reader.positive(fact, "at").map(Some),
        }),
        ties: reader.list("tie", |reader, fact| {
            let is_top = fact.word("how") == Some("top");
            let words = reader.words(fact, "words")?;
            let capacity = reader.force(fact, "capacity");
            let source = reader.source(fact);
            Some(Tie { is_top, words, capacity, source, span: reader.span(fact.span) })
        }),
        loads: reader.declared_loads(None),
        squash: reader.field("squash", |reader, fact| reader.counted_member(fact)),
    }
}

fn cap(reader: &mut Reader<'_, '_>, fact: &Fact) -> Option<Cap> {
    match fact.word("how")? {
        "plate" => {
            let size = reader.dimensions(fact, "size")?;
            Some(Cap::Plate(size, reader.reference(fact, "along")))
        }
        "seat" => reader.positive(fact, "thick").map(Cap::Seat),
        "saddle" => {
            let long = reader.positive(fact, "long")?;
            Some(Cap::Saddle(long, reader.positive(fact, "thick")))
        }
        "none" => Some(Cap::None),
        _ => None,
    }
}

fn base(reader: &mut Reader<'_, '_>, fact: &Fact) -> Option<Base> {
    match fact.word("how")? {
        "plate" => {
            let size = reader.dimensions(fact, "size")?;
            let grout = match fact.has("grout") {
                true => reader.not_negative(fact, "grout")?,
                false => Length::ZERO,
            };
            Some(Base::Plate(size, grout))
        }
        "standoff" => reader.not_negative(fact, "standoff").map(Base::Standoff),
        "bare" => Some(Base::Bare { is_through_deck: fact.has("through the deck") }),
        _ => None,
    }
}

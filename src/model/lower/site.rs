//! The house itself, floors, areas, roofs and loads of their own.

use crate::diagnostic::Severity;
use crate::model::field::Given;
use crate::model::field::{Assumption, Field};
use crate::model::lower::every::{common, engineered};
use crate::model::lower::reader::{Reader, words_of};
use crate::model::plan::Axis;
use crate::model::problem::ModelProblemKind;
use crate::model::site::{
    Area, Below, Benchmark, Datum, DatumSurface, EdgeGuard, Floor, Layer, Load, LoadPlace, Moisture,
    OwnSeverity, Project, Roof, Snow, Soil, Steps,
};
use crate::profiles::{self, Count, Factor, LimitValue, Limits, Percent, Refused, foundations};
use crate::syntax::Fact;
use crate::syntax::value::{Load as LoadValue, Value};
use crate::units::{AreaLoad, Length};

/// The house itself.
pub fn project(reader: &mut Reader<'_, '_>) -> Project {
    let common = common(reader);
    let profile = reader.field("profile", |reader, fact| reader.words(fact, "value"));
    let limits = limits(reader, &profile);
    let presumed = Soil {
        pressure: limits.of(&foundations::PRESUMPTIVE_BEARING).value,
        is_net: false,
        is_assumed: true,
        source: None,
    };
    Project {
        common,
        severities: reader.list("severity", own_severity),
        profile,
        datum: reader.field("datum", datum),
        benchmark: reader.field("benchmark", |reader, fact| {
            Some(Benchmark { words: reader.words(fact, "words")?, elevation: fact.length("at")? })
        }),
        frost: reader.field("frost", |reader, fact| reader.not_negative(fact, "value")),
        soil: reader.field("soil", soil).or_assumed(
            presumed,
            "the least bearing the profile presumes, gross",
            "IRC R401.4.1",
        ),
        snow: reader.field("snow", |reader, fact| {
            let load = reader.area_load(fact, "value")?;
            Some(Snow { load, is_ground: fact.word("place") == Some("ground") })
        }),
        moisture: reader
            .field("moisture", |_, fact| {
                let percent = |label| fact.number(label).map(Percent);
                Some(Moisture { install: percent("install")?, service: percent("service")? })
            })
            .or_assumed(Moisture::presumed(&limits), "the moisture the profile presumes", "common practice"),
        seismic: reader.field("seismic", |reader, fact| reader.words(fact, "value")),
        wind: reader.field("wind", |reader, fact| reader.area_load(fact, "value")),
        limits,
    }
}

fn limits(reader: &mut Reader<'_, '_>, profile: &Field<Box<str>>) -> Limits {
    let mut limits = Limits::newest();
    if let Field::Stated(name, span) = profile {
        match profiles::profile(name) {
            Ok(profile) => limits = Limits::new(profile),
            Err(unknown) => {
                let nearest = unknown.nearest.first().copied().map(Box::from);
                reader.report(*span, ModelProblemKind::UnknownWord("profile", nearest));
            }
        }
    }
    for fact in reader.facts("limit") {
        let (Some(name), Some(value)) = (reader.words(fact, "limit"), fact.part("value")) else { continue };
        let overridden = match limit_value(&value.value) {
            Some(value) => limits.override_with(&name, value),
            None => limits
                .profile()
                .limit(&name)
                .map_err(Refused::Unknown)
                .and_then(|limit| Err(Refused::OtherKind(limit.value))),
        };
        match overridden {
            Ok(()) => {}
            Err(Refused::Unknown(unknown)) => {
                let nearest = unknown.nearest.first().copied().map(Box::from);
                let span = reader.part_span(fact, "limit");
                reader.report(span, ModelProblemKind::UnknownWord("limit", nearest));
            }
            Err(Refused::OtherKind(own)) => {
                let span = reader.part_span(fact, "value");
                reader.report(span, ModelProblemKind::LimitOfOtherKind(kind_of(own)));
            }
        }
    }
    limits
}

fn own_severity(reader: &mut Reader<'_, '_>, fact: &Fact) -> Option<OwnSeverity> {
    Some(OwnSeverity {
        rule: reader.words(fact, "rule")?,
        rule_span: reader.part_span(fact, "rule"),
        // The one word that is no severity is `off`.
        severity: Severity::from_word(fact.word("value")?),
        severity_span: reader.part_span(fact, "value"),
        reason: reader.words(fact, "reason"),
        span: reader.span(fact.span),
    })
}

fn limit_value(value: &Value) -> Option<LimitValue> {
    Some(match value {
        Value::Length(length) => LimitValue::Length(*length),
        Value::Load(LoadValue::Area(load)) => LimitValue::AreaLoad(*load),
        Value::Load(LoadValue::Point(force)) => LimitValue::Force(*force),
        Value::Load(LoadValue::Volume(density)) => LimitValue::Density(*density),
        Value::Stress(stress) => LimitValue::Stress(*stress),
        Value::Area(area) => LimitValue::Area(*area),
        Value::Count(count) => LimitValue::Count(Count(*count)),
        Value::Number(number) => LimitValue::Factor(Factor(*number)),
        Value::Percent(percent) => LimitValue::Percent(Percent(*percent)),
        _ => return None,
    })
}

/// What a limit takes, as a person says it.
const fn kind_of(limit: LimitValue) -> &'static str {
    match limit {
        LimitValue::Length(_) => "a length",
        LimitValue::Lengths(_) => "no value of the project's own",
        LimitValue::AreaLoad(_) => "a load in psf",
        LimitValue::Force(_) => "a force in lb",
        LimitValue::Area(_) => "an area",
        LimitValue::Stress(_) => "a stress in psi",
        LimitValue::Density(_) => "a weight in pcf",
        LimitValue::Count(_) => "a whole number",
        LimitValue::OneIn(_) => "the lower number of a share, as 360 for 1/360",
        LimitValue::Factor(_) => "a number",
        LimitValue::Percent(_) => "a share in %",
    }
}

fn datum(reader: &mut Reader<'_, '_>, fact: &Fact) -> Option<Datum> {
    let surface = match fact.word("how")? {
        "finish" => DatumSurface::Finish,
        _ => DatumSurface::Subfloor,
    };
    Some(Datum { floor: reader.reference(fact, "floor")?, surface, elevation: fact.length("value")? })
}

/// The pressure that soil may take, on the project or a footing.
pub fn soil(reader: &mut Reader<'_, '_>, fact: &Fact) -> Option<Soil> {
    let pressure = reader.area_load(fact, "value")?;
    if pressure <= AreaLoad::psf(0.0) {
        let span = reader.part_span(fact, "value");
        reader.report(span, ModelProblemKind::NotPositive(fact.spec.phrase));
        return None;
    }
    Some(Soil {
        pressure,
        is_net: fact.word("how") == Some("net"),
        is_assumed: fact.has("assumed"),
        source: reader.source(fact),
    })
}

/// A floor.
pub fn floor(reader: &mut Reader<'_, '_>) -> Floor {
    let common = common(reader);
    for (one, other) in [("subfloor", "finish at"), ("subfloor", "on"), ("finish at", "on"), ("deck", "on")] {
        reader.decide_once(one, other);
    }
    if reader.is_missing("on") {
        for phrase in ["deck", "live", "dead"] {
            reader.need(phrase);
        }
    }
    let mut steps = steps(reader);
    let further = steps.split_off(steps.len().min(1));
    let broken = reader.broken("steps down").or_else(|| reader.broken("steps up"));
    let first = steps.pop().map(|steps| Field::Stated(steps.value, steps.span));
    Floor {
        common,
        subfloor: reader.field("subfloor", |_, fact| fact.length("value")),
        finish_at: reader.field("finish at", |_, fact| fact.length("value")),
        steps: first.unwrap_or_else(|| broken.map_or(Field::Missing, Field::Broken)),
        other_steps: further,
        on: reader.field("on", |reader, fact| reader.reference(fact, "slab")),
        deck: reader.field("deck", |reader, fact| reader.positive(fact, "value")),
        finish: reader.field("finish", layer).or_assumed(
            Layer { words: Box::from(""), thickness: Length::ZERO },
            "no finish",
            "no line says one",
        ),
        live: reader.field("live", |reader, fact| reader.area_load(fact, "value")),
        dead: reader.field("dead", |reader, fact| reader.area_load(fact, "value")),
        use_: reader.field("use", |reader, fact| reader.words(fact, "value")).or_assumed(
            Box::from("living"),
            "used for living",
            "no line says otherwise",
        ),
        ceiling: reader.field("ceiling", |reader, fact| Some(layers(reader, fact))).or_assumed(
            Vec::new(),
            "no ceiling",
            "no line says one",
        ),
        over: reader.field("over", below),
        tie: reader.field("tie", |reader, fact| Some(engineered(reader, fact))),
        guards: reader.given("guard", |reader, fact| {
            let (side, height) = (fact.side("side")?, reader.positive(fact, "high")?);
            Some(EdgeGuard { side, height, is_backed: fact.has("posts blocked") })
        }),
    }
}

/// Every line of steps, in the order of the text.
fn steps(reader: &mut Reader<'_, '_>) -> Vec<Given<Steps>> {
    let mut facts: Vec<&Fact> = reader.facts("steps down").chain(reader.facts("steps up")).collect();
    facts.sort_by_key(|fact| fact.span);
    let mut all = Vec::new();
    for fact in facts {
        let Some(from) = reader.reference(fact, "floor") else { continue };
        let Some(risers) = reader.count(fact, "risers") else { continue };
        let riser = reader.positive(fact, "at");
        let riser = riser.map(|value| Given { value, span: reader.part_span(fact, "at") });
        let value = Steps { is_down: fact.spec.phrase == "steps down", from, risers, riser };
        all.push(Given { value, span: reader.span(fact.value) });
    }
    all
}

fn layer(reader: &mut Reader<'_, '_>, fact: &Fact) -> Option<Layer> {
    let thickness = reader.not_negative(fact, "value")?;
    Some(Layer { words: reader.words(fact, "words").unwrap_or_default(), thickness })
}

/// The layers of a ceiling: words, where there are any, stand before their thickness.
fn layers(reader: &mut Reader<'_, '_>, fact: &Fact) -> Vec<Layer> {
    let mut layers = Vec::new();
    let mut words = None;
    for part in &fact.parts {
        match part.value {
            Value::Length(thickness) if thickness.is_negative() => {
                reader.report(reader.span(part.span), ModelProblemKind::Negative(fact.spec.phrase));
            }
            Value::Length(thickness) => {
                layers.push(Layer { words: words.take().unwrap_or_default(), thickness });
            }
            _ => words = words_of(part),
        }
    }
    layers
}

fn below(reader: &mut Reader<'_, '_>, fact: &Fact) -> Option<Below> {
    match fact.word("how")? {
        "crawl" => fact.length("ground").map(Below::Crawl),
        "basement" => reader.reference(fact, "floor").map(Below::Basement),
        _ => Some(Below::Outside),
    }
}

/// Part of a floor.
pub fn area(reader: &mut Reader<'_, '_>) -> Area {
    Area {
        common: common(reader),
        floor: reader.field("in", |reader, fact| reader.reference(fact, "floor")),
        fill: reader.list("fill", |reader, fact| reader.rect(fact)),
        use_: reader.field("use", |reader, fact| reader.words(fact, "value")),
        live: reader.field("live", |reader, fact| reader.area_load(fact, "value")),
        dead: reader.field("dead", |reader, fact| reader.area_load(fact, "value")),
        finish: reader.field("finish", layer),
        no_column: reader.fact("no column").map(|fact| reader.span(fact.span)),
    }
}

/// A roof.
pub fn roof(reader: &mut Reader<'_, '_>) -> Roof {
    let common = common(reader);
    let supports = reader.supports();
    if supports.len() > 1 {
        reader.need("run");
    }
    let run = reader.field("run", run);
    let across = run.get().map(Axis::across);
    Roof {
        common,
        fill: reader.list("fill", |reader, fact| reader.rect(fact)),
        dead: reader.field("dead", |reader, fact| reader.area_load(fact, "value")),
        snow: roof_snow(reader),
        live: reader.field("live", |reader, fact| reader.area_load(fact, "value")),
        kind: reader.field("kind", |reader, fact| reader.words(fact, "value")),
        member: reader.fact("kind").and_then(|fact| reader.member(fact)),
        run,
        spacing: reader.field("spacing", |reader, fact| {
            if fact.has("from") {
                reader.station_on(fact, "from", across)?;
            }
            reader.positive(fact, "value")
        }),
        supports,
        pitch: reader.field("pitch", |_, fact| fact.number("value")),
        overhang: reader.field("overhang", |reader, fact| reader.not_negative(fact, "value")),
    }
}

/// The axis that members run along.
pub fn run(_: &mut Reader<'_, '_>, fact: &Fact) -> Option<Axis> {
    match fact.word("axis")? {
        "x" => Some(Axis::X),
        _ => Some(Axis::Y),
    }
}

/// The roof's own snow, else the project's where that is a load on roofs.
fn roof_snow(reader: &mut Reader<'_, '_>) -> Field<AreaLoad> {
    let own = reader.field("snow", |reader, fact| reader.area_load(fact, "value"));
    let of_project = reader.lowering.model.project.as_ref().map(|project| &project.snow);
    match (&own, of_project) {
        (Field::Missing, Some(Field::Stated(snow, _))) if !snow.is_ground => Field::Assumed(
            snow.load,
            Assumption { what: "the project's snow", ground: "no line of the roof's own" },
        ),
        (Field::Missing, Some(Field::Broken(span))) => Field::Broken(*span),
        _ => own,
    }
}

/// A load of its own.
pub fn load(reader: &mut Reader<'_, '_>) -> Load {
    let common = common(reader);
    for (one, other) in [("at", "from"), ("at", "fill"), ("from", "fill")] {
        reader.decide_once(one, other);
    }
    if reader.is_missing("from") && reader.is_missing("fill") {
        reader.need("at");
    }
    let at = reader.field("at", |reader, fact| reader.point(fact, "point").map(LoadPlace::Point));
    let from = reader.field("from", |reader, fact| reader.line(fact).map(LoadPlace::Line));
    let fill = reader.field("fill", |reader, fact| reader.rect(fact).map(LoadPlace::Rect));
    Load {
        common,
        on: reader.field("on", |reader, fact| reader.carrier(fact, "element")),
        place: [at, from, fill].into_iter().find(|place| !place.is_missing()).unwrap_or_default(),
        amount: reader.field("amount", |reader, fact| reader.load(fact, "value")),
        case: reader.field("case", |reader, fact| reader.words(fact, "case")),
    }
}

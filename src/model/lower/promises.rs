//! Promises of the design, sheets and hold points.

use crate::model::element::{Assertion, Reference};
use crate::model::lower::every::common;
use crate::model::lower::reader::{Reader, kinds_named, words_of};
use crate::model::problem::ModelProblemKind;
use crate::model::promises::{HoldPoint, Intent, Promise, Sheet};
use crate::syntax::Fact;
use crate::syntax::value::{Expression, FactName, Value};
use crate::text::LocalSpan;
use crate::units::Length;

/// A promise of the design.
pub fn intent(reader: &mut Reader<'_, '_>) -> Intent {
    let common = common(reader);
    let phrases = ["keep", "nothing below", "no column"];
    let mut facts: Vec<&Fact> = phrases.iter().flat_map(|phrase| reader.facts(phrase)).collect();
    facts.sort_by_key(|fact| fact.span);
    let promises = facts.into_iter().filter_map(|fact| promise(reader, fact)).collect();
    let for_ = reader.field("for", |reader, fact| reader.words(fact, "value"));
    Intent { common, promises, for_ }
}

fn promise(reader: &mut Reader<'_, '_>, fact: &Fact) -> Option<Promise> {
    let span = reader.span(fact.span);
    if fact.spec.phrase == "no column" {
        return Some(Promise::NoColumn(reader.rect(fact)?, span));
    }
    if fact.spec.phrase == "nothing below" {
        let floor = ceiling_named(reader, fact)?;
        let within = match fact.has("rect") {
            true => Some(reader.rect(fact)?),
            false => None,
        };
        return Some(Promise::NothingBelowCeiling(floor, within, span));
    }
    let Some(how) = fact.word("how") else { return assertion(reader, fact).map(Promise::Holds) };
    if how == "straight" {
        let (wall, line) = (reader.reference(fact, "wall"), reader.line(fact));
        return Some(Promise::StraightFace(wall?, line?, span));
    }
    let within = reader.not_negative(fact, "within");
    let (first, second) = (pair_named(reader, fact, how, "first"), pair_named(reader, fact, how, "second"));
    let (first, second) = (first?, second?);
    match how {
        "over" => Some(Promise::Over(first, second, within, span)),
        "level with" => Some(Promise::Level(first, second, within, span)),
        "meeting" => Some(Promise::Meeting(first, second, span)),
        "step-free" => Some(Promise::StepFree(first, second, span)),
        _ => None,
    }
}

/// One of the two elements of a promise. Only what one walks on can be free of steps: the last of the form's lists.
fn pair_named(reader: &mut Reader<'_, '_>, fact: &Fact, how: &str, label: &str) -> Option<Reference> {
    let lists = kinds_named(&fact.spec.form, label);
    let kinds = if how == "step-free" { lists.last() } else { lists.first() };
    reader.reference_of(fact.part(label)?, kinds.copied().unwrap_or(&[]))
}

fn ceiling_named(reader: &mut Reader<'_, '_>, fact: &Fact) -> Option<Reference> {
    let name = fact_name(fact)?;
    let floor = reader.elements_of(name).into_iter().next();
    if *name.fact != *"ceiling" {
        let span = reader.span(name.span);
        reader.report(span, ModelProblemKind::UnknownWord("level", Some(Box::from("ceiling"))));
        return None;
    }
    floor
}

fn fact_name(fact: &Fact) -> Option<&FactName> {
    match &fact.part("fact")?.value {
        Value::FactName(name) => Some(name),
        _ => None,
    }
}

fn assertion(reader: &mut Reader<'_, '_>, fact: &Fact) -> Option<Assertion> {
    let Value::Comparison(comparison) = &fact.part("comparison")?.value else { return None };
    resolve_names(reader, &comparison.left);
    resolve_names(reader, &comparison.right);
    Some(Assertion {
        comparison: (**comparison).clone(),
        origin: reader.span(LocalSpan::new(0, 0)),
        span: reader.span(fact.span),
    })
}

fn resolve_names(reader: &mut Reader<'_, '_>, expression: &Expression) {
    for name in expression.facts() {
        reader.elements_of(name);
    }
    for value in expression.values() {
        reader.lowering.mention_product(value, reader.entry);
    }
}

/// A drawing sheet.
pub fn sheet(reader: &mut Reader<'_, '_>) -> Sheet {
    Sheet {
        common: common(reader),
        shows: reader.list("shows", assertion),
        counts: reader.given("counts", |reader, fact| {
            let counted = fact.part("kind").or_else(|| fact.part("element")).and_then(words_of)?;
            reader.reference(fact, "element");
            Some((fact.count("count")?, counted))
        }),
        schedules: reader.facts("schedules").flat_map(|fact| reader.references(fact, "element")).collect(),
        strings: reader.given("string", |_, fact| {
            let parts: Vec<Length> = fact
                .parts_of("value")
                .filter_map(|part| match part.value {
                    Value::Length(length) => Some(length),
                    _ => None,
                })
                .collect();
            Some((parts, fact.length("sum")?))
        }),
        refers_to: reader.list("refers to", |reader, fact| reader.reference(fact, "sheet")),
        checked: reader.field("checked", |_, fact| fact.date("date")),
        scale: reader.field("scale", |reader, fact| match (fact.length("paper"), fact.length("real")) {
            (Some(paper), Some(real)) => Some(format!("{paper} = {real}").into()),
            _ => reader.words(fact, "value"),
        }),
    }
}

/// A point where the work waits.
pub fn hold_point(reader: &mut Reader<'_, '_>) -> HoldPoint {
    HoldPoint {
        common: common(reader),
        before: reader.field("before", |reader, fact| reader.words(fact, "value")),
        shoot: reader.given("shoot", |reader, fact| {
            let name = fact_name(fact)?;
            reader.elements_of(name);
            Some(name.clone())
        }),
        tolerance: reader.field("tolerance", |reader, fact| reader.not_negative(fact, "value")),
    }
}

//! The facts of every element.

use crate::model::element::{Accept, Claim, Common, Shot, SourceNote, Stage, Status, Waiver};
use crate::model::field::{Assumption, Field};
use crate::model::lower::reader::Reader;
use crate::syntax::Fact;
use crate::syntax::value::Value;
use crate::syntax::vocabulary::{ElementKind, Presence, spec_of};
use crate::text::{LocalSpan, Span};

/// What every element has. Reports the facts that its kind must have and this one lacks.
pub fn common(reader: &mut Reader<'_, '_>) -> Common {
    for fact in spec_of(reader.entry.id.kind).facts {
        if fact.presence == Presence::Required && !SUPPORTS.contains(&fact.phrase) {
            reader.need(fact.phrase);
        }
    }
    let (name, name_span) = reader.entry.name();
    Common {
        id: reader.entry.id,
        name: name.into(),
        name_span,
        span: whole(reader),
        title: reader.entry.heading.title.as_ref().map(|(title, _)| title.clone()),
        status: status(reader),
        shots: reader.list("shot", shot),
        plan_shots: reader
            .list("shot", |reader, fact| (fact.word("fact") == Some("at")).then(|| reader.span(fact.span))),
        waivers: reader.list("waive", waiver),
        source: reader.field("source", |reader, fact| reader.source(fact)),
        accepts: reader.given("accept", |reader, fact| {
            Some(Accept { note: reader.words(fact, "words")?, on: fact.date("date") })
        }),
        claims: claims(reader),
        has_unread_lines: reader.has_unread_lines,
        unread_facts: reader.entry.chunk.body.broken.iter().filter_map(|broken| broken.phrase).collect(),
    }
}

/// What carries an element is missed by the rules of the load path, which know what it would have to carry.
const SUPPORTS: &[&str] = &["bears on", "hangs from", "stands on"];

/// The element from its keyword to the end of its last fact.
fn whole(reader: &Reader<'_, '_>) -> Span {
    let body = &reader.entry.chunk.body;
    let heading = reader.entry.heading;
    let ends = [&heading.name, &heading.title].into_iter().flatten().map(|(_, span)| span.end);
    let facts = body.facts.iter().map(|fact| fact.span.end);
    let broken = body.broken.iter().map(|broken| broken.span.end);
    let end = ends.chain(facts).chain(broken).fold(heading.keyword.end, u32::max);
    reader.span(LocalSpan::new(heading.keyword.start, end))
}

fn status(reader: &mut Reader<'_, '_>) -> Field<Status> {
    let stated = reader.field("status", |_, fact| {
        let stage = match fact.word("value")? {
            "drawn" => Stage::Drawn,
            "ordered" => Stage::Ordered,
            "poured" => Stage::Poured,
            "set" => Stage::Set,
            _ => return None,
        };
        Some(Status { stage, since: fact.date("date") })
    });
    if !stated.is_missing() {
        return stated;
    }
    let of_project = reader.lowering.model.project.as_ref().map(|project| &project.common.status);
    match of_project {
        Some(Field::Stated(status, _)) if reader.entry.id.kind != ElementKind::Project => {
            let what = status.stage.word();
            Field::Assumed(status.clone(), Assumption { what, ground: "the project's status" })
        }
        _ => {
            stated.or_assumed(Status { stage: Stage::Drawn, since: None }, "drawn", "no line says otherwise")
        }
    }
}

/// A shot of a level or length. One of a place in plan is only resolved.
fn shot(reader: &mut Reader<'_, '_>, fact: &Fact) -> Option<Shot> {
    for label in ["value", "at"] {
        reader.point(fact, label);
        reader.station(fact, label);
    }
    let value = fact.length("value")?;
    let span = reader.span(fact.span);
    let at = fact.part("at").map(|part| reader.span(part.span));
    Some(Shot { fact: reader.words(fact, "fact")?, value, at, on: fact.date("date"), span })
}

fn waiver(reader: &mut Reader<'_, '_>, fact: &Fact) -> Option<Waiver> {
    Some(Waiver {
        rule: reader.words(fact, "rule")?,
        rule_span: reader.part_span(fact, "rule"),
        reason: reader.words(fact, "reason"),
        until: fact.date("until"),
        span: reader.span(fact.span),
    })
}

/// What follows from the rest and is compared with it, whether it `should be` so or is stated outright.
fn claims(reader: &mut Reader<'_, '_>) -> Vec<Claim> {
    let mut claims = reader.list("should be", claim);
    for phrase in OUTRIGHT {
        claims.extend(reader.fact(phrase).and_then(|fact| {
            let value = fact.part("value")?;
            Some(Claim {
                fact: Box::from(*phrase),
                fact_span: reader.span(fact.phrase),
                value: value.value.clone(),
                value_span: reader.span(value.span),
                within: None,
                span: reader.span(fact.span),
            })
        }));
    }
    claims
}

/// Derived facts that no element's own fields hold.
const OUTRIGHT: &[&str] = &["cut", "riser", "rise"];

fn claim(reader: &mut Reader<'_, '_>, fact: &Fact) -> Option<Claim> {
    let Value::FactName(name) = &fact.part("fact")?.value else { return None };
    reader.elements_of(name);
    let value = fact.part("value")?;
    reader.lowering.mention_product(&value.value, reader.entry);
    Some(Claim {
        fact: name.fact.clone(),
        fact_span: reader.part_span(fact, "fact"),
        value: value.value.clone(),
        value_span: reader.span(value.span),
        within: reader.not_negative(fact, "within"),
        span: reader.span(fact.span),
    })
}

/// A designed answer: where it comes from.
pub fn engineered(reader: &Reader<'_, '_>, fact: &Fact) -> SourceNote {
    reader.source(fact).unwrap_or(SourceNote { document: Box::from(""), on: None })
}

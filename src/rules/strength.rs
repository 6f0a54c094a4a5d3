//! Members that are too weak or sag too far under their load.

pub mod beam_deflection;
pub mod beam_strength;
pub mod beam_unbraced;
pub mod joist_bounce;
pub mod joist_deflection;
pub mod joist_span;
pub mod member_lifts;
pub mod transfer_sags;

use crate::house::House;
use crate::model::element::ElementId;
use crate::rules::Findings;
use crate::rules::wording::explain;
use crate::syntax::vocabulary::ElementKind;
use crate::text::Span;
use crate::units::Length;
use crate::verify::check::{Check, Verification};
use crate::verify::limit_state::LimitState;
use crate::verify::quantity::Quantity;

/// The kinds of member that a rule of this group speaks of.
const BEAMS: &[ElementKind] = &[ElementKind::Beam, ElementKind::Header, ElementKind::Opening];
const JOISTS: &[ElementKind] = &[ElementKind::Joists, ElementKind::Roof];

/// The worst check that fails of each member of these kinds, one for each of these limit states.
fn failing<'a>(
    house: &'a House,
    kinds: &'a [ElementKind],
    limit_states: &'a [LimitState],
) -> impl Iterator<Item = (&'a Verification, &'a Check)> {
    limit_states.iter().flat_map(move |limit_state| {
        let mut worst: Vec<(&Verification, &Check)> = Vec::new();
        let all = house.verifications.on(*limit_state).filter(|found| found.fails());
        for verification in all.filter(|found| kinds.contains(&found.of.kind)) {
            let Ok(check) = &verification.outcome else { continue };
            match worst.iter_mut().find(|(other, _)| other.of == verification.of) {
                Some(other) if other.1.ratio() < check.ratio() => *other = (verification, check),
                Some(_) => {}
                None => worst.push((verification, check)),
            }
        }
        worst
    })
}

/// Reports a member that does not bear what acts on it, with the limit state in the message.
fn report_strength(house: &House, verification: &Verification, check: &Check, findings: &mut Findings<'_>) {
    let Some(common) = house.model.common(verification.of) else { return };
    let words = verification.limit_state.words();
    // Of an opening it is the headers or the trimmers.
    let part = verification.part.as_deref().filter(|_| verification.of.kind == ElementKind::Opening);
    if let Some(part) = part {
        let place = house.model.opening(verification.of).and_then(|opening| match part {
            "trimmers" => opening.trimmers.span(),
            _ => opening.headers.span(),
        });
        let message = format!(
            "the {part} of {} have {} in {words}, and bear {}",
            common.label(),
            check.demand,
            check.capacity
        );
        let finding = findings.about(common.id, place.unwrap_or(common.name_span), message);
        explain(house, verification, check, "", finding);
        return;
    }
    let message = match (check.demand, check.capacity) {
        (Quantity::Factor(ratio), _) => format!(
            "{} {} {ratio:.2} times as full in {words} as {} may be",
            common.label(),
            common.verb("is", "are"),
            common.verb("it", "they")
        ),
        (demand, capacity) => format!(
            "{} {} {demand} in {words}, and {} {capacity}",
            common.label(),
            common.verb("has", "have"),
            common.verb("bears", "bear")
        ),
    };
    let finding = findings.about(common.id, size_of(house, common.id).unwrap_or(common.name_span), message);
    explain(house, verification, check, "", finding);
    finding.note(format!("{:.0} % of what {} can bear", check.ratio() * 100.0, common.verb("it", "they")));
    if let Some(size) = next_size(house, common.id) {
        finding.help(size);
    }
    finding.suspects(common.id, "size");
}

/// Reports each member of these kinds that sags too far, under live load, under all load, or both.
fn report_sags(house: &House, kinds: &[ElementKind], findings: &mut Findings<'_>) {
    let all: Vec<_> =
        failing(house, kinds, &[LimitState::LiveDeflection, LimitState::TotalDeflection]).collect();
    let mut members: Vec<ElementId> = all.iter().map(|(verification, _)| verification.of).collect();
    members.sort();
    members.dedup();
    for member in members {
        let Some(common) = house.model.common(member) else { continue };
        let of_it: Vec<_> = all.iter().filter(|(verification, _)| verification.of == member).collect();
        let said: Vec<String> =
            of_it.iter().filter_map(|(verification, check)| sag_in_words(verification, check)).collect();
        let finding = findings.about(
            common.id,
            size_of(house, common.id).unwrap_or(common.name_span),
            format!("{} {} {}", common.label(), common.verb("sags", "sag"), said.join("; ")),
        );
        for (verification, check) in &of_it {
            explain(house, verification, check, "", finding);
        }
        if let Some(size) = next_size(house, common.id) {
            finding.help(size);
        }
        finding.suspects(common.id, "size");
    }
}

/// `13/16"~ under live load on a span of 20'-0": L/303, and L/360 is the most`.
fn sag_in_words(verification: &Verification, check: &Check) -> Option<String> {
    let (Quantity::Length(sag), Quantity::Length(most)) = (check.demand, check.capacity) else { return None };
    let load = match verification.limit_state {
        LimitState::TotalDeflection => "under all load",
        _ => "under live load",
    };
    let Some(span) = span_of(check) else {
        return Some(format!("{} {load}, and {} is the most", check.demand, check.capacity));
    };
    let share = |length: Length| format!("L/{:.0}", span / length);
    Some(format!(
        "{} {load} on a span of {span}: {}, and {} is the most",
        check.demand,
        share(sag),
        share(most)
    ))
}

/// The span that a check of sag was made on.
fn span_of(check: &Check) -> Option<Length> {
    let step = check.steps.iter().find(|step| matches!(step.symbol, "l" | "L"))?;
    match step.result {
        Quantity::Length(span) if span.is_positive() => Some(span),
        _ => None,
    }
}

/// What the size of a member is stated in.
fn size_of(house: &House, element: ElementId) -> Option<Span> {
    let model = &house.model;
    match element.kind {
        ElementKind::Beam => model.beam(element)?.size.span(),
        ElementKind::Header => model.headers.get(element.index as usize)?.size.span(),
        ElementKind::Joists => model.joists_of(element)?.size.span(),
        ElementKind::Roof => model.roofs.get(element.index as usize)?.kind.span(),
        _ => None,
    }
}

/// The next size that works, as advice; nothing when none is known.
fn next_size(house: &House, element: ElementId) -> Option<String> {
    if let Some(size) = crate::verify::wood_sizes::next(&house.known(), element) {
        return Some(format!("the next size that works is {size}: for review by a licensed professional"));
    }
    let beam = house.model.beam(element)?;
    let shape = crate::verify::steel_sizes::next_beam(&house.known(), beam)?;
    let moves = match beam.size.value().and_then(|size| size.depth()) {
        Some(depth) if shape.depth() != depth => {
            format!(" ({} deep, not {depth}: what lies on it or hangs under it moves)", shape.depth())
        }
        _ => String::new(),
    };
    Some(format!("the next size that works is {}{moves}: for review by a licensed professional", shape.mark))
}

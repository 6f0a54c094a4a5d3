//! Names of elements: of the right kind, those that lie nearest first.

use std::collections::HashSet;

use crate::house::House;
use crate::ide::completion::plan::{self, Stretch};
use crate::ide::completion::support_fit::{self, Fit};
use crate::ide::completion::values::Wanted;
use crate::ide::completion::{Completion, CompletionKind, Place};
use crate::model::element::{Common, ElementId};
use crate::model::plan::Axis;
use crate::syntax::lexer::Tokens;
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

/// An element that could be named.
struct Candidate<'a> {
    common: &'a Common,
    distance: Option<Length>,
    /// From middle to middle, which parts what lies equally near: a pad right under a post from the slab around it.
    between_centres: Option<Length>,
    /// It runs beside the member, where it should cross it.
    runs_beside: bool,
    fit: Option<Fit>,
    is_named_here: bool,
}

/// The elements of these kinds that can be named at the cursor.
pub(super) fn of_kinds(
    place: &Place<'_>,
    wanted: &Wanted<'_>,
    kinds: &[ElementKind],
    items: &mut Vec<Completion>,
) {
    let Some(house) = place.house() else { return };
    let own = plan::of_cursor(place);
    let phrase = wanted.reading.fact.phrase;
    let named_here = named_here(place);
    let takes_fit = matches!(phrase, "bears on" | "stands on") && wanted.label == "support";
    let mut candidates: Vec<Candidate<'_>> = house
        .model
        .commons()
        .filter(|common| {
            kinds.contains(&common.id.kind) && has_name(common) && Some(common.id) != place.element
        })
        .filter(|common| place.cursor.element_name() != Some(&*common.name))
        .filter(|common| wanted.label != "support" || !lies_on(house, common.id, place.element))
        .map(|common| {
            let lies = plan::of_element(&house.model, common.id);
            Candidate {
                common,
                distance: plan::distance(&own, &lies),
                between_centres: plan::distance(&centres(&own), &centres(&lies)),
                runs_beside: takes_fit && runs_beside(place, house, common.id, &own),
                fit: takes_fit.then(|| support_fit::of(house, common.id, place.element)).flatten(),
                is_named_here: named_here.contains(&*common.name),
            }
        })
        .collect();
    // What is joined, blocked or run past is a support that the member names already; a new support is one that it does not.
    let prefers_named = matches!(phrase, "joint" | "blocked" | "cantilever");
    // The likeliest feet of an upright are named first among the kinds.
    let stands = phrase == "stands on";
    candidates.sort_by_key(|candidate| {
        // A column is cut to fit.
        let unknown =
            if candidate.common.id.kind == ElementKind::Column { Length::ZERO } else { UNKNOWN_OFF };
        let off = candidate.fit.and_then(|fit| fit.off).map_or(unknown, Length::abs);
        (
            candidate.is_named_here != prefers_named,
            candidate.runs_beside,
            candidate.distance.map_or(i64::MAX, Length::to_units),
            off,
            stands.then(|| kinds.iter().position(|kind| *kind == candidate.common.id.kind)),
            candidate.between_centres.map_or(i64::MAX, Length::to_units),
            candidate.common.id,
        )
    });
    items.extend(candidates.iter().map(|candidate| item(place, candidate)));
}

/// A height that nobody knows is worse than one that fits, and better than one that does not.
const UNKNOWN_OFF: Length = Length::inches(1);

fn centres(stretches: &[Stretch]) -> Vec<Stretch> {
    stretches.iter().map(Stretch::centre).collect()
}

/// True of what the element itself carries.
fn lies_on(house: &House, member: ElementId, on: Option<ElementId>) -> bool {
    let model = &house.model;
    let supports = match member.kind {
        ElementKind::Beam => model.beam(member).map(|beam| beam.supports.as_slice()),
        ElementKind::Joists => model.joists_of(member).map(|joists| joists.supports.as_slice()),
        _ => None,
    };
    let stand = model.column(member).and_then(|column| column.stands_on.value()).map(|stand| &stand.on);
    let carriers = supports.unwrap_or_default().iter().map(|support| &support.on).chain(stand);
    let mut targets = carriers.filter_map(|carrier| carrier.reference()?.target);
    on.is_some_and(|on| targets.any(|target| target == on))
}

/// A grid and a project have no name to be named by, and an intent has words.
fn has_name(common: &Common) -> bool {
    !matches!(common.id.kind, ElementKind::Project | ElementKind::Grid | ElementKind::Intent)
}

fn item(place: &Place<'_>, candidate: &Candidate<'_>) -> Completion {
    let common = candidate.common;
    let mut detail = common.id.kind.word().to_owned();
    if let Some(fit) = &candidate.fit {
        detail.push_str(&format!(", {}", support_fit::told(fit)));
    }
    match candidate.distance {
        _ if candidate.runs_beside => detail.push_str(", runs beside it"),
        Some(distance) if distance.is_positive() => detail.push_str(&format!(", {distance} away")),
        Some(_) | None => {}
    }
    place
        .item(&*common.name, CompletionKind::Name(common.id.kind))
        .detail(detail)
        .about(format!("element {}", common.name))
}

/// True of a wall or beam along the member, which carries none of its ends.
fn runs_beside(place: &Place<'_>, house: &House, on: ElementId, own: &[Stretch]) -> bool {
    let model = &house.model;
    let member = match place.cursor.element().map(|spec| spec.kind) {
        Some(ElementKind::Joists) => {
            place.element.and_then(|id| model.joists_of(id)).and_then(|it| it.run.get())
        }
        Some(ElementKind::Beam) => own.first().and_then(Stretch::axis),
        _ => None,
    };
    let is_line =
        matches!(on.kind, ElementKind::Wall | ElementKind::Beam | ElementKind::Ledger | ElementKind::Shelf);
    let support = || plan::of_element(model, on).first().and_then(Stretch::axis);
    member.is_some_and(|member: Axis| is_line && support() == Some(member))
}

/// The words of the element's other lines.
fn named_here<'t>(place: &Place<'t>) -> HashSet<&'t str> {
    let in_chunk = place.cursor.line_start - place.cursor.chunk_start;
    let chunk = place.cursor.chunk;
    let others = place.cursor.body.facts.iter().filter(|fact| {
        let start = fact.span.start as usize;
        !(in_chunk..=in_chunk + place.cursor.line.len()).contains(&start)
            && matches!(fact.spec.phrase, "bears on" | "hangs from" | "stands on" | "under" | "schedules")
    });
    let values = others.filter_map(|fact| chunk.get(fact.value.start as usize..fact.value.end as usize));
    values.flat_map(|value| Tokens::of(value, 0)).map(|token| token.text).collect()
}

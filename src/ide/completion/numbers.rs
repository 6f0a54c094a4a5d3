//! Numbers that follow from the rest of the house.

use crate::facts::answers::{answer, answer_in_case};
use crate::facts::{Answer, FactValue};
use crate::geometry::carried::Carried;
use crate::geometry::sum::{Derived, Sum};
use crate::geometry::surfaces::{Surface, joist_bottom, joist_top, under_sill};
use crate::house::House;
use crate::ide::completion::values::Wanted;
use crate::ide::completion::{Completion, CompletionKind, Place};
use crate::ide::cursor::begins_with;
use crate::model::element::ElementId;
use crate::model::field::Field;
use crate::model::foundation::{Pocket, Sill};
use crate::profiles::stairs::RISER_HEIGHT;
use crate::syntax::form::Kind;
use crate::syntax::lexer::{Token, TokenKind};
use crate::syntax::vocabulary::{ElementKind, FACT_NAMES};
use crate::units::Length;

/// The numbers that follow from the rest, where one is asked for.
pub(super) fn that_follow(place: &Place<'_>, wanted: &Wanted<'_>, kind: &Kind, items: &mut Vec<Completion>) {
    if wanted.kind == Some(&Kind::Comparison) {
        items.extend(other_side(place, wanted).and_then(|answer| number(place, &answer)));
        return;
    }
    if let Some(claimed) = wanted.reading.claimed {
        let answer =
            place.house().zip(place.element).and_then(|(house, id)| answer(house, claimed.words, &[id]).ok());
        items.extend(answer.filter(|_| wanted.label == "value").and_then(|answer| number(place, &answer)));
        return;
    }
    let Some((house, element)) = place.house().zip(place.element) else { return };
    let phrase = wanted.reading.fact.phrase;
    if kind == &Kind::Count {
        if (element.kind, phrase) == (ElementKind::Stair, "risers") {
            items.extend(fewest_risers(place, element));
        }
        return;
    }
    if !matches!(wanted.label, "value" | "top") {
        return;
    }
    let found: Vec<Answer> = match (element.kind, phrase) {
        (ElementKind::Column | ElementKind::Beam, "cut") | (ElementKind::Stair, "riser" | "rise") => {
            answer(house, phrase, &[element]).into_iter().collect()
        }
        (ElementKind::Wall, "height") => {
            let base = house.geometry.surfaces.of(element, Surface::Bottom);
            let tops = asked_from_above(house, element).into_iter().zip(std::iter::repeat(base.ok()));
            let heights = tops.filter_map(|(top, base)| {
                let sum = top.less(base?.total(), "what it stands on", element, None);
                Some(Answer { value: FactValue::Length(sum.total()), sum: Some(sum) })
            });
            heights.collect()
        }
        (_, "top" | "seat") => asked_from_above(house, element).into_iter().map(Answer::from).collect(),
        _ => Vec::new(),
    };
    items.extend(found.iter().filter_map(|answer| number(place, answer)));
}

/// The elevations of a support that what lies on it asks for, whatever the support itself says or half says.
fn asked_from_above(house: &House, support: ElementId) -> Vec<Sum> {
    let (model, geometry) = (&house.model, &house.geometry);
    let carried = Carried::of(model);
    let floors = &geometry.floors;
    let joists = || carried.joists_bearing_on(support).map(|(joists, _)| joist_bottom(floors, joists));
    let beams = || {
        carried
            .beams_on(support)
            .iter()
            .map(|(beam, _)| geometry.surfaces.of(beam.common.id, Surface::Bottom))
    };
    let over = |sill: &Field<Sill>| -> Vec<Derived> {
        joists().chain(beams()).map(|bottom| under_sill(bottom?, sill, support)).collect()
    };
    let found: Vec<Derived> = match support.kind {
        ElementKind::Wall => model.wall(support).map(|wall| over(&wall.sill)).unwrap_or_default(),
        ElementKind::Shelf => model.shelf(support).map(|shelf| over(&shelf.sill)).unwrap_or_default(),
        ElementKind::Ledger => {
            carried.joists_on(support).iter().map(|(joists, _)| joist_top(floors, joists)).collect()
        }
        ElementKind::Pocket => {
            let Some(build_up) = model.pocket(support).and_then(Pocket::build_up) else { return Vec::new() };
            beams()
                .map(|bottom| Ok(bottom?.less(build_up, "plate, grout and shims", support, None)))
                .collect()
        }
        _ => Vec::new(),
    };
    let mut sums: Vec<Sum> = found.into_iter().flatten().collect();
    sums.sort_by_key(Sum::total);
    sums.dedup_by_key(|sum| sum.total());
    sums
}

/// The value that a fact of the element under the cursor has now, as it would be written.
pub(super) fn of_fact(place: &Place<'_>, words: &str) -> Option<String> {
    let (house, element) = place.house().zip(place.element)?;
    Some(written(&answer(house, words, &[element]).ok()?.value)?.0)
}

fn number(place: &Place<'_>, answer: &Answer) -> Option<Completion> {
    let (text, is_rounded) = written(&answer.value)?;
    let mut detail = String::from("follows from the rest");
    if is_rounded {
        detail.push_str(", to the nearest 1/16\"");
    }
    if let Some(sum) = answer.sum.as_ref().filter(|sum| sum.terms().len() > 1) {
        detail.push_str(&format!(": {sum}"));
    }
    Some(place.item(text, CompletionKind::Number).detail(detail))
}

/// A value as it would be written, and whether that rounds it: what agrees to 1/16" agrees.
fn written(value: &FactValue) -> Option<(String, bool)> {
    match value {
        FactValue::Elevation(elevation) => {
            Some(exactly(*elevation, |it| it.in_feet().to_the(64).to_string()))
        }
        FactValue::Length(length) if length.abs() < Length::feet(10) => {
            Some(exactly(*length, |it| it.in_inches().to_the(64).to_string()))
        }
        FactValue::Length(length) => Some(exactly(*length, |it| it.in_feet().to_the(64).to_string())),
        FactValue::Count(count) => Some((count.to_string(), false)),
        FactValue::Size(size) => Some((size.to_string(), false)),
        FactValue::Area(_)
        | FactValue::Force { .. }
        | FactValue::LineLoad(_)
        | FactValue::Pressure(_)
        | FactValue::Number(_) => None,
    }
}

fn exactly(length: Length, print: fn(Length) -> String) -> (String, bool) {
    let text = print(length);
    if text.contains('~') {
        (print(length.rounded_to(Length::sixteenths(0, 1))), true)
    } else {
        (text, false)
    }
}

/// The fewest risers that stay within the limit.
fn fewest_risers(place: &Place<'_>, stair: ElementId) -> Option<Completion> {
    let house = place.house()?;
    let rise = *house.geometry.flights.get(stair.index as usize)?.rise.as_ref().ok()?;
    let most = house.limits.of(&RISER_HEIGHT).value;
    if !rise.is_positive() || !most.is_positive() {
        return None;
    }
    let count = rise.to_units().checked_add(most.to_units() - 1)? / most.to_units();
    let each = rise.shared_by(u32::try_from(count).ok()?)?.rounded();
    let detail = format!("the fewest that stay within {most}: {rise} of rise, {each} each");
    Some(place.item(count.to_string(), CompletionKind::Number).detail(detail))
}

/// The value of the fact on the left of a comparison.
fn other_side(place: &Place<'_>, wanted: &Wanted<'_>) -> Option<Answer> {
    let house = place.house()?;
    let (last, left) = wanted.tokens.split_last()?;
    if !matches!(last.kind, TokenKind::Relation(_)) {
        return None;
    }
    let (case, left) = match left.split_first() {
        Some((case, rest)) if ["dead", "live", "snow", "all"].contains(&case.text) => (Some(case.text), rest),
        _ => (None, left),
    };
    FACT_NAMES.iter().find_map(|name| {
        let mut rest: &[Token<'_>] = left.get(begins_with(name.words, left)?..)?;
        let mut of = Vec::new();
        for argument in name.arguments() {
            rest = rest.get(begins_with(argument.joined_by, rest)?..)?;
            let (named, behind) = rest.split_first()?;
            of.push(house.model.named(named.text)?);
            rest = behind;
        }
        if !rest.is_empty() {
            return None;
        }
        answer_in_case(house, name.words, case, &of).ok()
    })
}

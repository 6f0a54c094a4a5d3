//! What the names of a file mean, and what there is to say of the elements that they mean.

use crate::house::House;
use crate::ide::tokens::legend::{Modifier, Modifiers, WordKind};
use crate::model::element::{ElementId, Mention};
use crate::model::field::Field;
use crate::syntax::vocabulary::ElementKind;
use crate::text::Span;

/// What a name at a place is.
pub(super) fn of_mention(house: &House, span: Span) -> Option<(WordKind, Modifiers)> {
    let mentions = &house.model.mentions;
    let behind = mentions.partition_point(|mention| mention.span < span);
    let mention = mentions.get(behind).filter(|mention| mention.span == span)?;
    Some((WordKind::of_name(mention.target.kind), of_one(house, mention)))
}

/// What a word is where nothing says what should stand there: a name that the spec has, or a grid line.
pub(super) fn of_word(house: &House, word: &str) -> Option<(WordKind, Modifiers)> {
    match house.model.named(word) {
        Some(id) => Some((WordKind::of_name(id.kind), of_element(house, id))),
        None => house.model.grid.lines.contains_key(word).then_some((WordKind::Parameter, Modifiers::NONE)),
    }
}

/// What there is to say of an element wherever it is named.
pub(super) fn of_element(house: &House, id: ElementId) -> Modifiers {
    let trade = match house.model.wall(id).and_then(|wall| wall.kind.value()) {
        Some(kind) if !kind.is_mineral() => Some(Modifier::Framing),
        _ => Modifier::of_trade(id.kind),
    };
    let status = house.model.common(id).and_then(|common| common.status.value());
    let modifiers = Modifiers::NONE.with_some(trade);
    // A promise or a grid can't be poured, even where the whole house is.
    let can_stand = trade.is_some_and(|trade| trade != Modifier::Promise);
    match status {
        Some(status) if can_stand => modifiers.with_stage(status.stage),
        _ => modifiers,
    }
}

/// True for an element that some check has looked at with a value that nobody stated.
pub(super) fn rests_on_assumption(house: &House, id: ElementId) -> bool {
    house
        .verifications
        .of(id)
        .any(|verification| verification.outcome.as_ref().is_ok_and(|check| !check.assumed.is_empty()))
}

/// True for a project that does not say what the soil takes.
pub(super) fn assumes_soil(house: &House) -> bool {
    let project = house.model.project.as_ref();
    project.is_some_and(|project| matches!(project.soil, Field::Assumed(..)))
        && house.model.footings.iter().any(|footing| footing.soil.is_missing())
}

fn of_one(house: &House, mention: &Mention) -> Modifiers {
    let is_of_heading = mention.is_declaration && mention.target.kind != ElementKind::Project;
    of_element(house, mention.target)
        .with_if(mention.is_declaration, Modifier::Declaration)
        .with_if(is_of_heading && rests_on_assumption(house, mention.target), Modifier::Assumed)
}

//! The next size that passes the checks that ran, where the one that stands fails.

use crate::ide::completion::Place;
use crate::model::foundation::FootingSize;
use crate::model::member::Member;
use crate::syntax::vocabulary::ElementKind;
use crate::verify::check::Verification;
use crate::verify::{footings, steel_sizes, wood_columns, wood_sizes};

/// A size that passes.
pub(super) struct Passing {
    /// As it is written.
    pub size: String,
    /// That it passes, and how far to trust that.
    pub detail: String,
}

const TOLD: &str =
    "smallest here that passes the checks that ran; have it checked by a licensed professional";

/// Larger sizes of the same stuff for the member under the cursor.
pub(super) fn members(place: &Place<'_>) -> Vec<Passing> {
    let Some((house, element)) = place.house().zip(place.element) else { return Vec::new() };
    if !house.verifications.of(element).any(Verification::fails) {
        return Vec::new();
    }
    let known = house.known();
    let model = &house.model;
    let member = match element.kind {
        ElementKind::Beam => model.beam(element).and_then(|beam| beam.size.value()),
        ElementKind::Column => model.column(element).and_then(|column| column.size.value()),
        ElementKind::Joists => model.joists_of(element).and_then(|joists| joists.size.value()),
        ElementKind::Header => model.headers.get(element.index as usize).and_then(|it| it.size.value()),
        _ => None,
    };
    let wood = wood_sizes::next(&known, element);
    let wood = wood.or_else(|| wood_columns::next_size(&known, model.column(element)?));
    let wood = wood.zip(member).map(|(words, member)| sawn(&words, member));
    let steel = || {
        let beam = model.beam(element).and_then(|beam| steel_sizes::next_beam(&known, beam));
        let shape = beam.or_else(|| steel_sizes::next_column(&known, model.column(element)?))?;
        Some(Passing { size: shape.mark.to_owned(), detail: TOLD.to_owned() })
    };
    wood.or_else(steel).into_iter().collect()
}

/// A larger size for the footing under the cursor.
pub(super) fn footing(place: &Place<'_>) -> Option<Passing> {
    let (house, element) = place.house().zip(place.element)?;
    let footing = house.model.footing(element)?;
    house.verifications.of(element).any(Verification::fails).then_some(())?;
    let size = match footings::next_size(&house.known(), footing)? {
        FootingSize::Pad(one, other, thickness) => format!("{one} x {other} x {thickness}"),
        FootingSize::Strip(width, thickness) => format!("{width} x {thickness}"),
        FootingSize::Round(across, height) => format!("{across} round x {height}"),
    };
    Some(Passing { size, detail: TOLD.to_owned() })
}

/// A sawn size with the member's own species and grade. What the size moves is told beside it.
fn sawn(words: &str, member: &Member) -> Passing {
    let (size, moves) = words.split_once(", ").unwrap_or((words, ""));
    let mut size = size.to_owned();
    for word in [&member.species, &member.grade].into_iter().flatten() {
        size.push(' ');
        size.push_str(word);
    }
    if member.is_treated {
        size.push_str(" treated");
    }
    let detail = if moves.is_empty() { TOLD.to_owned() } else { format!("{moves}; {TOLD}") };
    Passing { size, detail }
}

//! Names that nothing has yet.

use std::collections::HashSet;

use crate::ide::completion::Place;
use crate::syntax::vocabulary::{ElementKind, spec_of};

/// The next number of this kind: `B3` where `B1` and `B2` stand. `None` where nobody numbers: floors have words.
pub(super) fn next(place: &Place<'_>, kind: ElementKind) -> Option<String> {
    let spec = spec_of(kind);
    let mut taken: HashSet<&str> = HashSet::new();
    let mut last: Option<(&str, u32)> = None;
    let mut take = |name, is_of_kind: bool| {
        taken.insert(name);
        if is_of_kind && let Some((prefix, number)) = numbered(name) {
            last = match last {
                Some((of, most)) if of == prefix => Some((of, most.max(number))),
                _ => Some((prefix, number)),
            };
        }
    };
    if let Some(house) = place.house() {
        let mut known: Vec<_> = house.model.by_name.iter().collect();
        known.sort_by_key(|(_, id)| **id);
        known.into_iter().for_each(|(name, id)| take(name, id.kind == kind));
    }
    for line in place.text.split(['\r', '\n']).filter(|line| !line.starts_with([' ', '\t', '-'])) {
        let opened = std::iter::once(spec.keyword).chain(spec.also.iter().copied());
        let of_kind = opened
            .filter_map(|words| line.strip_prefix(words))
            .find_map(|rest| rest.split_whitespace().next());
        let name = of_kind.or_else(|| line.split_whitespace().nth(1));
        // The name under the cursor is not taken: it is being typed.
        if let Some(name) = name.filter(|_| !is_under(place, line)) {
            take(name, of_kind.is_some());
        }
    }
    let (prefix, number) = last.or_else(|| Some((usual(kind)?, 0)))?;
    let mut names = (1..=1000).map(|more| format!("{prefix}{}", number.saturating_add(more)));
    names.find(|name| !taken.contains(name.as_str()))
}

fn is_under(place: &Place<'_>, line: &str) -> bool {
    std::ptr::eq(line.as_ptr(), place.cursor.line.as_ptr())
}

/// The letters and the number of a name.
fn numbered(name: &str) -> Option<(&str, u32)> {
    let prefix = name.trim_end_matches(|last: char| last.is_ascii_digit());
    let number = name.get(prefix.len()..)?.parse().ok()?;
    (!prefix.is_empty()).then_some((prefix, number))
}

/// What the first of a kind is most often called.
const fn usual(kind: ElementKind) -> Option<&'static str> {
    match kind {
        ElementKind::Joists => Some("J"),
        ElementKind::Opening => Some("O"),
        ElementKind::Wall => Some("W"),
        ElementKind::Shelf => Some("SH"),
        ElementKind::Pocket => Some("PK"),
        ElementKind::Ledger => Some("LG"),
        ElementKind::Beam => Some("B"),
        ElementKind::Column => Some("C"),
        ElementKind::Footing => Some("F"),
        ElementKind::Slab => Some("SL"),
        ElementKind::Stair => Some("S"),
        ElementKind::Landing => Some("LD"),
        ElementKind::Stoop => Some("ST"),
        ElementKind::Door => Some("DR"),
        ElementKind::Window => Some("WD"),
        ElementKind::Header => Some("H"),
        ElementKind::Jacks => Some("JK"),
        ElementKind::Squash => Some("SQ"),
        ElementKind::Roof => Some("R"),
        ElementKind::Load => Some("L"),
        ElementKind::Drain => Some("D"),
        ElementKind::Hole => Some("HL"),
        ElementKind::Notch => Some("NT"),
        ElementKind::Duct => Some("DU"),
        ElementKind::HoldPoint => Some("HP"),
        ElementKind::Sheet => Some("S-10"),
        ElementKind::Project
        | ElementKind::Grid
        | ElementKind::Product
        | ElementKind::Floor
        | ElementKind::Area
        | ElementKind::Intent => None,
    }
}

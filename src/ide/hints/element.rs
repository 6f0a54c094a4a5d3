//! Elevations, spans, cuts and risers: what follows from the geometry.

use crate::diagnostic::Edit;
use crate::facts::Answer;
use crate::facts::answers::answer;
use crate::house::lines;
use crate::ide::hints::{Hint, HintKind, Place};
use crate::syntax::vocabulary::ElementKind::{
    self, Beam, Column, Floor, Footing, Header, Joists, Ledger, Pocket, Shelf, Slab, Squash, Wall,
};
use crate::syntax::vocabulary::spec_of;

/// A fact that is shown: of which kinds of element, its words, the kind of hint, and the facts behind the first of which
/// it stands; behind the heading without one.
type Shown = (&'static [ElementKind], &'static str, HintKind, &'static [&'static str]);

/// In the order in which they stand at one place.
const SHOWN: &[Shown] = &[
    (&[Floor], "finish", HintKind::Elevation, &[]),
    (&[Floor], "joist top", HintKind::Elevation, &[]),
    (&[Floor], "joist bottom", HintKind::Elevation, &[]),
    (&[Floor], "ceiling", HintKind::Elevation, &[]),
    (&[Joists, Beam, Wall, Column], "top", HintKind::Elevation, &[]),
    (&[Joists, Beam, Wall, Column, Footing, Slab, Ledger], "bottom", HintKind::Elevation, &[]),
    (&[Pocket, Shelf], "seat", HintKind::Elevation, &[]),
    (&[Joists], "span", HintKind::Span, &["run", "fill"]),
    (&[Beam], "span", HintKind::Span, &["from"]),
    (&[Header], "span", HintKind::Span, &["over"]),
    (&[Column, Squash], "cut", HintKind::Cut, &["size"]),
    (&[Wall], "studs cut", HintKind::Cut, &["studs", "kind"]),
];

/// The hints of one element.
pub(in crate::ide::hints) fn add(place: &Place<'_>, kinds: &[HintKind], hints: &mut Vec<Hint>) {
    let id = place.common.id;
    for (_, words, kind, behind) in SHOWN.iter().filter(|(elements, ..)| elements.contains(&id.kind)) {
        let is_stated =
            place.fact(&[words]).is_some() || place.common.claims.iter().any(|claim| &*claim.fact == *words);
        if is_stated || !kinds.contains(kind) {
            continue;
        }
        let Ok(answer) = answer(&place.snapshot.house, words, &[id]) else { continue };
        hints.push(Hint {
            offset: place.behind(behind),
            label: format!("{} {}", label_of(words), answer.value),
            kind: *kind,
            tooltip: tooltip(place, words, &answer),
            claim: claim(place, words, &answer),
        });
    }
    if id.kind == ElementKind::Stair && kinds.contains(&HintKind::Riser) {
        hints.extend(risers(place));
    }
}

fn label_of(words: &str) -> &str {
    match words {
        "span" => "spans",
        other => other,
    }
}

fn tooltip(place: &Place<'_>, words: &str, answer: &Answer) -> String {
    let label = place.common.label();
    match &answer.sum {
        Some(sum) if sum.terms().len() > 1 => format!("{words} of {label}: {sum}"),
        _ => format!("{words} of {label}: {}", answer.value),
    }
}

fn claim(place: &Place<'_>, words: &str, answer: &Answer) -> Option<Edit> {
    let mut claimable = spec_of(place.common.id.kind).claimable();
    claimable.find(|name| name.words == words)?;
    let fact = format!("{words} should be {}", answer.value.written("", None)?);
    lines::added(&place.snapshot.house, place.common, &fact)
}

/// `3 of 6-1/2"`, behind what the stair climbs; `6-1/2"` behind the number of its risers, where it is stated.
fn risers(place: &Place<'_>) -> Option<Hint> {
    let (house, id) = (&place.snapshot.house, place.common.id);
    let [risers, riser, rise] =
        ["risers", "riser", "rise"].map(|words| answer(house, words, &[id]).ok().map(|it| it.value));
    let (risers, riser) = (risers?, riser?);
    let rise = rise.map(|rise| format!(", {rise} in all")).unwrap_or_default();
    let is_counted = place.fact(&["risers"]).is_some();
    Some(Hint {
        offset: place.behind(&["risers", "from"]),
        label: if is_counted { format!("of {riser}") } else { format!("{risers} of {riser}") },
        kind: HintKind::Riser,
        tooltip: format!("{} climbs {risers} risers of {riser}{rise}", place.common.label()),
        claim: None,
    })
}

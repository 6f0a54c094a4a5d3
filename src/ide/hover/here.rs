//! What a fact comes to in this element: the number that follows from the rest beside the stated one.

use crate::facts::answers::answer;
use crate::house::House;
use crate::ide::figures::Doubts;
use crate::ide::hover::cursor::Cursor;
use crate::ide::hover::markdown::escaped;
use crate::ide::hover::{Piece, Worth};
use crate::model::element::ElementId;
use crate::profiles::levels::CLOSURE_TOLERANCE;
use crate::syntax::Fact;
use crate::syntax::value::Value;
use crate::syntax::vocabulary::ElementKind;
use crate::text::Span;

/// So many loops that close at one number are told.
const MOST_TOLD: usize = 3;

/// What the fact at the cursor comes to.
pub fn piece(cursor: &Cursor<'_>) -> Option<Piece> {
    let (fact, element) = (cursor.fact?, cursor.element?);
    let house = cursor.house();
    let span = cursor.span(fact.span);
    let mut lines = against_the_rest(house, span);
    if lines.is_empty() {
        lines.extend(follows(house, element, fact.spec.phrase));
    }
    let brought = brought(cursor, element, fact);
    let has_figures = !brought.is_empty();
    lines.extend(brought);
    if lines.is_empty() {
        return None;
    }
    Some(Piece { span, worth: Worth::Much, text: lines.join("\n"), has_figures })
}

/// A stated elevation against what follows from the rest, loop by loop.
fn against_the_rest(house: &House, fact: Span) -> Vec<String> {
    let tolerance = house.limits.of(&CLOSURE_TOLERANCE).value;
    let here = house.geometry.closures.iter().filter(|closure| {
        closure.span.file == fact.file && fact.start <= closure.span.start && closure.span.end <= fact.end
    });
    let mut lines: Vec<String> = here
        .map(|closure| {
            let derived = closure.derived.total().in_feet();
            let by = closure.asked_by.and_then(|by| house.model.common(by)).map(|by| escaped(&by.label()));
            let by = by.map(|by| format!(" from {by}")).unwrap_or_default();
            let agrees = if closure.closes(tolerance) {
                "agrees".to_owned()
            } else {
                let way = if closure.difference().is_negative() { "low" } else { "high" };
                format!("differs: {} is {} {way}", closure.stated.in_feet(), closure.difference().abs())
            };
            format!("- **{derived}** follows{by}; it {agrees} ({})", escaped(&closure.derived.to_string()))
        })
        .collect();
    lines.dedup();
    lines.truncate(MOST_TOLD);
    lines
}

/// The facts that a line takes part in, with their values here.
fn follows(house: &House, element: ElementId, phrase: &str) -> Option<String> {
    let words = facts_of(element.kind, phrase);
    let values: Vec<String> = words
        .iter()
        .filter_map(|words| Some(format!("{words} **{}**", answer(house, words, &[element]).ok()?.value)))
        .collect();
    (!values.is_empty()).then(|| format!("- here: {}", values.join(", ")))
}

/// What follows from a line, of what a person looks for when changing it.
fn facts_of(kind: ElementKind, phrase: &str) -> &'static [&'static str] {
    match (kind, phrase) {
        (
            ElementKind::Floor,
            "subfloor" | "deck" | "finish" | "finish at" | "steps down" | "steps up" | "on",
        ) => &["finish", "subfloor", "joist top", "joist bottom"],
        (ElementKind::Floor, "ceiling") => &["ceiling", "clear height"],
        (ElementKind::Stair, "risers" | "tread" | "from" | "to" | "laid out") => {
            &["rise", "riser", "run", "headroom"]
        }
        (ElementKind::Stair, "opening" | "top") => &["headroom"],
        (ElementKind::Column, "cap" | "base" | "shim" | "length" | "stands on") => &["top", "bottom", "cut"],
        (ElementKind::Joists, "span" | "fill" | "run") => &["span"],
        (ElementKind::Joists, "spacing") => &["count"],
        (ElementKind::Beam, "span" | "joint") => &["span"],
        (ElementKind::Beam, "set" | "nailer") => &["top", "bottom"],
        (ElementKind::Wall, "height" | "sole" | "plates" | "studs" | "stands on") => {
            &["top", "bottom", "studs cut"]
        }
        (ElementKind::Footing, "size" | "top") => &["top", "bottom", "cover"],
        (_, "from") => &["length"],
        (_, "top" | "height" | "thick") => &["top", "bottom"],
        (_, "fill") => &["area"],
        _ => &[],
    }
}

/// What the element brings to the support that a line names.
fn brought(cursor: &Cursor<'_>, element: ElementId, fact: &Fact) -> Vec<String> {
    let house = cursor.house();
    if !matches!(fact.spec.phrase, "bears on" | "hangs from" | "stands on") {
        return Vec::new();
    }
    let mut lines = Vec::new();
    for part in &fact.parts {
        let Value::Name(name) = &part.value else { continue };
        let Some(on) = house.model.named(name) else { continue };
        if let Ok(bearing) = answer(house, "bearing", &[element, on]) {
            lines.push(format!("- bears on {} for **{}**", escaped(name), bearing.value));
        }
        let Ok(reaction) = answer(house, "reaction", &[element, on]) else { continue };
        match Doubts::of(house).about(element) {
            Some(why) => lines.push(format!("- what it brings is not known yet: {why}")),
            None => lines.push(format!("- brings **{}** to {}", reaction.value, escaped(name))),
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use crate::ide::hover::tests::{LOON_COVE, check};

    /// The demo house's own figures: joists' bottom 99'-2" less a sill of 1-1/2".
    #[test]
    fn a_stated_elevation_stands_against_what_follows() {
        let derived = "**99'-0 1/2\"** follows from joists J1; it agrees (100'-0\" subfloor of main − 3/4\" deck − 9-1/4\" joists J1";
        check(LOON_COVE, "to$0p           99'-0 1/2\"", "top           99'-0 1/2\"", &[derived]);
        let text = LOON_COVE.replacen("99'-0 1/2\"", "99'-2 1/2\"", 1);
        check(
            &text,
            "t$0op           99'-2 1/2\"",
            "top           99'-2 1/2\"",
            &["**99'-0 1/2\"** follows from joists J1; it differs: 99'-2 1/2\" is 2\" high"],
        );
    }

    #[test]
    fn a_line_says_what_follows_from_it() {
        check(
            LOON_COVE,
            "ris$0ers        14",
            "risers        14",
            &["here: rise **8'-8\"**, riser **7-7/16\"~**, run **10'-10\"**, headroom **6'-8 7/8\"~**"],
        );
        check(
            LOON_COVE,
            "de$0ck          3/4\"\n  finish        fir",
            "deck          3/4\"",
            &["finish **100'-0 3/4\"**", "joist bottom **99'-2\"**", "The thickness of the structural deck"],
        );
    }

    /// The demo house's own figure.
    #[test]
    fn a_support_says_what_it_gets() {
        check(
            LOON_COVE,
            "bears$0 on      C1 for 10\"",
            "bears on      C1 for 10\"",
            &["bears on C1 for **10\"**", "brings **13,136 lb** to C1", "have it checked"],
        );
    }
}

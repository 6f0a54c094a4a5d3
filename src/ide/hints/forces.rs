//! Reactions and ratios: what follows from the loads. Nothing is shown where the loads are in doubt.

use crate::facts::FactValue;
use crate::facts::forces::reaction;
use crate::ide::figures::{Doubts, checks_of, percent};
use crate::ide::hints::{Hint, HintKind, Place};
use crate::model::element::{ElementId, Mention};
use crate::report::STRENGTH_CAUTION;
use crate::syntax::Fact;
use crate::text::Span;
use crate::verify::quantity::Quantity;

/// The facts that name what carries the element.
const SUPPORTED: [&str; 3] = ["bears on", "hangs from", "stands on"];

/// The hints of one element.
pub(in crate::ide::hints) fn add(
    place: &Place<'_>,
    doubts: &Doubts,
    kinds: &[HintKind],
    hints: &mut Vec<Hint>,
) {
    if doubts.about(place.common.id).is_some() {
        return;
    }
    if kinds.contains(&HintKind::Reaction) {
        for fact in place.facts().filter(|fact| SUPPORTED.contains(&fact.spec.phrase)) {
            add_reactions(place, fact, hints);
        }
    }
    if kinds.contains(&HintKind::Ratio) {
        hints.extend(ratio(place));
    }
}

/// Behind a line with one support, or behind each name of several.
fn add_reactions(place: &Place<'_>, fact: &Fact, hints: &mut Vec<Hint>) {
    let line = place.span(fact);
    let supports = mentions_in(place, line);
    for mention in supports {
        let offset = if supports.len() == 1 { line.end } else { mention.span.end };
        hints.extend(brought(place, mention.target, offset));
    }
}

fn mentions_in<'a>(place: &Place<'a>, line: Span) -> &'a [Mention] {
    let mentions = &place.snapshot.house.model.mentions;
    let first = mentions.partition_point(|mention| mention.span < line);
    let after =
        mentions.partition_point(|mention| (mention.span.file, mention.span.start) < (line.file, line.end));
    mentions.get(first..after).unwrap_or_default()
}

fn brought(place: &Place<'_>, on: ElementId, offset: u32) -> Option<Hint> {
    let house = &place.snapshot.house;
    let FactValue::Force { whole, each_foot } = reaction(house, place.common.id, on, None).ok()?.value else {
        return None;
    };
    let label = match each_foot {
        Some(line) => Quantity::from(line).to_string(),
        None => Quantity::from(whole).to_string(),
    };
    let on = house.model.common(on)?.label();
    let along = each_foot.map(|line| format!(", {} at the most", Quantity::from(line))).unwrap_or_default();
    let tooltip = format!(
        "{} brings {} to {on}{along}, by the combination that makes it most\n{STRENGTH_CAUTION}",
        place.common.label(),
        Quantity::from(whole)
    );
    Some(Hint { offset, label, kind: HintKind::Reaction, tooltip, claim: None })
}

/// The fullest check, behind the size.
fn ratio(place: &Place<'_>) -> Option<Hint> {
    let checks = checks_of(&place.snapshot.house, place.common.id);
    let (verification, check) = checks.first()?;
    let words = verification.limit_state.words();
    let tooltip = format!(
        "{}: {words} {} of {} by {} ({})\n{STRENGTH_CAUTION}",
        place.common.label(),
        check.demand,
        check.capacity,
        check.combination,
        check.clause
    );
    let label = format!("{words} {}", percent(check.ratio()));
    Some(Hint { offset: place.behind(&["size"]), label, kind: HintKind::Ratio, tooltip, claim: None })
}

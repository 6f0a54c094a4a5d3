//! Words that several rules share.

use crate::house::House;
use crate::rules::Finding;
use crate::statics::cases::{ByCase, Case};
use crate::syntax::vocabulary::ElementKind;
use crate::units::Force;
use crate::verify::check::{Check, Verification};
use crate::verify::quantity::Quantity;

/// Longer texts are cut in a message.
const LONGEST_QUOTED: usize = 40;

/// What stands in the text, as a message shows it.
pub fn quoted(text: &str) -> String {
    let mut characters = text.trim().chars();
    let shown: String = characters.by_ref().take(LONGEST_QUOTED).collect();
    let cut = if characters.next().is_some() { "…" } else { "" };
    format!("`{shown}{cut}`")
}

/// `a`, `a or b`, `a, b or c`.
pub fn either(items: &[String]) -> String {
    joined(items, "or")
}

/// `a`, `a and b`, `a, b and c`.
pub fn all_of(items: &[String]) -> String {
    joined(items, "and")
}

fn joined(items: &[String], word: &str) -> String {
    match items {
        [most @ .., last] if !most.is_empty() => format!("{} {word} {last}", most.join(", ")),
        _ => items.concat(),
    }
}

/// What decided a check: `decided by D + 0.75L + 0.75S, at place 2 of 6`.
pub fn decided_by(verification: &Verification, check: &Check) -> String {
    let mut words = format!("decided by {}", check.combination);
    for more in [&check.pattern, &verification.part].into_iter().flatten() {
        words = format!("{words}, {more}");
    }
    match check.at {
        Some(at) => format!("{words}, {at} along it"),
        None => words,
    }
}

/// Says of a failing check what decided it, what the other element has to do with it, what was assumed, and by which clause.
pub fn explain(
    house: &House,
    verification: &Verification,
    check: &Check,
    other: &str,
    finding: &mut Finding,
) {
    finding.note(decided_by(verification, check));
    if let Some(against) = verification.against.and_then(|against| house.model.common(against)) {
        finding.related(against.name_span, format!("{}{other}", against.label()));
    }
    for assumed in &check.assumed {
        finding.note(format!("assumed: {assumed}"));
    }
    finding.basis(check.clause);
}

/// A load as a message shows it: `6,500 lb`.
pub fn pounds(force: Force) -> String {
    Quantity::from(force).to_string()
}

/// A load case by case: `D 2,500 lb, L 4,000 lb`.
pub fn by_case(force: &ByCase<Force>) -> String {
    let acting = Case::ALL.into_iter().filter(|case| *force.of(*case) != Force::ZERO);
    let said = acting.map(|case| format!("{} {}", case.symbol(), pounds(*force.of(case))));
    said.collect::<Vec<_>>().join(", ")
}

/// What presses where, by how much, and what is borne: `jacks JK1 press 8,153 lb on 16.5 sq in of the sill of W1: …`.
pub fn pressed_on(house: &House, verification: &Verification, check: &Check) -> String {
    let step = |symbol: &str| {
        let found = check.steps.iter().find(|step| step.symbol == symbol);
        found.map(|step| step.result.to_string()).unwrap_or_default()
    };
    let common = house.model.common(verification.of);
    let who = common.map(|common| format!("{} {}", common.label(), common.verb("presses", "press")));
    format!(
        "{} {} on {} of {}: {}, {} is what it bears",
        who.unwrap_or_default(),
        step("R"),
        step("A"),
        verification.part.as_deref().unwrap_or("what is below"),
        check.demand,
        check.capacity
    )
}

/// How thick a plate is and has to be.
pub fn plate_needs(check: &Check, plate: &str) -> String {
    let load = check.steps.first().map(|step| step.result.to_string()).unwrap_or_default();
    format!("{plate} is {} thick, {load} on it need {}", check.capacity, check.demand)
}

/// A kind of element with its article: `a beam`, `an opening`, `joists`.
pub fn a_kind(kind: ElementKind) -> String {
    let word = kind.word();
    match kind {
        ElementKind::Joists | ElementKind::Jacks => word.to_owned(),
        ElementKind::Squash => "squash blocks".to_owned(),
        _ if word.starts_with(['a', 'e', 'i', 'o', 'u']) => format!("an {word}"),
        _ => format!("a {word}"),
    }
}

//! How full an element is, by which clause, and how far that can be trusted.

use crate::house::House;
use crate::ide::figures::{checks_of, percent};
use crate::ide::hover::markdown::escaped;
use crate::ide::hover::member::{members_of, source_of};
use crate::model::element::ElementId;
use crate::verify::check::{Check, Verification};

/// Words in a step's source that say that nobody has read it in print.
const UNCONFIRMED: [&str; 2] = ["from memory", "copy"];

/// So many checks that could not run, and doubtful values, are told.
const MOST_TOLD: usize = 2;

/// The fullest check with its numbers, the next two, what it rests on, and what could not be verified.
pub fn lines(house: &House, element: ElementId) -> Vec<String> {
    let checks = checks_of(house, element);
    let mut lines = Vec::new();
    if let Some((verification, check)) = checks.first() {
        lines.push(governing(house, verification, check));
        let next: Vec<String> = checks
            .iter()
            .skip(1)
            .take(2)
            .map(|(other, check)| format!("{} {}", other.limit_state.words(), percent(check.ratio())))
            .collect();
        if !next.is_empty() {
            lines.push(format!("- then {}", next.join(", ")));
        }
        lines.extend(ground(house, element, check));
    }
    lines.extend(not_run(house, element));
    lines
}

fn governing(house: &House, verification: &Verification, check: &Check) -> String {
    let mut what = format!("**{}**", verification.limit_state.words());
    if let Some(part) = &verification.part {
        what = format!("{what}, {}", escaped(part));
    }
    if let Some(against) = verification.against.and_then(|against| house.model.common(against)) {
        what = format!("{what}, against {}", escaped(&against.label()));
    }
    let mut by = check.combination.to_owned();
    if let Some(pattern) = &check.pattern {
        by = format!("{by}, {pattern}");
    }
    let over = if verification.fails() { ", **over its limit**" } else { "" };
    format!(
        "- fullest in {what}: {} of {}, **{}**{over}, by {by} ({})",
        check.demand,
        check.capacity,
        percent(check.ratio()),
        check.clause
    )
}

/// What the check rests on that nobody stated or nobody has confirmed.
fn ground(house: &House, element: ElementId, check: &Check) -> Option<String> {
    let mut said: Vec<String> = Vec::new();
    let own = members_of(house, element).into_iter().next();
    if let Some(stuff) = own.and_then(|member| house.model.stuff_of(member).ok()) {
        said.push(escaped(&source_of(house, &stuff)));
    }
    said.extend(check.assumed.iter().map(|assumed| format!("assumed: {}", escaped(assumed))));
    let doubtful =
        check.steps.iter().filter(|step| UNCONFIRMED.iter().any(|word| step.source.contains(word)));
    said.extend(doubtful.map(|step| format!("{} by {}", step.symbol, step.source)));
    (!said.is_empty()).then(|| format!("- rests on {}", said.join("; ")))
}

fn not_run(house: &House, element: ElementId) -> Vec<String> {
    let mut why: Vec<String> = house
        .verifications
        .of(element)
        .filter_map(|verification| {
            let why = verification.outcome.as_ref().err()?;
            Some(format!("{}: {}", verification.limit_state.words(), escaped(&why.to_string())))
        })
        .collect();
    why.dedup();
    let more = why.len().saturating_sub(MOST_TOLD);
    why.truncate(MOST_TOLD);
    let mut lines: Vec<String> = why.into_iter().map(|why| format!("- **not verified**, {why}")).collect();
    if more > 0 {
        lines.push(format!("- and {more} more that could not be verified"));
    }
    lines
}

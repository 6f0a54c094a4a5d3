//! Names of rules, limits and profiles.

use crate::diagnostic::{Diagnostic, Severity};
use crate::ide::completion::values::Wanted;
use crate::ide::completion::{Completion, CompletionKind, Place};
use crate::profiles::{Limits, PROFILES};
use crate::rules::{RULES, Rule, is_fixed};

/// The slugs that can stand at the cursor.
pub(super) fn of(place: &Place<'_>, wanted: &Wanted<'_>, items: &mut Vec<Completion>) {
    match (wanted.reading.fact.phrase, wanted.label) {
        ("waive", "rule") => rules(place, items),
        ("severity", "rule") => weighed_rules(place, items),
        ("limit", "limit") => limits(place, items),
        ("profile", _) => items.extend(
            PROFILES.iter().rev().map(|it| place.item(it.name, CompletionKind::Slug).detail(it.title)),
        ),
        _ => {}
    }
}

/// Rules that a waiver can silence: those that find something in this element first.
fn rules(place: &Place<'_>, items: &mut Vec<Completion>) {
    let label =
        place.element.zip(place.house()).and_then(|(id, house)| Some(house.model.common(id)?.label()));
    let findings = place.last.map(|last| last.findings.as_slice()).unwrap_or_default();
    let all = findings.iter().flat_map(Diagnostic::with_consequences);
    let here: Vec<&Diagnostic> =
        all.filter(|one| Some(&one.subject) == label.as_ref() && one.waiver.is_some()).collect();
    let item = |slug: &'static str| place.item(slug, CompletionKind::Slug).about(format!("rule {slug}"));
    items.extend(here.iter().map(|finding| item(finding.rule).detail(format!("here: {}", finding.message))));
    let can_be_waived = |rule: &&Rule| !rule.is_of_the_text() && rule.group() != "waivers";
    items.extend(RULES.iter().filter(can_be_waived).map(|rule| item(rule.slug).detail(rule.summary())));
}

/// Rules that can matter more or less than by themselves: those that find something in the house first.
fn weighed_rules(place: &Place<'_>, items: &mut Vec<Completion>) {
    let findings = place.last.map(|last| last.findings.as_slice()).unwrap_or_default();
    let all: Vec<&Diagnostic> = findings.iter().flat_map(Diagnostic::with_consequences).collect();
    let n_found = |rule: &Rule| all.iter().filter(|finding| finding.rule == rule.slug).count();
    let by_itself = |rule: &Rule| {
        let now = format!("{} by itself", rule.severity.word());
        let found = match n_found(rule) {
            0 => String::new(),
            n => format!(", found {n}×"),
        };
        format!("{now}{found}: {}", rule.summary())
    };
    let is_free = |rule: &&&Rule| !(is_fixed(rule) && rule.severity == Severity::Error);
    let mut rules: Vec<&Rule> = RULES.iter().collect();
    rules.sort_by_key(|rule| n_found(rule) == 0);
    items.extend(rules.iter().filter(is_free).map(|rule| {
        let item = place.item(rule.slug, CompletionKind::Slug);
        item.detail(by_itself(rule)).about(format!("rule {}", rule.slug))
    }));
}

fn limits(place: &Place<'_>, items: &mut Vec<Completion>) {
    let newest = Limits::newest();
    let profile = place.house().map_or(newest.profile(), |house| house.limits.profile());
    items.extend(profile.limits().map(|limit| {
        let detail = format!("{}: {}", limit.value, limit.meaning);
        place.item(limit.name, CompletionKind::Slug).detail(detail).about(format!("limit {}", limit.name))
    }));
}

/// What a word of a closed list says, where the word alone may not be plain.
pub(super) fn meaning_of_word(wanted: &Wanted<'_>, words: &str) -> Option<&'static str> {
    match (wanted.label, words) {
        ("value", "error") => Some("it can't be built so, or not safely"),
        ("value", "warning") => Some("it will hurt in the end"),
        ("value", "advice") => Some("worth knowing"),
        ("value", "off") => Some("not reported in this house"),
        ("value", "drawn") => Some("on paper"),
        ("value", "ordered") => Some("bought"),
        ("value", "poured") => Some("concrete is in place"),
        ("value", "set") => Some("it stands"),
        ("how", "net") => Some("without the footing's own weight"),
        ("how", "gross") => Some("the footing's own weight included"),
        ("", "plus") => None,
        _ => None,
    }
}

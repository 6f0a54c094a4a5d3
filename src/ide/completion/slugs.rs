//! Names of rules, limits and profiles.

use crate::diagnostic::Diagnostic;
use crate::ide::completion::values::Wanted;
use crate::ide::completion::{Completion, CompletionKind, Place};
use crate::profiles::{Limits, PROFILES};
use crate::rules::{RULES, Rule};

/// The groups of rules that speak of the text itself: no waiver silences them.
const OF_TEXT: [&str; 4] = ["spelling", "names", "files", "waivers"];

/// The slugs that can stand at the cursor.
pub(super) fn of(place: &Place<'_>, wanted: &Wanted<'_>, items: &mut Vec<Completion>) {
    match (wanted.reading.fact.phrase, wanted.label) {
        ("waive", "rule") => rules(place, items),
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
    let can_be_waived = |rule: &&Rule| !OF_TEXT.contains(&rule.group());
    items.extend(RULES.iter().filter(can_be_waived).map(|rule| item(rule.slug).detail(rule.summary())));
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

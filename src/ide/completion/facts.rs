//! Facts, at the beginning of an indented line.

use crate::ide::completion::snippets::Snippet;
use crate::ide::completion::{Completion, CompletionKind, Place, numbers};
use crate::syntax::LineKind;
use crate::syntax::VALUE_COLUMN;
use crate::syntax::vocabulary::{COMMON, ElementSpec, FactSpec, Presence};

/// The facts that can stand in the element and do not yet: what must stand first, then in the formatter's order; claims and
/// what every element can have last.
pub(super) fn at_line_start(place: &Place<'_>, items: &mut Vec<Completion>) {
    let Some(element) = place.cursor.element() else { return };
    let standing = standing_elsewhere(place);
    let may_stand = |fact: &FactSpec| fact.repeatable || !standing.contains(&fact.phrase);
    let own = || element.facts.iter().filter(|fact| may_stand(fact) && is_begun(place, fact.phrase));
    let is_missing =
        |fact: &&FactSpec| fact.presence == Presence::Required && !standing.contains(&fact.phrase);
    items.extend(own().filter(is_missing).map(|spec| fact(place, element, spec).detail("required")));
    items.extend(own().filter(|fact| !is_missing(fact)).map(|spec| fact(place, element, spec)));
    claims(place, element, items);
    let common = COMMON.iter().filter(|common| element.facts.iter().all(|own| own.phrase != common.phrase));
    let common = common.filter(|fact| may_stand(fact) && is_begun(place, fact.phrase));
    items.extend(common.map(|spec| fact(place, element, spec)));
}

/// The phrases of the element's other lines, read or not.
fn standing_elsewhere(place: &Place<'_>) -> Vec<&'static str> {
    let body = &place.cursor.body;
    let in_chunk = place.cursor.line_start - place.cursor.chunk_start;
    let mut standing: Vec<_> = body
        .lines
        .iter()
        .filter(|line| line.span.start as usize != in_chunk)
        .filter_map(|line| match line.kind {
            LineKind::Fact(index) => body.facts.get(index).map(|fact| fact.spec.phrase),
            LineKind::Blank | LineKind::Comment | LineKind::Opening | LineKind::Broken => None,
        })
        .collect();
    let elsewhere = body.broken.iter().filter(|broken| {
        let start = broken.span.start as usize;
        !(in_chunk..=in_chunk + place.cursor.line.len()).contains(&start)
    });
    standing.extend(elsewhere.filter_map(|broken| broken.phrase));
    standing
}

/// What stands before the cursor is the beginning of a phrase, and not yet all of it.
fn is_begun(place: &Place<'_>, phrase: &str) -> bool {
    let before = &place.cursor.before;
    let mut words = phrase.split(' ');
    before.iter().all(|token| words.next().is_some_and(|word| token.is_word(word))) && words.next().is_some()
}

fn first(place: &Place<'_>) -> usize {
    place.cursor.before.first().map_or(place.cursor.typed_from, |token| token.span.start as usize)
}

/// Where the value begins, counted from the line's first word.
fn width(place: &Place<'_>) -> usize {
    VALUE_COLUMN.saturating_sub(first(place))
}

fn fact(place: &Place<'_>, element: &ElementSpec, spec: &'static FactSpec) -> Completion {
    let width = width(place);
    let mut item = place.item_from(first(place), spec.phrase, CompletionKind::Fact);
    if place.cursor.ends_the_line() {
        let snippet = Snippet::of_fact(spec, width);
        let has_values = snippet.trim_end() != spec.phrase;
        let width = width.max(spec.phrase.len() + 1);
        item.text = if has_values { format!("{:<width$}", spec.phrase) } else { spec.phrase.to_owned() };
        item.snippet = has_values.then_some(snippet);
    }
    let subject = format!("fact {}: {}", element.keyword, spec.phrase);
    item.detail(spec.meaning).about(subject)
}

/// What follows from the rest can be claimed, with the value that it has now.
fn claims(place: &Place<'_>, element: &ElementSpec, items: &mut Vec<Completion>) {
    for name in element.claimable().filter(|name| is_begun(place, name.words)) {
        let mut item =
            place.item_from(first(place), format!("{} should be", name.words), CompletionKind::Fact);
        if place.cursor.ends_the_line() {
            let width = width(place).max(name.words.len() + 1);
            let now = numbers::of_fact(place, name.words);
            let shown = now.as_deref().unwrap_or("value");
            item.text = format!("{:<width$}should be ", name.words);
            item.snippet = Some(format!("{:<width$}should be ${{1:{shown}}}", name.words));
        }
        items.push(item.detail(name.meaning).about(format!("name {}", name.words)));
    }
}

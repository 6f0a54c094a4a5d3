//! Elements, in the first column.

use crate::ide::completion::snippets::Snippet;
use crate::ide::completion::{Completion, CompletionKind, Place, free_names};
use crate::ide::cursor::begins_with;
use crate::syntax::vocabulary::{ELEMENTS, ElementKind, ElementSpec, Naming, element_opened_by};

/// Elements, or behind the word for one a name that nothing has yet.
pub(super) fn in_first_column(place: &Place<'_>, items: &mut Vec<Completion>) {
    let before = &place.cursor.before;
    for spec in ELEMENTS.iter().copied().filter(|spec| !stands_already(place, spec.kind)) {
        let words: Vec<_> = spec.keyword.split(' ').collect();
        let begun =
            before.len() < words.len() && before.iter().zip(&words).all(|(token, word)| token.is_word(word));
        if begun {
            items.push(element(place, spec));
        }
    }
    let opened = ELEMENTS.iter().flat_map(|spec| spec.also.iter().chain([&spec.keyword]));
    let opened = opened.filter(|words| begins_with(words, before) == Some(before.len()));
    if let Some(spec) = opened.max_by_key(|words| words.len()).and_then(|words| element_opened_by(words))
        && spec.naming == Naming::Name
        && let Some(name) = free_names::next(place, spec.kind)
    {
        items.push(place.item(name, CompletionKind::FreeName).detail(format!("the next {}", spec.keyword)));
    }
}

fn element(place: &Place<'_>, spec: &'static ElementSpec) -> Completion {
    let from = place.cursor.before.first().map_or(place.cursor.typed_from, |token| token.span.start as usize);
    let name = match spec.naming {
        Naming::Name => Some(free_names::next(place, spec.kind).unwrap_or_else(|| "name".to_owned())),
        Naming::Title | Naming::None => None,
    };
    // Where an element stands already only its word is changed.
    let snippet = place
        .cursor
        .ends_the_line()
        .then(|| Snippet::of_element(spec, name.as_deref(), spec.naming == Naming::Title, place.line_end));
    let item = place.item_from(from, spec.keyword, CompletionKind::Element);
    Completion { snippet, ..item }.detail(spec.summary).about(format!("element {}", spec.keyword))
}

/// A spec has one project and one grid.
fn stands_already(place: &Place<'_>, kind: ElementKind) -> bool {
    place.house().is_some_and(|house| match kind {
        ElementKind::Project => house.model.project.is_some(),
        ElementKind::Grid => house.model.grid.common.is_some(),
        _ => false,
    })
}

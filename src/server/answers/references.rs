//! `textDocument/references` and `documentHighlight`: every place that means the same.

use std::collections::HashSet;
use std::hash::Hash;

use tower_lsp::lsp_types::{DocumentHighlight, DocumentHighlightKind, Location, Position};

use crate::ide;
use crate::server::view::View;

/// Every place that means what the name at a position means, in every project of the file, each once.
pub fn references(view: &View, position: Position, with_declaration: bool) -> Option<Vec<Location>> {
    let offset = view.offset(position);
    let places = view.houses().filter_map(|house| {
        let places = ide::references(&house.snapshot().house, house.file, offset, with_declaration)?;
        Some(places.into_iter().filter_map(|place| house.analysed.location(place)))
    });
    each_once(places, |place| (place.uri.clone(), place.range.start.line, place.range.start.character))
}

/// The same, of this file alone.
pub fn highlights(view: &View, position: Position) -> Option<Vec<DocumentHighlight>> {
    let offset = view.offset(position);
    let encoded = |it: ide::Highlight| DocumentHighlight {
        range: view.range(it.span.start, it.span.end),
        kind: Some(if it.is_declaration {
            DocumentHighlightKind::WRITE
        } else {
            DocumentHighlightKind::READ
        }),
    };
    let places = view.houses().filter_map(|house| {
        let places = ide::highlights(&house.snapshot().house, house.file, offset)?;
        Some(places.into_iter().map(encoded))
    });
    each_once(places, |place| (place.range.start.line, place.range.start.character))
}

/// All of what the projects say, of each key once; `None` when none of them has something to say.
fn each_once<T, K: Hash + Eq>(
    of_projects: impl Iterator<Item = impl Iterator<Item = T>>,
    key: impl Fn(&T) -> K,
) -> Option<Vec<T>> {
    let mut known = HashSet::new();
    let mut all: Option<Vec<T>> = None;
    for of_project in of_projects {
        let new = of_project.filter(|one| known.insert(key(one)));
        all.get_or_insert_default().extend(new);
    }
    all
}

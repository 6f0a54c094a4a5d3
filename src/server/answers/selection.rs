//! `textDocument/selectionRange`.

use tower_lsp::lsp_types::{Position, Range, SelectionRange};

use crate::ide;
use crate::server::view::View;

/// What a selection at each position grows to.
pub fn selection(view: &View, positions: &[Position]) -> Vec<SelectionRange> {
    let offsets: Vec<u32> = positions.iter().map(|position| view.offset(*position)).collect();
    let grown = ide::selection(&view.house.snapshot().house, view.house.file, &offsets);
    let chains = grown.into_iter().zip(positions).map(|(places, position)| {
        if view.page.ruler.is_before_text(*position) {
            return Some(SelectionRange { range: Range::new(*position, *position), parent: None });
        }
        let ranges = places.into_iter().rev().map(|place| view.range(place.start, place.end));
        ranges.fold(None, |parent, range| Some(SelectionRange { range, parent: parent.map(Box::new) }))
    });
    // Every chain ends with the whole file, so there is one for each position.
    chains.flatten().collect()
}

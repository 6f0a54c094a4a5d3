//! A spec's text with some edits made.

use std::sync::Arc;

use crate::diagnostic::Edit;
use crate::house::House;
use crate::inputs::Inputs;
use crate::text::Source;

/// What the spec with these edits made gives to read. What include lines led to stays as it was.
pub fn inputs_with(house: &House, edits: &[Edit]) -> Inputs {
    Inputs { sources: sources_with(house, edits), ..Inputs::clone(&house.inputs) }
}

fn sources_with(house: &House, edits: &[Edit]) -> Vec<Source> {
    let mut edits: Vec<&Edit> = edits.iter().collect();
    edits.sort_by_key(|edit| edit.span);
    let files = house.files().zip(&house.inputs.sources);
    files
        .map(|(file, source)| {
            let mut text = String::new();
            let mut at = 0;
            for edit in edits.iter().filter(|edit| edit.span.file == file) {
                text.push_str(source.text.get(at..edit.span.start as usize).unwrap_or(""));
                text.push_str(&edit.text);
                at = edit.span.end as usize;
            }
            if at == 0 && text.is_empty() {
                return source.clone();
            }
            text.push_str(source.text.get(at..).unwrap_or(""));
            Source::new(Arc::clone(&source.name), text)
        })
        .collect()
}

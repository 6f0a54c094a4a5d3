//! A spec as it would be with some edits made.

use std::sync::Arc;

use crate::diagnostic::Edit;
use crate::house::House;
use crate::inputs::Inputs;
use crate::snapshot::{Caches, Snapshot, analyse};
use crate::syntax::ElementCache;
use crate::text::Source;

/// The spec with these edits made, and everything found in it. What include lines led to stays as it was. `None` when it
/// breaks off.
pub fn with(snapshot: &Snapshot, edits: &[Edit]) -> Option<Snapshot> {
    let inputs = Arc::new(inputs_with(snapshot, edits));
    analyse(&inputs, &mut Caches::default(), snapshot.house.today, &|| false).ok()
}

/// The house with these edits made, for who asks only what it comes to.
pub fn house_with(snapshot: &Snapshot, edits: &[Edit]) -> House {
    let inputs = Arc::new(inputs_with(snapshot, edits));
    House::of(&inputs, &mut ElementCache::default(), snapshot.house.today)
}

fn inputs_with(snapshot: &Snapshot, edits: &[Edit]) -> Inputs {
    Inputs { sources: sources_with(snapshot, edits), ..Inputs::clone(&snapshot.inputs) }
}

fn sources_with(snapshot: &Snapshot, edits: &[Edit]) -> Vec<Source> {
    let mut edits: Vec<&Edit> = edits.iter().collect();
    edits.sort_by_key(|edit| edit.span);
    let files = snapshot.house.files().zip(&snapshot.inputs.sources);
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

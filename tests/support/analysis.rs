//! A spec of one file, analysed.

use std::sync::Arc;

use storyrod::inputs::Inputs;
use storyrod::snapshot::{Caches, Snapshot, analyse};
use storyrod::syntax::value::Date;
use storyrod::text::Source;

/// The day on which tests happen.
const TODAY: Date = Date { year: 2027, month: 6, day: 1 };

/// Everything the tool has to say about a text.
pub fn of(text: &str) -> Snapshot {
    let sources = vec![Source::new("house.framing", text)];
    let inputs = Inputs { sources, includes: Vec::new() };
    analyse(&Arc::new(inputs), &mut Caches::default(), TODAY, &|| false).unwrap()
}

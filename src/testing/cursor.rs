//! Tests of what an editor asks at a place: `$0` in a spec is the cursor.

use crate::house::House;
use crate::snapshot::{Caches, Snapshot, analyse};
use crate::testing::rule_check::{TODAY, inputs};
use crate::text::{FileId, Span};

/// All that is known of a spec, as [`crate::testing::rule_check::house`] reads it.
pub fn snapshot_of(text: &str) -> Snapshot {
    analyse(&inputs(text), &mut Caches::default(), TODAY, &|| false).unwrap()
}

/// All that is known of the spec without its `$0`, and where that stands: in which file, at which byte of it.
pub fn at_cursor(fixture: &str) -> (Snapshot, FileId, u32) {
    let (before, after) = fixture.split_once("$0").expect("the fixture has a cursor");
    let snapshot = snapshot_of(&format!("{before}{after}"));
    let (mut name, mut offset) = ("test.framing", 0);
    for line in before.split_inclusive('\n') {
        match line.strip_prefix("-- file ").filter(|_| line.ends_with('\n')) {
            Some(next) => (name, offset) = (next.trim(), 0),
            None => offset += line.len(),
        }
    }
    let mut sources = snapshot.house.inputs.sources.iter();
    let file = sources.position(|source| &*source.name == name).expect("the cursor stands in the spec");
    (snapshot, FileId(u32::try_from(file).unwrap()), u32::try_from(offset).unwrap())
}

/// All that is known of a text, and where `$0` stands in the first place of it that reads as `piece` without it.
pub fn in_sample(text: &str, piece: &str) -> (Snapshot, FileId, u32) {
    let start = text.find(&piece.replace("$0", "")).unwrap_or_else(|| panic!("`{piece}` stands in the text"));
    let offset = start + piece.find("$0").expect("the piece has a cursor");
    (snapshot_of(text), FileId(0), u32::try_from(offset).unwrap())
}

/// The line in which a place stands, without the blanks round it, with the place in square brackets.
pub fn text_around(house: &House, span: Span) -> String {
    let line = house.line_of(span);
    let (before, after) =
        (Span::new(span.file, line.start, span.start), Span::new(span.file, span.end, line.end));
    let text = format!("{}[{}]{}", house.text_at(before), house.text_at(span), house.text_at(after));
    text.trim().to_owned()
}

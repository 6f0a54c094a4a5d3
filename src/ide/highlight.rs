//! The places of one file that mean the same, to show them at a glance.

use crate::house::House;
use crate::ide::meaning::{named_at, places_of};
use crate::text::{FileId, Span};

/// A place that means the same as the one under the cursor.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Highlight {
    /// Where.
    pub span: Span,
    /// True where the name is given, not used.
    pub is_declaration: bool,
}

/// Every place of the file that means what the name at a place means, in the order of the text.
pub fn highlights(house: &House, file: FileId, offset: u32) -> Option<Vec<Highlight>> {
    let named = named_at(house, file, offset)?;
    let places = places_of(house, &named.meaning).into_iter();
    let here = places.filter(|place| place.span.file == file);
    Some(here.map(|place| Highlight { span: place.span, is_declaration: place.is_declaration }).collect())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::cursor::{at_cursor, text_around};

    #[test]
    fn uses_and_the_declaration_of_this_file_are_told_apart() {
        let (snapshot, file, offset) = at_cursor(
            "project\ncolumn C1\n  stands on F$01\nfooting F1\ninclude \"b.framing\"\n-- file b.framing\nsheet A-1\n  schedules F1\n",
        );
        let all = highlights(&snapshot.house, file, offset).unwrap();
        let all: Vec<_> =
            all.iter().map(|it| (text_around(&snapshot.house, it.span), it.is_declaration)).collect();
        assert_eq!(all, [("stands on [F1]".to_owned(), false), ("footing [F1]".to_owned(), true)]);
    }
}

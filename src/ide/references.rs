//! Every place that means the same.

use crate::house::House;
use crate::ide::meaning::{named_at, places_of};
use crate::text::{FileId, Span};

/// Every place of the spec that means what the name at a place means, in the order of the text.
pub fn references(house: &House, file: FileId, offset: u32, with_declaration: bool) -> Option<Vec<Span>> {
    let named = named_at(house, file, offset)?;
    let places = places_of(house, &named.meaning).into_iter();
    Some(places.filter(|place| with_declaration || !place.is_declaration).map(|place| place.span).collect())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::cursor::{at_cursor, text_around};

    fn check(fixture: &str, with_declaration: bool, expected: &[&str]) {
        let (snapshot, file, offset) = at_cursor(fixture);
        let places = references(&snapshot.house, file, offset, with_declaration).unwrap_or_default();
        let places: Vec<_> = places.into_iter().map(|place| text_around(&snapshot.house, place)).collect();
        assert_eq!(places, expected);
    }

    const SPEC: &str = "project\ncolumn C1\n  stands on F$01\ninclude \"b.framing\"\nsheet A-1\n  shows top of F1 = 9'\n-- file b.framing\nfooting F1\n";

    #[test]
    fn they_go_across_files_with_or_without_the_declaration() {
        check(SPEC, true, &["stands on [F1]", "shows top of [F1] = 9'", "footing [F1]"]);
        check(SPEC, false, &["stands on [F1]", "shows top of [F1] = 9'"]);
    }

    #[test]
    fn what_nothing_has_is_nowhere() {
        check("project\ncolumn C1\n  stands on F$09\n", true, &[]);
        check("project\nwall W$01\n", false, &[]);
    }
}

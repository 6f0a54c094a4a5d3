//! Another name for an element or a grid line, everywhere it stands.

mod reading;

use std::fmt;

use crate::diagnostic::Edit;
use crate::house::House;
use crate::ide::meaning::{Meaning, Named, mentions_in, named_at, places_of};
use crate::syntax::lexer::{TokenKind, Tokens};
use crate::syntax::names;
use crate::text::{FileId, Span};

/// A name that can be changed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Renamable {
    /// Where it stands under the cursor.
    pub span: Span,
    /// The name as it is.
    pub name: String,
}

/// Why a name can't be changed to another.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NoRename {
    /// No name of an element or a grid line stands there.
    NoName,
    /// The new name is empty.
    Empty,
    /// The new name can't be one, whatever it is for.
    NotAName(String),
    /// The new name is a word of the format.
    Reserved(String),
    /// Something has the new name already: what.
    Taken(String, String),
    /// The text would mean something else with it: the line where that shows first.
    ReadOtherwise(String, String),
}

impl fmt::Display for NoRename {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoName => f.write_str("only names of elements and of grid lines can be changed"),
            Self::Empty => f.write_str("a name needs at least one letter"),
            Self::NotAName(name) => write!(
                f,
                "`{name}` can't be a name: it begins with a letter; letters, figures, `_`, `-` and `.` may follow"
            ),
            Self::Reserved(name) => write!(f, "`{name}` is a word of the format, so it can't be a name"),
            Self::Taken(name, what) => write!(f, "`{name}` is taken: {what} has that name"),
            Self::ReadOtherwise(name, line) => write!(f, "with `{name}`, `{line}` would mean something else"),
        }
    }
}

/// The name at a place, when it can be changed: names of elements and grid lines can; keywords, titles, rules and the
/// paths of includes can't.
pub fn prepare_rename(house: &House, file: FileId, offset: u32) -> Option<Renamable> {
    let named = renamable_at(house, file, offset)?;
    Some(Renamable { span: named.span, name: house.text_at(named.span).to_owned() })
}

/// Every change of text that gives what a place names another name, in the order of the text; none when it has that name.
///
/// # Errors
/// When nothing there can be renamed, when the new name can't be one or is taken, and when the text would mean something
/// else with it.
pub fn rename(house: &House, file: FileId, offset: u32, name: &str) -> Result<Vec<Edit>, NoRename> {
    let named = renamable_at(house, file, offset).ok_or(NoRename::NoName)?;
    let before = house.text_at(named.span);
    if before == name {
        return Ok(Vec::new());
    }
    may_be(name, &named.meaning)?;
    if let Some(what) = bearer(house, name, &named.meaning) {
        return Err(NoRename::Taken(name.to_owned(), what));
    }
    let places = places_of(house, &named.meaning).into_iter().map(|place| place.span);
    let edits: Vec<Edit> = places
        .filter(|place| house.text_at(*place) == before)
        .map(|span| Edit { span, text: name.to_owned() })
        .collect();
    match reading::first_change(house, &edits) {
        Some(place) => {
            let line = house.text_at(house.line_of(place)).trim().to_owned();
            Err(NoRename::ReadOtherwise(name.to_owned(), line))
        }
        None => Ok(edits),
    }
}

fn renamable_at(house: &House, file: FileId, offset: u32) -> Option<Named> {
    let named = named_at(house, file, offset)?;
    let can_be = match &named.meaning {
        Meaning::Element(id) => {
            mentions_in(house, named.span).iter().any(|it| it.span == named.span && it.target == *id)
        }
        Meaning::GridLine(..) => true,
        Meaning::Rule(_) | Meaning::Include(_) => false,
    };
    can_be.then_some(named)
}

fn may_be(name: &str, meaning: &Meaning) -> Result<(), NoRename> {
    let mut tokens = Tokens::of(name, 0);
    let only = match (tokens.next(), tokens.next()) {
        (None, _) => return Err(NoRename::Empty),
        (Some(token), None) => Some(token.kind),
        (Some(_), Some(_)) => None,
    };
    if name.trim().is_empty() {
        return Err(NoRename::Empty);
    }
    if names::is_reserved(name) {
        return Err(NoRename::Reserved(name.to_owned()));
    }
    let is_name = match (only, meaning) {
        (Some(TokenKind::Word), _) => names::may_name(name),
        (Some(TokenKind::Whole(_)), Meaning::GridLine(..)) => true,
        (Some(TokenKind::Decimal(number)), Meaning::GridLine(..)) => number >= 0.0,
        _ => false,
    };
    if is_name { Ok(()) } else { Err(NoRename::NotAName(name.to_owned())) }
}

/// What has this name among what must be told apart from `meaning`.
fn bearer(house: &House, name: &str, meaning: &Meaning) -> Option<String> {
    match meaning {
        Meaning::GridLine(..) => {
            house.model.grid.lines.get(name).map(|_| format!("a line of the grid, `{name}`,"))
        }
        Meaning::Element(_) | Meaning::Rule(_) | Meaning::Include(_) => {
            house.model.common(house.model.named(name)?).map(|common| common.label())
        }
    }
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use super::*;
    use crate::diagnostic::Diagnostic;
    use crate::snapshot::Snapshot;
    use crate::testing::cursor::{at_cursor, snapshot_of, text_around};

    fn check(fixture: &str, name: &str, expected: &[&str]) {
        let (snapshot, file, offset) = at_cursor(fixture);
        let edits = rename(&snapshot.house, file, offset, name).expect("a name that can be changed");
        assert!(edits.iter().all(|edit| edit.text == name));
        let places: Vec<_> = edits.iter().map(|edit| text_around(&snapshot.house, edit.span)).collect();
        assert_eq!(places, expected);
    }

    fn refused(fixture: &str, name: &str, sentence: &str) {
        let (snapshot, file, offset) = at_cursor(fixture);
        let refusal = rename(&snapshot.house, file, offset, name).expect_err("a name that is refused");
        assert_eq!(refusal.to_string(), sentence);
    }

    #[test]
    fn an_element_gets_its_name_in_every_file() {
        let spec = "project\ncolumn C1\n  stands on F$01\ninclude \"b.framing\"\nsheet A-1\n  shows half of top of F1 = 9'\n  schedules C1, F1\n-- file b.framing\nfooting F1\n";
        let places =
            ["stands on [F1]", "shows half of top of [F1] = 9'", "schedules C1, [F1]", "footing [F1]"];
        check(spec, "F-12.a", &places);
        check(spec, "F1", &[]);
    }

    #[test]
    fn a_grid_line_gets_its_name_wherever_a_place_is_told_by_it() {
        let grid = "project\ngrid\n  x A 0', B 16'\n  y 1 0', 2 12'\n  line A is \"west\"\n";
        let spec = format!("{grid}beam A\n  from A$0/1 to B/1\njoists J1\n  spacing 16\" from A\n");
        check(
            &spec,
            "W",
            &["x [A] 0', B 16'", "line [A] is \"west\"", "from [A]/1 to B/1", "spacing 16\" from [A]"],
        );
        check(
            &spec.replace("A$0/1", "A/1$0"),
            "1.5",
            &["y [1] 0', 2 12'", "from A/[1] to B/1", "from A/1 to B/[1]"],
        );
        refused(&spec, "B", "`B` is taken: a line of the grid, `B`, has that name");
        refused(&spec, "2", "`2` is taken: a line of the grid, `2`, has that name");
        refused(&spec, "to", "`to` is a word of the format, so it can't be a name");
    }

    #[test]
    fn what_has_no_name_of_its_own_keeps_it() {
        for fixture in [
            "project\nbea$0m B1\n",
            "project\nbeam B1 \"Gir$0der\"\n",
            "project \"Hou$0se\"\n",
            "gr$0id\n",
            "project\nbeam B1\n  waive check-not$0-run because \"x\"\n",
            "project\n  severity check-not$0-run warning\nbeam B1\n",
            "project\ninclude \"b$0.framing\"\n-- file b.framing\nbeam B1\n",
            "project\nbeam B1\n  bears on W$09\n",
            "$0",
        ] {
            let (snapshot, file, offset) = at_cursor(fixture);
            assert_eq!(prepare_rename(&snapshot.house, file, offset), None, "{fixture}");
            refused(fixture, "B2", "only names of elements and of grid lines can be changed");
        }
        let (snapshot, file, offset) = at_cursor("project\nbeam $0B1 \"Girder\"\n");
        let renamable = prepare_rename(&snapshot.house, file, offset).unwrap();
        assert_eq!(
            (text_around(&snapshot.house, renamable.span).as_str(), renamable.name.as_str()),
            ("beam [B1] \"Girder\"", "B1")
        );
    }

    #[test]
    fn a_name_must_be_one() {
        let spec = "project\nbeam B$01\ncolumn C1\n";
        refused(spec, "", "a name needs at least one letter");
        refused(spec, "  ", "a name needs at least one letter");
        refused(spec, "C1", "`C1` is taken: column C1 has that name");
        refused(spec, "beam", "`beam` is a word of the format, so it can't be a name");
        for name in
            ["1B", "B 1", "B1\n", "W8x24", "B-", "B--1", "\"B\"", "b.", "3", "\u{feff}B2", "B1\u{301}"]
        {
            refused(
                spec,
                name,
                &format!(
                    "`{name}` can't be a name: it begins with a letter; letters, figures, `_`, `-` and `.` may follow"
                ),
            );
        }
        check(spec, "Träger", &["beam [B1]"]);
    }

    #[test]
    fn a_name_that_would_be_read_otherwise_is_refused() {
        // Stairs from `grade` begin outdoors.
        let spec = "project\nstair S1\n  from den to main\nfloor d$0en\nfloor main\n";
        refused(spec, "grade", "with `grade`, `from den to main` would mean something else");
        let spec = "project\njoists J$01\nhole H1\n  in J1\nbeam B1\n  bears on W7\n";
        refused(spec, "W7", "with `W7`, `bears on W7` would mean something else");
        // The keyword is misspelt, and the name behind it is known to be somebody's.
        let spec = "project\njoists J$01\ncolum C1\nbeam B1\n  bears on C1\n";
        refused(spec, "C1", "with `C1`, `bears on C1` would mean something else");
    }

    #[test]
    fn of_two_with_one_name_either_can_get_another() {
        let spec = "project\nbeam B$01\ncolumn B1\nsheet A-1\n  schedules B1\n";
        check(spec, "B2", &["beam [B1]", "schedules [B1]"]);
        check(&spec.replace("$0", "").replace("column B1", "column B1$0"), "B2", &["column [B1]"]);
    }

    /// Every name of two whole houses is changed in its turn: the findings stay what they are but for the name.
    #[test]
    fn nothing_but_the_name_changes() {
        for (sample, text) in [
            ("loon-cove", include_str!("../../grammar/samples/loon-cove.framing")),
            ("alley-house", include_str!("../../grammar/samples/alley-house.framing")),
        ] {
            let snapshot = snapshot_of(text);
            let house = &snapshot.house;
            let elements = house.model.mentions.iter().filter(|it| it.is_declaration).map(|it| it.span);
            let lines = house.model.grid.lines.values().map(|line| line.span);
            for place in elements.chain(lines) {
                let before = house.text_at(place);
                let edits = rename(house, place.file, place.start, "Qq7").unwrap();
                let renamed = after(house, &edits);
                let again = snapshot_of(&renamed);
                assert_eq!(told(&again, "Qq7"), told(&snapshot, before), "{before} of {sample}");
                let n_before = edits.iter().filter(|edit| edit.span.end <= place.start).count();
                let start = place.start as usize + n_before * "Qq7".len() - n_before * before.len();
                let start = u32::try_from(start).unwrap();
                let edits = rename(&again.house, place.file, start, before).unwrap();
                assert_eq!(after(&again.house, &edits), text, "{before} of {sample}, and back");
            }
        }
    }

    fn after(house: &House, edits: &[Edit]) -> String {
        let source: &Arc<str> = &house.inputs.sources[0].text;
        let mut text = source.to_string();
        for edit in edits.iter().rev() {
            text.replace_range(edit.span.start as usize..edit.span.end as usize, &edit.text);
        }
        text
    }

    /// What is told of a house, without one name; in the order of the words, since places move.
    fn told(snapshot: &Snapshot, name: &str) -> Vec<String> {
        let all = snapshot.findings.iter().flat_map(Diagnostic::with_consequences);
        let mut told: Vec<String> = all
            .map(|finding| {
                let place = snapshot.house.text_at(finding.span);
                let said = format!(
                    "{}: {} {:?} {:?} at {place}",
                    finding.rule, finding.message, finding.notes, finding.help
                );
                without(&said, name)
            })
            .collect();
        told.sort();
        told
    }

    /// A text with `_` for each whole word that is this name.
    fn without(text: &str, name: &str) -> String {
        let is_part = |character: char| character.is_alphanumeric() || "_-.".contains(character);
        let mut rest = text;
        let mut kept = String::new();
        while let Some(at) = rest.find(name) {
            let (before, behind) = (&rest[..at], &rest[at + name.len()..]);
            let is_whole = !before.ends_with(is_part) && !behind.starts_with(is_part);
            kept.push_str(before);
            kept.push_str(if is_whole { "_" } else { name });
            rest = behind;
        }
        kept + rest
    }
}

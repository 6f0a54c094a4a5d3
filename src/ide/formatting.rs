//! What to change in a document so that it looks as the formatter writes it: all of it, some lines, or the line just
//! finished.
//!
//! The formatter neither takes away, adds nor moves a line that says something. So the lines of both texts stand in pairs,
//! and only what differs inside a pair, or in the blank lines between two, is touched: cursors and marks keep their place.

use crate::syntax;
use crate::text::LineIndex;

/// How far a fact is moved in.
const INDENT: &str = "  ";

/// One change of a document.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Replacement {
    /// The first byte that goes.
    pub start: u32,
    /// One past the last.
    pub end: u32,
    /// What comes.
    pub text: String,
}

/// The changes that make `text` what the formatter writes. Line ends become those of the first line. Invariant: in the
/// order of the text, without overlap.
pub fn formatting(text: &str) -> Vec<Replacement> {
    replacements(text, &formatted(text, line_end(text)))
}

/// Of [`formatting`], the changes inside the lines that a stretch of the text touches.
pub fn formatting_of_lines(text: &str, start: u32, end: u32) -> Vec<Replacement> {
    let lines = LineIndex::new(text);
    // A selection of whole lines ends at the start of the next one.
    let last = lines.line_of(end.saturating_sub(u32::from(start < end)));
    let (first, behind) = (lines.start_of(lines.line_of(start)), lines.range_of(last).1);
    let is_at_end = behind as usize >= text.len();
    let mut all = formatting(text);
    all.retain(|edit| first <= edit.start && edit.end <= behind && (edit.start < behind || is_at_end));
    all.retain(|edit| !joins_line_ends(text, edit, (first, behind)));
    all
}

/// True when a CR and an LF, one of them a line end outside of the lines between two bytes, would become one line end.
fn joins_line_ends(text: &str, edit: &Replacement, (first, behind): (u32, u32)) -> bool {
    let (before, after) = (slice(text, 0, edit.start), slice(text, edit.end, to_u32(text.len())));
    let is_between = edit.text.is_empty() && after.starts_with('\n');
    edit.start == first && before.ends_with('\r') && (edit.text.starts_with('\n') || is_between)
        || edit.end == behind && edit.text.ends_with('\r') && after.starts_with('\n')
}

/// What to change behind a line break just typed, with the cursor in the new line: the finished line in the one style,
/// and, while there is nothing in the new line, its indent.
pub fn formatting_behind_line(text: &str, cursor: u32) -> Vec<Replacement> {
    let lines = LineIndex::new(text);
    let line = lines.line_of(cursor);
    let Some(finished) = line.checked_sub(1) else { return Vec::new() };
    let (start, end) = lines.range_of(finished);
    let above = content(slice(text, start, end));
    let mut all = if above.is_empty() { Vec::new() } else { in_its_element(text, &lines, finished) };
    all.retain(|edit| start <= edit.start && edit.end <= end && edit.start < end);
    all.retain(|edit| !joins_line_ends(text, edit, (start, end)));
    let (from, to) = lines.range_of(line);
    let new = content(slice(text, from, to));
    if is_blank(new) && new != indent_below(above) {
        all.push(Replacement {
            start: from,
            end: from + to_u32(new.len()),
            text: indent_below(above).to_owned(),
        });
    }
    all
}

/// Where a line begins that follows `above`: facts below a first line and below facts, everything else in the first
/// column.
fn indent_below(above: &str) -> &'static str {
    let is_alone = is_blank(above) || above.starts_with("--") || above.starts_with("include");
    if is_alone { "" } else { INDENT }
}

/// The changes of the element in which a line stands: what the rest of the text says does not change its style.
fn in_its_element(text: &str, lines: &LineIndex, line: u32) -> Vec<Replacement> {
    let opens = |line: &u32| {
        let (start, end) = lines.range_of(*line);
        let line = slice(text, start, end);
        !line.starts_with([' ', '\t', '\u{a0}', '\r', '\n']) && !line.starts_with("--")
    };
    let (start, finished_end) = lines.range_of(line);
    if is_blank(content(slice(text, start, finished_end))) {
        let blanks = content(slice(text, start, finished_end));
        return vec![Replacement { start, end: start + to_u32(blanks.len()), text: String::new() }];
    }
    let first = (0..=line).rev().find(opens).unwrap_or(0);
    let behind = (line + 1..lines.n_lines()).find(opens).unwrap_or(lines.n_lines());
    let start = lines.start_of(first);
    let element = slice(text, start, lines.start_of(behind));
    let mut all = replacements(element, &formatted(element, line_end(text)));
    for edit in &mut all {
        edit.start += start;
        edit.end += start;
    }
    all
}

fn formatted(text: &str, line_end: &str) -> String {
    syntax::format(text).replace('\n', line_end)
}

fn line_end(text: &str) -> &'static str {
    match text.find(['\r', '\n']).and_then(|at| text.get(at..)) {
        Some(rest) if rest.starts_with("\r\n") => "\r\n",
        Some(rest) if rest.starts_with('\r') => "\r",
        _ => "\n",
    }
}

/// A line that says something, and the blank lines above it.
#[derive(Clone, Copy)]
struct Row<'t> {
    start: u32,
    gap: &'t str,
    line: &'t str,
}

/// The lines that say something, and one of nothing behind the last blank lines.
fn rows(text: &str) -> Vec<Row<'_>> {
    let lines = LineIndex::new(text);
    let mut rows = Vec::new();
    let mut gap = 0;
    for line in 0..lines.n_lines() {
        let (start, end) = lines.range_of(line);
        let line = slice(text, start, end);
        if !is_blank(content(line)) {
            rows.push(Row { start: gap, gap: slice(text, gap, start), line });
            gap = end;
        }
    }
    let end = to_u32(text.len());
    rows.push(Row { start: gap, gap: slice(text, gap, end), line: "" });
    rows
}

fn replacements(old: &str, new: &str) -> Vec<Replacement> {
    let (old_rows, new_rows) = (rows(old), rows(new));
    if old_rows.len() != new_rows.len() {
        debug_assert!(false, "the formatter keeps every line that says something");
        return vec![Replacement { start: 0, end: to_u32(old.len()), text: new.to_owned() }];
    }
    let mut all = Vec::new();
    for (old, new) in old_rows.into_iter().zip(new_rows) {
        let behind_gap = old.start + to_u32(old.gap.len());
        if old.gap != new.gap {
            all.push(Replacement { start: old.start, end: behind_gap, text: new.gap.to_owned() });
        }
        all.extend(in_line(old.line, new.line, behind_gap));
    }
    all
}

/// The one change from a line to another, as small as can be. A line end is changed whole.
fn in_line(old: &str, new: &str, start: u32) -> Option<Replacement> {
    if old == new {
        return None;
    }
    let (old_words, new_words) = (content(old), content(new));
    let before = common_start(old_words, new_words);
    let (old_rest, new_rest) = (old.get(before..)?, new.get(before..)?);
    let has_same_end = old.get(old_words.len()..) == new.get(new_words.len()..);
    let behind = if has_same_end { common_end(old_rest, new_rest) } else { 0 };
    Some(Replacement {
        start: start + to_u32(before),
        end: start + to_u32(old.len() - behind),
        text: new_rest.get(..new_rest.len() - behind)?.to_owned(),
    })
}

/// How many bytes both begin with, up to a character's border.
fn common_start(one: &str, other: &str) -> usize {
    let same = one.chars().zip(other.chars()).take_while(|(a, b)| a == b);
    same.map(|(letter, _)| letter.len_utf8()).sum()
}

/// How many bytes both end with, from a character's border on.
fn common_end(one: &str, other: &str) -> usize {
    let same = one.chars().rev().zip(other.chars().rev()).take_while(|(a, b)| a == b);
    same.map(|(letter, _)| letter.len_utf8()).sum()
}

/// A line without its end.
fn content(line: &str) -> &str {
    line.trim_end_matches(['\r', '\n'])
}

/// True for nothing but what the reader takes for blanks.
fn is_blank(words: &str) -> bool {
    words.chars().all(|letter| matches!(letter, ' ' | '\t' | '\u{a0}' | '\u{feff}'))
}

fn slice(text: &str, start: u32, end: u32) -> &str {
    text.get(start as usize..end as usize).unwrap_or("")
}

fn to_u32(length: usize) -> u32 {
    u32::try_from(length).unwrap_or(u32::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn applied(old: &str, edits: &[Replacement]) -> String {
        let mut text = old.to_owned();
        for edit in edits.iter().rev() {
            text.replace_range(edit.start as usize..edit.end as usize, &edit.text);
        }
        text
    }

    /// The text and where its `$0` stands.
    fn cursor(fixture: &str) -> (String, u32) {
        let (before, behind) = fixture.split_once("$0").unwrap();
        (format!("{before}{behind}"), to_u32(before.len()))
    }

    #[test]
    fn only_what_differs_is_touched() {
        let edit = |start, end, text: &str| Replacement { start, end, text: text.to_owned() };
        assert_eq!(replacements("one\n two\nthree\n", "one\n  two\nthree\n"), [edit(5, 5, " ")]);
        assert_eq!(replacements("same\r\n", "same\r\n"), []);
        assert_eq!(replacements("a\r\n", "a\n"), [edit(1, 3, "\n")]);
        assert_eq!(replacements("aa", "aaa\n"), [edit(2, 2, "a\n")]);
        assert_eq!(
            replacements("é b\nc", "é  b\n\nc\n"),
            [edit(3, 3, " "), edit(5, 5, "\n"), edit(6, 6, "\n")]
        );
    }

    #[test]
    fn line_ends_stay_what_they_are() {
        for end in ["\n", "\r\n", "\r"] {
            let text = ["grid", "x A 0'", ""].join(end);
            let formatted = applied(&text, &formatting(&text));
            assert_eq!(formatted, syntax::format(&text).replace('\n', end));
            assert_eq!(formatting(&formatted), []);
        }
    }

    const ROUGH: &str = "beam B1\n size 2x10\n  from   A/1 to B/1   \ncolumn C1\n\n\n\n at A/1\n";

    #[test]
    fn of_lines_only_they_are_touched() {
        let at = |words: &str| to_u32(ROUGH.find(words).unwrap());
        let of = |from: &str, to: &str| {
            let edits = formatting_of_lines(ROUGH, at(from), at(to));
            applied(ROUGH, &edits)
        };
        assert_eq!(
            of("2x10", "10\n"),
            "beam B1\n  size          2x10\n  from   A/1 to B/1   \ncolumn C1\n\n\n\n at A/1\n"
        );
        // A whole line ends where the next one begins; blank lines above it belong to it.
        assert_eq!(
            of("  from", "column"),
            "beam B1\n size 2x10\n  from          A/1 to B/1\ncolumn C1\n\n\n\n at A/1\n"
        );
        assert_eq!(
            of("column", "C1\n"),
            "beam B1\n size 2x10\n  from   A/1 to B/1   \n\ncolumn C1\n\n\n\n at A/1\n"
        );
    }

    #[test]
    fn the_finished_line_and_the_indent_of_the_new_one() {
        for (typed, expected) in [
            ("beam   B1\n$0\n", "beam B1\n  \n"),
            ("beam B1\n  size 2x10\n$0", "beam B1\n  size          2x10\n  "),
            (
                "beam B1\n size 2x10\n $0\n  from A/1 to B/1\n",
                "beam B1\n  size          2x10\n  \n  from A/1 to B/1\n",
            ),
            ("beam B1\n  size          2x10\n  \n  $0", "beam B1\n  size          2x10\n\n"),
            ("beam B1\n  size          2x10\n\n$0", "beam B1\n  size          2x10\n\n"),
            ("-- a note\n  $0", "-- a note\n"),
            ("include  \"a.framing\"\n$0", "include \"a.framing\"\n"),
            ("beam B1\n  size 2x10 wrong\n$0", "beam B1\n  size 2x10 wrong\n  "),
            ("beam B1\r\n\tsize 2x10\r\n$0\r\n", "beam B1\r\n  size          2x10\r\n  \r\n"),
            ("beam B1\n  size 2x10\n  -- why\n$0", "beam B1\n  size 2x10\n  -- why\n  "),
            (
                "column C1\n  at A/1\nbeam   B1\n  $0size 2x10\n",
                "column C1\n  at A/1\nbeam B1\n  size 2x10\n",
            ),
            ("$0beam B1\n", "beam B1\n"),
            ("", ""),
        ] {
            let (text, at) = if typed.is_empty() { (String::new(), 0) } else { cursor(typed) };
            let formatted = applied(&text, &formatting_behind_line(&text, at));
            assert_eq!(formatted, expected, "{typed}");
            let line = LineIndex::new(&text).line_of(at);
            let at_again = LineIndex::new(&formatted).start_of(line);
            assert_eq!(formatting_behind_line(&formatted, at_again), [], "{typed} again");
        }
    }

    /// Where line ends are mixed, a CR that stays and an LF that comes would be one line end.
    #[test]
    fn a_blank_line_is_not_lost_between_two_kinds_of_line_ends() {
        let text = "beam B1\n  size          2x10\r \r\n  from          A/1 to B/1\n";
        let at = to_u32(text.find("\r \r").unwrap() + 1);
        let changed = applied(text, &formatting_of_lines(text, at, at));
        assert_eq!(LineIndex::new(&changed).n_lines(), LineIndex::new(text).n_lines());
    }

    proptest! {
        #[test]
        fn the_changes_lead_to_what_the_formatter_writes(
            text in "(beam B1|  size 2x10|  from A/1|\tat A / 1|--é|include \"a\"| |\r\n|\r|\n|\n|x|𝄞| -- b){0,30}",
            (from, to) in (0usize..200, 0usize..200),
        ) {
            let edits = formatting(&text);
            prop_assert!(edits.windows(2).all(|pair| pair[0].end <= pair[1].start));
            prop_assert_eq!(&applied(&text, &edits), &formatted(&text, line_end(&text)));
            // Where several kinds of line ends are mixed, a part keeps those round it.
            let text = text.replace("\r\n", "\n").replace('\r', "\n").replace('\n', line_end(&text));
            let whole = applied(&text, &formatting(&text));
            let at = |place: usize| to_u32(text.floor_char_boundary(place.min(text.len())));
            let (from, to) = (at(from.min(to)), at(from.max(to)));
            let part = applied(&text, &formatting_of_lines(&text, from, to));
            prop_assert_eq!(applied(&part, &formatting(&part)), whole);
            let typed = formatting_behind_line(&text, to);
            prop_assert!(typed.windows(2).all(|pair| pair[0].end <= pair[1].start));
            let finished = applied(&text, &typed);
            let line = LineIndex::new(&text).line_of(to);
            let again = LineIndex::new(&finished).start_of(line);
            prop_assert_eq!(formatting_behind_line(&finished, again), []);
        }
    }
}

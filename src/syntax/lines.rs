//! Where elements and lines begin, and the tokens of each line.

use std::ops::Range;

use crate::syntax::lexer::{Token, TokenKind, Tokens};
use crate::syntax::names;
use crate::syntax::{Problem, ProblemKind};
use crate::text::LocalSpan;

/// A line longer than this, comments aside, is no fact and is not read.
const LONGEST_LINE: usize = 1 << 16;

const BYTE_ORDER_MARK: char = '\u{feff}';

/// The stretches of a text that are read alone: each begins at a line in the first column, up to the next such line.
/// A line there that begins with a fact's word has lost its blanks: it costs itself, not the facts below it.
pub(super) fn chunks(text: &str) -> Vec<Range<usize>> {
    let mut starts = Vec::new();
    let mut at = 0;
    for line in lines(text) {
        let unmarked = if at == 0 { line.trim_start_matches(BYTE_ORDER_MARK) } else { line };
        if opens_chunk(unmarked) && !(starts.last().is_some() && has_lost_its_blanks(unmarked)) {
            starts.push(at + line.len() - unmarked.len());
        }
        at += line.len();
    }
    if !text.is_empty() && starts.first() != Some(&0) {
        starts.insert(0, 0);
    }
    let ends = starts.iter().copied().skip(1).chain([text.len()]).collect::<Vec<_>>();
    starts.into_iter().zip(ends).map(|(start, end)| start..end).collect()
}

/// The stretch around byte `at` that is read alone, found without reading the rest of the text.
pub fn chunk_around(text: &str, at: usize) -> Range<usize> {
    let begins = |start: usize| {
        let line = text.get(start..).unwrap_or("");
        opens_chunk(line) && !has_lost_its_blanks(line)
    };
    let mut start = line_start(text, at);
    while start > 0 && !begins(start) {
        start = line_start(text, start - 1);
    }
    let mut end = next_line(text, at);
    while end < text.len() && !begins(end) {
        end = next_line(text, end);
    }
    start..end
}

/// The first byte of the line that holds byte `at`.
pub fn line_start(text: &str, at: usize) -> usize {
    let bytes = text.as_bytes();
    let mut start = at.min(bytes.len());
    while start > 0 {
        match (bytes.get(start - 1), bytes.get(start)) {
            (Some(b'\r'), Some(b'\n')) => {}
            (Some(b'\n' | b'\r'), _) => break,
            _ => {}
        }
        start -= 1;
    }
    start
}

/// The first byte of the line behind the one that holds byte `at`.
fn next_line(text: &str, at: usize) -> usize {
    let bytes = text.as_bytes();
    let start = line_start(text, at);
    let behind = bytes.get(start..).unwrap_or_default();
    match behind.iter().position(|byte| matches!(byte, b'\n' | b'\r')) {
        None => bytes.len(),
        Some(length) if behind.get(length..length + 2) == Some(b"\r\n") => start + length + 2,
        Some(length) => start + length + 1,
    }
}

/// The lines of a text with their ends: LF, CRLF or a lone CR.
pub(super) fn lines(text: &str) -> impl Iterator<Item = &str> {
    let mut rest = text;
    std::iter::from_fn(move || {
        let end = match rest.bytes().position(|byte| matches!(byte, b'\n' | b'\r')) {
            _ if rest.is_empty() => return None,
            None => rest.len(),
            Some(at) => at + if rest.get(at..)?.starts_with("\r\n") { 2 } else { 1 },
        };
        let (line, behind) = rest.split_at(end);
        rest = behind;
        Some(line)
    })
}

fn opens_chunk(line: &str) -> bool {
    !line.starts_with([' ', '\t', '\u{a0}', '\r', '\n']) && !line.starts_with("--") && !line.is_empty()
}

fn has_lost_its_blanks(line: &str) -> bool {
    let word = line.split([' ', '\t', '\u{a0}', '\r', '\n']).next().unwrap_or("");
    !names::begins_element(word) && names::begins_fact(word)
}

/// The tokens that mean something, of as many lines as were put on it.
#[derive(Default)]
pub(super) struct TokenSheet<'t> {
    tokens: Vec<Token<'t>>,
}

/// A line with its place on the sheet.
pub(super) struct ScannedLine {
    pub span: LocalSpan,
    pub comment: Option<LocalSpan>,
    pub is_indented: bool,
    /// A token of it, or its length, could not be read; a problem says so.
    pub is_unreadable: bool,
    tokens: Range<usize>,
}

/// The lines of a chunk, and what was wrong in their tokens.
pub(super) struct ScannedChunk {
    pub lines: Vec<ScannedLine>,
    pub problems: Vec<Problem>,
    pub length: u32,
}

impl<'t> TokenSheet<'t> {
    /// Puts the lines of a chunk on the sheet.
    pub fn scan(&mut self, chunk: &'t str) -> ScannedChunk {
        let mut scanned =
            ScannedChunk { lines: Vec::new(), problems: Vec::new(), length: to_u32(chunk.len()) };
        let mut at = 0;
        for line in lines(chunk) {
            let scanned_line = self.scan_line(line, at, &mut scanned.problems);
            scanned.lines.push(scanned_line);
            at += line.len();
        }
        scanned
    }

    /// The tokens of a line, without blanks and comments.
    pub fn tokens_of(&self, line: &ScannedLine) -> &[Token<'t>] {
        self.tokens.get(line.tokens.clone()).unwrap_or_default()
    }

    fn scan_line(&mut self, line: &'t str, at: usize, problems: &mut Vec<Problem>) -> ScannedLine {
        let first = self.tokens.len();
        let mut scanned = ScannedLine {
            span: LocalSpan::new(to_u32(at), to_u32(at + line.len())),
            comment: None,
            is_indented: !opens_chunk(line),
            is_unreadable: false,
            tokens: first..first,
        };
        if line.len() > LONGEST_LINE && !line.trim_start().starts_with("--") {
            scanned.is_unreadable = true;
            problems.push(Problem { span: scanned.span, kind: ProblemKind::LineTooLong });
            return scanned;
        }
        let mut tokens = Tokens::of(line, scanned.span.start);
        for token in tokens.by_ref() {
            match token.kind {
                TokenKind::Blank | TokenKind::LineEnd => {}
                TokenKind::Comment => scanned.comment = Some(token.span),
                kind => {
                    scanned.is_unreadable |= kind == TokenKind::Wrong;
                    self.tokens.push(token);
                }
            }
        }
        let mut found = tokens.problems();
        // One line of rubbish is one problem.
        found.dedup_by(|next, first| {
            [&next.kind, &first.kind].iter().all(|kind| **kind == ProblemKind::StrayCharacter)
        });
        problems.append(&mut found);
        scanned.tokens = first..self.tokens.len();
        scanned
    }
}

fn to_u32(length: usize) -> u32 {
    u32::try_from(length).unwrap_or(u32::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn chunk_texts(text: &str) -> Vec<&str> {
        chunks(text).into_iter().map(|range| &text[range]).collect()
    }

    #[test]
    fn a_chunk_begins_in_the_first_column() {
        let text = "-- note\r\n\r\ngrid\r  x A 0'\n-- about B1\n\nbeam B1\n\tsize 2x10";
        assert_eq!(
            chunk_texts(text),
            ["-- note\r\n\r\n", "grid\r  x A 0'\n-- about B1\n\n", "beam B1\n\tsize 2x10"]
        );
        assert_eq!(chunk_texts(""), [""; 0]);
        assert_eq!(chunk_texts("  x\n"), ["  x\n"]);
        assert_eq!(chunk_texts("\u{feff}grid\n"), ["\u{feff}", "grid\n"]);
        assert_eq!(chunk_texts("- a"), ["- a"]);
        assert_eq!(
            chunk_texts("beam B1\nsize 2x10\n  from A\nload L1\n"),
            ["beam B1\nsize 2x10\n  from A\n", "load L1\n"]
        );
        assert_eq!(chunk_texts("size 2x10\nbeam B1\n"), ["size 2x10\n", "beam B1\n"]);
    }

    #[test]
    fn the_chunk_around_a_place_is_the_one_that_holds_it() {
        let text = "-- note\r\n\r\ngrid\r  x A 0'\n-- about B1\n\nbeam B1\nsize 2x10\n\tfrom A/1\r\nload L1";
        for chunk in chunks(text) {
            for at in chunk.clone() {
                assert_eq!(chunk_around(text, at), chunk, "{at}");
            }
        }
        assert_eq!(chunk_around(text, text.len()), text.len() - "load L1".len()..text.len());
        assert_eq!(chunk_around("", 0), 0..0);
    }

    #[test]
    fn every_line_end_ends_a_line() {
        assert_eq!(lines("a\r\nb\rc\n\nd").collect::<Vec<_>>(), ["a\r\n", "b\r", "c\n", "\n", "d"]);
    }
}

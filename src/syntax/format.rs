//! The one style. It moves blanks, and writes lengths and signs the plain way; what a file says never changes.
//!
//! How a line looks is decided by that line alone: a fact that changes is one changed line in version control, and two
//! branches that change two lines can be merged.
//!
//! Works on lines and tokens. A line that can't be read, or that would read differently afterwards, stays as it is.

mod plain;

use crate::syntax::lexer::{Token, Tokens};
use crate::syntax::tree::{Body, Fact, Line, LineKind, Opening};
use crate::syntax::vocabulary::CLAIM;
use crate::syntax::{Problem, parse_fresh};

/// How far facts and comments inside an element are moved in.
const INDENT: &str = "  ";

/// Where values begin, from the line's start, unless the phrase needs more room.
pub const VALUE_COLUMN: usize = 16;

/// Where comments behind facts begin, unless the fact needs more room.
const COMMENT_COLUMN: usize = 42;

/// The text in the one style.
pub fn format(text: &str) -> String {
    let text = text.trim_start_matches('\u{feff}');
    let mut rows = Vec::new();
    for chunk in &parse_fresh(text).chunks {
        let start = chunk.start as usize;
        let chunk_text = text.get(start..start + chunk.body.length as usize).unwrap_or("");
        add_rows(&chunk.body, chunk_text, &mut rows);
    }
    with_blank_rows(rows).iter().map(Row::line).collect()
}

/// A line of the result.
struct Row {
    role: Role,
    /// All but the comment; of a line that is kept as it is, all.
    text: String,
    comment: Option<String>,
}

#[derive(Clone, Copy, PartialEq)]
enum Role {
    Blank,
    Comment,
    Element,
    Include,
    Fact,
}

fn add_rows(body: &Body, chunk: &str, rows: &mut Vec<Row>) {
    for line in &body.lines {
        let text = line_text(line, chunk);
        let comment = line.comment.map(|span| slice(chunk, span.start, span.end).trim_end().to_owned());
        let (role, formatted) = match line.kind {
            LineKind::Blank => (Role::Blank, Some(String::new())),
            LineKind::Comment if text.starts_with("--") => (Role::Comment, Some(String::new())),
            LineKind::Comment => (Role::Comment, Some(INDENT.to_owned())),
            LineKind::Opening => (opening_role(body), opening_line(body, line, chunk)),
            LineKind::Fact(index) => {
                let fact = body.facts.get(index);
                (Role::Fact, fact.and_then(|fact| fact_line(fact, line, chunk)))
            }
            LineKind::Broken => (Role::Fact, None),
        };
        rows.push(match formatted {
            Some(text) => Row { role, text, comment },
            None => Row { role, text: text.to_owned(), comment: None },
        });
    }
}

/// The line without its end.
fn line_text<'t>(line: &Line, chunk: &'t str) -> &'t str {
    slice(chunk, line.span.start, line.span.end).trim_end_matches(['\r', '\n'])
}

fn slice(chunk: &str, start: u32, end: u32) -> &str {
    chunk.get(start as usize..end as usize).unwrap_or("")
}

fn tokens_of<'t>(line: &Line, chunk: &'t str) -> (Vec<Token<'t>>, Vec<Problem>) {
    let mut tokens = Tokens::of(slice(chunk, line.span.start, line.span.end), line.span.start);
    let loud = tokens.by_ref().filter(|token| !token.is_silent()).collect();
    (loud, tokens.problems())
}

/// The line in the plain spelling, cut where its first `n_words` tokens end; `None` when it would read differently.
fn plain_line(line: &Line, chunk: &str, n_words: usize) -> Option<(String, String)> {
    let (tokens, problems) = tokens_of(line, chunk);
    let spelled = |token: &Token<'_>| {
        let is_odd = problems.iter().any(|problem| problem.span == token.span);
        if is_odd { token.text.to_owned() } else { plain::spelling(token) }
    };
    let (words, values) = tokens.split_at_checked(n_words)?;
    let words = words.iter().map(spelled).collect::<Vec<_>>().join(" ");
    let mut text = String::new();
    for (at, token) in values.iter().enumerate() {
        if at > 0 && plain::stands_apart(values, at) {
            text.push(' ');
        }
        // `×` and `X` between two sizes are `x`; in words they are letters.
        let before = at.checked_sub(1).and_then(|before| values.get(before));
        let is_between_sizes = token.is_word("x") && before.is_some_and(|before| before.kind.is_size());
        text.push_str(&if is_between_sizes { "x".to_owned() } else { spelled(token) });
    }
    let whole = format!("{words} {text}");
    let mut again = Tokens::of(&whole, 0).filter(|token| !token.is_silent());
    let is_same =
        tokens.iter().all(|token| again.next().is_some_and(|other| plain::say_the_same(token, &other)));
    (is_same && again.next().is_none()).then_some((words, text))
}

fn opening_role(body: &Body) -> Role {
    match body.opening {
        Opening::Element(_) => Role::Element,
        Opening::Include(_) => Role::Include,
        // What opens nothing stays where it stands.
        Opening::Unknown(..) | Opening::Nothing => Role::Fact,
    }
}

fn opening_line(body: &Body, line: &Line, chunk: &str) -> Option<String> {
    if body.problems.iter().any(|problem| problem.span.start < line.span.end) {
        return None;
    }
    let (keyword, rest) = plain_line(line, chunk, 1)?;
    Some(format!("{keyword} {rest}").trim_end().to_owned())
}

fn fact_line(fact: &Fact, line: &Line, chunk: &str) -> Option<String> {
    let (phrase, values) = plain_line(line, chunk, n_phrase_words(fact, line, chunk))?;
    let width = (VALUE_COLUMN - INDENT.len()).max(phrase.chars().count() + 1);
    Some(format!("{INDENT}{phrase:<width$}{values}").trim_end().to_owned())
}

/// How many tokens are the phrase. Of a claim it is the claimed fact: `should be` stands among the values.
fn n_phrase_words(fact: &Fact, line: &Line, chunk: &str) -> usize {
    let phrase = match fact.part("fact") {
        Some(claimed) if std::ptr::eq(fact.spec, &CLAIM) => claimed.span,
        _ => fact.phrase,
    };
    let (tokens, _) = tokens_of(line, chunk);
    tokens.iter().take_while(|token| token.span.end <= phrase.end).count()
}

/// One blank row before every element (before its note, if it has one), never two, none at the ends.
fn with_blank_rows(rows: Vec<Row>) -> Vec<Row> {
    let mut is_head = vec![false; rows.len()];
    let mut is_next_head = false;
    for (row, is_head) in rows.iter().zip(is_head.iter_mut()).rev() {
        is_next_head = match row.role {
            Role::Element | Role::Include => true,
            Role::Comment => is_next_head,
            Role::Blank | Role::Fact => false,
        };
        *is_head = is_next_head;
    }
    let mut spaced: Vec<Row> = Vec::with_capacity(rows.len());
    let mut before: Option<(Role, bool)> = None;
    let mut has_blank = false;
    for (row, is_head) in rows.into_iter().zip(is_head) {
        if row.role == Role::Blank {
            has_blank = true;
            continue;
        }
        let needs_blank = match before {
            None => false,
            // A note and its element stay together, and so may includes.
            Some((Role::Comment, true)) => has_blank,
            Some((Role::Include, _)) if row.role == Role::Include => has_blank,
            Some(_) => has_blank || is_head,
        };
        if needs_blank {
            spaced.push(Row { role: Role::Blank, text: String::new(), comment: None });
        }
        before = Some((row.role, is_head));
        has_blank = false;
        spaced.push(row);
    }
    spaced
}

impl Row {
    /// The line as it is written.
    fn line(&self) -> String {
        match (&self.comment, self.role) {
            (Some(comment), Role::Comment) => format!("{}{comment}\n", self.text),
            (Some(comment), _) => {
                let column = COMMENT_COLUMN.max(self.text.chars().count() + 2);
                format!("{:<column$}{comment}\n", self.text)
            }
            (None, _) => format!("{}\n", self.text),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_style() {
        let text = "\u{feff}-- head\t\r\n\r\n\r\nbeam  B1\t\"Girder\"   -- why\r\n size   W8x24 -- a  \r\n\tfrom A/2 to C plus 12' 6\"/2-- no\r\n\tfrom A/2 to C plus 12' 6\"/2 -- b\r\n   top should   be 98.5ft  within  ½\" -- c\r\n\r\n\r\n  junk   here  \r\n-- note\r\ncolumn C1\r\n  cap plate 9\"x9\"x0.5\",long side along B1\r\n  nothing\r\n\r\n";
        let plain = "-- head

beam B1 \"Girder\"                          -- why
  size          W8x24                     -- a
\tfrom A/2 to C plus 12' 6\"/2-- no
  from          A/2 to C plus 12'-6\" / 2  -- b
  top           should be 98'-6\" within 1/2\"  -- c

  junk   here  

-- note
column C1
  cap           plate 9\" x 9\" x 1/2\", long side along B1
  nothing
";
        assert_eq!(format(text), plain);
    }

    #[test]
    fn places_are_open_where_an_offset_stands() {
        for place in ["A/1", "A plus 5\" / 1", "A / 1 less 5\"", "A less 1\" / 1 less 5\""] {
            let text = format!("column C1\n  at            {place}\n");
            assert_eq!(format(&text.replace(" / ", "/").replace("A/", "A /")), text);
        }
    }

    #[test]
    fn lengths_in_their_plain_spelling() {
        for (typed, plain) in [
            ("9 1/2\"", "9-1/2\""),
            ("12' 6\"", "12'-6\""),
            ("12'-6-1/2\"", "12'-6 1/2\""),
            ("9½\"", "9-1/2\""),
            ("12’-6½”", "12'-6 1/2\""),
            ("3.5\"", "3-1/2\""),
            ("2.32 in", "2.32\""),
            ("14 in.", "14\""),
            ("9''", "9\""),
            ("150\"", "150\""),
            ("0'-9\"", "0'-9\""),
            ("12'", "12'-0\""),
            ("0'", "0'"),
            ("0\"", "0\""),
            ("0'-0\"", "0'-0\""),
            ("2.5 ft", "2'-6\""),
            ("240mm", "240 mm"),
            ("2.4m", "2.4 m"),
            ("-5'", "-5'-0\""),
            ("12'6", "12'6"),
            ("12'13\"", "12'13\""),
        ] {
            let formatted =
                format(&format!("beam B1\n packing {typed}\n shim {typed}\ncolumn C1\n shim {typed}\n"));
            assert!(formatted.ends_with(&format!("\n  shim          {plain}\n")), "{typed}: {formatted}");
        }
        for (typed, plain) in [
            ("EL. +100'-0\"", "100'-0\""),
            ("±0", "0'"),
            ("(-)1'-1 5/8\"", "-1'-1 5/8\""),
            ("EL 98.5 ft", "98'-6\""),
        ] {
            let formatted = format(&format!("wall W1\n top {typed}\n"));
            assert_eq!(formatted, format!("wall W1\n  top           {plain}\n"), "{typed}");
        }
    }

    #[test]
    fn a_blank_that_parts_two_numbers_stays() {
        // With one blank, line 1 at half an inch would read as an inch and a half.
        let text = "grid\n  y             1  1/2\", 2 14'-0\"\n";
        assert_eq!(parse_fresh(text).chunks[0].body.facts.len(), 1);
        assert_eq!(format(text), text);
    }
}

//! Where the cursor stands in the text of now, which may be half typed.

use std::sync::Arc;

use crate::syntax::form::{Form, Kind};
use crate::syntax::lexer::{Token, TokenKind, Tokens};
use crate::syntax::next::{self, Walk};
use crate::syntax::vocabulary::{ElementSpec, FACT_NAMES, FactNameSpec, FactSpec, spec_of};
use crate::syntax::{Body, Opening, chunk_around, line_start, parse_fresh};

/// A longer line is no fact, and nobody types in it.
const LONGEST_LINE: usize = 1 << 16;

/// The place of a cursor.
pub(super) struct Cursor<'t> {
    /// The text of the element around it.
    pub chunk: &'t str,
    /// The byte of the file with which that begins.
    pub chunk_start: usize,
    /// What that says.
    pub body: Arc<Body>,
    /// Its line, without the line end.
    pub line: &'t str,
    /// The byte of the file with which that begins.
    pub line_start: usize,
    /// What stands in the line before the word that is being typed, as far as it means something; places count from the
    /// line's beginning.
    pub before: Vec<Token<'t>>,
    /// Where the word begins that is being typed, from the line's beginning.
    pub typed_from: usize,
    /// The cursor, from the line's beginning.
    pub at: usize,
    /// Where the word under the cursor ends.
    pub typed_to: usize,
    /// The cursor stands between quotes.
    pub is_quoted: bool,
}

impl<'t> Cursor<'t> {
    /// The place of byte `offset` of a text; `None` inside a comment.
    pub fn at(text: &'t str, offset: u32) -> Option<Self> {
        let mut offset = usize::try_from(offset).ok()?.min(text.len());
        while !text.is_char_boundary(offset) {
            offset -= 1;
        }
        let line_start = line_start(text, offset);
        let rest = text.get(line_start..)?;
        let line = rest.get(..rest.find(['\r', '\n']).unwrap_or(rest.len()))?;
        // Between the two signs of a line end the cursor stands at the line's end.
        let at = (offset - line_start).min(line.len());
        if line.len() > LONGEST_LINE {
            return None;
        }

        let mut before: Vec<Token<'t>> = Tokens::of(line.get(..at)?, 0).collect();
        let mut typed_from = at;
        let mut is_quoted = false;
        if let Some(last) = before.last().copied().filter(|last| last.span.end as usize == at) {
            match last.kind {
                TokenKind::Comment => return None,
                TokenKind::Text => {}
                TokenKind::Wrong if last.text.starts_with(['"', '“', '”']) && opens_text(line, &last) => {
                    is_quoted = true;
                    typed_from =
                        last.span.start as usize + last.text.chars().next().map_or(1, char::len_utf8);
                    before.pop();
                }
                kind if is_word(kind) => {
                    typed_from = last.span.start as usize;
                    before.pop();
                }
                _ => {}
            }
        }
        // A text that only blanks end: the lexer leaves those out of it.
        if let [.., text, blank] = before.as_slice()
            && (text.kind, blank.kind) == (TokenKind::Wrong, TokenKind::Blank)
            && text.text.starts_with(['"', '“', '”'])
        {
            is_quoted = true;
            typed_from = text.span.start as usize + text.text.chars().next().map_or(1, char::len_utf8);
            before.truncate(before.len().saturating_sub(2));
        }
        before.retain(|token| !token.is_silent());

        let around = chunk_around(text, line_start);
        let (chunk, chunk_start) = (text.get(around.clone())?, around.start);
        let tree = parse_fresh(chunk);
        let in_chunk = u32::try_from(line_start - chunk_start).ok()?;
        let body = tree.chunk_at(in_chunk).map(|chunk| Arc::clone(&chunk.body)).unwrap_or_else(nothing);
        let typed_to = word_end(line, typed_from, at, is_quoted);
        Some(Self { chunk, chunk_start, body, line, line_start, before, typed_from, at, typed_to, is_quoted })
    }

    /// What is typed of the word under the cursor.
    pub fn typed(&self) -> &'t str {
        self.line.get(self.typed_from..self.at).unwrap_or("")
    }

    /// The line begins in the first column.
    pub fn is_in_first_column(&self) -> bool {
        !self.line.starts_with([' ', '\t', '\u{a0}']) && !self.line.is_empty()
            || self.line.is_empty() && self.at == 0
    }

    /// Nothing but a comment follows the word under the cursor.
    pub fn ends_the_line(&self) -> bool {
        let rest = self.line.get(self.typed_to..).unwrap_or("");
        Tokens::of(rest, 0).all(|token| token.is_silent())
    }

    /// What the vocabulary says of the element around the cursor.
    pub fn element(&self) -> Option<&'static ElementSpec> {
        match &self.body.opening {
            Opening::Element(heading) => Some(spec_of(heading.kind)),
            Opening::Nothing | Opening::Include(_) | Opening::Unknown(..) => None,
        }
    }

    /// The name of the element around the cursor.
    pub fn element_name(&self) -> Option<&str> {
        match &self.body.opening {
            Opening::Element(heading) => heading.name.as_ref().map(|(name, _)| &**name),
            Opening::Nothing | Opening::Include(_) | Opening::Unknown(..) => None,
        }
    }

    /// The facts that the line may be saying: one of the element's own, a claim, or both as long as that is open.
    pub fn readings(&self) -> Vec<Reading> {
        let Some(element) = self.element().filter(|_| !self.is_in_first_column()) else { return Vec::new() };
        let own =
            element.all_facts().filter_map(|fact| Some((fact, begins_with(fact.phrase, &self.before)?)));
        let own = own.max_by_key(|(_, n_words)| *n_words);
        let own = own.map(|(fact, n_words)| Reading { fact, form: &fact.form, n_words, claimed: None });
        let claims = element.claimable().flat_map(|name| {
            let plain = begins_with(name.words, &self.before);
            let by_case = self
                .before
                .split_first()
                .filter(|(case, _)| name.takes_case && ["dead", "live", "snow", "all"].contains(&case.text));
            let by_case = by_case.and_then(|(_, rest)| Some(begins_with(name.words, rest)? + 1));
            plain.or(by_case).map(|n_words| Reading {
                fact: &crate::syntax::vocabulary::CLAIM,
                form: &CLAIMED,
                n_words,
                claimed: Some(name),
            })
        });
        own.into_iter().chain(claims).collect()
    }
}

/// A fact that a line may be saying.
pub(super) struct Reading {
    /// Which.
    pub fact: &'static FactSpec,
    /// What follows its phrase.
    pub form: &'static Form,
    /// How many of the line's tokens are the phrase.
    pub n_words: usize,
    /// The claimed fact, when it is a claim.
    pub claimed: Option<&'static FactNameSpec>,
}

impl Reading {
    /// Walks its form with what stands before the cursor.
    pub fn walk(&self, cursor: &Cursor<'_>) -> Walk {
        next::next(&[self.form], cursor.before.get(self.n_words..).unwrap_or_default())
    }
}

/// What follows the fact in a claim.
static CLAIMED: Form = Form::Sequence(&[
    Form::Words("should be"),
    Form::Slot("value", Kind::AnyValue),
    Form::Optional(&Form::Sequence(&[Form::Words("within"), Form::Slot("within", Kind::Length)])),
]);

/// How many words a phrase has, when the tokens begin with all of them.
pub(super) fn begins_with(phrase: &str, tokens: &[Token<'_>]) -> Option<usize> {
    let mut n_words = 0;
    for word in phrase.split(' ') {
        if !tokens.get(n_words)?.is_word(word) {
            return None;
        }
        n_words += 1;
    }
    Some(n_words)
}

/// The load case that narrows a fact of the line, and the fact of these words.
pub(super) fn fact_named(words: &str) -> Option<&'static FactNameSpec> {
    FACT_NAMES.iter().find(|name| name.words == words)
}

/// A quote opens text only behind a blank or at the line's start.
fn opens_text(line: &str, quote: &Token<'_>) -> bool {
    let before = line.get(..quote.span.start as usize).and_then(|before| before.chars().next_back());
    before.is_none_or(|before| matches!(before, ' ' | '\t' | '\u{a0}' | '\u{feff}'))
}

/// True of what is typed letter by letter and may be completed.
const fn is_word(kind: TokenKind) -> bool {
    !matches!(
        kind,
        TokenKind::Blank
            | TokenKind::LineEnd
            | TokenKind::Comment
            | TokenKind::Text
            | TokenKind::Comma
            | TokenKind::Slash
            | TokenKind::Open
            | TokenKind::Close
            | TokenKind::Relation(_)
    )
}

/// Where the word under the cursor ends, or the text up to its quote.
fn word_end(line: &str, from: usize, at: usize, is_quoted: bool) -> usize {
    let rest = line.get(at..).unwrap_or("");
    if is_quoted {
        return at + rest.find(['"', '”']).unwrap_or(rest.len());
    }
    if from == at {
        return at;
    }
    at + rest
        .find(|next: char| !next.is_alphanumeric() && !matches!(next, '-' | '_' | '.'))
        .unwrap_or(rest.len())
}

fn nothing() -> Arc<Body> {
    Arc::new(Body {
        opening: Opening::Nothing,
        facts: Vec::new(),
        broken: Vec::new(),
        lines: Vec::new(),
        problems: Vec::new(),
        length: 0,
    })
}

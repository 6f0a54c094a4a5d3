//! The plain spelling of a token.

use crate::syntax::lexer::{Token, TokenKind};
use crate::units::Length;

/// The token in its plain spelling.
pub(super) fn spelling(token: &Token<'_>) -> String {
    match token.kind {
        TokenKind::Length(length) | TokenKind::Elevation(length) => length_spelling(token.text, length),
        TokenKind::Fraction(length) => match in_inches(length) {
            Some(text) => text.trim_end_matches('"').to_owned(),
            None => token.text.to_owned(),
        },
        TokenKind::Load(_) | TokenKind::Stress(_) | TokenKind::Area(_) => with_unit_apart(token.text),
        TokenKind::Nominal((width, depth)) => format!("{width}x{depth}"),
        TokenKind::Text => format!("\"{}\"", token.unquoted()),
        TokenKind::Relation(relation) => relation.sign().to_owned(),
        TokenKind::Decimal(_) => token.text.replace('−', "-"),
        TokenKind::Blank
        | TokenKind::LineEnd
        | TokenKind::Comment
        | TokenKind::Word
        | TokenKind::Marking
        | TokenKind::Whole(_)
        | TokenKind::Percent(_)
        | TokenKind::Date(_)
        | TokenKind::Bar(_)
        | TokenKind::Ply(_)
        | TokenKind::Comma
        | TokenKind::Slash
        | TokenKind::Open
        | TokenKind::Close
        | TokenKind::Wrong => token.text.to_owned(),
    }
}

/// Does a blank stand before the token at `at`?
pub(super) fn stands_apart(tokens: &[Token<'_>], at: usize) -> bool {
    let kind = |at: usize| tokens.get(at).map(|token| token.kind);
    match (at.checked_sub(1).and_then(kind), kind(at)) {
        (_, Some(TokenKind::Comma | TokenKind::Close)) | (Some(TokenKind::Open), _) => false,
        (_, Some(TokenKind::Slash)) => is_open_slash(tokens, at),
        (Some(TokenKind::Slash), _) => is_open_slash(tokens, at.saturating_sub(1)),
        _ => true,
    }
}

/// Grid lines touch the slash between them, unless one of them has an offset.
fn is_open_slash(tokens: &[Token<'_>], at: usize) -> bool {
    let before = at.checked_sub(1).and_then(|before| tokens.get(before));
    let offset = tokens.get(at + 2);
    before.is_some_and(|token| matches!(token.kind, TokenKind::Length(_)))
        || offset.is_some_and(|token| token.is_word("plus") || token.is_word("less"))
}

/// Do two tokens mean the same?
pub(super) fn say_the_same(one: &Token<'_>, other: &Token<'_>) -> bool {
    use TokenKind::{Elevation, Length, Text, Word};
    match (one.kind, other.kind) {
        (Length(a) | Elevation(a), Length(b) | Elevation(b)) => a == b,
        (Word, Word) => one.text == other.text || (one.is_word("x") && other.is_word("x")),
        (Text, Text) => one.unquoted() == other.unquoted(),
        // A mark, a number that names a grid line: its figures count.
        (TokenKind::Marking | TokenKind::Whole(_), _) => one.kind == other.kind && one.text == other.text,
        _ => one.kind == other.kind,
    }
}

/// Feet stay feet, inches inches, metric metric; what is no whole count of 1/64 inch keeps its figures.
fn length_spelling(text: &str, length: Length) -> String {
    let text = typed_plainly(text);
    if text.ends_with('m') {
        return with_unit_apart(&text);
    }
    let has_inch_mark = text.ends_with(['"', 'n']);
    let has_foot_mark = text.contains('\'') || text.ends_with("ft");
    if length == Length::ZERO && !has_inch_mark {
        return "0'".to_owned();
    }
    if has_foot_mark {
        return exact(length.in_feet().to_the(64).to_string()).unwrap_or_else(|| with_unit_apart(&text));
    }
    in_inches(length).unwrap_or_else(|| format!("{}\"", text.trim_end_matches(['"', 'i', 'n', ' '])))
}

/// The text with the keyboard's own marks, and without what says that it is an elevation.
fn typed_plainly(text: &str) -> String {
    let mut text = text.to_owned();
    for (typed, plain) in [
        ("\u{a0}", " "),
        ("−", "-"),
        ("''", "\""),
        ("’’", "\""),
        ("′′", "\""),
        ("’", "'"),
        ("′", "'"),
        ("”", "\""),
        ("″", "\""),
    ] {
        text = text.replace(typed, plain);
    }
    let figures = text.trim_start_matches(|character: char| !character.is_ascii_digit() && character != '-');
    figures.trim_end_matches('.').to_owned()
}

fn in_inches(length: Length) -> Option<String> {
    exact(length.in_inches().to_the(64).to_string())
}

/// The print, unless it had to round.
fn exact(print: String) -> Option<String> {
    (!print.ends_with('~')).then_some(print)
}

/// `40psf` as `40 psf`.
fn with_unit_apart(text: &str) -> String {
    let text = text.replace('\u{a0}', " ").replace('−', "-");
    let mut letters = text.char_indices().filter(|(_, character)| character.is_alphabetic());
    let is_exponent = |at: usize| {
        text.get(at + 1..)
            .is_some_and(|rest| rest.starts_with(|next: char| next.is_ascii_digit() || "+-".contains(next)))
    };
    let unit = letters.find(|(at, letter)| !matches!(letter, 'e' | 'E') || !is_exponent(*at));
    match unit.and_then(|(at, _)| text.split_at_checked(at)) {
        Some((figures, unit)) => format!("{} {unit}", figures.trim_end()),
        None => text,
    }
}

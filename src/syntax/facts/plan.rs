//! Places in plan: grid lines with their offsets, points, rectangles, lines.

use chumsky::prelude::*;

use crate::syntax::facts::expected::Label;
use crate::syntax::facts::values::length;
use crate::syntax::facts::{Misfit, Reader, token, words_of};
use crate::syntax::lexer::{Token, TokenKind};
use crate::syntax::names;
use crate::syntax::value::{GridRef, Line, Point, Rect};
use crate::text::LocalSpan;
use crate::units::Length;

/// The name of a grid line, and where it stands: letters, or a number.
pub(super) fn grid_line<'t, E: Misfit<'t>>() -> Reader<'t, (Box<str>, LocalSpan), E> {
    token(Label::Plain("a grid line"), |token: &Token<'t>| {
        let is_line = match token.kind {
            TokenKind::Word => names::may_name(token.text),
            TokenKind::Whole(_) => true,
            TokenKind::Decimal(number) => number >= 0.0,
            _ => false,
        };
        is_line.then(|| (token.text.into(), token.span))
    })
    .boxed()
}

/// `3 less 5"`
pub(super) fn grid_ref<'t, E: Misfit<'t>>() -> Reader<'t, GridRef, E> {
    let plus = words_of("plus").ignore_then(length());
    let less = words_of("less").ignore_then(length()).map(|offset: Length| -offset);
    grid_line()
        .then(choice((plus, less)).or_not())
        .map(|((line, span), offset)| GridRef { line, span, offset: offset.unwrap_or_default() })
        .boxed()
}

/// `A plus 10" / 3`
pub(super) fn point<'t, E: Misfit<'t>>() -> Reader<'t, Point, E> {
    let slash = token(Label::Word("/"), |token: &Token<'t>| (token.kind == TokenKind::Slash).then_some(()));
    grid_ref().then_ignore(slash).then(grid_ref()).map(|(x, y)| Point { x, y }).boxed()
}

/// `A to C by 1 to 3`
pub(super) fn rect<'t, E: Misfit<'t>>() -> Reader<'t, Rect, E> {
    let range = || grid_ref().then_ignore(words_of("to")).then(grid_ref());
    range()
        .then_ignore(words_of("by"))
        .then(range())
        .map(|((x_from, x_to), (y_from, y_to))| Rect { x_from, x_to, y_from, y_to })
        .boxed()
}

/// `A/1 to C/1`
pub(super) fn line<'t, E: Misfit<'t>>() -> Reader<'t, Line, E> {
    point().then_ignore(words_of("to")).then(point()).map(|(from, to)| Line { from, to }).boxed()
}

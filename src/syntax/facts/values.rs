//! Single values by their kind.

use chumsky::prelude::*;
use chumsky::primitive::select;

use crate::syntax::facts::expected::Label;
use crate::syntax::facts::{Misfit, Reader, expressions, member, plan, token, words_of};
use crate::syntax::form::Kind;
use crate::syntax::lexer::{Token, TokenKind};
use crate::syntax::names;
use crate::syntax::value::{Side, Value};
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

/// The parser of one kind of value.
pub(super) fn value<'t, E: Misfit<'t>>(kind: &'static Kind) -> Reader<'t, Value, E> {
    match kind {
        Kind::Length => length().map(Value::Length).boxed(),
        Kind::Elevation => elevation().map(Value::Length).boxed(),
        Kind::Load => simple("a load with its unit", |kind| match kind {
            TokenKind::Load(load) => Some(Value::Load(load)),
            _ => None,
        }),
        Kind::Stress => simple("a stress with its unit", |kind| match kind {
            TokenKind::Stress(stress) => Some(Value::Stress(stress)),
            _ => None,
        }),
        Kind::Area => simple("an area with its unit", |kind| match kind {
            TokenKind::Area(area) => Some(Value::Area(area)),
            _ => None,
        }),
        Kind::Date => simple("a date", |kind| match kind {
            TokenKind::Date(date) => Some(Value::Date(date)),
            _ => None,
        }),
        Kind::Text => token(Label::Plain("words in quotes"), |token: &Token<'t>| {
            (token.kind == TokenKind::Text).then(|| Value::Text(token.unquoted().into()))
        })
        .boxed(),
        Kind::Count => simple("a whole number", |kind| match kind {
            TokenKind::Whole(count) => Some(Value::Count(count)),
            _ => None,
        }),
        Kind::Number => simple("a number", number),
        Kind::Percent => simple("a share in percent", |kind| match kind {
            TokenKind::Percent(share) => Some(Value::Percent(share)),
            _ => None,
        }),
        Kind::Name(kinds) => name(kinds).map(Value::Name).boxed(),
        Kind::GridLine => plan::grid_line().map(|(line, _)| Value::Name(line)).boxed(),
        Kind::GridRef => plan::grid_ref().map(Value::GridRef).boxed(),
        Kind::Point => plan::point().map(Value::Point).boxed(),
        Kind::Rect => plan::rect().map(Value::Rect).boxed(),
        Kind::Line => plan::line().map(Value::Line).boxed(),
        Kind::Side => token(Label::Plain("a side"), |token: &Token<'t>| {
            Side::ALL.into_iter().find(|side| token.is_word(side.word())).map(Value::Side)
        })
        .boxed(),
        Kind::Dimensions(least, most) => dimensions(*least, *most),
        Kind::Member => member::member().map(|member| Value::Member(Box::new(member))).boxed(),
        Kind::Word(words) => one_of_words(words),
        Kind::Slug => token(Label::Plain("a name of small letters and dashes"), |token: &Token<'t>| {
            (token.kind == TokenKind::Word).then(|| Value::Word(token.text.into()))
        })
        .boxed(),
        Kind::FreeWords => free_words(),
        Kind::Bar => simple("a bar size", |kind| match kind {
            TokenKind::Bar(number) => Some(Value::Bar(number)),
            _ => None,
        }),
        Kind::FactName => expressions::fact_name().map(|fact| Value::FactName(Box::new(fact))).boxed(),
        Kind::Comparison => expressions::comparison().map(|held| Value::Comparison(Box::new(held))).boxed(),
        Kind::AnyValue => any_value(),
    }
}

/// A length with its unit; `o.c.` may follow, which every spacing means.
pub(super) fn length<'t, E: Misfit<'t>>() -> Reader<'t, Length, E> {
    let on_centre = select(|token: Token<'t>, _| token.is_word("o.c.").then_some(()));
    token(Label::Plain("a length"), |token: &Token<'t>| match token.kind {
        TokenKind::Length(length) => Some(length),
        _ => None,
    })
    .then_ignore(on_centre.or_not())
    .boxed()
}

fn elevation<'t, E: Misfit<'t>>() -> Reader<'t, Length, E> {
    token(Label::Plain("an elevation"), |token: &Token<'t>| match token.kind {
        TokenKind::Length(length) | TokenKind::Elevation(length) => Some(length),
        _ => None,
    })
    .boxed()
}

/// The name of an element.
pub(super) fn name<'t, E: Misfit<'t>>(kinds: &'static [ElementKind]) -> Reader<'t, Box<str>, E> {
    token(Label::Name(kinds), |token: &Token<'t>| {
        (token.kind == TokenKind::Word && !names::is_reserved(token.text)).then(|| token.text.into())
    })
    .boxed()
}

/// One side of a size: a length, or a bare number of inches.
pub(super) fn dimension<'t, E: Misfit<'t>>() -> Reader<'t, Length, E> {
    token(Label::Plain("a size in inches"), |token: &Token<'t>| match token.kind {
        TokenKind::Length(length) | TokenKind::Fraction(length) => Some(length),
        TokenKind::Whole(inches) => Some(Length::inches(i64::from(inches))),
        // The published wall of a pipe need not be a whole number of exact units.
        TokenKind::Decimal(inches) => Some(Length::decimal_inches(inches)),
        _ => None,
    })
    .boxed()
}

fn dimensions<'t, E: Misfit<'t>>(least: usize, most: usize) -> Reader<'t, Value, E> {
    let first_two = token(Label::Plain("a size in inches"), |token: &Token<'t>| match token.kind {
        TokenKind::Nominal((width, depth)) => {
            Some([width, depth].map(|inches| Length::inches(i64::from(inches))))
        }
        _ => None,
    });
    let more = move |read: usize| {
        words_of("x")
            .ignore_then(dimension())
            .repeated()
            .at_least(least.saturating_sub(read))
            .at_most(most.saturating_sub(read))
    };
    let from_two = first_two.map(Vec::from).foldl(more(2), pushed);
    let from_one = dimension().map(|length| vec![length]).foldl(more(1), pushed);
    let from_two = from_two.filter(move |lengths: &Vec<Length>| lengths.len() <= most);
    choice((from_two, from_one)).map(|lengths| Value::Dimensions(lengths.into())).boxed()
}

fn pushed(mut lengths: Vec<Length>, length: Length) -> Vec<Length> {
    lengths.push(length);
    lengths
}

fn one_of_words<'t, E: Misfit<'t>>(words: &'static [&'static str]) -> Reader<'t, Value, E> {
    // Of `attic` and `attic storage` the longer is tried first.
    let mut longest_first = words.to_vec();
    longest_first.sort_by_key(|words| std::cmp::Reverse(words.len()));
    let readers =
        longest_first.into_iter().map(|words| words_of(words).map(move |()| Value::Word(words.into())));
    choice(readers.collect::<Vec<_>>()).labelled(Label::OneOf(words)).boxed()
}

fn free_words<'t, E: Misfit<'t>>() -> Reader<'t, Value, E> {
    token(Label::Plain("words"), |token: &Token<'t>| {
        let is_free = matches!(token.kind, TokenKind::Word | TokenKind::Marking) && !token.is_word("source");
        is_free.then_some(())
    })
    .repeated()
    .at_least(1)
    .map_with(|(), read| {
        let words: Vec<&str> = read.slice().iter().map(|token: &Token<'t>| token.text).collect();
        Value::Word(words.join(" ").into())
    })
    .boxed()
}

/// Any single value, as claims and limits state it.
pub(super) fn any_value<'t, E: Misfit<'t>>() -> Reader<'t, Value, E> {
    let plain = select(|token: Token<'t>, _| match token.kind {
        TokenKind::Length(length) | TokenKind::Elevation(length) => Some(Value::Length(length)),
        TokenKind::Load(load) => Some(Value::Load(load)),
        TokenKind::Stress(stress) => Some(Value::Stress(stress)),
        TokenKind::Area(area) => Some(Value::Area(area)),
        TokenKind::Percent(share) => Some(Value::Percent(share)),
        TokenKind::Date(date) => Some(Value::Date(date)),
        _ => None,
    });
    let count = select(|token: Token<'t>, _| number(token.kind));
    let place = plan::point().map(Value::Point);
    let member = member::unmistakable().map(|member| Value::Member(Box::new(member)));
    choice((plain, place, member, count)).labelled(Label::Plain("a value")).boxed()
}

fn number(kind: TokenKind) -> Option<Value> {
    match kind {
        TokenKind::Whole(count) => Some(Value::Count(count)),
        TokenKind::Decimal(number) => Some(Value::Number(number)),
        _ => None,
    }
}

fn simple<'t, E: Misfit<'t>>(
    label: &'static str,
    read: impl Fn(TokenKind) -> Option<Value> + 't,
) -> Reader<'t, Value, E> {
    token(Label::Plain(label), move |token: &Token<'t>| read(token.kind)).boxed()
}

//! Facts of elements, sums of them, and comparisons.

use chumsky::prelude::*;

use crate::syntax::facts::expected::Label;
use crate::syntax::facts::values::{any_value, length, name};
use crate::syntax::facts::{Misfit, Reader, covering, token, words_of};
use crate::syntax::lexer::{Token, TokenKind};
use crate::syntax::value::{Comparison, Expression, FactName, Sign, Term, Within};
use crate::syntax::vocabulary::{Argument, FACT_NAMES, FactNameSpec};

/// Words that narrow a fact to one load case; `all` is the plain sum.
pub const CASES: &[&str] = &["dead", "live", "snow", "all"];

/// More halves of halves than this no one means; the rest of the line then does not fit.
const MOST_HALVES: usize = 64;

/// `top of W2`, `drop from main to den`, `live reaction of B1 on C1`.
pub(super) fn fact_name<'t, E: Misfit<'t>>() -> Reader<'t, FactName, E> {
    let names = FACT_NAMES.iter().map(fact_named).collect::<Vec<_>>();
    choice(names).labelled(Label::Plain("a fact such as `top of W1`")).boxed()
}

fn fact_named<'t, E: Misfit<'t>>(spec: &'static FactNameSpec) -> Reader<'t, FactName, E> {
    let case = token(Label::OneOf(CASES), |token: &Token<'t>| {
        CASES.iter().find(|case| spec.takes_case && token.is_word(case)).map(|case| Box::from(*case))
    });
    let argument = |argument: &'static Argument| {
        words_of(argument.joined_by)
            .ignore_then(name(argument.kinds))
            .map_with(|name, read| {
                let span = read.slice().last().map(|token: &Token<'t>| token.span).unwrap_or_default();
                (name, span)
            })
            .boxed()
    };
    let first = argument(&spec.first).map(|name| vec![name]).boxed();
    let arguments = match &spec.second {
        None => first,
        Some(second) => first
            .then(argument(second))
            .map(|(mut names, name)| {
                names.push(name);
                names
            })
            .boxed(),
    };
    case.or_not()
        .then_ignore(words_of(spec.words))
        .then(arguments)
        .map_with(|(case, of), read| FactName {
            fact: spec.words.into(),
            of,
            case,
            span: covering(read.slice()),
        })
        .boxed()
}

/// `top of T1 = top of W4 within 1/4"`
pub(super) fn comparison<'t, E: Misfit<'t>>() -> Reader<'t, Comparison, E> {
    let relation = token(Label::OneOf(&["=", "<", "<=", ">", ">="]), |token: &Token<'t>| match token.kind {
        TokenKind::Relation(relation) => Some(relation),
        _ => None,
    });
    expression()
        .then(relation)
        .then(expression())
        .then(words_of("within").ignore_then(within()).or_not())
        .map(|(((left, relation), right), within)| Comparison { left, relation, right, within })
        .boxed()
}

/// A length or a load.
fn within<'t, E: Misfit<'t>>() -> Reader<'t, Within, E> {
    let load = token(Label::Plain("a load with its unit"), |token: &Token<'t>| match token.kind {
        TokenKind::Load(load) => Some(Within::Load(load)),
        _ => None,
    });
    choice((length().map(Within::Length), load)).boxed()
}

/// Terms joined by `plus` and `less`, however many.
fn expression<'t, E: Misfit<'t>>() -> Reader<'t, Expression, E> {
    let sign = choice((words_of("plus").to(Sign::Plus), words_of("less").to(Sign::Less)));
    term()
        .map(|first| vec![(Sign::Plus, first)])
        .foldl(sign.then(term()).repeated(), |mut terms, term| {
            terms.push(term);
            terms
        })
        .map_with(|terms, read| Expression { terms, span: covering(read.slice()) })
        .boxed()
}

fn term<'t, E: Misfit<'t>>() -> Reader<'t, Term, E> {
    let times = token(Label::Plain("a number"), |token: &Token<'t>| match token.kind {
        TokenKind::Whole(number) => Some(f64::from(number)),
        TokenKind::Decimal(number) => Some(number),
        _ => None,
    })
    .then_ignore(words_of("times"))
    .then(fact_name())
    .map(|(number, fact)| Term::Times(number, fact));
    let fact = fact_name().map(Term::Fact);
    let value = any_value().map(|value| Term::Value(Box::new(value)));
    words_of("half of")
        .repeated()
        .at_most(MOST_HALVES)
        .count()
        .then(choice((times, fact, value)))
        .map(|(halves, term)| (0..halves).fold(term, |term, _| Term::Half(Box::new(term))))
        .boxed()
}

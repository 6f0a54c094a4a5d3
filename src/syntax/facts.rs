//! What stands behind a fact's phrase: parsers built from the vocabulary's forms, and run over one line's tokens.
//!
//! A line is read with an error type that holds nothing. Only a line that fails is read again with one that gathers
//! what could have stood where it stopped fitting.

mod expected;
pub(super) mod expressions;
pub(super) mod member;
mod plan;
mod values;

use std::collections::HashMap;

use chumsky::error::{EmptyErr, Rich, RichPattern};
use chumsky::prelude::*;
use chumsky::primitive::select;

use crate::syntax::Part;
use crate::syntax::facts::expected::Label;
use crate::syntax::form::Form;
use crate::syntax::lexer::Token;
use crate::syntax::value::Value;
use crate::text::LocalSpan;

/// Tokens of one line, without blanks and comments.
type Tokens<'t> = &'t [Token<'t>];

/// A parser of such tokens.
type Reader<'t, O, E> = Boxed<'t, 't, Tokens<'t>, O, extra::Err<E>>;

/// What a failing parser says: nothing, or what it expected.
trait Misfit<'t>:
    chumsky::error::Error<'t, Tokens<'t>> + chumsky::label::LabelError<'t, Tokens<'t>, Label> + 't
{
}

impl<'t, E> Misfit<'t> for E where
    E: chumsky::error::Error<'t, Tokens<'t>> + chumsky::label::LabelError<'t, Tokens<'t>, Label> + 't
{
}

/// Where tokens stopped fitting a form.
pub(super) struct Misread {
    /// Which token; as many as there are for the line's end.
    pub at: usize,
    /// What could stand there, in trade words.
    pub expected: Vec<Box<str>>,
}

/// The parsers that the forms of a text have needed so far.
#[derive(Default)]
pub(super) struct FormReaders<'t> {
    quick: HashMap<*const Form, Reader<'t, Vec<Part>, EmptyErr>>,
    careful: HashMap<*const Form, Reader<'t, Vec<Part>, Rich<'t, Token<'t>>>>,
}

impl<'t> FormReaders<'t> {
    /// The parts that `form` finds in `tokens`, all of which it must use.
    pub fn read(&mut self, form: &'static Form, tokens: Tokens<'t>) -> Result<Vec<Part>, Misread> {
        let key = std::ptr::from_ref(form);
        let quick = self.quick.entry(key).or_insert_with(|| parts(form));
        if let Some(parts) = quick.parse(tokens).into_output() {
            return Ok(parts);
        }
        let careful = self.careful.entry(key).or_insert_with(|| parts(form));
        let errors = careful.parse(tokens).into_errors();
        let Some(error) = errors.first() else {
            return Err(Misread { at: tokens.len(), expected: Vec::new() });
        };
        let mut expected = Vec::new();
        for pattern in error.expected() {
            let text: Box<str> = match pattern {
                RichPattern::Label(label) => label.as_ref().into(),
                RichPattern::EndOfInput => "the end of the line".into(),
                _ => continue,
            };
            if !expected.contains(&text) {
                expected.push(text);
            }
        }
        Err(Misread { at: error.span().start, expected })
    }
}

/// The parser of a form: its parts in the order of the text.
fn parts<'t, E: Misfit<'t>>(form: &'static Form) -> Reader<'t, Vec<Part>, E> {
    match form {
        Form::Nothing => empty().map(|()| Vec::new()).boxed(),
        Form::Words(words) => words_of(words).map(|()| Vec::new()).boxed(),
        Form::Mark(words) => part(words, words_of(words).map(|()| Value::Mark).boxed()),
        Form::Slot(label, kind) => part(label, values::value(kind)),
        Form::Comma => comma().map(|()| Vec::new()).boxed(),
        Form::Sequence(forms) => forms
            .iter()
            .map(parts)
            .reduce(|first, second| first.then(second).map(joined).boxed())
            .unwrap_or_else(nothing),
        Form::Optional(form) => parts(form).or_not().map(Option::unwrap_or_default).boxed(),
        Form::OneOf(forms) => choice(forms.iter().map(parts).collect::<Vec<_>>()).boxed(),
        Form::List(form) => {
            let more = comma().ignore_then(parts(form)).repeated();
            parts(form).foldl(more, |all, next| joined((all, next))).boxed()
        }
    }
}

fn nothing<'t, E: Misfit<'t>>() -> Reader<'t, Vec<Part>, E> {
    empty().map(|()| Vec::new()).boxed()
}

fn part<'t, E: Misfit<'t>>(label: &'static str, value: Reader<'t, Value, E>) -> Reader<'t, Vec<Part>, E> {
    value.map_with(move |value, read| vec![Part { label, value, span: covering(read.slice()) }]).boxed()
}

fn joined((mut all, mut more): (Vec<Part>, Vec<Part>)) -> Vec<Part> {
    if all.is_empty() {
        return more;
    }
    all.append(&mut more);
    all
}

/// One token that `read` makes something of.
fn token<'t, O: 't, E: Misfit<'t>>(
    label: Label,
    read: impl Fn(&Token<'t>) -> Option<O> + 't,
) -> impl Parser<'t, Tokens<'t>, O, extra::Err<E>> {
    select(move |token: Token<'t>, _| read(&token)).labelled(label)
}

/// These words one behind the other.
fn words_of<'t, E: Misfit<'t>>(words: &'static str) -> Reader<'t, (), E> {
    let word = |word: &'static str| {
        token(Label::Word(word), move |token: &Token<'t>| token.is_word(word).then_some(())).boxed()
    };
    words
        .split(' ')
        .map(word)
        .reduce(|first, second| first.ignore_then(second).boxed())
        .unwrap_or_else(|| empty().boxed())
}

fn comma<'t, E: Misfit<'t>>() -> Reader<'t, (), E> {
    use crate::syntax::lexer::TokenKind;
    token(Label::Plain("a comma"), |token: &Token<'t>| (token.kind == TokenKind::Comma).then_some(())).boxed()
}

/// The place that tokens take up.
fn covering(tokens: &[Token<'_>]) -> LocalSpan {
    match (tokens.first(), tokens.last()) {
        (Some(first), Some(last)) => first.span.to(last.span),
        _ => LocalSpan::default(),
    }
}

//! The words of one fact, from its tokens and the values that were read from them.

use crate::house::House;
use crate::ide::meaning::grid_refs;
use crate::ide::tokens::legend::{Modifier, Modifiers, WordKind};
use crate::ide::tokens::{Page, naming};
use crate::model::element::Stage;
use crate::syntax::form::{Form, Kind};
use crate::syntax::lexer::{Token, TokenKind};
use crate::syntax::value::{Expression, FactName, Section, Term, Value};
use crate::syntax::vocabulary::{CLAIM, ElementKind};
use crate::syntax::{Fact, Part};
use crate::text::LocalSpan;

/// Puts the words of a fact on the page.
pub(super) fn write(page: &mut Page<'_>, element: ElementKind, fact: &Fact, tokens: &[Token<'_>]) {
    let is_claim = std::ptr::eq(fact.spec, &CLAIM);
    if is_claim {
        let claim = Modifiers::NONE.with(Modifier::Claim);
        let claimed = fact.part("fact").map(|part| part.span);
        claimed.into_iter().for_each(|span| page.put(span, WordKind::Property, claim));
        page.put(fact.phrase, WordKind::Keyword, claim);
    } else {
        page.put(fact.phrase, WordKind::Property, Modifiers::NONE);
    }
    let mut parts = fact.parts.iter().peekable();
    let mut lines = Vec::new();
    let mut facts = Vec::new();
    let mut read: Option<&Part> = None;
    for token in tokens.iter().filter(|token| token.span.start >= fact.phrase.end) {
        while parts.next_if(|part| part.span.end <= token.span.start).is_some() {}
        let part = parts.peek().copied().filter(|part| part.span.start <= token.span.start);
        let is_new = !read.zip(part).is_some_and(|(read, part)| std::ptr::eq(read, part));
        if let Some(part) = part.filter(|_| is_new) {
            lines = grid_refs(&part.value).into_iter().map(|line| line.span).collect();
            facts = facts_in(&part.value);
        }
        read = part;
        let Some(part) = part else {
            page.put_token(token, joining(token));
            continue;
        };
        let place = Place { house: page.house, element, fact, part, lines: &lines, facts: &facts };
        let named = naming::of_mention(page.house, page.place(token.span));
        let word = match named {
            Some(word) if !matches!(part.value, Value::Mark | Value::Side(_)) => Some(word),
            _ => place.word(token),
        };
        match word {
            None if is_claim && part.label == "value" => {
                page.put_alone(token, Modifiers::NONE.with(Modifier::Claim));
            }
            word => page.put_token(token, word),
        }
    }
}

/// What a word outside of every value is: it joins two of them.
fn joining(token: &Token<'_>) -> Option<(WordKind, Modifiers)> {
    matches!(token.kind, TokenKind::Word | TokenKind::Slash | TokenKind::Relation(_))
        .then_some((WordKind::Operator, Modifiers::NONE))
}

/// A value of a fact, with the grid lines and facts that it names.
struct Place<'a> {
    house: &'a House,
    element: ElementKind,
    fact: &'a Fact,
    part: &'a Part,
    lines: &'a [LocalSpan],
    facts: &'a [&'a FactName],
}

impl Place<'_> {
    /// What a token of the value is, when it is no element's name; `None` leaves it to what the token alone says.
    fn word(&self, token: &Token<'_>) -> Option<(WordKind, Modifiers)> {
        let plain = |kind| Some((kind, Modifiers::NONE));
        if self.lines.contains(&token.span) {
            return plain(WordKind::Parameter);
        }
        match &self.part.value {
            Value::Mark | Value::Side(_) => plain(WordKind::EnumMember),
            Value::Name(name) => Some(self.name(name)),
            Value::Word(words) => self.chosen(words),
            Value::Member(member) => match (token.kind, &member.section) {
                (TokenKind::Word, _) if token.is_word("x") || token.is_word("of") => {
                    plain(WordKind::Operator)
                }
                (TokenKind::Word, Section::Product(name)) if **name == *token.text => plain(WordKind::Class),
                (TokenKind::Word | TokenKind::Marking, _) => plain(WordKind::EnumMember),
                _ => None,
            },
            Value::FactName(_) | Value::Comparison(_) if token.kind == TokenKind::Word => {
                plain(self.in_expression(token))
            }
            Value::Length(_)
            | Value::Load(_)
            | Value::Stress(_)
            | Value::Area(_)
            | Value::Date(_)
            | Value::Text(_)
            | Value::Count(_)
            | Value::Number(_)
            | Value::Percent(_)
            | Value::GridRef(_)
            | Value::Point(_)
            | Value::Rect(_)
            | Value::Line(_)
            | Value::Dimensions(_)
            | Value::Bar(_)
            | Value::FactName(_)
            | Value::Comparison(_) => joining(token),
        }
    }

    /// A name that no element of the spec answers to.
    fn name(&self, name: &str) -> (WordKind, Modifiers) {
        if self.element == ElementKind::Grid && self.part.label == "name" {
            let declares = matches!(self.fact.spec.phrase, "x" | "y");
            return (WordKind::Parameter, Modifiers::NONE.with_if(declares, Modifier::Declaration));
        }
        let is_line = self.house.model.grid.lines.contains_key(name);
        (if is_line { WordKind::Parameter } else { WordKind::Variable }, Modifiers::NONE)
    }

    /// One or more words of a closed list, a slug, or words of the author's own.
    fn chosen(&self, words: &str) -> Option<(WordKind, Modifiers)> {
        let kind = kind_of(&self.fact.spec.form, self.part.label, words);
        Some(match (kind, self.fact.spec.phrase) {
            (Some(Kind::Slug), "waive" | "severity") => {
                let is_over = self.fact.date("until").is_some_and(|until| until < self.house.today);
                (WordKind::Decorator, Modifiers::NONE.with_if(is_over, Modifier::Deprecated))
            }
            (Some(Kind::Slug), _) => (WordKind::Property, Modifiers::NONE),
            // Where text may stand, bare words are the author's own too.
            (Some(Kind::FreeWords | Kind::Text), _) => (WordKind::String, Modifiers::NONE),
            (_, "status") => (WordKind::EnumMember, stage(words).map_or(Modifiers::NONE, of_stage)),
            _ => (WordKind::EnumMember, Modifiers::NONE),
        })
    }

    fn in_expression(&self, token: &Token<'_>) -> WordKind {
        let fact = self
            .facts
            .iter()
            .find(|fact| fact.span.start <= token.span.start && token.span.end <= fact.span.end);
        let Some(fact) = fact else { return WordKind::Operator };
        if fact.of.iter().any(|(_, span)| *span == token.span) {
            WordKind::Variable
        } else if fact.case.as_deref() == Some(token.text) && fact.span.start == token.span.start {
            WordKind::EnumMember
        } else if fact.fact.split(' ').any(|word| word == token.text) {
            WordKind::Property
        } else {
            WordKind::Operator
        }
    }
}

fn of_stage(stage: Stage) -> Modifiers {
    Modifiers::NONE.with_stage(stage)
}

fn stage(word: &str) -> Option<Stage> {
    [Stage::Drawn, Stage::Ordered, Stage::Poured, Stage::Set].into_iter().find(|stage| stage.word() == word)
}

/// The kind of value that the form has under this label and that these words fit.
fn kind_of(form: &Form, label: &str, words: &str) -> Option<Kind> {
    match form {
        Form::Slot(name, Kind::Word(list)) if *name == label && !list.contains(&words) => None,
        Form::Slot(name, kind) => (*name == label).then_some(*kind),
        Form::Sequence(forms) | Form::OneOf(forms) => {
            forms.iter().find_map(|form| kind_of(form, label, words))
        }
        Form::Optional(form) | Form::List(form) => kind_of(form, label, words),
        Form::Nothing | Form::Words(_) | Form::Mark(_) | Form::Comma => None,
    }
}

/// The facts that a value names, in the order of the text.
fn facts_in(value: &Value) -> Vec<&FactName> {
    match value {
        Value::FactName(fact) => vec![fact],
        Value::Comparison(comparison) => {
            [&comparison.left, &comparison.right].into_iter().flat_map(facts_of).collect()
        }
        _ => Vec::new(),
    }
}

fn facts_of(expression: &Expression) -> impl Iterator<Item = &FactName> {
    expression.terms.iter().filter_map(|(_, term)| {
        let mut term = term;
        while let Term::Half(inner) = term {
            term = inner;
        }
        match term {
            Term::Fact(fact) | Term::Times(_, fact) => Some(fact),
            Term::Value(_) | Term::Half(_) => None,
        }
    })
}

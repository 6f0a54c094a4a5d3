//! How the line of a fact is coloured, by its form.

use std::collections::BTreeSet;

use serde_json::{Value, json};
use storyrod::syntax::form::{Form, Kind};
use storyrod::syntax::names::JOINING;
use storyrod::syntax::vocabulary::CLAIM;

use super::regex::{WORD, WORD_END, alternatives};
use super::{captures, include, rule};

/// What may stand in a fact's line.
#[derive(Default)]
pub struct FactLook {
    joining: BTreeSet<&'static str>,
    choices: BTreeSet<&'static str>,
    /// Of these words, those behind which a name stands and nothing else can.
    before_names: BTreeSet<&'static str>,
    before_others: BTreeSet<&'static str>,
    has_sides: bool,
    /// Grid lines, where every number alone is one.
    has_grid: bool,
    has_numbers: bool,
    has_sizes: bool,
    has_members: bool,
    has_fact_names: bool,
    has_comparison: bool,
    has_own_words: bool,
    has_slug: bool,
    has_names: bool,
}

impl FactLook {
    pub fn of(form: &Form) -> Self {
        let mut look = Self::default();
        look.walk(form, None);
        look
    }

    /// The look of what stands behind `should be`.
    pub fn of_claim() -> Self {
        let mut look = Self::of(&CLAIM.form);
        look.see(&Kind::AnyValue);
        look
    }

    fn walk(&mut self, form: &Form, next: Option<&Form>) {
        match form {
            Form::Nothing | Form::Comma => {}
            Form::Words(phrase) => self.word(without_figures(phrase), false, next),
            Form::Mark(phrase) => self.word(phrase, true, next),
            Form::Slot(_, Kind::Word(phrases)) => {
                phrases.iter().for_each(|phrase| self.word(phrase, true, next));
            }
            Form::Slot(_, kind) => self.see(kind),
            Form::Optional(inner) => self.walk(inner, next),
            Form::List(inner) => self.walk(inner, None),
            Form::OneOf(parts) => parts.iter().for_each(|part| self.walk(part, next)),
            Form::Sequence(parts) => {
                for (at, part) in parts.iter().enumerate() {
                    self.walk(part, parts.get(at + 1).or(next));
                }
            }
        }
    }

    fn word(&mut self, phrase: &'static str, is_choice: bool, next: Option<&Form>) {
        if phrase.is_empty() {
            return;
        }
        // A word that joins looks like one, even where it means something by being there.
        let is_choice = is_choice && !JOINING.contains(&phrase);
        if is_choice { &mut self.choices } else { &mut self.joining }.insert(phrase);
        let is_before_name = matches!(next, Some(Form::Slot(_, Kind::Name(_))));
        if is_before_name { &mut self.before_names } else { &mut self.before_others }.insert(phrase);
    }

    fn see(&mut self, kind: &Kind) {
        match kind {
            Kind::Side => self.has_sides = true,
            Kind::GridLine | Kind::GridRef | Kind::Point | Kind::Rect | Kind::Line => self.has_grid = true,
            Kind::Count | Kind::Number => self.has_numbers = true,
            Kind::Dimensions(..) => self.has_sizes = true,
            Kind::Member => self.has_members = true,
            Kind::FactName => self.has_fact_names = true,
            Kind::Comparison => (self.has_fact_names, self.has_comparison) = (true, true),
            Kind::AnyValue => (self.has_members, self.has_grid, self.has_numbers) = (true, true, true),
            Kind::FreeWords => self.has_own_words = true,
            Kind::Slug => self.has_slug = true,
            Kind::Name(_) => self.has_names = true,
            Kind::Length | Kind::Elevation | Kind::Load | Kind::Stress | Kind::Area | Kind::Date => {}
            Kind::Text | Kind::Percent | Kind::Bar | Kind::Word(_) => {}
        }
    }

    /// The key of [`Self::values`] in the grammar's repository.
    pub fn key(&self) -> String {
        let parts = [
            (self.has_sides, "sides"),
            (self.has_fact_names, if self.has_comparison { "comparison" } else { "fact-name" }),
            (self.has_members, "member"),
            (self.has_sizes, "size"),
            (self.has_grid, if self.is_all_grid() { "grid" } else { "point" }),
            (self.has_own_words, "own-words"),
            (self.is_all_slugs(), "rule"),
        ];
        let parts = parts.into_iter().filter(|(is_there, _)| *is_there).map(|(_, part)| part);
        std::iter::once("value").chain(parts).collect::<Vec<_>>().join("-")
    }

    /// Every number alone is a grid line.
    fn is_all_grid(&self) -> bool {
        let others = self.has_numbers || self.has_sizes || self.has_members || self.has_comparison;
        self.has_grid && !others
    }

    fn is_all_slugs(&self) -> bool {
        self.has_slug && !self.has_names
    }

    /// The rules for the words of this form alone, the longest first.
    pub fn own_words(&self) -> Vec<Value> {
        let of = |scope: &'static str, phrases: &BTreeSet<&'static str>| {
            phrases.iter().map(|phrase| (*phrase, scope)).collect::<Vec<_>>()
        };
        let mut phrases = of("constant.language.choice", &self.choices);
        phrases.extend(of("keyword.operator.word", &self.joining));
        phrases.sort_by_key(|(phrase, _)| std::cmp::Reverse(phrase.split(' ').count()));
        let is_certain =
            |phrase: &str| self.before_names.contains(phrase) && !self.before_others.contains(phrase);
        let runs =
            phrases.chunk_by(|one, other| one.1 == other.1 && is_certain(one.0) == is_certain(other.0));
        runs.map(|run| {
            let (scope, words) = (run[0].1, alternatives(run.iter().map(|(phrase, _)| *phrase)));
            match () {
                () if is_certain(run[0].0) => before_name(scope, &words),
                // Among words of the author's own, `on` is one of them unless a number or a text follows.
                () if self.has_own_words => rule(scope, format!(r"(?:{words}){WORD_END}(?!\s+\p{{Alpha}})")),
                () => rule(scope, format!("(?:{words}){WORD_END}")),
            }
        })
        .collect()
    }

    /// The rules for everything else that may stand in the line; the first that fits wins.
    pub fn values(&self) -> Vec<Value> {
        let word = match () {
            () if self.has_own_words => "own-word",
            () if self.is_all_slugs() => "rule-name",
            () => "name",
        };
        let rules = [
            (true, "comment"),
            (true, "text"),
            (self.has_sides, "sides"),
            (self.has_fact_names, "fact-names"),
            (self.has_members || self.has_comparison, "material"),
            (true, "quantities"),
            (self.is_all_grid(), "grid-number"),
            (self.has_comparison || (self.has_grid && !self.is_all_grid()), "point-number"),
            (true, "number"),
            (self.has_members || self.has_sizes || self.has_comparison, "size-mark"),
            (true, "signs"),
            (true, "at"),
            (!self.has_own_words, "joining"),
            (true, word),
        ];
        rules.into_iter().filter(|(is_there, _)| *is_there).map(|(_, key)| include(key)).collect()
    }
}

/// Words with the name behind them, which may be spelled like any word but one that joins.
fn before_name(scope: &str, words: &str) -> Value {
    let joining = alternatives(JOINING.iter().copied());
    json!({
        "match": format!(r"({words}){WORD_END}(?:\s+(?!(?:{joining}){WORD_END})({WORD}))?"),
        "captures": captures([(1, scope), (2, "variable.other.name")]),
    })
}

/// `per` of `per 12`, nothing of `=`: figures and signs are coloured as what they are.
fn without_figures(phrase: &'static str) -> &'static str {
    let last = phrase.rsplit(' ').next().unwrap_or(phrase);
    let is_word = last.starts_with(char::is_alphabetic);
    if is_word { phrase } else { phrase.trim_end_matches(last).trim_end() }
}

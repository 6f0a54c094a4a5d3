//! How the line of a fact is coloured, by its form.

use std::collections::BTreeSet;

use serde_json::Value;
use storyrod::syntax::form::{Form, Kind};
use storyrod::syntax::vocabulary::CLAIM;

use super::{include, words};

/// What may stand in a fact's line.
#[derive(Default)]
pub struct FactLook {
    joining: BTreeSet<&'static str>,
    choices: BTreeSet<&'static str>,
    has_sides: bool,
    /// Grid lines, where every number alone is one.
    has_grid: bool,
    has_numbers: bool,
    has_sizes: bool,
    has_members: bool,
    has_comparison: bool,
    has_own_words: bool,
    has_slug: bool,
    has_names: bool,
}

impl FactLook {
    pub fn of(form: &Form) -> Self {
        let mut look = Self::default();
        look.walk(form);
        look
    }

    /// The look of what stands behind `should be`.
    pub fn of_claim() -> Self {
        let mut look = Self::of(&CLAIM.form);
        look.see(&Kind::AnyValue);
        look
    }

    fn walk(&mut self, form: &Form) {
        match form {
            Form::Nothing | Form::Comma => {}
            Form::Words(phrase) => _ = self.joining.insert(phrase),
            Form::Mark(phrase) => _ = self.choices.insert(phrase),
            Form::Slot(_, Kind::Word(phrases)) => self.choices.extend(*phrases),
            Form::Slot(_, kind) => self.see(kind),
            Form::Optional(inner) | Form::List(inner) => self.walk(inner),
            Form::Sequence(parts) | Form::OneOf(parts) => parts.iter().for_each(|part| self.walk(part)),
        }
    }

    fn see(&mut self, kind: &Kind) {
        match kind {
            Kind::Side => self.has_sides = true,
            Kind::GridLine | Kind::GridRef | Kind::Point | Kind::Rect | Kind::Line => self.has_grid = true,
            Kind::Count | Kind::Number => self.has_numbers = true,
            Kind::Dimensions(..) => self.has_sizes = true,
            Kind::Member => self.has_members = true,
            Kind::FactName | Kind::Comparison => self.has_comparison = true,
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
            (self.has_comparison, "comparison"),
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
        phrases
            .chunk_by(|(_, one), (_, other)| one == other)
            .map(|run| words(run[0].1, run.iter().map(|(phrase, _)| *phrase)))
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
            (self.has_comparison, "comparison"),
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

//! The facts by what can stand behind them: `hall` is a use of a floor, and elsewhere may be the name of one.

use std::collections::BTreeMap;

use storyrod::syntax::form::{Form, Kind};
use storyrod::syntax::names;
use storyrod::syntax::value::Side;
use storyrod::syntax::vocabulary::ELEMENTS;
use storyrod::syntax::vocabulary::lexicon::Phrases;

/// Facts with the same words behind them.
#[derive(Default)]
pub struct Group {
    pub phrases: Phrases,
    /// What they choose among.
    pub choices: Phrases,
    contains: Contains,
}

/// What else can stand there and not behind every fact.
#[derive(Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord)]
struct Contains {
    a_member: bool,
    a_fact: bool,
    a_slug: bool,
}

/// Every fact of every element. A phrase is taken to mean the same in each.
pub fn groups() -> Vec<Group> {
    let mut facts: BTreeMap<&str, (Phrases, Contains)> = BTreeMap::new();
    for fact in ELEMENTS.iter().flat_map(|spec| spec.all_facts()) {
        let (choices, contains) = facts.entry(fact.phrase).or_default();
        collect(&fact.form, choices, contains);
    }
    let mut groups: BTreeMap<(Phrases, Contains), Phrases> = BTreeMap::new();
    for (phrase, mut behind) in facts {
        // A word that joins wherever it stands is no choice.
        behind.0.retain(|word| !names::joins(word));
        groups.entry(behind).or_default().insert(phrase);
    }
    let groups = groups.into_iter();
    groups.map(|((choices, contains), phrases)| Group { phrases, choices, contains }).collect()
}

fn collect(form: &Form, choices: &mut Phrases, contains: &mut Contains) {
    match form {
        Form::Mark(words) => _ = choices.insert(words),
        Form::Slot(_, Kind::Word(words)) => choices.extend(*words),
        Form::Slot(_, Kind::Side) => choices.extend(Side::ALL.iter().map(|side| side.word())),
        Form::Slot(_, Kind::Member) => contains.a_member = true,
        Form::Slot(_, Kind::Comparison | Kind::FactName) => contains.a_fact = true,
        Form::Slot(_, Kind::Slug) => contains.a_slug = true,
        Form::Optional(inner) | Form::List(inner) => collect(inner, choices, contains),
        Form::Sequence(parts) | Form::OneOf(parts) => {
            parts.iter().for_each(|part| collect(part, choices, contains));
        }
        Form::Nothing | Form::Words(_) | Form::Slot(..) | Form::Comma => {}
    }
}

impl Group {
    /// What stands for it in the names of syntax groups: its first phrase.
    fn name(&self) -> String {
        self.phrases.first().unwrap().replace(' ', "_")
    }

    pub fn choice(&self) -> String {
        format!("framingChoice_{}", self.name())
    }

    /// What follows the phrase of a fact.
    pub fn next(&self) -> String {
        match self.contains.a_slug {
            true => format!("framingRule_{} skipwhite", self.name()),
            false => format!("framingBehind_{}", self.name()),
        }
    }

    /// The items of what follows.
    pub fn items(&self) -> String {
        let name = self.name();
        let choice = self.choice();
        let contains: String = [
            (!self.choices.is_empty(), choice.as_str()),
            (self.contains.a_member, "framingStuff"),
            (self.contains.a_fact, "framingFactName,framingCase"),
        ]
        .iter()
        .filter(|(is_so, _)| *is_so)
        .map(|(_, group)| format!(",{group}"))
        .collect();
        let behind =
            format!("syntax match framingBehind_{name} /.\\+/ contained contains=@framingValue{contains}\n");
        let rule = format!(
            "syntax match framingRule_{name} /{word}/ contained nextgroup=framingBehind_{name}\n",
            word = crate::vim::word()
        );
        behind + if self.contains.a_slug { &rule } else { "" }
    }

    /// How the colours of its words are found.
    pub fn link(&self) -> String {
        let link = |from: &str, to: &str| format!("highlight default link {from} {to}\n");
        let choice =
            if self.choices.is_empty() { String::new() } else { link(&self.choice(), "framingChoice") };
        let rule = format!("framingRule_{}", self.name());
        choice + &if self.contains.a_slug { link(&rule, "framingRule") } else { String::new() }
    }
}

//! The words of the format for Emacs.

use std::collections::BTreeSet;
use std::path::Path;

use storyrod::syntax::form::{Form, Kind};
use storyrod::syntax::names::JOINING;
use storyrod::syntax::value::Side;
use storyrod::syntax::vocabulary::{COMMON, ELEMENTS, ElementSpec, FACT_NAMES, FactSpec, lexicon};

use crate::dice::Dice;
use crate::{holds, longest_first, random_specs};

/// What changes the number beside it.
const ARITHMETIC: [&str; 4] = ["half of", "less", "plus", "times"];

/// What stands behind a fact's phrase.
#[derive(Default)]
struct Words {
    joining: BTreeSet<&'static str>,
    choices: BTreeSet<&'static str>,
    has_member: bool,
    has_names: bool,
}

impl Words {
    fn of(form: &Form) -> Self {
        let mut words = Self::default();
        words.take(form);
        words
    }

    fn take(&mut self, form: &Form) {
        match form {
            Form::Words(phrase) => _ = self.joining.insert(phrase),
            Form::Mark(phrase) => _ = self.choices.insert(phrase),
            Form::Slot(_, Kind::Word(phrases)) => self.choices.extend(*phrases),
            Form::Slot(_, Kind::Side) => self.choices.extend(Side::ALL.iter().map(|side| side.word())),
            Form::Slot(_, Kind::Member) => self.has_member = true,
            Form::Slot(_, Kind::FactName | Kind::Comparison) => self.has_names = true,
            Form::Nothing | Form::Slot(..) | Form::Comma => {}
            Form::Optional(inner) | Form::List(inner) => self.take(inner),
            Form::Sequence(parts) | Form::OneOf(parts) => parts.iter().for_each(|part| self.take(part)),
        }
    }
}

/// Phrases as Lisp strings, the longest first.
fn strings(phrases: impl IntoIterator<Item = &'static str>) -> String {
    let quoted: Vec<_> = longest_first(phrases).iter().map(|phrase| format!("{phrase:?}")).collect();
    quoted.join(" ")
}

/// `("bears on" :joining ("for") :choices ("outside"))`
fn fact(spec: &FactSpec) -> String {
    let words = Words::of(&spec.form);
    let mut text = format!("({:?}", spec.phrase);
    // The words that join in every fact need not be told again.
    let own = |words: BTreeSet<&'static str>| words.into_iter().filter(|word| !JOINING.contains(word));
    for (key, phrases) in
        [(":joining", strings(own(words.joining))), (":choices", strings(own(words.choices)))]
    {
        if !phrases.is_empty() {
            text += &format!(" {key} ({phrases})");
        }
    }
    for (key, holds) in [(":member", words.has_member), (":names", words.has_names)] {
        if holds {
            text += &format!(" {key} t");
        }
    }
    text + ")"
}

fn facts<'s>(specs: impl Iterator<Item = &'s FactSpec>, indent: &str) -> String {
    specs.map(fact).collect::<Vec<_>>().join(&format!("\n{indent}"))
}

fn element(spec: &ElementSpec) -> String {
    let claims = strings(spec.claimable().map(|name| name.words));
    let also = spec.also.iter().map(|word| format!(" {word:?}")).collect::<String>();
    format!(
        "(({keyword:?}{also})\n     ({claims})\n     {facts})",
        keyword = spec.keyword,
        facts = facts(spec.all_facts().filter(|fact| !COMMON.contains(fact)), "     "),
    )
}

fn words() -> String {
    let arguments = FACT_NAMES.iter().flat_map(|name| name.arguments()).map(|it| it.joined_by);
    let arguments = arguments.filter(|word| !JOINING.contains(word));
    let joining = JOINING.iter().copied().filter(|word| !ARITHMETIC.contains(word));
    format!(
        r#";;; framing-words.el --- The words of the framing format  -*- lexical-binding: t; -*-

;; Author: The Storyrod contributors
;; SPDX-License-Identifier: Apache-2.0 OR MIT

;;; Commentary:

;; Written by `UPDATE=1 cargo test --test editors' from the vocabulary; not edited by hand.

;;; Code:

(defconst framing-words-elements
  '({elements})
  "Every element: (OPENINGS CLAIMS FACT...).
OPENINGS are the words that open it, its own first, CLAIMS the
names of what may be claimed of it.  A FACT is (PHRASE PLIST...):
`:joining' words and `:choices' that stand behind the phrase,
`:member' when a size with its stuff stands there, `:names' when
facts are named there.")

(defconst framing-words-common
  '({common})
  "The facts that every element may have.")

(defconst framing-words-include {include:?}
  "The word that takes in another file.")

(defconst framing-words-joining
  '({joining})
  "What joins the parts of any fact.")

(defconst framing-words-arithmetic
  '({arithmetic})
  "What changes the number beside it.")

(defconst framing-words-names
  '({names})
  "The names of facts in comparisons.")

(defconst framing-words-arguments
  '({arguments})
  "What joins the parts of a comparison, besides what joins any fact.")

(defconst framing-words-cases
  '({cases})
  "What narrows a named fact to a load case.")

(defconst framing-words-stuff
  '({stuff})
  "What a member is made of and made as.")

(defconst framing-words-units
  '({units})
  "The units written in letters.")

(provide 'framing-words)
;;; framing-words.el ends here
"#,
        elements = ELEMENTS.iter().map(|spec| element(spec)).collect::<Vec<_>>().join("\n    "),
        common = facts(COMMON.iter(), "    "),
        include = lexicon::INCLUDE,
        joining = strings(joining),
        arithmetic = strings(ARITHMETIC),
        names = strings(lexicon::fact_names()),
        arguments = strings(arguments),
        cases = strings(lexicon::cases()),
        stuff = strings(lexicon::stuff()),
        units = strings(lexicon::units()),
    )
}

#[test]
fn emacs_knows_the_words_of_the_vocabulary() {
    let joining = lexicon::joining();
    assert!(ARITHMETIC.iter().all(|word| joining.contains(word)), "{joining:?}");
    holds("editors/emacs/framing-words.el", &words());
}

/// `editors/emacs/test/run` holds the colours of a real Emacs to the server's reading of these and of the samples.
#[test]
fn random_specs_are_there_for_a_real_emacs() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("target/emacs/specs");
    std::fs::create_dir_all(&folder).unwrap();
    for seed in 0..6 {
        let spec = random_specs::every_element(&mut Dice::new(seed));
        assert!(spec.lines().count() > 100, "{spec}");
        std::fs::write(folder.join(format!("random-{seed}.framing")), spec).unwrap();
    }
}

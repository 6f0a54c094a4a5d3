//! Facts and elements with places to fill in.

use crate::ide::slots::{slot_name, ways};
use crate::syntax::form::{Form, Kind};
use crate::syntax::lexer::Tokens;
use crate::syntax::vocabulary::{ElementSpec, FactSpec, Presence};
use crate::syntax::{VALUE_COLUMN, next};

const INDENT: &str = "  ";

/// More words than this are no list to choose from.
const MOST_CHOICES: usize = 30;

/// A text whose places to fill in are numbered from 1.
#[derive(Default)]
pub(super) struct Snippet {
    text: String,
    n_places: usize,
}

impl Snippet {
    /// A fact's line from its phrase on, whose phrase takes up `width`.
    pub fn of_fact(fact: &'static FactSpec, width: usize) -> String {
        let mut snippet = Self::default();
        snippet.fact(fact, width);
        snippet.text
    }

    /// An element with the facts that it must have.
    pub fn of_element(spec: &'static ElementSpec, name: Option<&str>, title: bool, line_end: &str) -> String {
        let mut snippet = Self { text: spec.keyword.to_owned(), n_places: 0 };
        if let Some(name) = name {
            snippet.text.push(' ');
            snippet.place(name);
        }
        if title {
            snippet.text.push_str(" \"");
            snippet.place("title");
            snippet.text.push('"');
        }
        for fact in spec.facts.iter().filter(|fact| fact.presence == Presence::Required) {
            snippet.text.push_str(line_end);
            snippet.text.push_str(INDENT);
            snippet.fact(fact, VALUE_COLUMN - INDENT.len());
        }
        snippet.text.push_str("$0");
        snippet.text
    }

    fn fact(&mut self, fact: &'static FactSpec, width: usize) {
        let width = width.max(fact.phrase.len() + 1);
        self.text.push_str(&format!("{:<width$}", fact.phrase));
        for form in as_in_its_example(fact) {
            self.put(form);
        }
    }

    fn put(&mut self, form: &'static Form) {
        match form {
            Form::Nothing | Form::Optional(_) => {}
            Form::Words(words) | Form::Mark(words) => {
                self.blank();
                self.text.push_str(words);
            }
            Form::Comma => self.text.push(','),
            Form::Slot(label, kind) => {
                self.blank();
                self.slot(label, kind);
            }
            Form::Sequence(forms) => forms.iter().for_each(|form| self.put(form)),
            Form::OneOf(forms) => forms.iter().take(1).for_each(|form| self.put(form)),
            Form::List(form) => self.put(form),
        }
    }

    fn slot(&mut self, label: &str, kind: &Kind) {
        match kind {
            Kind::Word([only]) => self.text.push_str(only),
            Kind::Word(words) if words.len() <= MOST_CHOICES => {
                self.n_places += 1;
                let words: Vec<_> =
                    words.iter().map(|word| word.replace(',', "\\,").replace('|', "\\|")).collect();
                self.text.push_str(&format!("${{{}|{}|}}", self.n_places, words.join(",")));
            }
            Kind::Text => {
                self.text.push('"');
                self.place(&slot_name(label, kind));
                self.text.push('"');
            }
            _ => self.place(&slot_name(label, kind)),
        }
    }

    /// A place to fill in, with what stands there until it is.
    fn place(&mut self, shown: &str) {
        self.n_places += 1;
        let shown = shown.replace('\\', "\\\\").replace('$', "\\$").replace('}', "\\}");
        self.text.push_str(&format!("${{{}:{shown}}}", self.n_places));
    }

    fn blank(&mut self) {
        if !self.text.is_empty() && !self.text.ends_with(' ') {
            self.text.push(' ');
        }
    }
}

/// The way of saying a fact that its example shows.
fn as_in_its_example(fact: &'static FactSpec) -> Vec<&'static Form> {
    let values = fact.example.get(fact.phrase.len()..).unwrap_or("");
    let tokens: Vec<_> = Tokens::of(values, 0).filter(|token| !token.is_silent()).collect();
    let mut ways = ways(&fact.form);
    let shown = ways.iter().position(|way| {
        let walk = next::next(way, &tokens);
        walk.n_read == tokens.len() && walk.next.iter().any(|next| next.what == next::What::End)
    });
    if ways.is_empty() { Vec::new() } else { ways.swap_remove(shown.unwrap_or(0)) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::syntax::parse_fresh;
    use crate::syntax::vocabulary::{ELEMENTS, value_meaning};

    /// The kinds of the places of a form, in the order in which they are numbered.
    fn places(form: &'static Form, kinds: &mut Vec<&'static Kind>) {
        match form {
            Form::Slot(_, Kind::Word([_])) => {}
            Form::Slot(_, kind) => kinds.push(kind),
            Form::Sequence(forms) => forms.iter().for_each(|form| places(form, kinds)),
            Form::OneOf(forms) => forms.iter().take(1).for_each(|form| places(form, kinds)),
            Form::List(form) => places(form, kinds),
            Form::Nothing | Form::Optional(_) | Form::Words(_) | Form::Mark(_) | Form::Comma => {}
        }
    }

    /// The snippet with a value of the reference in each of its places.
    fn filled(fact: &'static FactSpec) -> String {
        let mut kinds = Vec::new();
        as_in_its_example(fact).into_iter().for_each(|form| places(form, &mut kinds));
        let mut text = Snippet::of_fact(fact, 14);
        for (at, kind) in kinds.iter().enumerate() {
            let start =
                text.find(&format!("${{{}", at + 1)).unwrap_or_else(|| panic!("{text}: no place {}", at + 1));
            let end = start + text[start..].find('}').unwrap();
            let value = match kind {
                Kind::Word(words) => words[0].to_owned(),
                Kind::Text => "words".to_owned(),
                Kind::Dimensions(least, _) => vec!["1\""; *least].join(" x "),
                Kind::Name(_) => "X1".to_owned(),
                kind => value_meaning(kind).unwrap().1[0].to_owned(),
            };
            text.replace_range(start..=end, &value);
        }
        text
    }

    #[test]
    fn a_filled_snippet_is_a_line_that_reads_well() {
        for spec in ELEMENTS {
            for fact in spec.all_facts() {
                let line = filled(fact);
                let text = format!("{} X9\n  {line}\n", spec.keyword);
                let problems = parse_fresh(&text).chunks[0].body.problems.clone();
                let in_line: Vec<_> =
                    problems.iter().filter(|it| it.span.start as usize > text.find('\n').unwrap()).collect();
                assert!(in_line.is_empty(), "{text}{in_line:?}");
            }
        }
    }
}

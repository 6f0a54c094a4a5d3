//! The words and forms of the tree-sitter grammar. What no form says (lines, numbers, members, sums) is written by hand
//! in `grammar.js`.

mod readings;

use std::fmt::Write as _;

use serde_json::{Value, json};
use storyrod::syntax::form::{Form, Kind};
use storyrod::syntax::vocabulary::lexicon::{self, Phrases};
use storyrod::syntax::vocabulary::{COMMON, ELEMENTS, ElementSpec, FACT_NAMES, FactSpec, Naming, kind_name};

use crate::holds;

fn form(form: &Form) -> Value {
    match form {
        Form::Nothing => json!([]),
        Form::Words(words) => json!(words),
        Form::Mark(words) => json!({ "mark": words }),
        Form::Slot(label, kind) => slot(label, kind),
        Form::Comma => json!(","),
        Form::Sequence(parts) => json!(parts.iter().map(self::form).collect::<Vec<_>>()),
        Form::Optional(inner) => json!({ "optional": self::form(inner) }),
        Form::OneOf(choices) => json!({ "choice": choices.iter().map(self::form).collect::<Vec<_>>() }),
        Form::List(inner) => json!({ "list": self::form(inner) }),
    }
}

fn slot(label: &str, kind: &Kind) -> Value {
    match kind {
        Kind::Word(words) => json!({ "slot": label, "words": words }),
        Kind::Dimensions(least, most) => json!({ "slot": label, "sides": [least, most] }),
        other => json!({ "slot": label, "kind": kind_name(other).replace('-', "_") }),
    }
}

fn fact(fact: &FactSpec) -> Value {
    json!([fact.phrase, form(&fact.form)])
}

fn element(spec: &ElementSpec) -> String {
    let naming = match spec.naming {
        Naming::Name => "name",
        Naming::Title => "title",
        Naming::None => "none",
    };
    let claims: Vec<_> = spec.claimable().map(|name| json!([name.words, name.takes_case])).collect();
    let mut text = format!("    {{\n      \"keyword\": {},\n", json!(spec.keyword));
    writeln!(text, "      \"also\": {},", json!(spec.also)).unwrap();
    writeln!(text, "      \"naming\": {},", json!(naming)).unwrap();
    writeln!(text, "      \"claims\": {},", json!(claims)).unwrap();
    let own = |phrase: &&str| spec.facts.iter().any(|fact| fact.phrase == *phrase);
    let common: Vec<_> = COMMON.iter().map(|fact| fact.phrase).filter(|phrase| !own(phrase)).collect();
    writeln!(text, "      \"common\": {},", json!(common)).unwrap();
    write!(text, "      \"facts\": {}\n    }}", lines(spec.facts.iter().map(fact), 8)).unwrap();
    text
}

/// A JSON list with an item a line.
fn lines(items: impl Iterator<Item = Value>, indent: usize) -> String {
    let items: Vec<_> = items.map(|item| format!("{:indent$}{item}", "")).collect();
    format!("[\n{}\n{:outer$}]", items.join(",\n"), "", outer = indent - 2)
}

fn vocabulary() -> String {
    let fact_name =
        |words: &str, takes_case: bool, joined_by: Vec<&str>| json!([words, takes_case, joined_by]);
    let fact_names = FACT_NAMES.iter().map(|name| {
        fact_name(name.words, name.takes_case, name.arguments().map(|argument| argument.joined_by).collect())
    });
    let [lengths, loads, stresses, areas] = lexicon::units_by_measure();
    let words = |phrases: Phrases| json!(phrases);
    let elements: Vec<_> = ELEMENTS.iter().map(|spec| element(spec)).collect();
    let mut text = "{\n".to_owned();
    let head = "Written by `UPDATE=1 cargo test --test editors` from the vocabulary; not edited by hand.";
    writeln!(text, "  \"about\": {},", json!(head)).unwrap();
    writeln!(text, "  \"include\": {},", json!(lexicon::INCLUDE)).unwrap();
    writeln!(text, "  \"elements\": [\n{}\n  ],", elements.join(",\n")).unwrap();
    writeln!(text, "  \"common\": {},", lines(COMMON.iter().map(fact), 4)).unwrap();
    writeln!(text, "  \"factNames\": {},", lines(fact_names, 4)).unwrap();
    for (name, phrases) in [
        ("cases", lexicon::cases()),
        ("sides", lexicon::sides()),
        ("makes", lexicon::makes()),
        ("species", lexicon::species()),
        ("grades", lexicon::grades()),
        ("lengthUnits", lengths),
        ("loadUnits", loads),
        ("stressUnits", stresses),
    ] {
        writeln!(text, "  \"{name}\": {},", words(phrases)).unwrap();
    }
    writeln!(text, "  \"areaUnits\": {}\n}}", words(areas)).unwrap();
    text
}

#[test]
fn the_grammar_has_the_words_and_forms_of_the_vocabulary() {
    holds("grammar/tree-sitter/vocabulary.json", &vocabulary());
}

//! Colours for editors that read TextMate grammars.
//!
//! A fact's words are coloured by the fact they stand in: `top` is a choice behind `set`, a fact's name in a comparison,
//! and the name of a floor where somebody calls it so.

mod facts;
mod regex;
mod spans;
mod texts;

use std::collections::BTreeMap;

use serde_json::{Value, json};
use storyrod::syntax::names::JOINING;
use storyrod::syntax::vocabulary::{ELEMENTS, ElementSpec, FACT_NAMES, Naming, lexicon};

use crate::holds;
use facts::FactLook;
use regex::{WORD, WORD_END, alternatives};

const GRAMMAR: &str = "grammar/textmate/framing.tmLanguage.json";

/// Ends an element: a line in the first column that is no comment.
const NEXT_ELEMENT: &str = r"^(?=\S)(?!--)";

fn grammar() -> Value {
    let mut repository = base();
    let mut patterns = vec![include("comment"), include("include")];
    for spec in ELEMENTS {
        let key = spec.keyword.replace(' ', "-");
        patterns.push(include(&key));
        let block = element(spec, &mut repository);
        repository.insert(key, block);
    }
    json!({
        "name": "Framing",
        "scopeName": "source.framing",
        "fileTypes": ["framing"],
        "comment": "Written by `UPDATE=1 cargo test --test editors` from the vocabulary; not edited by hand.",
        "patterns": patterns,
        "repository": repository,
    })
}

fn include(key: &str) -> Value {
    json!({ "include": format!("#{key}") })
}

/// A rule that gives what it matches a scope.
fn rule(scope: &str, pattern: impl Into<String>) -> Value {
    json!({ "name": format!("{scope}.framing"), "match": pattern.into() })
}

/// A word of these, wherever words stand.
fn words(scope: &str, phrases: impl IntoIterator<Item = &'static str>) -> Value {
    rule(scope, format!("(?:{}){WORD_END}", alternatives(phrases)))
}

fn captures<const N: usize>(scopes: [(usize, &str); N]) -> Value {
    scopes
        .into_iter()
        .map(|(group, scope)| (group.to_string(), json!({ "name": format!("{scope}.framing") })))
        .collect::<serde_json::Map<_, _>>()
        .into()
}

/// An element, from its keyword to the next line in the first column.
fn element(spec: &'static ElementSpec, repository: &mut BTreeMap<String, Value>) -> Value {
    let keyword = format!("({}){WORD_END}", alternatives(lexicon::openings(spec)));
    let begin = match spec.naming {
        Naming::Name => {
            let reserved =
                ELEMENTS.iter().flat_map(|spec| lexicon::openings(spec)).chain(JOINING.iter().copied());
            let reserved = alternatives(reserved.filter(|words| !words.contains(' ')));
            format!(r"^{keyword}(?:\s+(?!(?:{reserved}){WORD_END})({WORD}))?")
        }
        Naming::Title | Naming::None => format!("^{keyword}"),
    };
    let mut patterns = vec![include("comment"), include("text")];
    patterns.extend(claim(spec));
    let mut facts: Vec<_> = spec.all_facts().collect();
    facts.sort_by_key(|fact| (std::cmp::Reverse(fact.phrase.len()), fact.phrase));
    for fact in facts {
        let key = keep(repository, &format!("fact-{}", fact.phrase.replace(' ', "-")), |repository| {
            let look = FactLook::of(&fact.form);
            repository.entry(look.key()).or_insert_with(|| json!({ "patterns": look.values() }));
            let mut inside = look.own_words();
            inside.push(include(&look.key()));
            json!({
                "begin": format!(r"^\s+({}){WORD_END}", alternatives([fact.phrase])),
                "beginCaptures": captures([(1, "variable.other.property")]),
                "end": "$",
                "patterns": inside,
            })
        });
        patterns.push(include(&key));
    }
    patterns.push(include("unknown-fact"));
    json!({
        "begin": begin,
        "beginCaptures": captures([(1, "storage.type.element"), (2, "entity.name.type")]),
        "end": NEXT_ELEMENT,
        "patterns": patterns,
    })
}

/// Keeps a rule in the repository under this key, or under the key with a number where another rule has it.
fn keep(
    repository: &mut BTreeMap<String, Value>,
    key: &str,
    rule: impl FnOnce(&mut BTreeMap<String, Value>) -> Value,
) -> String {
    let rule = rule(repository);
    let keys = std::iter::once(key.to_owned()).chain((2..).map(|number| format!("{key}-{number}")));
    let mut keys = keys.filter(|key| repository.get(key).is_none_or(|kept| *kept == rule));
    let key = keys.next().unwrap_or_default();
    repository.insert(key.clone(), rule);
    key
}

/// `cut should be 96-5/16"`, for the facts that the element can claim.
fn claim(spec: &'static ElementSpec) -> Option<Value> {
    let of = |takes_case: bool| {
        let names = spec.claimable().filter(move |name| name.takes_case == takes_case);
        alternatives(names.map(|name| name.words))
    };
    spec.claimable().next()?;
    let (cases, by_case, plain) = (alternatives(lexicon::cases()), of(true), of(false));
    // A group that matches nothing keeps the numbers of the others.
    let by_case = if by_case.is_empty() { "(?!)".to_owned() } else { by_case };
    let plain = if plain.is_empty() { "(?!)".to_owned() } else { plain };
    Some(json!({
        "begin": format!(r"^\s+(?:(?:({cases})\s+)?({by_case})|({plain}))\s+(should\s+be){WORD_END}"),
        "beginCaptures": captures([
            (1, "constant.language.choice"),
            (2, "support.function.fact"),
            (3, "support.function.fact"),
            (4, "keyword.operator.word"),
        ]),
        "end": "$",
        "patterns": [include(&FactLook::of_claim().key())],
    }))
}

/// What does not depend on the element.
fn base() -> BTreeMap<String, Value> {
    let string =
        captures([(1, "punctuation.definition.string.begin"), (2, "punctuation.definition.string.end")]);
    let numbers: Vec<_> = regex::quantities()
        .into_iter()
        .map(|number| {
            let mut rule = rule(number.scope, number.pattern);
            if number.has_unit {
                rule["captures"] = captures([(1, "keyword.other.unit")]);
            }
            rule
        })
        .collect();
    let claim = FactLook::of_claim();
    let entries = [
        ("comment", rule("comment.line.double-dash", r"(?<!\S)--.*$")),
        (
            "text",
            json!({ "patterns": [
                {
                    "name": "string.quoted.double.framing",
                    "match": r#"(?<!\S)(")(?=\S)[^"]*(?:(")|$)"#,
                    "captures": string,
                },
                {
                    "name": "string.quoted.double.framing",
                    "match": r#"(?<!\S)([“”])(?=\S)[^”"]*(?:([”"])|$)"#,
                    "captures": string,
                },
            ]}),
        ),
        (
            "include",
            json!({
                "begin": format!("^({}){WORD_END}", lexicon::INCLUDE),
                "beginCaptures": captures([(1, "keyword.control.import")]),
                "end": "$",
                "patterns": [include("comment"), include("text")],
            }),
        ),
        // A line that begins with no fact of the element stays plain.
        (
            "unknown-fact",
            json!({
                "begin": r"^\s+(?=\S)(?!--)",
                "end": "$",
                "patterns": [include("comment"), include("text")],
            }),
        ),
        ("quantities", json!({ "patterns": numbers })),
        ("number", rule("constant.numeric.number", regex::bare_number())),
        ("grid-number", rule("variable.other.name", regex::grid_number())),
        // In a comparison a bare number is a grid line's only on either side of a slash.
        (
            "point-number",
            json!({ "patterns": [
                {
                    "match": format!(r"(/)\s*({})", regex::grid_number()),
                    "captures": captures([(1, "punctuation.separator.point"), (2, "variable.other.name")]),
                },
                rule("variable.other.name", regex::grid_number_of_point()),
            ]}),
        ),
        ("size-mark", rule("keyword.operator.size", regex::size_mark())),
        (
            "signs",
            json!({ "patterns": [
                rule("keyword.operator.comparison", "[<>]?=|[<>≤≥]"),
                rule("punctuation.separator.comma", ","),
                rule("punctuation.separator.point", "/"),
                rule("punctuation.section.parens.begin", r"\("),
                rule("punctuation.section.parens.end", r"\)"),
            ]}),
        ),
        (
            "sides",
            words("constant.language.side", storyrod::syntax::value::Side::ALL.map(|side| side.word())),
        ),
        ("joining", words("keyword.operator.word", JOINING.iter().copied().chain(["o.c."]))),
        ("at", rule("keyword.operator.word", "@")),
        (
            "material",
            json!({ "patterns": [words("support.type.material", lexicon::stuff()), material_marks()] }),
        ),
        ("fact-names", json!({ "patterns": [fact_names(), compared()] })),
        ("name", rule("variable.other.name", WORD)),
        ("rule-name", rule("variable.other.constant", WORD)),
        // Words of the author's own are stepped over, so that nothing is found inside them.
        ("own-word", json!({ "match": WORD })),
    ];
    let mut repository: BTreeMap<_, _> = entries.map(|(key, value)| (key.to_owned(), value)).into();
    repository.insert(claim.key(), json!({ "patterns": claim.values() }));
    repository
}

/// Marks of sections and grades that are no fixed words: `W8x24`, `class 40`, `PRI-40`, `HSS4x4x1/4`.
fn material_marks() -> Value {
    let rolled = format!("[A-WYZa-wyz]{{1,2}}[0-9][0-9.]*[xX×][0-9][0-9.]*{WORD_END}");
    let with_number = r"(?:No\.|class|MSR)(?=\s+[0-9])|HSS(?=[0-9½¼¾⅛⅜⅝⅞])";
    rule("support.type.material", format!("{rolled}|{with_number}|PRI-{}", r"[\p{Alpha}\p{Nd}_.-]+"))
}

/// `live reaction of`: the words of a fact where those that join its first element follow.
fn fact_names() -> Value {
    let mut joined: BTreeMap<_, Vec<_>> = BTreeMap::new();
    for name in FACT_NAMES {
        joined.entry((name.takes_case, name.first.joined_by)).or_default().push(name.words);
    }
    let patterns = joined.into_iter().map(|((takes_case, by), names)| {
        let case = if takes_case {
            format!(r"(?:({})\s+)?", alternatives(lexicon::cases()))
        } else {
            "()".to_owned()
        };
        json!({
            "match": format!(r"{case}({})(?=\s+{by}{WORD_END})", alternatives(names)),
            "captures": captures([(1, "constant.language.choice"), (2, "support.function.fact")]),
        })
    });
    json!({ "patterns": patterns.collect::<Vec<_>>() })
}

/// What joins the terms of an expression and the elements of a fact.
fn compared() -> Value {
    let arguments = FACT_NAMES.iter().flat_map(|name| name.arguments()).map(|argument| argument.joined_by);
    words("keyword.operator.word", arguments.chain(["plus", "less", "times", "half of", "within"]))
}

#[test]
fn the_textmate_grammar_holds_the_words_of_the_vocabulary() {
    let rendered = serde_json::to_string_pretty(&grammar()).unwrap();
    holds(GRAMMAR, &(rendered + "\n"));
}

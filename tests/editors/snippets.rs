//! Snippets for Visual Studio Code: each element with the facts it must have, and the facts of every element.

use std::collections::HashSet;

use serde_json::{Map, Value, json};
use storyrod::syntax::form::{Form, Kind};
use storyrod::syntax::value::Value as Written;
use storyrod::syntax::vocabulary::{COMMON, ELEMENTS, ElementSpec, FactSpec, Presence};
use storyrod::syntax::{Chunk, Opening, format, parse_fresh};
use storyrod::text::LocalSpan;

use crate::holds;

const SNIPPETS: &str = "editors/vscode/snippets/framing.json";

fn snippets() -> String {
    let elements = ELEMENTS.iter().map(|spec| (spec.keyword.to_owned(), element(spec)));
    let facts = COMMON.iter().map(|fact| (fact.phrase.to_owned(), every_element(fact)));
    let all: Map<_, _> = elements.chain(facts).collect();
    serde_json::to_string_pretty(&all).unwrap() + "\n"
}

/// The element with what it must have; with each fact that its example shows where nothing must stand.
fn element(spec: &ElementSpec) -> Value {
    let heading = spec.example.lines().next().unwrap_or_default();
    let required: Vec<_> = spec.facts.iter().filter(|fact| fact.presence == Presence::Required).collect();
    let text = if required.is_empty() {
        let mut seen = HashSet::new();
        let first_of_its_fact = |line: &&str| {
            let phrase = fact_of(spec, line.trim_start()).map(|fact| fact.phrase);
            phrase.is_none_or(|phrase| seen.insert(phrase))
        };
        spec.example.lines().filter(first_of_its_fact).map(|line| format!("{line}\n")).collect()
    } else {
        let of_example = |fact: &FactSpec| {
            let mut lines = spec.example.lines().map(str::trim_start);
            lines.find(|line| fact_of(spec, line).is_some_and(|found| found == fact)).unwrap_or(fact.example)
        };
        let facts = required.iter().map(|fact| format!("  {}\n", of_example(fact)));
        format!("{heading}\n{}", facts.collect::<String>())
    };
    let prefixes: Vec<_> = std::iter::once(spec.keyword).chain(spec.also.iter().copied()).collect();
    snippet(&prefixes, spec.summary, &with_stops(&format(&text), spec))
}

/// The fact that a line of an element is.
fn fact_of(spec: &ElementSpec, line: &str) -> Option<&'static FactSpec> {
    let heading = spec.example.lines().next()?;
    parse_fresh(&format!("{heading}\n  {line}\n")).chunks.first()?.body.facts.first().map(|fact| fact.spec)
}

fn every_element(fact: &FactSpec) -> Value {
    let wall = ELEMENTS.iter().find(|spec| spec.keyword == "wall").unwrap();
    let text = with_stops(&format!("wall W1\n  {}\n", fact.example), wall);
    let line = text.lines().nth(1).unwrap_or_default().trim_start();
    // The wall's own name was the first stop.
    let stops = (2..20)
        .fold(line.to_owned(), |line, stop| line.replace(&format!("${{{stop}"), &format!("${{{}", stop - 1)));
    snippet(&[fact.phrase], fact.meaning, &stops)
}

fn snippet(prefixes: &[&str], description: &str, text: &str) -> Value {
    json!({ "prefix": prefixes, "description": description, "body": text.lines().collect::<Vec<_>>() })
}

/// The text of one element with a tab stop on its name, its title and every value.
fn with_stops(text: &str, spec: &ElementSpec) -> String {
    let tree = parse_fresh(text);
    let chunk = tree.chunks.first().unwrap();
    let mut stops = places(chunk, spec);
    stops.sort_by_key(|(start, ..)| *start);
    let mut out = String::new();
    let mut at = 0;
    for (number, (start, end, choices)) in stops.into_iter().enumerate() {
        out.push_str(&escaped(&text[at..start]));
        let inside = &text[start..end];
        let number = number + 1;
        if choices.len() > 1 {
            let others = choices.iter().copied().filter(|choice| *choice != inside);
            let choices: Vec<_> = std::iter::once(inside).chain(others).collect();
            out.push_str(&format!("${{{number}|{}|}}", choices.join(",")));
        } else {
            out.push_str(&format!("${{{number}:{}}}", escaped(inside)));
        }
        at = end;
    }
    out + &escaped(&text[at..])
}

/// Where stops go, and what can be chosen there.
fn places(chunk: &Chunk, spec: &ElementSpec) -> Vec<(usize, usize, Vec<&'static str>)> {
    let mut places = Vec::new();
    let mut put = |span: LocalSpan, choices: Vec<&'static str>| {
        places.push((span.start as usize, span.end as usize, choices));
    };
    if let Opening::Element(heading) = &chunk.body.opening {
        heading.name.iter().chain(&heading.title).for_each(|(_, span)| put(*span, Vec::new()));
    }
    for fact in &chunk.body.facts {
        for part in &fact.parts {
            match &part.value {
                Written::Mark => {}
                // The quotes stay when the words go.
                Written::Text(text) => {
                    let mut span = part.span;
                    span.start += 1;
                    span.end = span.start + u32::try_from(text.len()).unwrap();
                    put(span, Vec::new());
                }
                _ => put(part.span, choices(spec, fact.spec, part.label)),
            }
        }
    }
    places
}

/// The words that can stand for this part, where any of them fits.
fn choices(spec: &ElementSpec, fact: &FactSpec, label: &str) -> Vec<&'static str> {
    fn found(form: &Form, label: &str, lists: &mut Vec<&'static [&'static str]>) {
        match form {
            Form::Slot(name, Kind::Word(words)) if *name == label => lists.push(words),
            Form::Optional(inner) | Form::List(inner) => found(inner, label, lists),
            Form::Sequence(parts) | Form::OneOf(parts) => {
                parts.iter().for_each(|part| found(part, label, lists));
            }
            _ => {}
        }
    }
    let mut lists = Vec::new();
    found(&fact.form, label, &mut lists);
    // What must stand beside a word of another list is not known here; nor is what a kind of wall must have.
    let is_free = lists.len() == 1 && !(fact.phrase == "kind" && spec.facts.len() > 1);
    if is_free { lists.concat() } else { Vec::new() }
}

fn escaped(text: &str) -> String {
    text.replace('\\', r"\\").replace('$', r"\$").replace('}', r"\}")
}

#[test]
fn the_snippets_are_the_vocabularys() {
    holds(SNIPPETS, &snippets());
}

/// What stands in an editor when nothing is typed into the stops, and how many stops there are. `choice` tells which
/// words are taken.
fn filled(line: &str, choice: usize) -> String {
    let mut out = String::new();
    let mut rest = line;
    while let Some((before, behind)) = rest.split_once("${") {
        out.push_str(before);
        let (inside, after) = behind.split_once('}').unwrap();
        let at = inside.find(|c: char| !c.is_ascii_digit()).unwrap();
        let words = &inside[at + 1..];
        match inside.as_bytes()[at] {
            b':' => out.push_str(words),
            b'|' => {
                let choices: Vec<_> = words.trim_end_matches('|').split(',').collect();
                out.push_str(choices[choice % choices.len()]);
            }
            other => panic!("a stop with `{other}`"),
        }
        rest = after;
    }
    out + rest
}

#[test]
fn what_a_snippet_writes_reads_without_a_problem() {
    let file = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join(SNIPPETS);
    let snippets: Map<String, Value> = serde_json::from_str(&std::fs::read_to_string(file).unwrap()).unwrap();
    for (name, snippet) in &snippets {
        let lines = snippet["body"].as_array().unwrap().iter().map(|line| line.as_str().unwrap());
        let lines: Vec<_> = lines.collect();
        for choice in 0..30 {
            let text: String = lines.iter().map(|line| filled(line, choice) + "\n").collect();
            let is_fact = COMMON.iter().any(|fact| fact.phrase == name);
            let text = if is_fact { format!("wall W1\n  {text}") } else { text };
            let tree = parse_fresh(&text);
            let problems: Vec<_> = tree.chunks.iter().flat_map(|chunk| &chunk.body.problems).collect();
            assert!(problems.is_empty(), "{name}:\n{text}\n{problems:?}");
            let Opening::Element(heading) = &tree.chunks[0].body.opening else {
                panic!("{name}: no element")
            };
            assert!(is_fact || heading.kind.word() == name, "{name}");
            assert_eq!(tree.chunks.len(), 1, "{name}");
        }
    }
    assert_eq!(snippets.len(), ELEMENTS.len() + COMMON.len(), "two snippets have one name");
}

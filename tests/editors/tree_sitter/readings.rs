//! What the parser reads in many texts, written down for the tests of the tree-sitter grammar: the same elements, facts
//! and values must stand at the same places in its trees.

use std::collections::BTreeSet;
use std::path::Path;

use serde_json::{Value, json};
use storyrod::syntax::form::{Form, Kind};
use storyrod::syntax::tree::LineKind;
use storyrod::syntax::vocabulary::lexicon;
use storyrod::syntax::vocabulary::{CLAIM, ELEMENTS, ElementSpec, FactSpec, Naming};
use storyrod::syntax::{Fact, Opening, ProblemKind, parse_fresh};
use storyrod::text::LocalSpan;

use crate::damage;
use crate::dice::Dice;
use crate::random_specs;

const N_RANDOM_SPECS: u64 = 2_000;
const N_DAMAGES: u64 = 400;

/// Numbers as people write them, with a fact each may stand in. The lexer's own tests hold what they mean.
const SPELLINGS: &[(&str, &[&str])] = &[
    (
        "wall W1\n  thick",
        &[
            "9-1/2\"",
            "9 1/2\"",
            "9½\"",
            "9-½\"",
            "9.5\"",
            "9-1/2 in.",
            "3/4\"",
            "¾\"",
            "5⅛”",
            "14in",
            "14 in",
            "14 in.",
            "2.5 ft",
            "98.5ft",
            "2-1/2 ft",
            "0'-9 1/2\"",
            "12'-6\"",
            "12' 6\"",
            "12'6\"",
            "12'-6 1/2\"",
            "12'-6-1/2\"",
            "12'6-1/2\"",
            "12' 6 1/2\"",
            "12'-1/2\"",
            "12'",
            "8 '",
            "2.5'",
            "7'-6.5\"",
            "12’-6 1/2”",
            "12′-6½″",
            "12'-6''",
            "12’-6’’",
            "-13 5/8\"",
            "-1'-2\"",
            "−5'",
            "240 mm",
            "240mm",
            "2.4 m",
            "12'-6",
            "16\" o.c.",
            "16\"  o.c. -- on centre",
        ],
    ),
    (
        "wall W1\n  top",
        &[
            "±0",
            "+/-0'-0\"",
            "EL. +100'-0\"",
            "EL 98'-10 3/8\"",
            "EL +98.5 ft",
            "EL -1'-2\"",
            "EL ±0",
            "+100'-0\"",
            "(-)1'-1 5/8\"",
            "98'-10 3/8\", 97'-0\" at A plus 3'",
            "98' @ A",
        ],
    ),
    ("floor F1\n  live", &["40 psf", "40psf", "1.9 kPa", "1.5e1 psf", "40 psf source “a letter”"]),
    (
        "beam B1\n  size",
        &[
            "2x8 SPF No.2",
            "2 x 10 SPF #2",
            "3-ply 2x10 SPF No. 2",
            "2 of 2x6 SPF",
            "(3) 1-3/4 x 11-7/8 LVL",
            "(2) 1-3/4\" x 11-7/8\" LVL 2.0E",
            "2 of 1-3/4 x 16",
            "3-ply LV12",
            "LV12",
            "11-7/8 I-joist class 40",
            "11-7/8\" I-joist PRI-40",
            "5-1/8 x 12 glulam 24F",
            "3 x 12 glulam 24F-V4",
            "W8x24",
            "W8X24",
            "W10×49",
            "HSS 4 x 4 x 3/16",
            "HSS4x4x3/16",
            "HSS 3-1/2x3-1/2x1/4",
            "HSS 4x4 x 1/4",
            "pipe 3-1/2 x 0.226",
            "filled pipe 4",
            "8x8 DF No.1",
            "1-1/8\" rim board",
            "2x6 treated",
            "2x6 treated SYP No.2",
            "2x10 HF MSR 1650f-1.5E",
            "1-3/4\"x9-1/4\" LVL",
            "2×10 SPF",
            "LV12 treated",
        ],
    ),
    (
        "footing F1\n  size",
        &[
            "2'-9\" x 2'-9\" x 14\"",
            "24 x 10",
            "24x10",
            "9\"x12\"",
            "9\"×12\"x3'",
            "2x10'",
            "2'x3'",
            "24x10 x 8",
            "3 1/2 x 4 x 3/4",
            "2' round x 3'",
        ],
    ),
    ("footing F1\n  bars", &["4 #5 each way, cover 3\""]),
    ("stair S1\n  nosing", &["1\"\t-- a tab"]),
    (
        "intent \"I\"\n  keep",
        &[
            "top of W1 = 3 plus 2' / A plus 1\"",
            "3/A = A/3",
            "top of W1 plus 2\" <= 3 times top of W2",
            "A / 3 plus 2\" = centre of C1",
            "half of half of 3\" >= drop from main to den within 40 psf",
            "size of B1 = 2x10 SPF No.2",
            "size of B1 = 2 of W8x24",
            "size of B1 = 3-ply LV12",
            "top over B1",
            "top level with bottom within 1\"",
            "load on B1 = 4 kip",
            "all load on B1 ≥ 4 kip",
            "size of B1 = 1-3/4 x 16 LVL",
            "count of W1 = 3",
            "area of A1 = 12 sq ft less 1 sq ft",
        ],
    ),
];

#[test]
fn what_the_parser_reads_is_written_for_the_grammars_tests() {
    let mut texts = samples();
    texts.extend(ELEMENTS.iter().map(|spec| spec.example.to_owned()));
    texts.extend(ELEMENTS.iter().flat_map(|spec| fact_examples(spec)));
    texts.extend(spellings());
    texts.extend(words_of_the_format_as_names());
    texts.extend((0..N_RANDOM_SPECS).map(|seed| random_specs::spec(&mut Dice::new(seed), 3)));
    let damaged = damaged_samples();
    let readings: Vec<_> = texts.iter().map(|text| (text, reading(text))).collect();
    let refused: Vec<_> = readings.iter().filter(|(_, reading)| reading.is_err()).collect();
    assert!(refused.is_empty(), "{refused:#?}");
    let whole = readings.into_iter().filter_map(|(_, reading)| reading.ok());
    let lines: Vec<_> = whole.chain(damaged).map(|json| json.to_string()).collect();
    std::fs::write(Path::new(env!("CARGO_TARGET_TMPDIR")).join("readings.jsonl"), lines.join("\n")).unwrap();
}

fn samples() -> Vec<String> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("grammar/samples");
    let mut paths: Vec<_> = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    let mut texts: Vec<_> = paths.iter().map(|path| std::fs::read_to_string(path).unwrap()).collect();
    assert!(texts.len() >= 5, "{paths:?}");
    let first = texts[0].clone();
    texts.push(first.replace('\n', "\r\n"));
    texts.push(first.replace('\n', "\r"));
    texts.push(format!("\u{feff}{}", first.replace("  ", "\t")));
    texts.push(first.trim_end().to_owned());
    texts
}

fn heading(spec: &ElementSpec, name: &str) -> String {
    match spec.naming {
        Naming::Name => format!("{} {name} \"Title\"", spec.keyword),
        Naming::Title => format!("{} \"Title\"", spec.keyword),
        Naming::None => spec.keyword.to_owned(),
    }
}

fn fact_examples(spec: &ElementSpec) -> Vec<String> {
    spec.all_facts().map(|fact| format!("{}\n  {}\n", heading(spec, "X1"), fact.example)).collect()
}

fn spellings() -> Vec<String> {
    let texts = SPELLINGS.iter().flat_map(|(before, spellings)| {
        spellings.iter().map(move |spelling| format!("{before} {spelling}\n"))
    });
    texts.collect()
}

/// Each fact with names that are words of its own line elsewhere, wherever the parser takes them for names.
fn words_of_the_format_as_names() -> Vec<String> {
    let mut texts = Vec::new();
    let mut dice = Dice::new(0);
    for spec in ELEMENTS {
        let phrases = lexicon::fact_phrases(spec);
        let words = phrases.iter().flat_map(|phrase| phrase.split(' '));
        texts.extend(words.map(|word| format!("{}\n", heading(spec, word))));
        for fact in spec.all_facts() {
            for word in words_near(fact) {
                for _ in 0..4 {
                    let line = with_name(&random_specs::fact_line(&mut dice, fact), word);
                    texts.extend(line.map(|line| format!("{}\n  {line}\n", heading(spec, "X1"))));
                }
            }
        }
    }
    texts.retain(|text| reading(text).is_ok());
    assert!(texts.len() > 2_000, "{}", texts.len());
    texts
}

/// The line with another name for each name in it; `None` when it has none.
fn with_name(line: &str, name: &str) -> Option<String> {
    let is_name = |word: &str| {
        ["AA", "north-wall", "LV14"].contains(&word)
            || ["Q", "Wn", "Beam_", "é", "K-", "J."].iter().any(|letters| {
                word.strip_prefix(letters)
                    .is_some_and(|digits| digits.bytes().all(|byte| byte.is_ascii_digit()))
            })
    };
    let mut changed = String::new();
    for piece in line.split_inclusive([' ', ',', '/']) {
        let word = piece.trim_end_matches([' ', ',', '/']);
        changed.push_str(if is_name(word) { name } else { word });
        changed.push_str(&piece[word.len()..]);
    }
    (changed != line).then_some(changed)
}

/// The words that may stand somewhere in the line of a fact.
fn words_near(fact: &FactSpec) -> BTreeSet<&'static str> {
    fn walk(form: &Form, words: &mut BTreeSet<&'static str>) {
        let mut add = |phrase: &'static str| words.extend(phrase.split(' '));
        match form {
            Form::Nothing | Form::Comma => {}
            Form::Words(phrase) | Form::Mark(phrase) => add(phrase),
            Form::Slot(_, Kind::Word(phrases)) => phrases.iter().copied().for_each(add),
            Form::Slot(_, Kind::Member) => lexicon::stuff().into_iter().for_each(add),
            Form::Slot(_, Kind::Side) => lexicon::sides().into_iter().for_each(add),
            Form::Slot(_, Kind::FactName | Kind::Comparison) => {
                lexicon::fact_names().into_iter().chain(lexicon::cases()).for_each(add);
            }
            Form::Slot(..) => {}
            Form::Optional(inner) | Form::List(inner) => walk(inner, words),
            Form::Sequence(parts) | Form::OneOf(parts) => parts.iter().for_each(|part| walk(part, words)),
        }
    }
    let mut words = BTreeSet::from(["x", "y", "plus", "half", "times", "should", "deck"]);
    walk(&fact.form, &mut words);
    words
}

/// Samples after slips of the hand, with whatever can still be read in them.
fn damaged_samples() -> Vec<Value> {
    let samples = samples();
    let damaged = (0..N_DAMAGES).map(|seed| {
        let mut dice = Dice::new(seed);
        let sample = if dice.once_in(8) { dice.between(0, 4) } else { 1 };
        damage::damaged(&samples[usize::try_from(sample).unwrap()], &mut dice)
    });
    damaged.map(|text| json!({ "damaged": true, "elements": elements_read(&text), "text": text })).collect()
}

/// The text with its elements and facts; `Err` says what could not be read.
fn reading(text: &str) -> Result<Value, String> {
    for chunk in &parse_fresh(text).chunks {
        let mut problems = chunk.body.problems.iter();
        if let Some(problem) = problems.find(|problem| !matches!(problem.kind, ProblemKind::OddDimension(_)))
        {
            return Err(format!("{problem:?}"));
        }
        match &chunk.body.opening {
            Opening::Element(_) => {}
            Opening::Nothing if chunk.body.facts.is_empty() => {}
            other => return Err(format!("{other:?}")),
        }
    }
    Ok(json!({ "text": text, "elements": elements_read(text) }))
}

fn elements_read(text: &str) -> Vec<Value> {
    let mut elements = Vec::new();
    for chunk in &parse_fresh(text).chunks {
        let Opening::Element(heading) = &chunk.body.opening else { continue };
        let at = |span: LocalSpan| json!([span.start + chunk.start, span.end + chunk.start]);
        // Below a line that lost its blanks the grammar knows no longer which element it is in.
        let source = &text[chunk.start as usize..(chunk.start + chunk.body.length) as usize];
        let lost = chunk.body.lines.iter().skip(1).find(|line| {
            line.kind == LineKind::Broken
                && !source[line.span.start as usize..].starts_with([' ', '\t', '\u{a0}'])
        });
        let end = lost.map_or(u32::MAX, |line| line.span.start);
        let facts = chunk.body.facts.iter().filter(|fact| fact.span.start < end);
        elements.push(json!({
            "element": heading.kind.word().replace(' ', "_"),
            "keyword": at(heading.keyword),
            "name": heading.name.as_ref().map(|(_, span)| at(*span)),
            "title": heading.title.as_ref().map(|(_, span)| at(*span)),
            "facts": facts.map(|fact| fact_read(fact, &at)).collect::<Vec<_>>(),
        }));
    }
    elements
}

fn fact_read(fact: &Fact, at: &impl Fn(LocalSpan) -> Value) -> Value {
    let parts: Vec<_> = fact
        .parts
        .iter()
        .map(|part| {
            let kind = format!("{:?}", part.value);
            let kind = kind.split(['(', ' ']).next().unwrap_or("");
            json!([part.label.replace(|letter: char| !letter.is_alphanumeric(), "_"), kind, at(part.span)])
        })
        .collect();
    let is_claim = std::ptr::eq(fact.spec, &CLAIM);
    json!({ "is": if is_claim { "claim" } else { "fact" }, "at": at(fact.span), "phrase": at(fact.phrase), "parts": parts })
}

//! One-line mistakes in the sample houses: each can be made where its list says.

#![allow(clippy::unwrap_used, clippy::panic, reason = "helpers of tests are not in tests for clippy")]

use std::fs;
use std::path::Path;

use serde::Deserialize;
use storyrod::syntax::{Problem, parse_fresh};

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
struct List {
    house: String,
    #[serde(rename = "mistake")]
    mistakes: Vec<Mistake>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
struct Mistake {
    id: String,
    #[serde(rename = "title")]
    _title: String,
    element: Option<String>,
    line: Option<String>,
    becomes: Option<String>,
    insert: Option<String>,
    rename: Option<(String, String)>,
    #[serde(rename = "needs")]
    _needs: Needs,
    finds: Vec<Finds>,
    #[serde(default, rename = "may")]
    _may: Vec<String>,
    #[serde(default)]
    clean: bool,
    #[serde(rename = "by-hand")]
    _by_hand: Option<String>,
}

/// What the tool must be able to do before the mistake can be caught.
#[derive(Deserialize)]
#[serde(rename_all = "lowercase")]
enum Needs {
    Geometry,
    Forces,
    Comparison,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Finds {
    #[serde(rename = "rule")]
    _rule: String,
    #[serde(default, rename = "says")]
    _says: Vec<String>,
}

#[test]
fn every_mistake_changes_one_line_of_its_house_and_still_reads() {
    for list in lists() {
        let house = text_of(&list.house);
        for mistake in &list.mistakes {
            let wrong = with(mistake, &house);
            assert_ne!(wrong, house, "{} changes nothing", mistake.id);
            assert_eq!(problems(&wrong), Vec::<Problem>::new(), "{}", mistake.id);
        }
    }
}

#[test]
fn every_house_reads_without_a_problem() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("grammar/samples");
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        assert_eq!(
            problems(&fs::read_to_string(&path).unwrap()),
            Vec::<Problem>::new(),
            "{}",
            path.display()
        );
    }
}

#[test]
fn every_mistake_says_what_must_be_found() {
    for list in lists() {
        for mistake in &list.mistakes {
            assert_eq!(mistake.clean, mistake.finds.is_empty(), "{}", mistake.id);
        }
    }
}

fn problems(text: &str) -> Vec<Problem> {
    parse_fresh(text).chunks.iter().flat_map(|chunk| chunk.body.problems.clone()).collect()
}

fn lists() -> Vec<List> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/seeds");
    let mut paths: Vec<_> = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    paths.iter().map(|path| toml::from_str(&fs::read_to_string(path).unwrap()).unwrap()).collect()
}

fn text_of(path: &str) -> String {
    fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(path)).unwrap()
}

/// The house with the mistake made.
fn with(mistake: &Mistake, house: &str) -> String {
    if let Some((old, new)) = &mistake.rename {
        return renamed(house, old, new);
    }
    let line = mistake.line.as_deref().unwrap();
    let mut wrong = String::new();
    let mut places = 0;
    let mut is_inside = mistake.element.is_none();
    for written in house.lines() {
        let is_heading = !written.starts_with([' ', '\t']) && !words(written).is_empty();
        if is_heading && let Some(element) = &mistake.element {
            is_inside = words(written) == *element || words(written).starts_with(&format!("{element} "));
        }
        if !is_inside || words(written) != line {
            wrong.extend([written, "\n"]);
            continue;
        }
        places += 1;
        match (&mistake.becomes, &mistake.insert) {
            (Some(becomes), None) if becomes.is_empty() => {}
            (Some(becomes), None) => wrong.extend(["  ", becomes, "\n"]),
            (None, Some(insert)) => wrong.extend([written, "\n", insert, "\n"]),
            _ => panic!("{} says neither what the line becomes nor what comes after it", mistake.id),
        }
    }
    assert_eq!(places, 1, "{}: the line stands {places} times: {line}", mistake.id);
    wrong
}

/// A line without its comment, one blank between words.
fn words(line: &str) -> String {
    let code = if line.starts_with("--") { "" } else { line.split(" --").next().unwrap_or(line) };
    code.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn renamed(house: &str, old: &str, new: &str) -> String {
    let mut text = String::new();
    let mut word = String::new();
    for character in house.chars().chain(['\n']) {
        if character.is_alphanumeric() {
            word.push(character);
            continue;
        }
        text.push_str(if word == old { new } else { &word });
        text.push(character);
        word.clear();
    }
    text.pop();
    text
}

//! One-line mistakes in the sample houses, as their lists say them.
#![allow(dead_code, reason = "each suite asks for its part")]

use std::fs;
use std::path::Path;

use serde::Deserialize;

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
/// The mistakes of one house.
pub struct List {
    pub house: String,
    #[serde(rename = "mistake")]
    pub mistakes: Vec<Mistake>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Mistake {
    pub id: String,
    #[serde(rename = "title")]
    _title: String,
    pub element: Option<String>,
    pub line: Option<String>,
    pub becomes: Option<String>,
    pub insert: Option<String>,
    pub rename: Option<(String, String)>,
    #[serde(default)]
    pub needs: Needs,
    pub finds: Vec<Finds>,
    #[serde(default)]
    pub may: Vec<String>,
    #[serde(default)]
    pub clean: bool,
    #[serde(default)]
    pub unread: bool,
    #[serde(rename = "by-hand")]
    _by_hand: Option<String>,
}

/// What the tool must be able to do before the mistake can be caught.
#[derive(PartialEq, Default, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Needs {
    #[default]
    Geometry,
    Forces,
    Comparison,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Finds {
    pub rule: String,
    #[serde(default)]
    pub says: Vec<String>,
}

/// Every list.
pub fn lists() -> Vec<List> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/seeds");
    let mut paths: Vec<_> = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    paths.iter().map(|path| toml::from_str(&fs::read_to_string(path).unwrap()).unwrap()).collect()
}

/// The text of a house.
pub fn text_of(path: &str) -> String {
    fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(path)).unwrap()
}

/// The house with the mistake made.
pub fn with(mistake: &Mistake, house: &str) -> String {
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
            (Some(becomes), None) => {
                let indent = written.len() - written.trim_start().len();
                wrong.extend([&written[..indent], becomes, "\n"]);
            }
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

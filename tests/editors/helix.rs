//! What stands in `editors/helix/`: queries of the tree-sitter grammar under Helix's names, and settings that it knows.
//!
//! Names as Helix's documentation has them: "Languages", "Themes", and the guides to queries.

use std::collections::BTreeSet;

use serde_json::Value;
use toml::Table;

use crate::holds;

/// What a query captures there, and what Helix calls that. Nothing is left of what it does not know.
const NAMES: &[(&str, &str)] = &[
    ("@number", "@constant.numeric"),
    ("@property", "@variable.other.member"),
    ("@indent.begin", "@indent @extend"),
    ("@class.outer ", ""),
    ("@class.inner ", ""),
    ("@statement.outer ", ""),
    ("@comment.outer ", ""),
    ("@comment.inner ", ""),
];

/// The queries that Helix reads, with the captures that it knows of those we use.
const QUERIES: &[(&str, &[&str])] = &[
    (
        "highlights",
        &[
            "comment",
            "constant",
            "constant.numeric",
            "keyword",
            "keyword.operator",
            "label",
            "operator",
            "punctuation.bracket",
            "punctuation.delimiter",
            "string",
            "string.special",
            "type",
            "variable",
            "variable.other.member",
        ],
    ),
    ("indents", &["indent", "extend"]),
    ("injections", &["injection.content"]),
    ("tags", &["name", "definition.class", "definition.module", "reference.class"]),
    (
        "textobjects",
        &["class.around", "class.inside", "entry.around", "entry.inside", "comment.around", "comment.inside"],
    ),
];

/// A query of the grammar as Helix reads it.
fn query(name: &str) -> String {
    let path = format!("{}/grammar/tree-sitter/queries/{name}.scm", env!("CARGO_MANIFEST_DIR"));
    let mut text = std::fs::read_to_string(&path).unwrap();
    for (there, here) in NAMES {
        text = text.replace(there, here);
    }
    let about = "Written by `UPDATE=1 cargo test --test editors` from grammar/tree-sitter/queries; not edited by hand.";
    // Its comments speak of every editor.
    let code: Vec<_> = text.lines().filter(|line| !line.starts_with(';')).collect();
    format!("; {about}\n\n{}\n", code.join("\n").trim())
}

/// The captures of a query.
fn captures(query: &str) -> BTreeSet<&str> {
    let ends = |letter: char| !(letter.is_alphanumeric() || matches!(letter, '.' | '_' | '-'));
    query.split('@').skip(1).filter_map(|rest| rest.split(ends).next()).collect()
}

#[test]
fn the_queries_are_the_grammars_under_the_names_of_helix() {
    for (name, known) in QUERIES {
        let query = query(name);
        let found = captures(&query);
        assert!(!found.is_empty(), "{name}");
        let strange: Vec<_> = found.iter().filter(|capture| !known.contains(capture)).collect();
        assert!(strange.is_empty(), "{name}: {strange:?}");
        holds(&format!("editors/helix/queries/framing/{name}.scm"), &query);
    }
}

/// The keys of each kind of table that Helix documents, of those we might use.
const SERVER: &[&str] = &["command", "args", "config", "timeout", "environment", "required-root-patterns"];
const LANGUAGE: &[&str] = &[
    "name",
    "language-id",
    "scope",
    "injection-regex",
    "file-types",
    "roots",
    "auto-format",
    "diagnostic-severity",
    "comment-tokens",
    "indent",
    "language-servers",
    "grammar",
    "formatter",
    "rulers",
];

fn settings() -> Table {
    include_str!("../../editors/helix/languages.toml").parse().unwrap()
}

fn assert_known(table: &Table, known: &[&str]) {
    let strange: Vec<_> = table.keys().filter(|key| !known.contains(&key.as_str())).collect();
    assert!(strange.is_empty(), "{strange:?}");
}

#[test]
fn the_settings_have_the_keys_that_helix_knows() {
    let settings = settings();
    assert_known(&settings, &["language-server", "language", "grammar"]);
    let [language] = settings["language"].as_array().unwrap().as_slice() else { panic!("one language") };
    assert_known(language.as_table().unwrap(), LANGUAGE);
    assert_known(language["indent"].as_table().unwrap(), &["tab-width", "unit"]);
    let [grammar] = settings["grammar"].as_array().unwrap().as_slice() else { panic!("one grammar") };
    assert_known(grammar.as_table().unwrap(), &["name", "source"]);
    assert_known(grammar["source"].as_table().unwrap(), &["path"]);
    for (name, server) in settings["language-server"].as_table().unwrap() {
        assert_known(server.as_table().unwrap(), SERVER);
        assert_eq!(language["language-servers"][0].as_str(), Some(name.as_str()));
    }
}

#[test]
fn the_settings_say_of_the_language_what_the_grammar_says() {
    let settings = settings();
    let (language, grammar) = (&settings["language"][0], &settings["grammar"][0]);
    let about: Value =
        serde_json::from_str(include_str!("../../grammar/tree-sitter/tree-sitter.json")).unwrap();
    let about = &about["grammars"][0];
    for (ours, theirs) in [("name", "name"), ("scope", "scope"), ("injection-regex", "injection-regex")] {
        assert_eq!(language[ours].as_str(), about[theirs].as_str(), "{ours}");
    }
    assert_eq!(language["file-types"][0].as_str(), about["file-types"][0].as_str());
    assert_eq!(grammar["name"], language["name"]);
    let path = grammar["source"]["path"].as_str().unwrap();
    let below = path.strip_prefix("/path/to/storyrod/").unwrap();
    let parser = format!("{}/{below}/src/parser.c", env!("CARGO_MANIFEST_DIR"));
    assert!(std::path::Path::new(&parser).is_file(), "{parser}");
    let server = &settings["language-server"]["storyrod"];
    assert_eq!((server["command"].as_str(), server["args"][0].as_str()), (Some("storyrod"), Some("server")));
    assert_eq!(language["comment-tokens"].as_str(), Some("--"));
}

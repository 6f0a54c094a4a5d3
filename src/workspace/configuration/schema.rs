//! The JSON schema of the configuration file, rendered from the table of its keys.

use serde_json::{Map, Value, json};

use crate::workspace::configuration::key::{Key, LINT, LINT_MEANING, Takes};

/// The schema, for editors that check and complete TOML by one.
pub fn schema() -> Value {
    let mut keys = properties_of(None);
    let mut lint = object(properties_of(Some(LINT)));
    set(&mut lint, "description", json!(LINT_MEANING));
    keys.insert(LINT.to_owned(), lint);
    let mut schema = object(keys);
    // The draft that most servers of TOML read.
    set(&mut schema, "$schema", json!("http://json-schema.org/draft-07/schema#"));
    set(&mut schema, "title", json!("storyrod.toml"));
    set(
        &mut schema,
        "description",
        json!(
            "Marks the root folder of a spec, and says what storyrod looks at and how. Paths are relative to this file's folder; an argument on the command line stands before it."
        ),
    );
    schema
}

fn properties_of(table: Option<&str>) -> Map<String, Value> {
    let keys = Key::ALL.into_iter().filter(|key| key.table() == table);
    keys.map(|key| (key.name().to_owned(), property(key))).collect()
}

fn property(key: Key) -> Value {
    let text = json!({ "type": "string", "minLength": 1 });
    let mut property = match key.takes() {
        Takes::Texts => json!({ "type": "array", "items": text }),
        Takes::Text => text,
        Takes::Address => json!({ "type": "string", "format": "uri" }),
        Takes::Count => json!({ "type": "integer", "minimum": 1 }),
        Takes::Word(words) => json!({ "enum": words }),
    };
    set(&mut property, "description", json!(key.meaning()));
    property
}

fn object(properties: Map<String, Value>) -> Value {
    json!({ "type": "object", "additionalProperties": false, "properties": properties })
}

fn set(schema: &mut Value, name: &str, value: Value) {
    if let Some(members) = schema.as_object_mut() {
        members.insert(name.to_owned(), value);
    }
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    use super::*;
    use crate::workspace::configuration::reading::configuration;

    /// True when the reader finds nothing wrong.
    fn is_read(text: &str) -> bool {
        configuration(Path::new("/job/storyrod.toml"), text).faults.is_empty()
    }

    #[test]
    fn the_committed_schema_is_the_rendered_one() {
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/grammar/storyrod-toml.schema.json");
        let rendered = serde_json::to_string_pretty(&schema()).unwrap() + "\n";
        if std::env::var_os("UPDATE").is_some() {
            std::fs::write(path, &rendered).unwrap();
        }
        let committed = std::fs::read_to_string(path).unwrap_or_default();
        assert!(
            committed == rendered,
            "grammar/storyrod-toml.schema.json is stale: run `UPDATE=1 cargo test`"
        );
    }

    #[test]
    fn the_block_in_the_readme_has_every_key() {
        let readme = include_str!("../../../README.md");
        let block = readme.split("```toml\n").find(|block| block.starts_with("paths")).unwrap();
        let block = block.split("```").next().unwrap();
        assert_eq!(configuration(Path::new("/job/storyrod.toml"), block).faults, []);
        for key in Key::ALL {
            let is_said = block.lines().any(|line| line.starts_with(&format!("{} = ", key.name())));
            assert!(is_said, "README does not name `{}`", key.name());
        }
    }

    #[test]
    fn the_schema_and_the_reader_judge_alike() {
        let schema = jsonschema::options().should_validate_formats(true).build(&schema()).unwrap();
        let judge = |text: &str, is_right: bool| {
            let table: toml::Table = text.parse().unwrap();
            let value = serde_json::to_value(table).unwrap();
            let faults: Vec<String> = schema.iter_errors(&value).map(|error| error.to_string()).collect();
            assert_eq!(faults.is_empty(), is_right, "the schema says of\n{text}{faults:#?}");
            assert_eq!(is_read(text), is_right, "the reader of\n{text}");
        };
        for key in Key::ALL {
            let head = key.table().map(|table| format!("[{table}]\n")).unwrap_or_default();
            let said = |value: &str| format!("{head}{} = {value}\n", key.name());
            judge(&format!("{head}{}\n", key.example()), true);
            // A misspelling, the key in the other table, and a value of a kind that no key takes.
            judge(&format!("{head}x-{}\n", key.example()), false);
            let other = if key.table().is_none() { "[lint]\n" } else { "" };
            judge(&format!("{other}{}\n", key.example()), false);
            judge(&said("true"), false);
            judge(&said("{ x = 1 }"), false);
            match key.takes() {
                Takes::Texts => {
                    judge(&said("[]"), true);
                    ["\"a\"", "[\"\"]", "[\"a\", 1]", "1"]
                        .iter()
                        .for_each(|value| judge(&said(value), false));
                }
                Takes::Text => ["\"\"", "[\"a\"]", "1"].iter().for_each(|value| judge(&said(value), false)),
                Takes::Address => {
                    ["\"\"", "\"rules/\"", "1"].iter().for_each(|value| judge(&said(value), false));
                }
                Takes::Count => {
                    ["1", "64"].iter().for_each(|value| judge(&said(value), true));
                    ["0", "-1", "1.5", "\"4\""].iter().for_each(|value| judge(&said(value), false));
                }
                Takes::Word(words) => {
                    words.iter().for_each(|word| judge(&said(&format!("\"{word}\"")), true));
                    ["\"\"", "\"Text\"", "[\"error\"]", "1"]
                        .iter()
                        .for_each(|value| judge(&said(value), false));
                }
            }
        }
        judge("", true);
        judge("[lint]\n", true);
        judge("lint = 1\n", false);
        judge("[severity]\nstair-headroom = \"off\"\n", false);
    }
}

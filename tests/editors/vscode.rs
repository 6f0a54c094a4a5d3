//! What the extension for VS Code says of the server: settings, commands and colours, beside what the server says.

use std::collections::BTreeSet;

use serde_json::{Map, Value, json};
use storyrod::ide::{Modifier, WordKind};
use storyrod::server;

/// Commands that are the extension's own.
const OF_THE_EXTENSION: [&str; 2] = ["storyrod.restartServer", "storyrod.showLog"];

/// Settings that are the extension's own.
const SET_OF_THE_EXTENSION: [&str; 3] = ["server.path", "server.log", "trace.server"];

/// Modifiers that an editor knows already.
const KNOWN_MODIFIERS: [&str; 4] = ["declaration", "readonly", "documentation", "deprecated"];

fn package() -> Value {
    serde_json::from_str(include_str!("../../editors/vscode/package.json")).unwrap()
}

/// One member of every object of a list.
fn each<'a>(list: &'a Value, member: &str) -> BTreeSet<&'a str> {
    let objects = list.as_array().unwrap();
    let members: BTreeSet<_> = objects.iter().map(|object| object[member].as_str().unwrap()).collect();
    assert_eq!(members.len(), objects.len(), "each {member} stands once");
    members
}

#[test]
fn the_extension_has_the_version_of_the_server() {
    assert_eq!(package()["version"], env!("CARGO_PKG_VERSION"));
}

#[test]
fn every_preference_is_a_setting_with_the_same_default() {
    let package = package();
    let mut offered = Map::new();
    for (name, setting) in package["contributes"]["configuration"]["properties"].as_object().unwrap() {
        let name = name.strip_prefix("storyrod.").unwrap();
        let said = setting["description"].as_str().or(setting["markdownDescription"].as_str());
        assert!(said.is_some_and(|text| !text.is_empty()), "{name} says what it is");
        if SET_OF_THE_EXTENSION.contains(&name) {
            continue;
        }
        let default = setting.get("default").unwrap().clone();
        match name.split_once('.') {
            Some((group, member)) => offered.entry(group).or_insert_with(|| json!({}))[member] = default,
            None => _ = offered.insert(name.to_owned(), default),
        }
    }
    let mut expected = server::default_settings();
    // The extension opens sheets itself, and the editor shows findings beside a hover.
    for own in ["opensSheets", "hoversTellFindings"] {
        assert_eq!(expected.as_object_mut().unwrap().remove(own), Some(json!(true)));
    }
    assert_eq!(Value::Object(offered), expected);
}

#[test]
fn every_command_of_the_server_can_be_called_where_a_spec_is_open() {
    let package = package();
    let commands = each(&package["contributes"]["commands"], "command");
    let is_own = |command: &&&str| !OF_THE_EXTENSION.contains(*command);
    let (at_cursor, whole): (BTreeSet<&str>, BTreeSet<&str>) =
        commands.iter().filter(is_own).partition(|command| command.ends_with("AtCursor"));
    assert_eq!(whole, server::COMMANDS.iter().copied().collect());
    for command in &at_cursor {
        assert!(whole.contains(command.strip_suffix("AtCursor").unwrap()), "{command} is of a sheet");
    }
    let table = include_str!("../../editors/vscode/src/sheets.ts");
    for command in whole.union(&at_cursor) {
        assert_eq!(
            table.matches(&format!("\"{command}\"")).count(),
            1,
            "{command} has its place in the table of sheets"
        );
    }
    let palette = &package["contributes"]["menus"]["commandPalette"];
    assert_eq!(each(palette, "command"), whole.union(&at_cursor).copied().collect());
    for entry in palette.as_array().unwrap() {
        assert_eq!(entry["when"], "editorLangId == framing", "{entry}");
    }
}

#[test]
fn every_kind_of_word_has_a_colour_and_every_modifier_of_our_own_is_described() {
    let package = package();
    let modifiers = each(&package["contributes"]["semanticTokenModifiers"], "id");
    let own = Modifier::ALL.map(Modifier::name).into_iter().filter(|name| !KNOWN_MODIFIERS.contains(name));
    assert_eq!(modifiers, own.collect());
    let scopes = &package["contributes"]["semanticTokenScopes"][0];
    assert_eq!(scopes["language"], "framing");
    let coloured: BTreeSet<_> = scopes["scopes"].as_object().unwrap().keys().map(String::as_str).collect();
    for selector in &coloured {
        let (kind, modifiers) = selector.split_once('.').unwrap_or((selector, ""));
        assert!(kind == "*" || WordKind::ALL.iter().any(|one| one.name() == kind), "{selector}");
        for modifier in modifiers.split('.').filter(|modifier| !modifier.is_empty()) {
            assert!(Modifier::ALL.iter().any(|one| one.name() == modifier), "{selector}");
        }
    }
    for kind in WordKind::ALL {
        assert!(coloured.contains(kind.name()), "{} has scopes", kind.name());
    }
}

//! `editors/protocol.md` beside the server: whatever it says is asked of the real one.

#[path = "../server/session.rs"]
#[allow(dead_code, clippy::expect_used, reason = "made for the sessions of the server's own tests")]
mod session;

use std::cell::RefCell;
use std::collections::BTreeSet;

use serde_json::{Value, json};
use session::Session;
use storyrod::server;
use tower_lsp::lsp_types::Url;

const PAGE: &str = include_str!("../../editors/protocol.md");

/// The blocks of the page with the word behind `json`, in their order.
fn blocks() -> Vec<(&'static str, Value)> {
    let mut blocks = Vec::new();
    for block in PAGE.split("\n```json ").skip(1) {
        let (role, rest) = block.split_once('\n').unwrap();
        let (text, _) = rest.split_once("\n```").unwrap();
        blocks.push((role, serde_json::from_str(text).unwrap_or_else(|fault| panic!("{fault}: {text}"))));
    }
    blocks
}

fn block(role: &str) -> Value {
    let mut found = blocks().into_iter().filter(|(found, _)| *found == role);
    let (_, value) = found.next().unwrap();
    assert!(found.next().is_none(), "one block is `{role}`");
    value
}

/// What stands in backquotes in a text.
fn quoted(text: &str) -> Vec<&str> {
    text.split('`').skip(1).step_by(2).collect()
}

/// The rows of the table under a heading, cell by cell.
fn rows(heading: &str) -> Vec<Vec<&'static str>> {
    let (_, behind) = PAGE.split_once(&format!("\n## {heading}\n")).unwrap();
    let section = behind.split("\n## ").next().unwrap();
    let lines = section.lines().filter(|line| line.starts_with('|')).skip(2);
    lines.map(|line| line.trim_matches('|').split('|').map(str::trim).collect()).collect()
}

/// A client that can do whatever changes what is offered, asked and told.
fn able() -> Value {
    let refreshes = json!({"refreshSupport": true});
    let registers = json!({"dynamicRegistration": true});
    json!({
        "textDocument": {"diagnostic": {}, "rename": {"prepareSupport": true}},
        "workspace": {
            "diagnostics": refreshes, "inlayHint": refreshes, "codeLens": refreshes, "semanticTokens": refreshes,
            "configuration": true, "didChangeConfiguration": registers, "didChangeWatchedFiles": registers,
        },
        "window": {"workDoneProgress": true, "showDocument": {"support": true}},
    })
}

/// The names of what a server offers; those with parts of their own part by part.
fn offered(capabilities: &Value, within: &str, names: &mut BTreeSet<String>) {
    for (name, value) in capabilities.as_object().unwrap() {
        match name.as_str() {
            "positionEncoding" => {}
            "workspace" | "textDocumentSync" | "fileOperations" => {
                offered(value, &format!("{within}{name}."), names);
            }
            _ if *value == json!(false) => {}
            _ => _ = names.insert(format!("{within}{name}")),
        }
    }
}

#[test]
fn the_page_names_what_is_offered_and_nothing_else() {
    let mut names = BTreeSet::new();
    for client in [json!({}), able()] {
        let mut session = Session::start();
        let result = session.initialize(&json!({"processId": null, "rootUri": null, "capabilities": client}));
        offered(&result["capabilities"], "", &mut names);
    }
    let rows = rows("What is offered");
    let said: BTreeSet<String> = rows.iter().flat_map(|row| quoted(row[0])).map(str::to_owned).collect();
    assert_eq!(said, names);
}

#[test]
fn every_method_on_the_page_is_known_to_the_server() {
    let mut session = Session::with(&able());
    let uri = "file:///houses/cabin.framing";
    session.open(uri, "grid\n");
    let place = json!({"line": 0, "character": 0});
    let range = json!({"start": place, "end": place});
    let params = json!({
        "textDocument": {"uri": uri}, "position": place, "range": range, "query": "", "previousResultIds": [],
    });
    let rows = rows("What is offered");
    let methods: Vec<_> = rows.iter().flat_map(|row| quoted(row[1])).collect();
    assert_eq!(methods.iter().collect::<BTreeSet<_>>().len(), methods.len(), "each stands once");
    for method in methods {
        if method.contains("/did") {
            continue; // Told, not asked for: the exchange tells most of them.
        }
        let answer = session.ask(method, &params);
        assert_ne!(answer["error"]["code"], json!(-32601), "{method}");
    }
    session.is_alive();
}

#[test]
fn what_the_server_asks_and_tells_is_on_the_page() {
    let folder = tempfile::tempdir().unwrap();
    let sample = include_str!("../../grammar/samples/loon-cove.framing");
    std::fs::write(folder.path().join("loon-cove.framing"), sample).unwrap();
    for name in 0..12 {
        std::fs::write(folder.path().join(format!("{name}.framing")), "project \"One more\"\n").unwrap();
    }
    let uri = Url::from_directory_path(folder.path()).unwrap();
    let (_, offers) = PAGE.split_once("\nOf the client it asks").unwrap();
    let said: BTreeSet<_> = quoted(offers.split("\n## ").next().unwrap()).into_iter().collect();
    let seen = RefCell::new(BTreeSet::new());
    let mut pushed = able();
    pushed["textDocument"]["diagnostic"] = Value::Null;
    for client in [able(), pushed] {
        let mut session = Session::start();
        session.initialize(&json!({"processId": null, "rootUri": uri, "capabilities": client}));
        let open = uri.join("loon-cove.framing").unwrap();
        session.open(open.as_str(), sample);
        let place = json!({"textDocument": {"uri": open}, "position": {"line": 0, "character": 0}});
        for (method, params) in [
            ("workspace/executeCommand", json!({"command": "storyrod.rod", "arguments": [{"uri": open}]})),
            ("textDocument/hover", place),
            ("shutdown", json!(null)),
        ] {
            let id = session.request(method, &params);
            session.wait_for(|heard| {
                seen.borrow_mut().extend(heard["method"].as_str().map(str::to_owned));
                heard["id"] == json!(id) && heard["method"].is_null()
            });
        }
    }
    let seen = seen.into_inner();
    let strange: Vec<_> = seen.iter().filter(|method| !said.contains(method.as_str())).collect();
    assert!(strange.is_empty(), "{strange:?}");
    for told in ["client/registerCapability", "workspace/configuration", "textDocument/publishDiagnostics"] {
        assert!(seen.contains(told), "{told}: {seen:?}");
    }
}

#[test]
fn the_settings_are_those_of_somebody_who_has_set_nothing() {
    let settings = block("settings");
    assert_eq!(settings, server::default_settings());
    let rows = rows("Settings");
    let said: Vec<_> = rows.iter().flat_map(|row| quoted(row[0])).collect();
    let names: Vec<_> = settings.as_object().unwrap().keys().collect();
    assert_eq!(said, names);
}

#[test]
fn the_commands_give_the_sheets_that_the_page_promises() {
    let rows = rows("Commands");
    let said: Vec<_> = rows.iter().map(|row| quoted(row[0])[0]).collect();
    assert_eq!(said, server::COMMANDS);
    let mut session = Session::plain();
    let uri = "file:///houses/loon-cove.framing";
    session.open(uri, include_str!("../../grammar/samples/loon-cove.framing"));
    let (command, example) = (block("command"), &block("command")["arguments"][0]);
    let answer = session.ask("workspace/executeCommand", &command);
    let text = answer["result"].as_str().unwrap_or_else(|| panic!("{answer}"));
    assert!(text.contains("from deck to deck"), "{text}");
    for row in rows {
        let name = quoted(row[0])[0];
        let mut argument = json!({"uri": uri});
        for member in quoted(row[1]) {
            argument[member] = if member == "element" { json!("C1") } else { example[member].clone() };
        }
        let params = json!({"command": name, "arguments": [argument]});
        let answer = session.ask("workspace/executeCommand", &params);
        assert!(answer["result"].as_str().is_some_and(|text| text.lines().count() > 3), "{name}: {answer}");
    }
    let wrong = json!({"command": "storyrod.takedown", "arguments": [{"uri": uri, "element": "C99"}]});
    let answer = session.ask("workspace/executeCommand", &wrong);
    assert!(answer["error"]["message"].as_str().is_some_and(|why| why.contains("C99")), "{answer}");
}

#[test]
fn the_exchange_goes_as_the_page_shows_it() {
    let mut session = Session::start();
    for (role, message) in blocks() {
        match role {
            "client" => session.send(&message),
            "server" => {
                let name = if message["method"].is_null() { "id" } else { "method" };
                let heard = session.wait_for(|heard| heard[name] == message[name]);
                holds_in(&heard, &message, "");
            }
            _ => {}
        }
    }
    assert_eq!(session.exit_code(), Some(0));
}

/// Fails unless everything that is shown was heard. What is shown may leave members out, but nothing of a list.
fn holds_in(heard: &Value, shown: &Value, place: &str) {
    match (heard, shown) {
        (Value::Object(heard), Value::Object(shown)) => {
            for (name, shown) in shown {
                let place = format!("{place}/{name}");
                let heard = heard.get(name).unwrap_or_else(|| panic!("nothing was heard at {place}"));
                holds_in(heard, shown, &place);
            }
        }
        (Value::Array(heard), Value::Array(shown)) => {
            assert_eq!(heard.len(), shown.len(), "{place}: {heard:?}");
            for (heard, shown) in heard.iter().zip(shown) {
                holds_in(heard, shown, place);
            }
        }
        _ => assert_eq!(heard, shown, "{place}"),
    }
}

#[test]
fn every_folder_stands_in_the_overview() {
    let page = include_str!("../../editors/README.md");
    let folders = std::fs::read_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/editors")).unwrap();
    let folders = folders.map(|entry| entry.unwrap().path()).filter(|path| path.is_dir());
    let names: BTreeSet<_> =
        folders.map(|path| path.file_name().unwrap().to_str().unwrap().to_owned()).collect();
    let rows = page.lines().filter_map(|line| line.strip_prefix("| [")?.split_once("]("));
    let links = rows.filter_map(|(_, link)| link.split_once(')')?.0.strip_suffix('/'));
    assert_eq!(links.map(str::to_owned).collect::<BTreeSet<_>>(), names);
}

#[test]
fn kate_starts_the_server_with_settings_that_it_knows() {
    let file: Value = serde_json::from_str(include_str!("../../editors/kate/lspclient.json")).unwrap();
    let server = &file["servers"]["framing"];
    assert_eq!(server["command"], json!(["storyrod", "server"]));
    let known = server::default_settings();
    for (name, value) in server["initializationOptions"].as_object().unwrap() {
        let same = std::mem::discriminant(value) == std::mem::discriminant(&known[name]);
        assert!(same, "{name} is no setting like {value}");
    }
}

//! Sheets asked for as commands: the text that the command line prints, and a document that the client opens.

use serde_json::{Value, json};

use crate::session::Session;

const HOUSE: &str = include_str!("../../grammar/samples/loon-cove.framing");
const URI: &str = "untitled:house";

fn ask(session: &mut Session, command: &str, mut argument: Value) -> Value {
    argument["uri"] = json!(URI);
    session.ask("workspace/executeCommand", &json!({"command": command, "arguments": [argument]}))
}

/// 13,136 lb of C1 are worked out by hand in `tests/takedown.rs`, the risers of 6-1/2" in `tests/cli/sheets.rs`.
#[test]
fn every_sheet_comes_as_text() {
    let mut session = Session::plain();
    session.open(URI, HOUSE);
    for (command, argument, says) in [
        ("storyrod.takedown", json!({"element": "C1"}), "13,136 lb"),
        ("storyrod.takedown", json!({}), "columns, at the head"),
        ("storyrod.calc", json!({"element": "C1"}), "column C1"),
        ("storyrod.rod", json!({}), "footing F1 top"),
        ("storyrod.steps", json!({"upper": "main", "lower": "sunroom"}), "3 of 6-1/2\""),
    ] {
        let answer = ask(&mut session, command, argument);
        let text = answer["result"].as_str().unwrap_or_else(|| panic!("{answer}"));
        assert!(text.contains(says) && text.contains("licensed professional"), "{text}");
    }
}

#[test]
fn a_command_that_makes_no_sense_says_why() {
    let mut session = Session::plain();
    session.open(URI, HOUSE);
    for (command, argument, says) in [
        ("storyrod.takedown", json!({"element": "C99"}), "there is no element `C99`"),
        ("storyrod.steps", json!({"upper": "main"}), "the names of two floors"),
        ("storyrod.steps", json!({"upper": "main", "lower": "main"}), "one floor"),
        ("storyrod.paint", json!({}), "no command `storyrod.paint`"),
    ] {
        let error = ask(&mut session, command, argument)["error"].clone();
        assert_eq!(error["code"], json!(-32602), "{error}");
        assert!(error["message"].as_str().unwrap().contains(says), "{error}");
    }
    let nothing = session.ask("workspace/executeCommand", &json!({"command": "storyrod.rod"}));
    assert_eq!(nothing["error"]["code"], json!(-32602));
}

#[test]
fn a_sheet_opens_in_a_client_that_opens_documents() {
    let mut session = Session::with(&json!({"window": {"showDocument": {"support": true}}}));
    session.open(URI, HOUSE);
    let text = ask(&mut session, "storyrod.rod", json!({}))["result"].clone();
    let shown = session.wait_for(|message| message["method"] == "window/showDocument");
    let path = shown["params"]["uri"].as_str().unwrap().strip_prefix("file://").unwrap().to_owned();
    assert_eq!(json!(std::fs::read_to_string(&path).unwrap()), text);
    session.send(&json!({"jsonrpc": "2.0", "id": shown["id"], "result": {"success": true}}));
    session.ask("shutdown", &Value::Null);
    session.notify("exit", &Value::Null);
    assert_eq!(session.exit_code(), Some(0));
    assert!(!std::path::Path::new(&path).exists(), "the folder goes with the session");
}

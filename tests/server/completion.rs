//! What an editor asks for while a line is typed: completions and the values of a fact.

use serde_json::{Value, json};

use crate::session::Session;
use crate::text::{ENCODINGS, position, slice};

const URI: &str = "untitled:house";

const LOON_COVE: &str = include_str!("../../grammar/samples/loon-cove.framing");

/// A client that fills in snippets, replaces words and reads Markdown.
fn able(encoding: &str) -> Value {
    json!({
        "general": {"positionEncodings": [encoding]},
        "textDocument": {"completion": {"completionItem": {
            "snippetSupport": true, "insertReplaceSupport": true, "labelDetailsSupport": true,
            "documentationFormat": ["markdown", "plaintext"],
        }}},
    })
}

/// The answer to a question at `$0` of a text.
fn asked(session: &mut Session, method: &str, fixture: &str, encoding: &str) -> Value {
    let at = fixture.find("$0").unwrap();
    let text = fixture.replace("$0", "");
    session.open(URI, &text);
    let place = json!({"textDocument": {"uri": URI}, "position": position(&text, at, encoding)});
    session.ask(method, &place)["result"].clone()
}

#[test]
fn a_support_is_offered_while_its_line_is_half_typed() {
    let fixture =
        LOON_COVE.replace("  bears on      PK1 for 7\"", "  bears on      -- 😀\n  bears on      P$0");
    for encoding in ENCODINGS {
        let mut session = Session::with(&able(encoding));
        session.open(URI, LOON_COVE);
        session.diagnostics(URI, Some(1));
        session.notify("textDocument/didClose", &json!({"textDocument": {"uri": URI}}));
        let list = asked(&mut session, "textDocument/completion", &fixture, encoding);
        let items = list["items"].as_array().unwrap();
        let pocket = items.iter().find(|item| item["label"] == "PK1").unwrap();
        assert!(pocket["detail"].as_str().unwrap().starts_with("pocket, seat 99'-2 13/16\""), "{pocket}");
        let text = fixture.replace("$0", "");
        assert_eq!(slice(&text, &pocket["textEdit"]["replace"], encoding), "P");
        assert_eq!(pocket["textEdit"]["insert"], pocket["textEdit"]["replace"]);
        let resolved = session.ask("completionItem/resolve", pocket)["result"].clone();
        assert_eq!(resolved["documentation"]["kind"], "markdown");
        assert!(
            resolved["documentation"]["value"].as_str().unwrap().contains("**pocket PK1**"),
            "{resolved}"
        );
    }
}

#[test]
fn a_client_without_snippets_gets_plain_text() {
    let mut session = Session::plain();
    let list = asked(&mut session, "textDocument/completion", "beam B1\n  $0\n", "utf-16");
    let size = list["items"].as_array().unwrap().iter().find(|item| item["label"] == "size").unwrap();
    assert_eq!(size["textEdit"]["newText"], "size          ");
    assert_eq!(size["insertTextFormat"], 1);
    let mut session = Session::with(&able("utf-16"));
    let list = asked(&mut session, "textDocument/completion", "beam B1\n  $0\n", "utf-16");
    let size = list["items"].as_array().unwrap().iter().find(|item| item["label"] == "size").unwrap();
    assert_eq!(size["textEdit"]["newText"], "size          ${1:member size}");
    assert_eq!(size["insertTextFormat"], 2);
}

#[test]
fn the_values_of_a_fact_are_told_with_the_one_under_the_cursor() {
    let mut session = Session::with(&able("utf-16"));
    let help = asked(&mut session, "textDocument/signatureHelp", "column C1\n  cap plate $0\n", "utf-16");
    let active = &help["signatures"][help["activeSignature"].as_u64().unwrap() as usize];
    assert!(active["label"].as_str().unwrap().starts_with("cap  plate width x length x thickness"), "{help}");
    // The word `plate` is a value too, and the first.
    assert_eq!(help["activeParameter"], 1);
    let start = active["parameters"][1]["label"][0].as_u64().unwrap() as usize;
    assert!(active["label"].as_str().unwrap()[start..].starts_with("width x length"));
    assert_eq!(asked(&mut session, "textDocument/signatureHelp", "-- $0\n", "utf-16"), Value::Null);
}

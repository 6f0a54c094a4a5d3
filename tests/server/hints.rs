//! Derived numbers beside the text, over the wire.

use serde_json::{Value, json};

use crate::session::Session;
use crate::text::{ENCODINGS, byte, counting_in};

const HOUSE: &str = include_str!("../../grammar/samples/loon-cove.framing");
const URI: &str = "untitled:house";

fn hints(session: &mut Session) -> Vec<Value> {
    let all = json!({"start": {"line": 0, "character": 0}, "end": {"line": 9999, "character": 0}});
    let answer = session.ask("textDocument/inlayHint", &json!({"textDocument": {"uri": URI}, "range": all}));
    answer["result"].as_array().unwrap_or_else(|| panic!("{answer}")).clone()
}

/// 13,136 lb on C1 are worked out by hand in `tests/takedown.rs`.
#[test]
fn a_hint_stands_behind_its_value_and_says_more_when_asked() {
    for encoding in ENCODINGS {
        let mut client = counting_in(encoding);
        client["textDocument"]["inlayHint"] =
            json!({"resolveSupport": {"properties": ["tooltip", "textEdits"]}});
        let mut session = Session::with(&client);
        session.open(URI, HOUSE);
        let hint = hints(&mut session).into_iter().find(|hint| hint["label"] == "13,136 lb").unwrap();
        assert!(HOUSE[..byte(HOUSE, &hint["position"], encoding)].ends_with("bears on      C1 for 10\""));
        assert_eq!(hint.get("tooltip"), None);
        let resolved = session.ask("inlayHint/resolve", &hint)["result"].clone();
        let tooltip = resolved["tooltip"].as_str().unwrap();
        assert!(
            tooltip.contains("beam B1 brings 13,136 lb to column C1") && tooltip.contains("licensed"),
            "{tooltip}"
        );
        // Another text: the hint as it was.
        session.change(URI, 2, &json!([{"text": "grid\n"}]));
        assert_eq!(session.ask("inlayHint/resolve", &hint)["result"], hint);
    }
}

#[test]
fn each_kind_can_be_switched_off() {
    let mut session = Session::start();
    session.initialize(&json!({
        "processId": null, "rootUri": null, "capabilities": {},
        "initializationOptions": {"inlayHints": {"reactions": false}},
    }));
    session.open(URI, HOUSE);
    let labels =
        |hints: Vec<Value>| hints.into_iter().map(|hint| hint["label"].to_string()).collect::<Vec<_>>();
    let shown = labels(hints(&mut session));
    assert!(!shown.iter().any(|label| label.contains("13,136 lb")), "{shown:?}");
    assert!(shown.iter().any(|label| label.contains("bending 83 %")), "{shown:?}");
    let settings = json!({"settings": {"storyrod": {"inlayHints": {"ratios": false}}}});
    session.notify("workspace/didChangeConfiguration", &settings);
    let shown = labels(hints(&mut session));
    assert!(shown.iter().any(|label| label.contains("13,136 lb")), "{shown:?}");
    assert!(!shown.iter().any(|label| label.contains("bending 83 %")), "{shown:?}");
}

//! The house's own figures in an editor: hovers and lenses.

use serde_json::{Value, json};

use crate::session::Session;
use crate::text::{ENCODINGS, counting_in, position, slice};

const LOON_COVE: &str = include_str!("../../grammar/samples/loon-cove.framing");
const URI: &str = "untitled:house";

fn lenses(session: &mut Session) -> Value {
    session.ask("textDocument/codeLens", &json!({"textDocument": {"uri": URI}}))["result"].clone()
}

/// The demo house's own figures, worked out by hand in `src/ide/lens.rs`: 13,136 lb on C1, soil used to 96 %.
#[test]
fn lenses_say_the_governing_figures_and_open_their_sheets() {
    let text = format!("-- 漢😀\n{}", LOON_COVE.replace("column C1 \"", "column C1 \"😀 "));
    for encoding in ENCODINGS {
        let mut session = Session::with(&counting_in(encoding));
        session.open(URI, &text);
        let all = lenses(&mut session);
        let lens_of = |name: &str| {
            let mut all = all.as_array().unwrap().iter();
            all.find(|lens| slice(&text, &lens["range"], encoding) == name).unwrap()["command"].clone()
        };
        assert_eq!(lens_of("C1")["title"], "carries 13,136 lb · cap 82 %");
        assert_eq!(lens_of("F1")["title"], "carries 13,212 lb · soil 96 %");
        for (name, says) in [
            ("C1", "beam B1"),
            ("B1", "Calculation sheet"),
            ("S2", "Step from main down to sunroom"),
            ("main", "Rod list"),
        ] {
            let command = lens_of(name);
            let params = json!({"command": command["command"], "arguments": command["arguments"]});
            let sheet = session.ask("workspace/executeCommand", &params);
            assert!(sheet["result"].as_str().unwrap().contains(says), "{sheet}");
        }
    }
}

#[test]
fn who_wants_no_lenses_gets_none() {
    let mut session = Session::start();
    let options = json!({"codeLens": false});
    let params =
        json!({"processId": null, "rootUri": null, "capabilities": {}, "initializationOptions": options});
    let offered = session.initialize(&params);
    assert_eq!(offered["capabilities"]["codeLensProvider"], json!({"resolveProvider": false}));
    session.open(URI, LOON_COVE);
    assert_eq!(lenses(&mut session), Value::Null);
}

/// The demo house's own figures: 13,136 lb on C1, cut to 96-5/16".
#[test]
fn a_hover_comes_as_the_client_renders_it() {
    let text = format!("-- 漢😀\n{LOON_COVE}");
    for encoding in ENCODINGS {
        for is_markdown in [true, false] {
            let mut capabilities = counting_in(encoding);
            if is_markdown {
                capabilities["textDocument"]["hover"] = json!({"contentFormat": ["markdown", "plaintext"]});
            }
            let mut session = Session::with(&capabilities);
            session.open(URI, &text);
            let place = position(&text, text.find("C1 \"Column").unwrap() + 1, encoding);
            let params = json!({"textDocument": {"uri": URI}, "position": place});
            let hover = session.ask("textDocument/hover", &params)["result"].clone();
            let said = hover["contents"]["value"].as_str().unwrap();
            for part in
                ["carries 13,136 lb by D + L", "96-5/16\"", "have it checked by a licensed professional"]
            {
                assert!(said.contains(part), "{said}");
            }
            assert_eq!(said.contains("**column C1**"), is_markdown, "{said}");
            assert_eq!(hover["contents"]["kind"], if is_markdown { "markdown" } else { "plaintext" });
            assert_eq!(slice(&text, &hover["range"], encoding), "C1");
        }
    }
}

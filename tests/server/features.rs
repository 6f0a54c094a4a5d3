//! What an editor asks for: hovers and formatting.

use serde_json::{Value, json};
use storyrod::syntax;
use storyrod::syntax::vocabulary::{ElementKind, spec_of};

use crate::session::Session;
use crate::text::{ENCODINGS, counting_in, position, slice, with_edits};

const URI: &str = "untitled:house";

fn hover_at(session: &mut Session, text: &str, what: &str, encoding: &str) -> Value {
    let place = position(text, text.find(what).unwrap(), encoding);
    session.ask("textDocument/hover", &json!({"textDocument": {"uri": URI}, "position": place}))["result"]
        .clone()
}

fn formatted(session: &mut Session, text: &str, encoding: &str) -> String {
    let options = json!({"tabSize": 2, "insertSpaces": true});
    let answer =
        session.ask("textDocument/formatting", &json!({"textDocument": {"uri": URI}, "options": options}));
    with_edits(text, &answer, encoding)
}

#[test]
fn a_fact_and_a_heading_say_what_the_vocabulary_says_of_them() {
    let column = spec_of(ElementKind::Column);
    let fact = column.facts.iter().find(|fact| fact.phrase == "stands on").unwrap();
    let text = "-- 😀\ncolumn C1\n  stands on  F1 -- 漢\n";
    for encoding in ENCODINGS {
        let mut session = Session::with(&counting_in(encoding));
        session.open(URI, text);
        for (what, meaning, range) in
            [("column", column.summary, "column C1"), ("on", fact.meaning, "stands on  F1")]
        {
            let at = if what == "on" { "ds on" } else { what };
            let hover = hover_at(&mut session, text, at, encoding);
            // Such a client renders no Markdown, so no marks are sent.
            let said = hover["contents"]["value"].as_str().unwrap();
            assert!(said.contains(&meaning.replace('`', "")), "{hover}");
            let about = slice(text, &hover["range"], encoding);
            assert!(about.starts_with(&range[..3]), "{about}");
        }
        assert_eq!(hover_at(&mut session, text, "😀", encoding), Value::Null);
    }
}

#[test]
fn a_finding_says_its_rule_under_the_cursor() {
    let text =
        include_str!("../../grammar/samples/first.framing").replace("frost         42", "frost         48");
    let mut session = Session::plain();
    session.open(URI, &text);
    let shown = session.diagnostics(URI, Some(1));
    let hover = hover_at(&mut session, &text, slice(&text, &shown[0]["range"], "utf-16"), "utf-16");
    let said = hover["contents"]["value"].as_str().unwrap();
    assert!(said.contains("frost-depth") && said.contains("\nWhy\n") && !said.contains("**"), "{said}");
    assert_eq!(hover["range"], shown[0]["range"]);
}

#[test]
fn a_hover_right_behind_a_change_is_about_the_changed_text() {
    let mut session = Session::plain();
    session.open(URI, "column C1\n");
    for version in 2..30 {
        let text = "\n".repeat(version) + "column C1\n";
        session.change(URI, i32::try_from(version).unwrap(), &json!([{"text": text}]));
        let hover = hover_at(&mut session, &text, "column", "utf-16");
        assert_eq!(hover["range"]["start"]["line"], json!(version));
    }
}

#[test]
fn formatting_leads_to_what_the_formatter_writes() {
    let text = "project   \"漢😀\"   -- 😀\n\n\n\n frost 48\"\ncolumn C1\n\tat B/2\n";
    for encoding in ENCODINGS {
        for text in [text.to_owned(), format!("\u{feff}{text}"), text.replace('\n', "\r\n")] {
            let mut session = Session::with(&counting_in(encoding));
            session.open(URI, &text);
            let plain = text.trim_start_matches('\u{feff}');
            let line_end = if plain.contains("\r\n") { "\r\n" } else { "\n" };
            let expected = text.replace(plain, &syntax::format(plain).replace('\n', line_end));
            assert_eq!(formatted(&mut session, &text, encoding), expected);
        }
    }
}

#[test]
fn a_document_that_is_not_open_has_no_answers() {
    let mut session = Session::plain();
    assert_eq!(hover_at(&mut session, "x", "x", "utf-16"), Value::Null);
    let params = json!({"textDocument": {"uri": URI}, "options": {"tabSize": 2, "insertSpaces": true}});
    assert_eq!(session.ask("textDocument/formatting", &params)["result"], Value::Null);
}

#[test]
fn a_flood_of_cancelled_requests_is_answered_one_by_one() {
    let mut session = Session::plain();
    session.open(URI, include_str!("../../grammar/samples/loon-cove.framing"));
    let place = json!({"textDocument": {"uri": URI}, "position": {"line": 0, "character": 0}});
    let ids: Vec<u64> = (0..200).map(|_| session.request("textDocument/hover", &place)).collect();
    for id in &ids {
        session.notify("$/cancelRequest", &json!({"id": id}));
    }
    for id in ids {
        let answer = session.answer(id);
        // The protocol's RequestCancelled, unless the answer was quicker.
        assert!(answer.get("result").is_some() || answer["error"]["code"] == json!(-32800), "{answer}");
    }
}

//! What can be done about a place, over the wire.

use serde_json::{Value, json};

use crate::session::Session;
use crate::text::{byte, position};

const URI: &str = "untitled:house";

const HOUSE: &str = "project \"H\u{e9}\u{1f600}\"

floor main
  subfloor      100'-0\"
  deck          3/4\"

wall W1
  kind          concrete
  top           98'-4\"
  sill          1 of 2x6 treated

joists J1
  floor         main
  size          2x10 SPF No.2
  bears on      W1
";

fn session(code_action: &Value) -> Session {
    let mut code_action = code_action.clone();
    code_action["codeActionLiteralSupport"] = json!({"codeActionKind": {"valueSet": []}});
    Session::with(&json!({
        "textDocument": {"codeAction": code_action},
        "workspace": {"workspaceEdit": {"documentChanges": true}},
    }))
}

fn offered(session: &mut Session, text: &str, what: &str, context: &Value) -> Vec<Value> {
    let place = position(text, text.find(what).unwrap(), "utf-16");
    let params = json!({
        "textDocument": {"uri": URI}, "range": {"start": place, "end": place}, "context": context,
    });
    session.ask("textDocument/codeAction", &params)["result"].as_array().unwrap().clone()
}

fn titled<'a>(actions: &'a [Value], title: &str) -> &'a Value {
    let found = actions.iter().find(|action| action["title"] == title);
    found.unwrap_or_else(|| panic!("{title} is not among {actions:#?}"))
}

/// The text with the edits of an action, which are meant for this version of it.
fn after(text: &str, action: &Value, version: i32) -> String {
    let [change] = action["edit"]["documentChanges"].as_array().unwrap().as_slice() else {
        panic!("one document changes: {action}")
    };
    assert_eq!(change["textDocument"], json!({"uri": URI, "version": version}));
    let mut text = text.to_owned();
    for edit in change["edits"].as_array().unwrap().iter().rev() {
        let [start, end] = ["start", "end"].map(|side| byte(&text, &edit["range"][side], "utf-16"));
        text.replace_range(start..end, edit["newText"].as_str().unwrap());
    }
    text
}

/// By hand: 100'-0" - 3/4" - 9-1/4" - 1-1/2" = 99'-0 1/2".
#[test]
fn a_fix_makes_its_diagnostic_vanish() {
    let mut session = session(&json!({}));
    session.open(URI, HOUSE);
    let shown = session.diagnostics(URI, Some(1));
    let finding = shown.iter().find(|it| it["code"] == "stack-does-not-close").unwrap();
    let context = json!({"diagnostics": [finding]});
    let actions = offered(&mut session, HOUSE, "98'-4", &context);
    let fix = titled(&actions, "write 99'-0 1/2\"");
    assert_eq!((&fix["kind"], &fix["isPreferred"]), (&json!("quickfix"), &json!(true)));
    assert_eq!(fix["diagnostics"], json!([finding]));
    let fixed = after(HOUSE, fix, 1);
    assert_eq!(fixed, HOUSE.replace("98'-4\"", "99'-0 1/2\""));
    session.change(URI, 2, &json!([{"text": fixed}]));
    let left = session.diagnostics(URI, Some(2));
    assert!(left.iter().all(|it| it["code"] != "stack-does-not-close"), "{left:#?}");
}

#[test]
fn everything_with_one_answer_is_fixed_when_it_is_asked_for() {
    let mut session = session(&json!({"dataSupport": true, "resolveSupport": {"properties": ["edit"]}}));
    let text = HOUSE.replace("floor         main", "floor         mian").replace("joists", "josts");
    session.open(URI, &text);
    let on_save = json!({"diagnostics": [], "only": ["source.fixAll"], "triggerKind": 2});
    let actions = offered(&mut session, &text, "project", &on_save);
    assert_eq!(actions.len(), 1, "{actions:#?}");
    assert_eq!((&actions[0]["kind"], &actions[0]["edit"]), (&json!("source.fixAll.storyrod"), &Value::Null));
    let resolved = session.ask("codeAction/resolve", &actions[0])["result"].clone();
    assert_eq!(after(&text, &resolved, 1), HOUSE.replace("98'-4\"", "99'-0 1/2\""));
    // What was offered for a text that has changed since is not done to the new one.
    session.change(URI, 2, &json!([{"text": format!("\n{text}")}]));
    let answer = session.ask("codeAction/resolve", &actions[0]);
    assert_eq!(answer["error"]["code"], json!(-32801), "{answer}");
}

#[test]
fn facts_are_ordered_when_it_is_asked_for() {
    let mut session = session(&json!({}));
    let turned = HOUSE.replace(
        "  floor         main\n  size          2x10 SPF No.2\n",
        "  size          2x10 SPF No.2\n  floor         main\n",
    );
    session.open(URI, &turned);
    let actions = offered(&mut session, &turned, "joists", &json!({"diagnostics": [], "only": ["source"]}));
    let organize = actions.iter().find(|it| it["kind"] == "source.organize.storyrod").unwrap();
    assert_eq!(after(&turned, organize, 1), HOUSE);
}

#[test]
fn what_can_not_be_done_is_told_to_who_wants_to_know() {
    let text = "project\nwall W1\n  kind          concrete\n  top           98'-4\"\n";
    let follow = |code_action: Value| {
        let mut session = session(&code_action);
        session.open(URI, text);
        let actions = offered(&mut session, text, "98'", &json!({"diagnostics": []}));
        actions.into_iter().find(|it| it["title"] == "let `top` follow from the rest")
    };
    assert_eq!(follow(json!({})), None);
    let told = follow(json!({"disabledSupport": true})).unwrap();
    assert_eq!(told["disabled"]["reason"], "nothing else says it");
    assert_eq!((&told["kind"], &told["edit"]), (&json!("refactor.rewrite"), &Value::Null));
}

#[test]
fn an_editor_that_asks_by_itself_gets_fixes_and_no_more() {
    let mut session = session(&json!({}));
    session.open(URI, HOUSE);
    let by_itself = json!({"diagnostics": [], "triggerKind": 2});
    let actions = offered(&mut session, HOUSE, "98'-4", &by_itself);
    let titles: Vec<&Value> = actions.iter().map(|action| &action["title"]).collect();
    assert_eq!(titles, ["write 99'-0 1/2\""]);
    let by_hand = offered(&mut session, HOUSE, "98'-4", &json!({"diagnostics": [], "triggerKind": 1}));
    titled(&by_hand, "waive `stack-does-not-close` on wall W1, because …");
}

#[test]
fn a_client_of_commands_only_is_offered_nothing() {
    let mut session = Session::plain();
    session.open(URI, HOUSE);
    let place = position(HOUSE, HOUSE.find("98'").unwrap(), "utf-16");
    let params = json!({
        "textDocument": {"uri": URI}, "range": {"start": place, "end": place}, "context": {"diagnostics": []},
    });
    assert_eq!(session.ask("textDocument/codeAction", &params)["result"], Value::Null);
}

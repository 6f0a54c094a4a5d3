//! How a session begins and ends. Codes: Language Server Protocol 3.17, "Server lifecycle" and "Error codes".

use std::process::{Command, Stdio};

use serde_json::json;

use crate::session::Session;

const URI: &str = "untitled:house";

#[test]
fn shutdown_then_exit_is_code_0_with_the_input_still_open() {
    let mut session = Session::plain();
    session.open(URI, "grid\n");
    let answer = session.ask("shutdown", &json!(null));
    assert_eq!(answer.get("result"), Some(&json!(null)));
    session.notify("exit", &json!(null));
    assert_eq!(session.exit_code(), Some(0));
}

#[test]
fn exit_alone_is_code_1() {
    let mut session = Session::plain();
    session.notify("exit", &json!(null));
    assert_eq!(session.exit_code(), Some(1));
    let mut session = Session::start();
    session.notify("exit", &json!(null));
    assert_eq!(session.exit_code(), Some(1));
}

#[test]
fn the_end_of_the_input_is_code_1_unless_we_were_shut_down() {
    for cut in [b"".as_slice(), b"Content-Le", b"Content-Length: 500\r\n\r\n{\"jsonrpc\""] {
        let mut session = Session::plain();
        session.raw(cut);
        session.hang_up();
        assert_eq!(session.exit_code(), Some(1));
    }
    let mut session = Session::plain();
    session.ask("shutdown", &json!(null));
    session.hang_up();
    assert_eq!(session.exit_code(), Some(0));
}

#[test]
fn the_death_of_the_editor_ends_the_server() {
    let mut editor = Command::new("sleep").arg("600").stdout(Stdio::null()).spawn().unwrap();
    let mut session = Session::start();
    session.initialize(&json!({"processId": editor.id(), "rootUri": null, "capabilities": {}}));
    session.is_alive();
    editor.kill().unwrap();
    editor.wait().unwrap();
    assert_eq!(session.exit_code(), Some(1));
}

#[test]
fn requests_out_of_turn_are_refused() {
    let place = json!({"textDocument": {"uri": URI}, "position": {"line": 0, "character": 0}});
    let mut session = Session::start();
    let answer = session.ask("textDocument/hover", &place);
    assert_eq!(answer["error"]["code"], json!(-32002));
    session.initialize(&json!({"capabilities": {}}));
    let answer = session.ask("initialize", &json!({"capabilities": {}}));
    assert_eq!(answer["error"]["code"], json!(-32600));
    session.ask("shutdown", &json!(null));
    for method in ["textDocument/hover", "shutdown"] {
        assert_eq!(session.ask(method, &place)["error"]["code"], json!(-32600), "{method}");
    }
}

#[test]
fn an_odd_capability_is_no_reason_to_refuse_a_client() {
    let mut session = Session::start();
    let result = session.initialize(&json!({
        "processId": null,
        "rootUri": "",
        "capabilities": {
            "textDocument": {"callHierarchy": []},
            "general": {"positionEncodings": ["utf-8", "utf-16"]},
        },
    }));
    assert_eq!(result["capabilities"]["positionEncoding"], json!("utf-8"));
}

#[test]
fn a_client_that_watches_files_is_asked_to_and_may_take_its_time() {
    let watching = json!({"workspace": {"didChangeWatchedFiles": {"dynamicRegistration": true}}});
    let mut session = Session::with(&watching);
    let question = session.wait_for(|message| message["method"] == "client/registerCapability");
    session.is_alive();
    session.send(&json!({"jsonrpc": "2.0", "id": question["id"], "result": null}));
    session.is_alive();
}

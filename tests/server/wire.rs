//! What comes over the wire, well made or not. Codes: JSON-RPC 2.0, section 5.1.

use serde_json::{Value, json};

use crate::session::{Session, framed};

#[test]
fn headers_may_be_written_in_several_ways() {
    for header in [
        "Content-Length: LEN\r\nContent-Type: application/vscode-jsonrpc; charset=utf-8\r\n\r\n",
        "Content-Type: application/vscode-jsonrpc; charset=utf8\r\nContent-Length: LEN\r\n\r\n",
        "content-length: LEN\r\n\r\n",
        "Content-Length:LEN\r\n\r\n",
        "Content-Length: LEN\n\n",
    ] {
        let mut session = Session::plain();
        let body = json!({"jsonrpc": "2.0", "id": "x", "method": "storyrod/noSuchMethod"}).to_string();
        session.raw((header.replace("LEN", &body.len().to_string()) + &body).as_bytes());
        session.wait_for(|message| message["id"] == "x");
    }
}

#[test]
fn a_message_may_come_in_pieces_and_many_in_one() {
    let mut session = Session::plain();
    let message =
        |id: u32| framed(json!({"jsonrpc": "2.0", "id": id, "method": "storyrod/é"}).to_string().as_bytes());
    for byte in message(1000) {
        session.raw(&[byte]);
    }
    session.wait_for(|message| message["id"] == 1000);
    let many: Vec<u8> = (2000..2050).flat_map(message).collect();
    session.raw(&many);
    for id in 2000..2050 {
        session.wait_for(|message| message["id"] == id);
    }
}

#[test]
fn a_body_without_meaning_is_answered_with_the_code_that_says_why() {
    let deep = r#"{"jsonrpc":"2.0","method":"x","params":"#.to_owned()
        + &"[".repeat(100_000)
        + &"]".repeat(100_000)
        + "}";
    for (body, code) in [
        (br#"{"jsonrpc": "2.0", "id": 1, "#.as_slice(), -32700),
        (b"", -32700),
        (b"{\"jsonrpc\":\"2.0\",\"method\":\"\xff\xfe\"}", -32700),
        (deep.as_bytes(), -32700),
        (b"42", -32600),
        (br#"[{"jsonrpc":"2.0","id":7,"method":"x"}]"#, -32600),
        (br#"{"jsonrpc":"2.0","foo":1}"#, -32600),
        (br#"{"jsonrpc":"2.0","method":5}"#, -32600),
    ] {
        let mut session = Session::plain();
        session.raw(&framed(body));
        let answer = session.wait_for(|message| message.get("error").is_some());
        assert_eq!((&answer["id"], &answer["error"]["code"]), (&Value::Null, &json!(code)));
        session.is_alive();
    }
}

#[test]
fn the_session_goes_on_behind_a_header_without_meaning() {
    let noise: Vec<u8> = (0..=255).cycle().take(2048).collect();
    let endless = "X-A: ".to_owned() + &"a".repeat(2_000_000);
    for rubbish in [
        b"Content-Length: abc\r\n\r\n{}".as_slice(),
        b"Content-Length: -5\r\n\r\n{}",
        b"Content-Length: 99999999999\r\n\r\n{}",
        b"Content-Length: 999999999999999999999999999999\r\n\r\n{}",
        b"X-Foo: 1\r\n\r\n{}",
        b"hello world\r\n\r\n",
        &noise,
        endless.as_bytes(),
    ] {
        let mut session = Session::plain();
        session.raw(rubbish);
        session.is_alive();
        session.wait_for(|message| message["error"]["code"] == json!(-32700));
    }
}

#[test]
fn ids_come_back_as_they_were() {
    let mut session = Session::plain();
    for id in [json!("a"), json!(""), json!("7"), json!(0), json!(-3), json!(2_147_483_647)] {
        session.send(&json!({"jsonrpc": "2.0", "id": id, "method": "storyrod/noSuchMethod"}));
        session.wait_for(|message| message["id"] == id);
    }
}

#[test]
fn unknown_methods_and_odd_parameters_are_refused() {
    let mut session = Session::plain();
    session.notify("storyrod/noSuchNotification", &json!({"a": 1}));
    session.notify("$/noSuchNotification", &json!([1, 2]));
    assert_eq!(session.ask("$/noSuchRequest", &json!({}))["error"]["code"], json!(-32601));
    for params in [json!({}), json!([]), json!({"textDocument": {"uri": 5}})] {
        for method in ["textDocument/hover", "textDocument/formatting"] {
            assert_eq!(session.ask(method, &params)["error"]["code"], json!(-32602), "{method} {params}");
        }
    }
}

#[test]
fn answers_to_nothing_and_cancellations_of_nothing_are_passed_over() {
    let mut session = Session::plain();
    session.send(&json!({"jsonrpc": "2.0", "id": 424_242, "result": null}));
    session.notify("$/cancelRequest", &json!({"id": 99_999}));
    session.notify("$/cancelRequest", &json!({"id": "none"}));
    session.is_alive();
}

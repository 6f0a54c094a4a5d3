//! Documents come, change and go; what is wrong with them is shown where and as long as it is.

use std::path::Path;

use serde_json::{Value, json};

use crate::session::{Session, framed};
use crate::text::{ENCODINGS, counting_in, position, slice};

const URI: &str = "untitled:house";

/// A house in which nothing is wrong.
const HOUSE: &str = include_str!("../../grammar/samples/first.framing");

/// Where its foundation begins.
const FOUNDATION: &str = "wall W1";

/// The line that is made a mistake, and what it becomes. By hand: the grade is 98'-0", the footing's underside
/// 95'-0 1/2" less 8", which is 94'-4 1/2"; that is 3'-7 1/2" deep, more than 42" and less than 48".
const FROST: [&str; 2] = ["frost         42\"", "frost         48\""];

/// What the finding is about: the footing's top.
const SHALLOW: &str = "95'-0 1/2\"";

fn broken() -> String {
    HOUSE.replace(FROST[0], FROST[1])
}

/// The places of findings of the one rule.
fn shallow<'a>(text: &'a str, diagnostics: &[Value]) -> Vec<&'a str> {
    let about_frost = diagnostics.iter().filter(|one| one["code"] == "frost-depth");
    about_frost.map(|one| slice(text, &one["range"], "utf-16")).collect()
}

/// A change of the first place where `old` stands.
fn replacing(text: &str, old: &str, new: &str, encoding: &str) -> Value {
    let start = text.find(old).unwrap();
    let range = json!({
        "start": position(text, start, encoding),
        "end": position(text, start + old.len(), encoding),
    });
    json!([{"range": range, "text": new}])
}

fn uri_of(path: &Path) -> String {
    format!("file://{}", path.display())
}

#[test]
fn a_mistake_is_shown_at_its_place_until_it_is_mended() {
    let mut session = Session::plain();
    session.open(URI, HOUSE);
    assert_eq!(session.diagnostics(URI, Some(1)), [Value::Null; 0]);
    session.change(URI, 2, &replacing(HOUSE, FROST[0], FROST[1], "utf-16"));
    let shown = session.diagnostics(URI, Some(2));
    assert_eq!(shallow(&broken(), &shown), [SHALLOW]);
    assert_eq!((&shown[0]["source"], &shown[0]["severity"]), (&json!("storyrod"), &json!(1)));
    session.change(URI, 3, &replacing(&broken(), FROST[1], FROST[0], "utf-16"));
    assert_eq!(session.diagnostics(URI, Some(3)), [Value::Null; 0]);
    session.change(URI, 4, &json!([{"text": broken()}]));
    assert_eq!(session.diagnostics(URI, Some(4)), shown);
    session.notify("textDocument/didClose", &json!({"textDocument": {"uri": URI}}));
    assert_eq!(session.diagnostics(URI, None), [Value::Null; 0]);
}

#[test]
fn five_hundred_changes_in_one_write_count_in_their_order() {
    let sample = include_str!("../../grammar/samples/loon-cove.framing");
    let typed = &sample[..sample.char_indices().nth(500).unwrap().0];
    let mut session = Session::plain();
    session.open(URI, "");
    let mut burst = Vec::new();
    for (version, (at, character)) in (2..).zip(typed.char_indices()) {
        let place = position(typed, at, "utf-16");
        let change = json!({"range": {"start": place, "end": place}, "text": character.to_string()});
        let params = json!({"textDocument": {"uri": URI, "version": version}, "contentChanges": [change]});
        let message = json!({"jsonrpc": "2.0", "method": "textDocument/didChange", "params": params});
        burst.extend(framed(message.to_string().as_bytes()));
    }
    session.raw(&burst);
    let after_typing = session.diagnostics(URI, Some(501));
    session.open("untitled:whole", typed);
    assert_eq!(after_typing, session.diagnostics("untitled:whole", Some(1)));
}

#[test]
fn a_change_is_placed_in_the_encoding_agreed_on() {
    let text = "-- 😀漢 a\u{301}\r\n".to_owned() + &HOUSE.replace(FROST[0], "frost 42\"  -- 😀漢 frost 42\"");
    for encoding in ENCODINGS {
        let mut session = Session::with(&counting_in(encoding));
        session.open(URI, &text);
        let start = text.find("frost 42").unwrap();
        let end = start + text[start..].find('\n').unwrap();
        let range = json!({"start": position(&text, start, encoding), "end": position(&text, end, encoding)});
        // First the whole line, then, behind what the first change left, a piece of its comment.
        let first = json!({"range": range, "text": "frost 42\" -- 😀\n  -- x"});
        let half_way = text[..start].to_owned() + "frost 42\" -- 😀\n  -- x" + &text[end..];
        let second = replacing(&half_way, "2\" -- 😀", "8\" -- 漢", encoding)[0].clone();
        session.change(URI, 2, &json!([first, second]));
        let whole = half_way.replacen("2\" -- 😀", "8\" -- 漢", 1);
        assert_eq!(shallow(&whole, &session.diagnostics(URI, Some(2))), [SHALLOW]);
    }
}

#[test]
fn places_are_the_same_in_every_encoding() {
    let text = "-- 𝄞 a\u{301} 漢\r\nproject \"漢😀\" §\rnonsense 😀 P1\ncolumn C1\n  note 😀 stands \"漢\n  frost 48\" é 𝄞 §";
    let slices = ENCODINGS.map(|encoding| {
        let mut session = Session::with(&counting_in(encoding));
        session.open(URI, text);
        let shown = session.diagnostics(URI, Some(1));
        let slices = shown.iter().map(|one| slice(text, &one["range"], encoding).to_owned());
        slices.collect::<Vec<_>>()
    });
    assert!(slices[0].iter().any(|slice| slice == "nonsense"), "{:?}", slices[0]);
    // This one stands behind an astral character of its line.
    assert!(slices[0].iter().any(|slice| slice == "\"漢"), "{:?}", slices[0]);
    assert_eq!(slices[1], slices[0]);
    assert_eq!(slices[2], slices[0]);
}

#[test]
fn a_byte_order_mark_moves_nothing() {
    for encoding in ENCODINGS {
        let text = format!("\u{feff}{}", broken());
        let mut session = Session::with(&counting_in(encoding));
        session.open(URI, &text);
        let shown = session.diagnostics(URI, Some(1));
        assert_eq!(shallow(&text, &shown), [SHALLOW]);
        session.change(URI, 2, &replacing(&text, FROST[1], FROST[0], encoding));
        assert_eq!(session.diagnostics(URI, Some(2)), [Value::Null; 0]);
    }
}

#[test]
fn a_place_outside_the_text_does_no_harm() {
    let (before, behind) = HOUSE.split_at(HOUSE.find(FOUNDATION).unwrap());
    let mut session = Session::plain();
    session.open(URI, before);
    session.diagnostics(URI, Some(1));
    let far = json!({"line": 2_147_483_647, "character": 2_147_483_647});
    session.change(URI, 2, &json!([{"range": {"start": far, "end": far}, "text": behind}]));
    assert_eq!(session.diagnostics(URI, Some(2)), [Value::Null; 0]);
    for method in ["textDocument/hover", "textDocument/formatting"] {
        let options = json!({"tabSize": 2, "insertSpaces": true});
        let params = json!({"textDocument": {"uri": URI}, "position": far, "options": options});
        assert!(session.ask(method, &params).get("result").is_some());
    }
}

/// A folder with a house in two files, the foundation apart.
fn two_files(root: &str) -> (tempfile::TempDir, [std::path::PathBuf; 2], [String; 2]) {
    let folder = tempfile::tempdir().unwrap();
    let real = folder.path().canonicalize().unwrap();
    let paths = ["house.framing", "foundation.framing"].map(|name| real.join(name));
    let (before, behind) = root.split_at(root.find(FOUNDATION).unwrap());
    let texts = [format!("{before}include \"foundation.framing\"\n"), behind.to_owned()];
    for (path, text) in paths.iter().zip(&texts) {
        std::fs::write(path, text).unwrap();
    }
    (folder, paths, texts)
}

#[test]
fn files_that_are_not_open_are_shown_too_and_cleared_in_the_end() {
    let (_folder, [house, part], [root, foundation]) = two_files(&broken());
    let [house_uri, part_uri] = [uri_of(&house), uri_of(&part)];
    let mut session = Session::plain();
    session.open(&house_uri, &root);
    let shown = session.diagnostics(&part_uri, None);
    assert_eq!(shallow(&foundation, &shown), [SHALLOW]);

    // The open document stands before the file. By hand: a foot deeper is 4'-7 1/2".
    let deeper = foundation.replace(SHALLOW, "94'-0 1/2\"");
    session.open(&part_uri, &deeper);
    assert_eq!(shallow(&deeper, &session.diagnostics(&part_uri, Some(1))), [""; 0]);
    session.notify("textDocument/didClose", &json!({"textDocument": {"uri": part_uri}}));
    assert_eq!(session.diagnostics(&part_uri, None), shown);

    // The file changes under us.
    std::fs::write(&part, format!("\n{foundation}")).unwrap();
    session.notify("workspace/didChangeWatchedFiles", &json!({"changes": [{"uri": part_uri, "type": 2}]}));
    let moved = session.diagnostics(&part_uri, None);
    assert_eq!(shallow(&format!("\n{foundation}"), &moved), [SHALLOW]);

    session.notify("textDocument/didClose", &json!({"textDocument": {"uri": house_uri}}));
    assert_eq!(session.diagnostics(&part_uri, None), [Value::Null; 0]);
}

#[test]
fn a_document_that_opens_finds_the_project_that_includes_it() {
    let (_folder, [_, part], [_, foundation]) = two_files(&broken());
    let mut session = Session::plain();
    session.open(&uri_of(&part), &foundation);
    assert_eq!(shallow(&foundation, &session.diagnostics(&uri_of(&part), Some(1))), [SHALLOW]);
}

#[test]
fn a_fault_of_the_configuration_is_shown_in_the_configuration() {
    let folder = tempfile::tempdir().unwrap();
    let folder = folder.path().canonicalize().unwrap();
    std::fs::write(folder.join("storyrod.toml"), "\nnonsense = 1\n").unwrap();
    let mut session = Session::plain();
    session.open(&uri_of(&folder.join("house.framing")), "project \"P\"\n");
    let shown = session.diagnostics(&uri_of(&folder.join("storyrod.toml")), None);
    assert_eq!(shown[0]["range"]["start"], json!({"line": 1, "character": 0}));
}

/// Both houses have the one mistake; a draft is shown once it is looked through, and for who opens it.
#[test]
fn what_the_configuration_leaves_out_is_shown_to_who_opens_it() {
    let folder = tempfile::tempdir().unwrap();
    let folder = folder.path().canonicalize().unwrap();
    std::fs::create_dir(folder.join("drafts")).unwrap();
    let [house, draft, configuration] = ["house.framing", "drafts/house.framing", "storyrod.toml"];
    let write = |name: &str, text: &str| std::fs::write(folder.join(name), text).unwrap();
    let uri = |name: &str| uri_of(&folder.join(name));
    let leaving_out = "leave-out = [\"drafts/\"]\n";
    [house, draft].iter().for_each(|name| write(name, &broken()));
    write(configuration, leaving_out);
    let mut session = Session::start();
    session.initialize(&json!({
        "processId": null, "rootUri": uri_of(&folder), "workspaceFolders": null, "capabilities": {},
    }));
    assert_eq!(shallow(&broken(), &session.diagnostics(&uri(house), None)), [SHALLOW]);
    assert!(!session.shown().contains_key(&uri(draft)));

    let configured = json!({"changes": [{"uri": uri(configuration), "type": 2}]});
    write(configuration, "");
    session.notify("workspace/didChangeWatchedFiles", &configured);
    assert_eq!(shallow(&broken(), &session.diagnostics(&uri(draft), None)), [SHALLOW]);
    write(configuration, leaving_out);
    session.notify("workspace/didChangeWatchedFiles", &configured);
    assert_eq!(session.diagnostics(&uri(draft), None), [Value::Null; 0]);

    session.open(&uri(draft), &broken());
    assert_eq!(shallow(&broken(), &session.diagnostics(&uri(draft), Some(1))), [SHALLOW]);
}

#[test]
fn an_address_comes_back_as_the_client_writes_it() {
    let mut session = Session::plain();
    for uri in [
        "untitled:Untitled-1",
        "file:///no/such/sp%20ace%20%E6%BC%A2.framing",
        "file:///c%3A/dir/x.framing",
        "vscode-remote://ssh+x/a.framing",
    ] {
        session.open(uri, &broken());
        assert_eq!(shallow(&broken(), &session.diagnostics(uri, Some(1))), [SHALLOW]);
    }
}

#[test]
fn what_was_never_opened_can_be_changed_saved_and_closed() {
    let mut session = Session::plain();
    session.change("file:///no/such.framing", 2, &json!([{"text": "x"}]));
    for method in ["textDocument/didSave", "textDocument/didClose"] {
        session.notify(method, &json!({"textDocument": {"uri": "file:///no/such.framing"}}));
    }
    for uri in ["", "not an address", "http://[::1", "file://", "untitled:", "file:///%ff%fe"] {
        session.open(uri, HOUSE);
        session.notify("textDocument/didClose", &json!({"textDocument": {"uri": uri}}));
    }
    session.is_alive();
}

//! What an editor asks about the look and shape of a file.

use serde_json::{Value, json};

use crate::session::Session;
use crate::text::{ENCODINGS, counting_in, position, slice, with_edits};

const URI: &str = "untitled:house";

/// Characters of one, two, three and four bytes, of one and two code units.
const TEXT: &str = "\
-- Träger 漢😀

-- beams

wall W1 \"Süd 😀\" -- é
  kind          concrete
  status        poured 2027-04-02
beam B1 \"漢\"
  size          3-ply 2x10 SPF No.2
  bears on      W1 for 40 mm -- 😀
  waive         bearing-short because \"😀 é\"
";

fn about(uri: &str) -> Value {
    json!({"textDocument": {"uri": uri}})
}

/// Every token as the text it covers, its type and its modifiers.
fn read(text: &str, data: &[Value], legend: &Value, encoding: &str) -> Vec<(String, String)> {
    let number = |value: &Value| value.as_u64().unwrap();
    let (mut line, mut column) = (0, 0);
    let tokens = data.chunks(5).map(|token| {
        line += number(&token[0]);
        column = if number(&token[0]) == 0 { column } else { 0 } + number(&token[1]);
        let end = column + number(&token[2]);
        let range = json!({
            "start": {"line": line, "character": column}, "end": {"line": line, "character": end},
        });
        let kind = legend["tokenTypes"][usize::try_from(number(&token[3])).unwrap()].as_str().unwrap();
        let modifiers = legend["tokenModifiers"].as_array().unwrap().iter().enumerate();
        let bits = number(&token[4]);
        let set = modifiers.filter(|(at, _)| bits & (1 << at) != 0).map(|(_, name)| name.as_str().unwrap());
        let all: Vec<&str> = [kind].into_iter().chain(set).collect();
        (slice(text, &range, encoding).to_owned(), all.join(" "))
    });
    tokens.collect()
}

fn data(answer: &Value) -> Vec<Value> {
    answer["result"]["data"].as_array().unwrap().clone()
}

fn legend_of(offered: &Value) -> Value {
    offered["capabilities"]["semanticTokensProvider"]["legend"].clone()
}

/// A session and the legend of its tokens.
fn session(encoding: &str) -> (Session, Value) {
    let mut session = Session::start();
    let offered = session
        .initialize(&json!({"processId": null, "rootUri": null, "capabilities": counting_in(encoding)}));
    (session, legend_of(&offered))
}

#[test]
fn tokens_lie_on_their_words_in_every_encoding() {
    for encoding in ENCODINGS {
        for text in [TEXT.to_owned(), format!("\u{feff}{TEXT}"), TEXT.replace('\n', "\r\n")] {
            let (mut session, legend) = session(encoding);
            session.open(URI, &text);
            let all = data(&session.ask("textDocument/semanticTokens/full", &about(URI)));
            let words = read(&text, &all, &legend, encoding);
            let of = |word: &str| -> Vec<&str> {
                words.iter().filter(|(text, _)| *text == word).map(|(_, kind)| kind.as_str()).collect()
            };
            assert_eq!(of("-- Träger 漢😀"), ["comment"]);
            assert_eq!(of("\"Süd 😀\""), ["string"]);
            assert_eq!(
                of("W1"),
                ["variable declaration readonly poured foundation", "variable readonly poured foundation"]
            );
            assert_eq!(of("mm"), ["type"]);
            assert_eq!(of("bearing-short"), ["decorator"]);
            assert_eq!(of("-- 😀"), ["comment"]);

            let start = position(&text, text.find("beam B1").unwrap(), encoding);
            let end = position(&text, text.find("3-ply").unwrap(), encoding);
            let mut params = about(URI);
            params["range"] = json!({"start": start, "end": end});
            let some = data(&session.ask("textDocument/semanticTokens/range", &params));
            let some = read(&text, &some, &legend, encoding);
            let texts: Vec<&str> = some.iter().map(|(text, _)| text.as_str()).collect();
            assert_eq!(texts, ["beam", "B1", "\"漢\"", "size", "3-ply", "2x10", "SPF", "No.2"]);
        }
    }
}

#[test]
fn a_client_that_knows_the_tokens_is_told_what_has_changed() {
    let (mut session, _) = session("utf-16");
    session.open(URI, TEXT);
    let first = session.ask("textDocument/semanticTokens/full", &about(URI));
    let (mut known, mut tokens) = (first["result"]["resultId"].clone(), data(&first));
    let mut text = TEXT.to_owned();
    for (version, (old, new)) in
        (2..).zip([("for 40 mm", "for 3\""), ("-- beams\n", ""), ("W1 for", "W9 for"), ("\"漢\"", "\"漢\"")])
    {
        text = text.replacen(old, new, 1);
        session.change(URI, version, &json!([{"text": text}]));
        let mut params = about(URI);
        params["previousResultId"] = known;
        let answer = session.ask("textDocument/semanticTokens/full/delta", &params);
        let edits = answer["result"]["edits"].as_array().unwrap();
        assert_eq!(edits.len(), usize::from(old != new), "{answer}");
        for edit in edits {
            let at = |name: &str| usize::try_from(edit[name].as_u64().unwrap()).unwrap();
            let new = edit["data"].as_array().cloned().unwrap_or_default();
            assert!(new.len() < tokens.len(), "a part of them");
            tokens.splice(at("start")..at("start") + at("deleteCount"), new);
        }
        known = answer["result"]["resultId"].clone();
        assert_eq!(data(&session.ask("textDocument/semanticTokens/range", &whole(&text))), tokens);
    }
    let mut params = about(URI);
    params["previousResultId"] = json!("no such result");
    assert_eq!(data(&session.ask("textDocument/semanticTokens/full/delta", &params)), tokens);
    session.notify("textDocument/didClose", &about(URI));
    session.open(URI, &text);
    params["previousResultId"] = known;
    assert_eq!(data(&session.ask("textDocument/semanticTokens/full/delta", &params)), tokens);
}

fn whole(text: &str) -> Value {
    let mut params = about(URI);
    params["range"] =
        json!({"start": {"line": 0, "character": 0}, "end": position(text, text.len(), "utf-16")});
    params
}

#[test]
fn an_outline_is_nested_or_flat_as_the_client_can() {
    for encoding in ENCODINGS {
        let mut able = counting_in(encoding);
        able["textDocument"]["documentSymbol"] = json!({
            "hierarchicalDocumentSymbolSupport": true, "symbolKind": {"valueSet": (1..=26).collect::<Vec<_>>()},
        });
        let mut session = Session::with(&able);
        session.open(URI, TEXT);
        let answer = session.ask("textDocument/documentSymbol", &about(URI));
        let section = &answer["result"][0];
        // Namespace, object and struct are 3, 19 and 23 in LSP 3.17.
        assert_eq!((&section["name"], &section["kind"]), (&json!("beams"), &json!(3)));
        let [wall, beam] = section["children"].as_array().unwrap().as_slice() else { panic!("{answer}") };
        assert_eq!((&wall["name"], &wall["kind"]), (&json!("wall W1 \"Süd 😀\""), &json!(23)));
        assert_eq!((&wall["detail"], &beam["kind"]), (&json!("concrete, poured 2027-04-02"), &json!(19)));
        assert_eq!(slice(TEXT, &wall["selectionRange"], encoding), "W1");
        assert!(slice(TEXT, &beam["range"], encoding).ends_with("because \"😀 é\""));

        let mut session = Session::with(&counting_in(encoding));
        session.open(URI, TEXT);
        let answer = session.ask("textDocument/documentSymbol", &about(URI));
        let [section, wall, beam] = answer["result"].as_array().unwrap().as_slice() else {
            panic!("{answer}")
        };
        assert_eq!((&section["name"], &wall["containerName"]), (&json!("beams"), &json!("beams")));
        // This client knows no more than the first eighteen kinds: a variable is 13.
        assert_eq!((&wall["kind"], &beam["kind"]), (&json!(13), &json!(13)));
        assert!(slice(TEXT, &beam["location"]["range"], encoding).starts_with("beam B1"));
    }
}

#[test]
fn elements_of_the_workspace_are_found_open_or_not() {
    let folder = tempfile::tempdir().unwrap();
    let write = |name: &str, text: &str| std::fs::write(folder.path().join(name), text).unwrap();
    write("barn.framing", "project \"Barn\"\ninclude \"beams.framing\"\n");
    write("beams.framing", "beam B1 \"Ridge\"\nbeam B2 \"Girder\"\n");
    write("house.framing", "project \"House\"\ncolumn C1 \"Under the girder\"\n");
    let root = tower_lsp::lsp_types::Url::from_directory_path(folder.path()).unwrap();
    let folders = json!([{"uri": root, "name": "work"}]);
    let mut session = Session::start();
    session.initialize(&json!({
        "processId": null, "rootUri": null, "workspaceFolders": folders, "capabilities": {},
    }));
    let open = root.join("house.framing").unwrap();
    session.open(open.as_str(), "project \"House\"\ncolumn C1 \"Under the girder\"\ncolumn C2\n");
    // The look through the workspace tells its findings when it is done.
    session.diagnostics(root.join("beams.framing").unwrap().as_str(), None);
    let mut found = |query: &str| {
        let answer = session.ask("workspace/symbol", &json!({"query": query}));
        let symbols = answer["result"].as_array().unwrap().clone();
        let told = symbols.iter().map(|symbol| {
            let uri = symbol["location"]["uri"].as_str().unwrap();
            let file = uri.rsplit('/').next().unwrap();
            format!(
                "{} in {file}:{}",
                symbol["name"].as_str().unwrap(),
                symbol["location"]["range"]["start"]["line"]
            )
        });
        told.collect::<Vec<_>>()
    };
    assert_eq!(
        found("girder"),
        ["beam B2 \"Girder\" in beams.framing:1", "column C1 \"Under the girder\" in house.framing:1"]
    );
    assert_eq!(found("c2"), ["column C2 in house.framing:2"]);
    assert_eq!(found("ridge barn"), [""; 0]);
    assert_eq!(found("").len(), 6);
}

#[test]
fn folds_keep_to_what_the_client_wants() {
    let mut able = counting_in("utf-8");
    let mut session = Session::with(&able);
    session.open(URI, TEXT);
    let lines = |answer: &Value| -> Vec<(u64, u64)> {
        let folds = answer["result"].as_array().unwrap().iter();
        folds.map(|fold| (fold["startLine"].as_u64().unwrap(), fold["endLine"].as_u64().unwrap())).collect()
    };
    let answer = session.ask("textDocument/foldingRange", &about(URI));
    assert_eq!(lines(&answer), [(2, 10), (4, 6), (7, 10)]);
    assert_eq!(answer["result"][0]["kind"], json!("region"));

    able["textDocument"]["foldingRange"] = json!({"rangeLimit": 2, "lineFoldingOnly": true});
    let mut session = Session::with(&able);
    session.open(URI, TEXT);
    assert_eq!(lines(&session.ask("textDocument/foldingRange", &about(URI))), [(2, 10), (7, 10)]);
}

#[test]
fn a_selection_grows_at_every_position() {
    for encoding in ENCODINGS {
        let mut session = Session::with(&counting_in(encoding));
        session.open(URI, TEXT);
        let places = ["é\"\n", "40 mm"].map(|what| position(TEXT, TEXT.find(what).unwrap(), encoding));
        let mut params = about(URI);
        params["positions"] = json!(places);
        let answer = session.ask("textDocument/selectionRange", &params);
        for (chain, texts) in answer["result"]
            .as_array()
            .unwrap()
            .iter()
            .zip([["é", "😀 é", "\"😀 é\""], ["40", "40 mm", "W1 for 40 mm"]])
        {
            let mut chain = chain;
            for text in texts {
                assert_eq!(slice(TEXT, &chain["range"], encoding), text);
                chain = &chain["parent"];
            }
            while chain["parent"].is_object() {
                chain = &chain["parent"];
            }
            assert_eq!(slice(TEXT, &chain["range"], encoding), TEXT);
        }
    }
}

#[test]
fn an_include_links_to_its_file() {
    let folder = tempfile::tempdir().unwrap();
    let uri = |name: &str| tower_lsp::lsp_types::Url::from_file_path(folder.path().join(name)).unwrap();
    std::fs::write(folder.path().join("beams.framing"), "beam B1\n").unwrap();
    let text =
        "project \"漢😀\"\ninclude \"beams.framing\"\ninclude \"gone.framing\"\n-- https://example.org/a\n";
    for encoding in ENCODINGS {
        let mut able = counting_in(encoding);
        able["textDocument"]["documentLink"] = json!({"tooltipSupport": true});
        let mut session = Session::with(&able);
        session.open(uri("house.framing").as_str(), text);
        let answer = session.ask("textDocument/documentLink", &about(uri("house.framing").as_str()));
        let [file, address] = answer["result"].as_array().unwrap().as_slice() else { panic!("{answer}") };
        assert_eq!(slice(text, &file["range"], encoding), "beams.framing");
        assert_eq!(
            (&file["target"], &file["tooltip"]),
            (&json!(uri("beams.framing")), &json!("beams.framing, 1 element"))
        );
        assert_eq!(slice(text, &address["range"], encoding), "https://example.org/a");
        assert_eq!(address["target"], json!("https://example.org/a"));
    }
}

#[test]
fn lines_and_the_finished_line_are_formatted() {
    let rough = "beam B1 \"漢\"\n  size 2x10   -- 😀\n from A/1 to B/1\n";
    let options = json!({"tabSize": 8, "insertSpaces": false});
    for encoding in ENCODINGS {
        let mut session = Session::with(&counting_in(encoding));
        session.open(URI, rough);
        let at = |what: &str| position(rough, rough.find(what).unwrap(), encoding);
        let mut params = about(URI);
        params["options"] = options.clone();
        params["range"] = json!({"start": at("size"), "end": at("-- 😀")});
        let answer = session.ask("textDocument/rangeFormatting", &params);
        assert_eq!(
            with_edits(rough, &answer, encoding),
            "beam B1 \"漢\"\n  size          2x10                      -- 😀\n from A/1 to B/1\n"
        );

        let typed = rough.replace("-- 😀\n", "-- 😀\n\n");
        session.change(URI, 2, &json!([{"text": typed}]));
        let mut params = about(URI);
        params["options"] = options.clone();
        params["ch"] = json!("\n");
        params["position"] = json!({"line": 2, "character": 0});
        let answer = session.ask("textDocument/onTypeFormatting", &params);
        assert_eq!(
            with_edits(&typed, &answer, encoding),
            "beam B1 \"漢\"\n  size          2x10                      -- 😀\n  \n from A/1 to B/1\n"
        );
    }
}

//! Everything an editor can ask, of damaged texts and at absurd places: each request is answered, and each place in an
//! answer lies in the text.

use std::collections::HashSet;

use serde_json::{Value, json};

use crate::damage::damaged;
use crate::dice::Dice;
use crate::session::Session;
use crate::text::ENCODINGS;

const URI: &str = "untitled:house";

/// How often each text is damaged; `STORYROD_DAMAGES` says otherwise.
const DAMAGES: u64 = 2;

/// Requests about a place.
const OF_PLACES: &[&str] = &[
    "hover",
    "definition",
    "declaration",
    "typeDefinition",
    "implementation",
    "references",
    "documentHighlight",
    "completion",
    "signatureHelp",
    "prepareRename",
    "rename",
    "prepareCallHierarchy",
    "prepareTypeHierarchy",
    "linkedEditingRange",
    "moniker",
    "onTypeFormatting",
    "inlineValue",
    "selectionRange",
];

/// Requests about a stretch of text.
const OF_RANGES: &[&str] =
    &["codeAction", "rangeFormatting", "inlayHint", "semanticTokens/range", "colorPresentation"];

/// Requests about a document.
const OF_DOCUMENTS: &[&str] = &[
    "documentSymbol",
    "foldingRange",
    "documentLink",
    "codeLens",
    "documentColor",
    "formatting",
    "semanticTokens/full",
    "diagnostic",
];

/// What may be asked of each thing that was answered.
const OF_ANSWERS: &[(&str, &[&str])] = &[
    ("textDocument/completion", &["completionItem/resolve"]),
    ("textDocument/codeAction", &["codeAction/resolve"]),
    ("textDocument/codeLens", &["codeLens/resolve"]),
    ("textDocument/inlayHint", &["inlayHint/resolve"]),
    ("textDocument/documentLink", &["documentLink/resolve"]),
    ("textDocument/prepareCallHierarchy", &["callHierarchy/incomingCalls", "callHierarchy/outgoingCalls"]),
    ("textDocument/prepareTypeHierarchy", &["typeHierarchy/supertypes", "typeHierarchy/subtypes"]),
];

#[test]
fn whatever_is_asked_of_whatever_text_is_answered_inside_it() {
    let damages = std::env::var("STORYROD_DAMAGES").map_or(DAMAGES, |count| count.parse().unwrap());
    let samples = [
        include_str!("../../grammar/samples/first.framing"),
        include_str!("../../grammar/samples/alley-house.framing"),
        include_str!("../../grammar/samples/hill-studio.framing"),
    ];
    for (sample, encoding) in samples.into_iter().zip(ENCODINGS) {
        let mut session = Session::with(&able(encoding));
        for seed in 0..damages {
            let mut dice = Dice::new(seed);
            let text = disguised(&damaged(sample, &mut dice), &mut dice);
            let mut asked = Asked::open(&mut session, text, encoding);
            for place in asked.places(&mut dice) {
                asked.of_place(&place);
            }
            asked.of_document();
            asked.close();
        }
    }
}

#[test]
fn a_text_of_nothing_much_is_no_trouble() {
    for encoding in ENCODINGS {
        let mut session = Session::with(&able(encoding));
        for text in
            ["", "\u{feff}", "\n", "\r", "\r\n", "project", "beam", " ", "\"", "--", "😀", "grid\n  x "]
        {
            let mut asked = Asked::open(&mut session, text.to_owned(), encoding);
            for place in [json!({"line": 0, "character": 0}), json!({"line": 7, "character": 7})] {
                asked.of_place(&place);
            }
            asked.of_document();
            asked.close();
        }
    }
}

/// A client that takes all there is.
fn able(encoding: &str) -> Value {
    let links = json!({"linkSupport": true});
    json!({
        "general": {"positionEncodings": [encoding]},
        "textDocument": {
            "definition": links, "declaration": links, "implementation": links, "typeDefinition": links,
            "rename": {"prepareSupport": true},
            "hover": {"contentFormat": ["markdown"]},
            "documentSymbol": {"hierarchicalDocumentSymbolSupport": true},
            "completion": {"completionItem": {"snippetSupport": true}},
            "codeAction": {
                "codeActionLiteralSupport": {"codeActionKind": {"valueSet": [""]}},
                "resolveSupport": {"properties": ["edit"]}, "dataSupport": true,
            },
        },
        "workspace": {"workspaceEdit": {"documentChanges": true}},
    })
}

/// The same text with other line ends, a mark in front, characters of every width in it.
fn disguised(text: &str, dice: &mut Dice) -> String {
    let mut text = text.replace("--", dice.one_of(&["--", "-- 😀", "-- é\u{301}"]));
    text = text.replace('\n', dice.one_of(&["\n", "\r\n", "\r"]));
    if dice.once_in(2) {
        text.insert(0, '\u{feff}');
    }
    text
}

/// A document of which things are asked.
struct Asked<'a> {
    session: &'a mut Session,
    text: String,
    /// Every place that there is.
    places: HashSet<(u64, u64)>,
    last: (u64, u64),
}

impl<'a> Asked<'a> {
    fn open(session: &'a mut Session, text: String, encoding: &str) -> Self {
        session.open(URI, &text);
        let (mut place, mut places) = ((0, 0), HashSet::new());
        let mut before = ' ';
        for character in text.chars() {
            if before == '\n' || before == '\r' && character != '\n' {
                place = (place.0 + 1, 0);
            }
            places.insert(place);
            place.1 += match encoding {
                "utf-8" => character.len_utf8() as u64,
                "utf-16" => character.len_utf16() as u64,
                _ => 1,
            };
            before = character;
        }
        if matches!(before, '\n' | '\r') {
            place = (place.0 + 1, 0);
        }
        places.insert(place);
        Self { session, text, places, last: place }
    }

    fn close(self) {
        self.session.notify("textDocument/didClose", &json!({"textDocument": {"uri": URI}}));
    }

    /// Some places of the text, and some that it does not have.
    fn places(&self, dice: &mut Dice) -> Vec<Value> {
        let mut known: Vec<_> = self.places.iter().copied().collect();
        known.sort_unstable();
        let random: Vec<_> = (0..8).map(|_| dice.one_of(&known)).collect();
        let far = u64::from(u32::MAX);
        let absurd = [(0, 0), self.last, (self.last.0 + 1, 0), (far, far), (0, far), (far, 0)];
        random
            .into_iter()
            .chain(absurd)
            .map(|(line, column)| json!({"line": line, "character": column}))
            .collect()
    }

    fn of_place(&mut self, place: &Value) {
        let more = json!({
            "context": {"includeDeclaration": true, "triggerKind": 1, "isRetrigger": false,
                "frameId": 0, "stoppedLocation": {"start": place, "end": place}},
            "newName": "Q7", "ch": "\n", "options": {"tabSize": 2, "insertSpaces": true},
            "position": place, "positions": [place], "range": {"start": place, "end": place},
        });
        for method in OF_PLACES {
            self.ask(method, &more);
        }
        let origin = json!({"line": 0, "character": 0});
        let ranges = [(place, place), (&origin, place), (place, &origin)];
        for (start, end) in ranges {
            let range = json!({
                "range": {"start": start, "end": end}, "context": {"diagnostics": []},
                "options": {"tabSize": 2, "insertSpaces": true},
                "color": {"red": 0.0, "green": 0.0, "blue": 0.0, "alpha": 1.0},
            });
            for method in OF_RANGES {
                self.ask(method, &range);
            }
        }
    }

    fn of_document(&mut self) {
        for method in OF_DOCUMENTS {
            self.ask(method, &json!({"options": {"tabSize": 2, "insertSpaces": true}}));
        }
    }

    fn ask(&mut self, method: &str, more: &Value) {
        let mut params = json!({"textDocument": {"uri": URI}});
        params.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
        let method = format!("textDocument/{method}");
        let answer = self.answer(&method, &params);
        let further = OF_ANSWERS.iter().filter(|(first, _)| *first == method);
        for further in further.flat_map(|(_, methods)| *methods) {
            let items = answer["items"].as_array().or_else(|| answer.as_array());
            for item in items.into_iter().flatten().take(3) {
                let wraps = further.contains("Hierarchy");
                let params = if wraps { json!({"item": item}) } else { item.clone() };
                self.answer(further, &params);
            }
        }
    }

    /// The result of a request, all of whose places lie in the text.
    fn answer(&mut self, method: &str, params: &Value) -> Value {
        let answer = self.session.ask(method, params);
        let is_refused = match answer["error"]["code"].as_i64() {
            // What is not offered is not found.
            Some(-32601) => true,
            Some(-32602) => method.ends_with("rename"),
            _ => false,
        };
        let about = || format!("{method} of {params} in:\n{:?}\nis answered {answer}", self.text);
        assert!(answer.get("result").is_some() || is_refused, "{}", about());
        let result = answer["result"].clone();
        assert!(self.lies_inside(&result), "{}", about());
        if method.contains("semanticTokens") {
            assert!(self.tokens_lie_inside(&result), "{}", about());
        }
        result
    }

    fn lies_inside(&self, value: &Value) -> bool {
        let place = |place: &Value| Some((place.get("line")?.as_u64()?, place.get("character")?.as_u64()?));
        match value {
            Value::Array(items) => items.iter().all(|item| self.lies_inside(item)),
            Value::Object(members) => {
                let of = |name: &str| members.get(name).and_then(place);
                let is_range = match (of("start"), of("end")) {
                    (Some(start), Some(end)) => {
                        start <= end && self.places.contains(&start) && self.places.contains(&end)
                    }
                    _ => true,
                };
                let line = |name: &str| members.get(name).and_then(Value::as_u64).unwrap_or(0);
                let are_lines = line("startLine") <= self.last.0 && line("endLine") <= self.last.0;
                // What comes back to us says what was asked, wherever that was.
                let mut told = members.iter().filter(|(name, _)| *name != "data");
                is_range && are_lines && told.all(|(_, member)| self.lies_inside(member))
            }
            _ => true,
        }
    }

    fn tokens_lie_inside(&self, result: &Value) -> bool {
        let (mut line, mut column) = (0, 0);
        let data: Vec<u64> =
            result["data"].as_array().into_iter().flatten().map(|number| number.as_u64().unwrap()).collect();
        data.chunks(5).all(|token| {
            column = if token[0] == 0 { column + token[1] } else { token[1] };
            line += token[0];
            self.places.contains(&(line, column)) && self.places.contains(&(line, column + token[2]))
        })
    }
}

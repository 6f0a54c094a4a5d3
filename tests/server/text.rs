//! Positions as the protocol defines them, worked out character by character.

use serde_json::{Value, json};

/// The encodings a client can count in.
pub const ENCODINGS: [&str; 3] = ["utf-8", "utf-16", "utf-32"];

/// Capabilities of a client that counts in this encoding.
pub fn counting_in(encoding: &str) -> Value {
    let diagnostics = json!({"publishDiagnostics": {"relatedInformation": true}});
    json!({"general": {"positionEncodings": [encoding]}, "textDocument": diagnostics})
}

/// The part of `text` in a range.
pub fn slice<'a>(text: &'a str, range: &Value, encoding: &str) -> &'a str {
    &text[byte(text, &range["start"], encoding)..byte(text, &range["end"], encoding)]
}

/// The byte at a position, which must lie in the text and between two characters.
pub fn byte(text: &str, position: &Value, encoding: &str) -> usize {
    let (line, column) = (position["line"].as_u64().unwrap(), position["character"].as_u64().unwrap());
    let (mut at_line, mut at_column) = (0, 0);
    let mut before = '\n';
    for (at, character) in text.char_indices() {
        let begins_line = at > 0 && (before == '\n' || before == '\r' && character != '\n');
        if begins_line {
            at_line += 1;
            at_column = 0;
        }
        if (at_line, at_column) == (line, column) {
            return at;
        }
        at_column += width(character, encoding);
        before = character;
    }
    if text.ends_with(['\n', '\r']) {
        (at_line, at_column) = (at_line + 1, 0);
    }
    assert_eq!((at_line, at_column), (line, column), "the text has no such place");
    text.len()
}

/// The position of a byte.
pub fn position(text: &str, at: usize, encoding: &str) -> Value {
    let before = text[..at].replace("\r\n", "\n").replace('\r', "\n");
    let (line, start) = (before.matches('\n').count(), before.rfind('\n').map_or(0, |at| at + 1));
    let column: u64 = before[start..].chars().map(|character| width(character, encoding)).sum();
    json!({"line": line, "character": column})
}

fn width(character: char, encoding: &str) -> u64 {
    match encoding {
        "utf-8" => character.len_utf8() as u64,
        "utf-16" => character.len_utf16() as u64,
        _ => 1,
    }
}

/// The text with the edits of an answer made.
pub fn with_edits(text: &str, answer: &Value, encoding: &str) -> String {
    let mut text = text.to_owned();
    for edit in answer["result"].as_array().unwrap().iter().rev() {
        let [start, end] = ["start", "end"].map(|side| byte(&text, &edit["range"][side], encoding));
        text.replace_range(start..end, edit["newText"].as_str().unwrap());
    }
    text
}

//! Text of a spec inside Markdown.

use crate::report::printable;

/// The text in which no character means anything to Markdown, on one line.
pub(in crate::report) fn markdown_text(text: &str) -> String {
    let mut plain = String::new();
    for character in printable(text).chars() {
        if matches!(character, '\\' | '`' | '*' | '_' | '[' | ']' | '<' | '>' | '#' | '|' | '~' | '&') {
            plain.push('\\');
        }
        plain.push(if matches!(character, '\n' | '\r') { ' ' } else { character });
    }
    plain
}

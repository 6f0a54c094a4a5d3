//! `textDocument/formatting`, `rangeFormatting` and `onTypeFormatting`.
//!
//! What a client says of tabs and trailing blanks is passed over: the format has one style.

use tower_lsp::lsp_types::{Position, Range, TextEdit};

use crate::ide;
use crate::server::document::Document;

/// What ends a line; behind it the finished line is brought into the one style.
pub const LINE_END: &str = "\n";

/// The edits that bring a document into the one style.
pub fn formatting(document: &Document) -> Vec<TextEdit> {
    encoded(document, ide::formatting(&document.text()))
}

/// The edits that bring the lines of a range into the one style.
pub fn range_formatting(document: &Document, range: Range) -> Vec<TextEdit> {
    let (start, end) = (document.ruler.offset(range.start), document.ruler.offset(range.end));
    encoded(document, ide::formatting_of_lines(&document.text(), start, end.max(start)))
}

/// The edits behind a typed line end, with the cursor in the new line.
pub fn on_type_formatting(document: &Document, cursor: Position) -> Vec<TextEdit> {
    let offset = document.ruler.offset(cursor);
    encoded(document, ide::formatting_behind_line(&document.text(), offset))
}

fn encoded(document: &Document, edits: Vec<ide::Replacement>) -> Vec<TextEdit> {
    let encoded = |edit: ide::Replacement| TextEdit {
        range: document.ruler.range(edit.start, edit.end),
        new_text: edit.text,
    };
    edits.into_iter().map(encoded).collect()
}

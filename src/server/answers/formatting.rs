//! `textDocument/formatting`.

use tower_lsp::lsp_types::TextEdit;

use crate::ide;
use crate::server::document::Document;

/// The edits that bring a document into the one style.
pub fn formatting(document: &Document) -> Vec<TextEdit> {
    let encoded = |edit: ide::Replacement| TextEdit {
        range: document.ruler.range(edit.start, edit.end),
        new_text: edit.text,
    };
    ide::formatting(&document.text()).into_iter().map(encoded).collect()
}

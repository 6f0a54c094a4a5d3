//! Changes of text in several files, in the client's form.

use std::collections::HashMap;

use tower_lsp::lsp_types::{
    DocumentChanges, OneOf, OptionalVersionedTextDocumentIdentifier, TextDocumentEdit, TextEdit, Url,
    WorkspaceEdit,
};

use crate::server::abilities::Abilities;
use crate::server::view::Page;

/// Changes of text by file, in the order they were put in; each once.
#[derive(Debug, Default)]
pub struct Edits {
    files: Vec<(Url, Option<i32>, Vec<TextEdit>)>,
}

impl Edits {
    /// Puts one in.
    pub fn add(&mut self, page: &Page, start: u32, end: u32, new_text: &str) {
        let edit = TextEdit { range: page.ruler.range(start, end), new_text: new_text.to_owned() };
        match self.files.iter_mut().find(|(uri, ..)| *uri == page.uri) {
            Some((_, _, edits)) if edits.contains(&edit) => {}
            Some((_, _, edits)) => edits.push(edit),
            None => self.files.push((page.uri.clone(), page.version, vec![edit])),
        }
    }

    /// True when nothing is to be changed.
    pub const fn is_empty(&self) -> bool {
        self.files.is_empty()
    }

    /// All of it, with the versions that it is meant for when the client takes them.
    pub fn encoded(self, abilities: Abilities) -> WorkspaceEdit {
        if !abilities.versions_edits {
            let changes: HashMap<_, _> = self.files.into_iter().map(|(uri, _, edits)| (uri, edits)).collect();
            return WorkspaceEdit::new(changes);
        }
        let files = self.files.into_iter().map(|(uri, version, edits)| TextDocumentEdit {
            text_document: OptionalVersionedTextDocumentIdentifier { uri, version },
            edits: edits.into_iter().map(OneOf::Left).collect(),
        });
        WorkspaceEdit {
            document_changes: Some(DocumentChanges::Edits(files.collect())),
            ..WorkspaceEdit::default()
        }
    }
}

//! Changes of text in several files, in the client's form.

use std::collections::{HashMap, HashSet};

use tower_lsp::lsp_types::{
    DocumentChanges, OneOf, OptionalVersionedTextDocumentIdentifier, TextDocumentEdit, TextEdit, Url,
    WorkspaceEdit,
};

use crate::server::abilities::Abilities;
use crate::server::view::Page;

/// Changes of text by file, in the order they were put in; of several that begin at one place the first.
#[derive(Debug, Default)]
pub struct Edits {
    files: Vec<FileEdits>,
}

#[derive(Debug)]
struct FileEdits {
    uri: Url,
    version: Option<i32>,
    edits: Vec<TextEdit>,
    /// Where they begin.
    starts: HashSet<(u32, u32)>,
}

impl Edits {
    /// Puts one in.
    pub fn add(&mut self, page: &Page, start: u32, end: u32, new_text: &str) {
        let range = page.ruler.range(start, end);
        let start = (range.start.line, range.start.character);
        let edit = TextEdit { range, new_text: new_text.to_owned() };
        match self.files.iter_mut().find(|file| file.uri == page.uri) {
            Some(file) => file.edits.extend(file.starts.insert(start).then_some(edit)),
            None => self.files.push(FileEdits {
                uri: page.uri.clone(),
                version: page.version,
                edits: vec![edit],
                starts: HashSet::from([start]),
            }),
        }
    }

    /// True when nothing is to be changed.
    pub const fn is_empty(&self) -> bool {
        self.files.is_empty()
    }

    /// All of it, with the versions that it is meant for when the client takes them.
    pub fn encoded(self, abilities: Abilities) -> WorkspaceEdit {
        if !abilities.versions_edits {
            let changes: HashMap<_, _> = self.files.into_iter().map(|file| (file.uri, file.edits)).collect();
            return WorkspaceEdit::new(changes);
        }
        let files = self.files.into_iter().map(|file| TextDocumentEdit {
            text_document: OptionalVersionedTextDocumentIdentifier { uri: file.uri, version: file.version },
            edits: file.edits.into_iter().map(OneOf::Left).collect(),
        });
        WorkspaceEdit {
            document_changes: Some(DocumentChanges::Edits(files.collect())),
            ..WorkspaceEdit::default()
        }
    }
}

//! The documents that stand open in an editor, before they are saved.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use crate::workspace::path::real_path;

/// Open documents by file. A path and a link to it are one file.
#[derive(Clone, Debug, Default)]
pub struct OpenDocuments {
    texts: BTreeMap<PathBuf, Arc<str>>,
}

impl OpenDocuments {
    /// Puts a text before the file on disk. A byte-order mark must be left out.
    pub fn open(&mut self, path: &Path, text: impl Into<Arc<str>>) {
        self.texts.insert(real_path(path), text.into());
    }

    /// The text of the document open for this file.
    pub fn text(&self, path: &Path) -> Option<Arc<str>> {
        if self.texts.is_empty() { None } else { self.texts.get(&real_path(path)).cloned() }
    }

    /// The files with an open document, by path.
    pub fn paths(&self) -> impl Iterator<Item = &Path> {
        self.texts.keys().map(PathBuf::as_path)
    }
}

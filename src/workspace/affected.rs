//! Which specs a change can affect: by what they read, ask for, or are read under.

use std::collections::HashMap;
use std::ops::Bound;
use std::path::{Path, PathBuf};

use crate::workspace::path::{configured_folder, real_path};
use crate::workspace::{Changes, History, Spec};

impl Changes {
    /// True when they are those of this repository.
    pub fn are_of(&self, history: &History) -> bool {
        self.repository == history.folder()
    }

    /// True when the change can affect what is found in a spec: one of its files, one that it asks for, or the
    /// configuration above it is among what changed. A file of which the repository knows nothing counts as changed.
    pub fn affect(&self, spec: &Spec) -> bool {
        let Some(root) = spec.paths.first() else { return false };
        let mut files = spec.paths.iter().chain(&spec.unread);
        self.affect_root(root)
            || files.any(|file| self.is_unknown(file) || self.files.contains(file))
            // Where a file was asked for, a folder may have come or gone.
            || spec.unread.iter().any(|file| self.is_in(file))
    }

    /// True when the change can affect how a root file is read, whatever it includes.
    pub(in crate::workspace) fn affect_root(&self, root: &Path) -> bool {
        self.is_everything
            || self.is_unknown(root)
            || self.files.contains(root)
            || self.let_go.contains(root)
            || self.folders.iter().any(|folder| root.starts_with(folder))
    }

    /// The files of a folder, each of which has to be read to tell which specs are affected: a root file reads nothing
    /// outside of its root folder.
    pub(in crate::workspace) fn to_be_read(&self, files: Vec<PathBuf>) -> Vec<PathBuf> {
        let mut root_folders: HashMap<PathBuf, bool> = HashMap::new();
        let mut has_to = |file: &PathBuf| {
            let real = if file.is_symlink() { real_path(file) } else { file.clone() };
            if self.affect_root(&real) {
                return true;
            }
            let own = real.parent().unwrap_or(&real).to_owned();
            *root_folders.entry(own).or_insert_with_key(|own| {
                let root_folder = configured_folder(&real).unwrap_or_else(|| own.clone());
                self.is_unknown(&root_folder) || self.is_in(&root_folder)
            })
        };
        files.into_iter().filter(|file| has_to(file)).collect()
    }

    /// True when something in a folder, or the folder itself, is among what changed.
    fn is_in(&self, folder: &Path) -> bool {
        // In this order whatever a folder holds stands behind it.
        let behind = (Bound::Included(folder), Bound::Unbounded);
        let next = self.files.range::<Path, _>(behind).next();
        next.is_some_and(|file| file.starts_with(folder))
            || self.unknown.iter().any(|inner| inner.starts_with(folder))
            || self.let_go.iter().any(|file| file.starts_with(folder))
    }

    /// True when the repository does not tell whether a path changed.
    fn is_unknown(&self, path: &Path) -> bool {
        !path.starts_with(&self.repository) || self.unknown.iter().any(|inner| path.starts_with(inner))
    }
}

//! Which specs a change can affect: by what they read, ask for, or are read under.

use std::collections::{HashMap, HashSet};
use std::ops::Bound;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};

use crate::workspace::changes::targets;
use crate::workspace::file_text::text_of;
use crate::workspace::path::real_path;
use crate::workspace::{CONFIGURATION_NAME, Changes, History, Spec};

impl Changes {
    /// True when they are those of this repository.
    pub fn are_of(&self, history: &History) -> bool {
        self.repository == history.folder()
    }

    /// True when a file is among what changed.
    pub fn have(&self, file: &Path) -> bool {
        self.files.contains(&real_path(file))
    }

    /// Takes every spec for one that the change can affect.
    pub fn affect_everything(&mut self) {
        self.is_everything = true;
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

    /// Where specs can stand that are affected.
    pub(in crate::workspace) fn reach(&self) -> Reach {
        Reach { changes: self.clone(), known: Mutex::default() }
    }

    /// Those of some files that have to be read as specs: what changed itself, and whatever include lines lead from to
    /// something that changed, however far.
    pub(in crate::workspace) fn connected(&self, mut files: Vec<PathBuf>) -> Vec<PathBuf> {
        let mut reached_by: Vec<PathBuf> = Vec::new();
        let mut includers: HashMap<PathBuf, Vec<PathBuf>> = HashMap::new();
        let mut read: HashSet<PathBuf> = HashSet::new();
        let mut waiting: Vec<PathBuf> = files.iter().map(|file| without_link(file)).collect();
        while let Some(file) = waiting.pop() {
            // What lies outside counts as changed: nothing more can be learnt there.
            if self.is_unknown(&file) || !read.insert(file.clone()) {
                continue;
            }
            let targets = text_of(&file).map(|text| targets(&text, &file)).unwrap_or_default();
            for target in targets.into_iter().map(|target| real_path(&target)) {
                if self.is_unknown(&target) || self.is_in(&target) {
                    reached_by.push(file.clone());
                }
                includers.entry(target.clone()).or_default().push(file.clone());
                waiting.push(target);
            }
        }
        // Who includes a part decides whether it is a spec by itself.
        reached_by.extend(files.iter().map(|file| without_link(file)).filter(|file| self.affect_root(file)));
        let mut connected = HashSet::new();
        while let Some(file) = reached_by.pop() {
            if !connected.contains(&file) {
                reached_by.extend(includers.get(&file).into_iter().flatten().cloned());
                connected.insert(file);
            }
        }
        files.retain(|file| connected.contains(&without_link(file)));
        files
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

/// The path of a file in a folder without links.
fn without_link(file: &Path) -> PathBuf {
    if file.is_symlink() { real_path(file) } else { file.to_owned() }
}

/// Where specs can stand that a change affects: a root file reads nothing outside of its root folder.
pub(in crate::workspace) struct Reach {
    changes: Changes,
    /// The nearest folder that holds the configuration, of each folder that was asked for.
    known: Mutex<HashMap<PathBuf, Option<PathBuf>>>,
}

impl Reach {
    /// True when a file has to be read to tell whether it is affected.
    pub fn extends_to(&self, file: &Path) -> bool {
        let real = without_link(file);
        self.changes.affect_root(&real) || self.is_in_root_folder(real.parent().unwrap_or(&real))
    }

    /// True when a file in a folder or anywhere below it can be affected.
    pub fn extends_into(&self, folder: &Path) -> bool {
        let links = &self.changes.links;
        self.changes.affect_root(folder)
            || self.changes.is_in(folder)
            || links.iter().any(|link| link.starts_with(folder))
            || self.is_in_root_folder(folder)
    }

    /// True when something changed in the root folder of the files that stand right in a folder.
    fn is_in_root_folder(&self, folder: &Path) -> bool {
        let configured = self.configured(folder);
        let root_folder = configured.as_deref().unwrap_or(folder);
        self.changes.is_unknown(root_folder) || self.changes.is_in(root_folder)
    }

    /// The nearest folder that holds the configuration: this one, or one above it. Each is asked once.
    fn configured(&self, folder: &Path) -> Option<PathBuf> {
        // Nobody leaves a wrong answer behind, whatever else goes wrong.
        let known = || self.known.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(nearest) = known().get(folder) {
            return nearest.clone();
        }
        let nearest = match folder.join(CONFIGURATION_NAME).is_file() {
            true => Some(folder.to_owned()),
            false => folder.parent().and_then(|above| self.configured(above)),
        };
        known().insert(folder.to_owned(), nearest.clone());
        nearest
    }
}

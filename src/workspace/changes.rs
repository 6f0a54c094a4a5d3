//! What stands on disk otherwise than in a revision of the repository.

use std::collections::{BTreeSet, HashSet};
use std::path::{Path, PathBuf};

use git2::{Delta, Diff, DiffDelta, DiffFile, DiffOptions, FileMode, ObjectType, Oid, Repository};

use crate::workspace::file_text::{text_of, text_of_bytes};
use crate::workspace::include_line::include_lines;
use crate::workspace::path::{real_path, without_dots};
use crate::workspace::search::{decides_for_folder, is_spec};
use crate::workspace::{History, HistoryFault};

/// What changed in a repository since a revision. Paths are absolute, links resolved.
#[derive(Clone, Debug, Default)]
pub struct Changes {
    /// The folder of the repository's files: nothing is known of what lies outside.
    pub(in crate::workspace) repository: PathBuf,
    /// The commit since which they happened, in full.
    pub since: String,
    /// Files that were written, made, renamed or taken away.
    pub(in crate::workspace) files: BTreeSet<PathBuf>,
    /// Folders for which a file in them decides how specs are read, and it changed.
    pub(in crate::workspace) folders: Vec<PathBuf>,
    /// Repositories inside this one of which the revision does not tell what they held.
    pub(in crate::workspace) unknown: Vec<PathBuf>,
    /// What changed files included in the revision, and what that includes: a part may be in no project any more.
    pub(in crate::workspace) let_go: HashSet<PathBuf>,
    /// Links in the place of specs: what changed elsewhere may be what they lead to.
    pub(in crate::workspace) links: Vec<PathBuf>,
    /// A symbolic link changed: any path may lead elsewhere now.
    pub(in crate::workspace) is_everything: bool,
}

impl History {
    /// What stands on disk otherwise than in the last commit that what is checked out has in common with the revision:
    /// what the branch changed, and what is not committed yet. Files that version control ignores don't count.
    ///
    /// # Errors
    /// There is no such revision, it has no commit in common with what is checked out, or it can't be read.
    pub fn changes_since(&self, revision: &str) -> Result<Changes, HistoryFault> {
        let repository = &self.repository;
        let since = self.commit(&self.fork(revision, "HEAD")?)?;
        let tree = since.tree()?;
        let mut options = DiffOptions::new();
        options.include_untracked(true).recurse_untracked_dirs(true).include_typechange(true);
        let diff = repository.diff_tree_to_workdir_with_index(Some(&tree), Some(&mut options))?;
        let mut changes = changes_of(&diff, repository, self.folder());
        changes.since = since.id().to_string();
        let tracked = repository.index()?;
        let links = tracked.iter().filter(|entry| entry.mode == u32::from(FileMode::Link));
        let links = links.filter_map(|entry| String::from_utf8(entry.path).ok());
        changes.links = links.map(|path| self.folder().join(path)).filter(|path| is_spec(path)).collect();
        Ok(changes)
    }
}

fn changes_of(diff: &Diff<'_>, repository: &Repository, folder: &Path) -> Changes {
    let mut changes = Changes { repository: folder.to_owned(), ..Changes::default() };
    let mut was_included = Vec::new();
    for delta in diff.deltas() {
        let Some(path) = delta.new_file().path().or_else(|| delta.old_file().path()) else { continue };
        let path = folder.join(path);
        if is_put_back(&delta, &path) {
            continue;
        }
        let modes = [delta.old_file().mode(), delta.new_file().mode()];
        if modes.contains(&FileMode::Link) {
            changes.is_everything = true;
        }
        // A repository that is not part of this one comes as an untracked folder.
        if modes.contains(&FileMode::Commit) || path.is_dir() {
            changes.unknown.push(path.components().collect());
            continue;
        }
        if let (true, Some(above)) = (decides_for_folder(&path), path.parent()) {
            changes.folders.push(above.to_owned());
        }
        // Nothing else is searched for includes: a branch may have changed thousands of files that hold no spec.
        if is_spec(&path) {
            was_included.extend(included_before(delta.old_file(), &path, repository));
        }
        changes.files.insert(path);
    }
    while let Some(path) = was_included.pop() {
        let path = real_path(&path);
        // What a changed file included is known from the revision.
        if !changes.files.contains(&path)
            && !changes.let_go.contains(&path)
            && let Ok(text) = text_of(&path)
        {
            was_included.extend(targets(&text, &path));
        }
        changes.let_go.insert(path);
    }
    changes
}

/// True when the file on disk is the one of the revision, whatever the index says.
fn is_put_back(delta: &DiffDelta<'_>, path: &Path) -> bool {
    let old = delta.old_file();
    let is_plain = |file: DiffFile<'_>| matches!(file.mode(), FileMode::Blob | FileMode::BlobExecutable);
    delta.status() == Delta::Modified
        && is_plain(delta.old_file())
        && is_plain(delta.new_file())
        && Oid::hash_file(ObjectType::Blob, path).is_ok_and(|now| now == old.id())
}

/// Where the include lines of a file led to in the revision.
fn included_before(old: DiffFile<'_>, path: &Path, repository: &Repository) -> Vec<PathBuf> {
    let blob = repository.find_blob(old.id());
    let text = blob.ok().and_then(|blob| text_of_bytes(blob.content().to_vec()).ok());
    text.map(|text| targets(&text, path)).unwrap_or_default()
}

/// Where the include lines of a file lead to.
pub(in crate::workspace) fn targets(text: &str, file: &Path) -> Vec<PathBuf> {
    let folder = file.parent().unwrap_or(file);
    include_lines(text).into_iter().map(|(path, _)| without_dots(&folder.join(path))).collect()
}

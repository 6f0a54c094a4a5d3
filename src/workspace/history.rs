//! Specs as they stand in earlier revisions, read from the repository itself: the files on disk stay as they are.

mod fault;
mod files;

use std::io;
use std::path::{Path, PathBuf};

use git2::{Commit, Delta, Diff, DiffFindOptions, DiffOptions, Repository, Tree};
use tempfile::TempDir;

use crate::text::nearest;
use crate::workspace::history::files::Lost;
use crate::workspace::name_within;
use crate::workspace::path::real_path;
use crate::workspace::search::EXTENSION;

pub use fault::HistoryFault;

/// The repository that a path lies in.
pub struct History {
    pub(in crate::workspace) repository: Repository,
    /// The folder of its files, links resolved.
    folder: PathBuf,
}

/// The specs and configurations of one revision, written into a folder that goes away with it.
pub struct Revision<'h> {
    tree: Tree<'h>,
    files: TempDir,
    folder: PathBuf,
    lost: Vec<Lost>,
}

impl History {
    /// The repository in which a path lies, or lay: the file itself may be gone.
    ///
    /// # Errors
    /// There is none, or it can't be opened.
    pub fn of(path: &Path) -> Result<Self, HistoryFault> {
        let path = real_path(path);
        let standing = path.ancestors().find(|ancestor| ancestor.exists()).unwrap_or(&path);
        let repository = Repository::discover(standing).map_err(|error| match error.code() {
            git2::ErrorCode::NotFound => HistoryFault::NoRepository,
            git2::ErrorCode::Owner => HistoryFault::OthersOwn,
            _ => error.into(),
        })?;
        let folder = real_path(repository.workdir().ok_or(HistoryFault::Bare)?);
        Ok(Self { repository, folder })
    }

    /// The folder of its files on disk.
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// A path as the repository knows it.
    ///
    /// # Errors
    /// It lies outside.
    pub fn within(&self, path: &Path) -> Result<PathBuf, HistoryFault> {
        real_path(path).strip_prefix(&self.folder).map(Path::to_owned).map_err(|_| HistoryFault::Outside)
    }

    /// A revision by any name that the repository knows it by; `wanted` is read in it too, however its name ends.
    ///
    /// # Errors
    /// There is none, or it can't be read.
    pub fn revision(&self, name: &str, wanted: &Path) -> Result<Revision<'_>, HistoryFault> {
        let tree = self.commit(name)?.tree()?;
        let files = tempfile::tempdir()?;
        let folder = real_path(files.path());
        let lost = files::write(&self.repository, &tree, &folder, wanted)?;
        Ok(Revision { folder, tree, files, lost })
    }

    /// The last commit that two revisions have in common, where their ways parted, by the start of its number.
    ///
    /// # Errors
    /// One of them is not there, or they have none in common.
    pub fn fork(&self, one: &str, other: &str) -> Result<String, HistoryFault> {
        let (first, second) = (self.commit(one)?.id(), self.commit(other)?.id());
        let base = self.repository.merge_base(first, second).map_err(|_| HistoryFault::Unrelated {
            revisions: [one, other].map(str::to_owned),
            is_shallow: self.repository.is_shallow(),
        })?;
        let base = self.repository.find_object(base, None)?;
        Ok(base.short_id()?.as_str().unwrap_or_default().to_owned())
    }

    /// The commit that a revision's name stands for.
    pub(in crate::workspace) fn commit(&self, name: &str) -> Result<Commit<'_>, HistoryFault> {
        let object = self.repository.revparse_single(name);
        object.and_then(|object| object.peel_to_commit()).map_err(|_| match self.repository.is_empty() {
            Ok(true) => HistoryFault::NoCommit,
            _ => HistoryFault::NoRevision {
                revision: name.to_owned(),
                is_shallow: self.repository.is_shallow(),
                nearest: self.nearest_name(name),
            },
        })
    }

    /// A branch as it was fetched, `origin/main` for `main`, since a fresh clone has no other; else the branch or tag with
    /// the nearest name.
    fn nearest_name(&self, name: &str) -> Option<String> {
        let branches = self.repository.branches(None).ok()?.flatten();
        let branches: Vec<String> =
            branches.filter_map(|(branch, _)| branch.name().ok()?.map(str::to_owned)).collect();
        let is_fetched = |known: &&String| known.split_once('/').is_some_and(|(_, branch)| branch == name);
        let fetched = branches.iter().find(is_fetched).cloned();
        let tags = self.repository.tag_names(None).ok()?;
        let known = branches.iter().map(String::as_str).chain(tags.iter().flatten());
        fetched.or_else(|| nearest(name, known).map(str::to_owned))
    }

    /// The specs' files that have another path in the newer state, as before and as now; without a newer revision the files
    /// on disk are it. A file is the same one when more than half of its text is.
    ///
    /// # Errors
    /// What the repository says.
    pub fn renamed(
        &self,
        old: &Revision<'_>,
        new: Option<&Revision<'_>>,
    ) -> Result<Vec<(PathBuf, PathBuf)>, HistoryFault> {
        let mut options = DiffOptions::new();
        options.pathspec(format!("*.{EXTENSION}")).include_untracked(true).recurse_untracked_dirs(true);
        let mut diff: Diff<'_> = match new {
            Some(new) => {
                self.repository.diff_tree_to_tree(Some(&old.tree), Some(&new.tree), Some(&mut options))?
            }
            None => self.repository.diff_tree_to_workdir_with_index(Some(&old.tree), Some(&mut options))?,
        };
        diff.find_similar(Some(DiffFindOptions::new().renames(true).for_untracked(true)))?;
        let renamed = diff.deltas().filter(|delta| delta.status() == Delta::Renamed);
        Ok(renamed
            .filter_map(|delta| {
                Some((delta.old_file().path()?.to_owned(), delta.new_file().path()?.to_owned()))
            })
            .collect())
    }
}

impl Revision<'_> {
    /// The folder that its files are written into, links resolved.
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// A file of this folder as git writes it, behind the revision's name: `v1:house.framing`.
    pub fn named(&self, revision: &str, path: &Path) -> String {
        format!("{revision}:{}", name_within(&self.folder, path))
    }

    /// Why a file of this folder is not in it though the revision may have it: it lies in another repository, or behind
    /// a link that leads out of this one.
    pub fn why_lost(&self, path: &Path) -> Option<String> {
        let below = path.strip_prefix(&self.folder).ok()?;
        let lost = self.lost.iter().find(|lost| below.starts_with(&lost.path))?;
        Some(lost.to_string())
    }

    /// Takes the folder away.
    ///
    /// # Errors
    /// What the disk says.
    pub fn close(self) -> io::Result<()> {
        self.files.close()
    }
}

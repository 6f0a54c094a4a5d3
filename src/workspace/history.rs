//! Specs as they stand in earlier revisions, read from the repository itself: the files on disk stay as they are.

use std::fmt;
use std::io;
use std::path::{Component, Path, PathBuf};

use git2::{
    BranchType, Commit, Delta, Diff, DiffFindOptions, DiffOptions, ObjectType, Repository, Tree,
    TreeWalkMode, TreeWalkResult,
};
use tempfile::TempDir;

use crate::workspace::file_text::text_of;
use crate::workspace::include_line::include_lines;
use crate::workspace::name_within;
use crate::workspace::path::{real_path, without_dots};
use crate::workspace::search::{decides_for_folder, is_spec};

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
}

/// Why a revision can't be read.
#[derive(Debug)]
pub enum HistoryFault {
    /// No repository holds the path.
    NoRepository,
    /// The repository has no working folder.
    Bare,
    /// The path lies elsewhere.
    Outside,
    /// The repository knows no commit by this name.
    NoRevision {
        /// The name.
        revision: String,
        /// Only the last commits were fetched.
        is_shallow: bool,
        /// What another repository's branch of this name is called here.
        nearest: Option<String>,
    },
    /// Two revisions have no commit in common.
    Unrelated {
        /// Their names.
        revisions: [String; 2],
        /// Only the last commits were fetched.
        is_shallow: bool,
    },
    /// The repository belongs to another user of the machine.
    OthersOwn,
    /// What the repository says.
    Unreadable(String),
    /// What the disk says.
    Disk(io::Error),
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

    /// A revision by any name that the repository knows it by.
    ///
    /// # Errors
    /// There is none, or it can't be read.
    pub fn revision(&self, name: &str) -> Result<Revision<'_>, HistoryFault> {
        let tree = self.commit(name)?.tree()?;
        let files = tempfile::tempdir()?;
        // A walk heeds `.gitignore` where a repository is.
        std::fs::create_dir(files.path().join(".git"))?;
        let mut specs = Vec::new();
        let mut fault = None;
        tree.walk(TreeWalkMode::PreOrder, |above, entry| {
            let Some(name) = entry.name() else { return TreeWalkResult::Ok };
            let path = Path::new(above).join(name);
            if entry.kind() != Some(ObjectType::Blob) || !is_read(&path) || entry.filemode() == LINK {
                return TreeWalkResult::Ok;
            }
            match self.write(entry.id(), &files.path().join(&path)) {
                Ok(()) => {
                    specs.push(path);
                    TreeWalkResult::Ok
                }
                Err(error) => {
                    fault = Some(error);
                    TreeWalkResult::Abort
                }
            }
        })
        .or_else(|error| if fault.is_some() { Ok(()) } else { Err(error) })?;
        if let Some(fault) = fault {
            return Err(fault);
        }
        self.write_included(&tree, files.path(), specs)?;
        Ok(Revision { folder: real_path(files.path()), tree, files })
    }

    /// Writes what the include lines of these files lead to, and so on: a part may be called anything.
    fn write_included(
        &self,
        tree: &Tree<'_>,
        folder: &Path,
        mut files: Vec<PathBuf>,
    ) -> Result<(), HistoryFault> {
        while let Some(file) = files.pop() {
            let Ok(text) = text_of(&folder.join(&file)) else { continue };
            for (included, _) in include_lines(&text) {
                let path = without_dots(&file.parent().unwrap_or(Path::new("")).join(included));
                if !is_plain(&path) || folder.join(&path).exists() {
                    continue;
                }
                let Ok(entry) = tree.get_path(&path) else { continue };
                if entry.kind() == Some(ObjectType::Blob) && entry.filemode() != LINK {
                    self.write(entry.id(), &folder.join(&path))?;
                    files.push(path);
                }
            }
        }
        Ok(())
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
        object.and_then(|object| object.peel_to_commit()).map_err(|_| HistoryFault::NoRevision {
            revision: name.to_owned(),
            is_shallow: self.repository.is_shallow(),
            nearest: self.fetched_branch(name),
        })
    }

    /// A branch as it was fetched, `origin/main` for `main`: a fresh clone has no other.
    fn fetched_branch(&self, name: &str) -> Option<String> {
        let fetched = self.repository.branches(Some(BranchType::Remote)).ok()?;
        let mut names = fetched.flatten().filter_map(|(branch, _)| branch.name().ok()?.map(str::to_owned));
        names.find(|fetched| fetched.split_once('/').is_some_and(|(_, branch)| branch == name))
    }

    fn write(&self, blob: git2::Oid, path: &Path) -> Result<(), HistoryFault> {
        let blob = self.repository.find_blob(blob)?;
        if let Some(folder) = path.parent() {
            std::fs::create_dir_all(folder)?;
        }
        Ok(std::fs::write(path, blob.content())?)
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
        options.pathspec("*.framing").include_untracked(true).recurse_untracked_dirs(true);
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

/// How a tree marks a symbolic link: what it leads to need not be in the revision.
const LINK: i32 = 0o120_000;

/// A file that reading specs asks for, by its name.
fn is_read(path: &Path) -> bool {
    is_plain(path) && (is_spec(path) || decides_for_folder(path))
}

/// False for a path that leads upwards, whatever wrote the tree.
fn is_plain(path: &Path) -> bool {
    path.components().all(|part| matches!(part, Component::Normal(_)))
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

    /// Takes the folder away.
    ///
    /// # Errors
    /// What the disk says.
    pub fn close(self) -> io::Result<()> {
        self.files.close()
    }
}

impl fmt::Display for HistoryFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoRepository => write!(out, "no git repository holds it"),
            Self::Bare => write!(out, "the repository has no working folder"),
            Self::Outside => write!(out, "it lies outside the repository"),
            Self::NoRevision { revision, is_shallow, nearest } => {
                write!(out, "the repository has no revision `{revision}`")?;
                match nearest {
                    Some(nearest) => write!(out, "; did you mean `{nearest}`?"),
                    None => write!(out, "{}", cure_of(*is_shallow)),
                }
            }
            Self::Unrelated { revisions: [one, other], is_shallow } => {
                write!(out, "`{one}` and `{other}` have no commit in common{}", cure_of(*is_shallow))
            }
            Self::OthersOwn => write!(
                out,
                "the repository belongs to another user: `git config --global --add safe.directory FOLDER` trusts it"
            ),
            Self::Unreadable(why) => write!(out, "the repository can't be read: {why}"),
            Self::Disk(error) => write!(out, "the revision can't be written out: {error}"),
        }
    }
}

/// What helps where history was cut off.
fn cure_of(is_shallow: bool) -> &'static str {
    match is_shallow {
        true => "; only the last commits were fetched: `git fetch --unshallow` fetches the rest",
        false => "",
    }
}

impl std::error::Error for HistoryFault {}

impl From<git2::Error> for HistoryFault {
    fn from(error: git2::Error) -> Self {
        Self::Unreadable(error.message().to_owned())
    }
}

impl From<io::Error> for HistoryFault {
    fn from(error: io::Error) -> Self {
        Self::Disk(error)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_what_a_spec_reads_is_written_out() {
        for path in ["house.framing", "parts/walls.framing", "jobs/storyrod.toml", "jobs/.gitignore"] {
            assert!(is_read(Path::new(path)), "{path}");
        }
        for path in ["../house.framing", "/etc/house.framing", "a/../house.framing", "notes.md", "framing"] {
            assert!(!is_read(Path::new(path)), "{path}");
        }
    }
}

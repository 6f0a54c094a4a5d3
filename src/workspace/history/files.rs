//! The files of a revision, written into a folder: what reading specs asks for, and nothing else.

use std::fmt;
use std::fs;
use std::path::{Component, Path, PathBuf};

use git2::{FileMode, ObjectType, Oid, Repository, Tree, TreeEntry, TreeWalkMode, TreeWalkResult};

use crate::workspace::HistoryFault;
use crate::workspace::file_text::text_of;
use crate::workspace::include_line::include_lines;
use crate::workspace::name_within;
use crate::workspace::path::real_path;
use crate::workspace::search::{decides_for_folder, is_spec};

/// So many links may lead from one to the next.
const MOST_LINKS: usize = 16;

/// What a tree names but the repository does not hold.
#[derive(Debug)]
pub struct Lost {
    /// Within the repository.
    pub path: PathBuf,
    kind: LostKind,
}

#[derive(Debug)]
enum LostKind {
    /// A repository inside this one, not fetched, or not up to the commit.
    Submodule,
    /// A symbolic link that leads out of the repository.
    Link,
}

/// Writes the specs, what they include and what decides how they are read into a folder. Links stay links; what lies in
/// repositories inside this one is taken from those.
pub fn write(
    repository: &Repository,
    tree: &Tree<'_>,
    folder: &Path,
    wanted: &Path,
) -> Result<Vec<Lost>, HistoryFault> {
    // A walk heeds `.gitignore` where a repository is.
    fs::create_dir(folder.join(".git"))?;
    let mut writing = Writing { folder, wanted, specs: Vec::new(), lost: Vec::new() };
    writing.take_tree(repository, tree, Path::new(""))?;
    writing.take_included(repository, tree)?;
    Ok(writing.lost)
}

struct Writing<'w> {
    folder: &'w Path,
    wanted: &'w Path,
    /// What was written, as it lies on disk.
    specs: Vec<PathBuf>,
    lost: Vec<Lost>,
}

/// What stands at a path of a tree.
enum Standing {
    File(Vec<u8>),
    /// Where a link on the way leads, within the whole.
    Link(PathBuf),
}

impl Writing<'_> {
    /// A tree that stands at `above` within the whole.
    fn take_tree(
        &mut self,
        repository: &Repository,
        tree: &Tree<'_>,
        above: &Path,
    ) -> Result<(), HistoryFault> {
        let mut entries: Vec<(PathBuf, TreeEntry<'static>)> = Vec::new();
        tree.walk(TreeWalkMode::PreOrder, |folder, entry| {
            if let Some(name) = entry.name() {
                entries.push((Path::new(folder).join(name), entry.to_owned()));
            }
            TreeWalkResult::Ok
        })?;
        for (path, entry) in entries {
            let whole = above.join(&path);
            match entry.kind() {
                Some(ObjectType::Commit) => self.take_submodule(repository, &path, entry.id(), whole)?,
                Some(ObjectType::Blob) if is_link(&entry) => self.take_link(repository, &entry, whole)?,
                Some(ObjectType::Blob) if self.is_read(&whole) => {
                    let content = repository.find_blob(entry.id())?.content().to_vec();
                    self.write_file(&self.folder.join(whole), &content)?;
                }
                _ => {}
            }
        }
        Ok(())
    }

    /// A file that reading specs asks for, by its name; no path that leads upwards, whatever wrote the tree.
    fn is_read(&self, path: &Path) -> bool {
        let is_plain = path.components().all(|part| matches!(part, Component::Normal(_)));
        is_plain && (path == self.wanted || is_spec(path) || decides_for_folder(path))
    }

    fn take_submodule(
        &mut self,
        repository: &Repository,
        path: &Path,
        commit: Oid,
        whole: PathBuf,
    ) -> Result<(), HistoryFault> {
        match submodule(repository, path) {
            Some(inner) if inner.find_commit(commit).is_ok() => {
                let tree = inner.find_commit(commit)?.tree()?;
                self.take_tree(&inner, &tree, &whole)
            }
            _ => {
                self.lost.push(Lost { path: whole, kind: LostKind::Submodule });
                Ok(())
            }
        }
    }

    fn take_link(
        &mut self,
        repository: &Repository,
        entry: &TreeEntry<'_>,
        whole: PathBuf,
    ) -> Result<(), HistoryFault> {
        let target = target_of(repository, entry)?;
        if !stays_within(whole.parent().unwrap_or(Path::new("")), &target)
            || !make_link(&target, &self.folder.join(&whole))?
        {
            self.lost.push(Lost { path: whole, kind: LostKind::Link });
        }
        Ok(())
    }

    fn write_file(&mut self, path: &Path, content: &[u8]) -> Result<(), HistoryFault> {
        if let Some(folder) = path.parent() {
            fs::create_dir_all(folder)?;
        }
        fs::write(path, content)?;
        self.specs.push(path.to_owned());
        Ok(())
    }

    /// Writes what include lines lead to, and so on: a part may be called anything.
    fn take_included(&mut self, repository: &Repository, tree: &Tree<'_>) -> Result<(), HistoryFault> {
        while let Some(file) = self.specs.pop() {
            let Ok(text) = text_of(&file) else { continue };
            for (included, _) in include_lines(&text) {
                let mut path = real_path(&file.parent().unwrap_or(self.folder).join(included));
                for _ in 0..MOST_LINKS {
                    let Ok(within) = path.strip_prefix(self.folder) else { break };
                    if path.exists() {
                        break;
                    }
                    match standing_at(repository, tree, within)? {
                        Some(Standing::File(content)) => self.write_file(&path, &content)?,
                        Some(Standing::Link(target)) => {
                            path = real_path(&self.folder.join(target));
                        }
                        None => break,
                    }
                }
            }
        }
        Ok(())
    }
}

/// What stands at a path, also of a repository inside this one.
fn standing_at(
    repository: &Repository,
    tree: &Tree<'_>,
    path: &Path,
) -> Result<Option<Standing>, HistoryFault> {
    // The path itself, or the nearest above it that the tree has.
    let known = path.ancestors().filter(|known| !known.as_os_str().is_empty());
    let Some((known, entry)) = known.filter_map(|known| Some((known, tree.get_path(known).ok()?))).next()
    else {
        return Ok(None);
    };
    let rest = path.strip_prefix(known).unwrap_or(Path::new(""));
    match entry.kind() {
        Some(ObjectType::Blob) if is_link(&entry) => {
            let target = known.parent().unwrap_or(Path::new("")).join(target_of(repository, &entry)?);
            Ok(Some(Standing::Link(if rest.as_os_str().is_empty() { target } else { target.join(rest) })))
        }
        Some(ObjectType::Blob) if rest.as_os_str().is_empty() => {
            Ok(Some(Standing::File(repository.find_blob(entry.id())?.content().to_vec())))
        }
        Some(ObjectType::Commit) => {
            let Some(inner) = submodule(repository, known) else { return Ok(None) };
            let Ok(commit) = inner.find_commit(entry.id()) else { return Ok(None) };
            let standing = standing_at(&inner, &commit.tree()?, rest)?;
            Ok(standing.map(|standing| match standing {
                Standing::Link(target) => Standing::Link(known.join(target)),
                file @ Standing::File(_) => file,
            }))
        }
        _ => Ok(None),
    }
}

/// The repository that is checked out at a path of this one.
fn submodule(repository: &Repository, path: &Path) -> Option<Repository> {
    Repository::open(repository.workdir()?.join(path)).ok()
}

fn is_link(entry: &TreeEntry<'_>) -> bool {
    entry.filemode() == i32::from(FileMode::Link)
}

fn target_of(repository: &Repository, link: &TreeEntry<'_>) -> Result<PathBuf, HistoryFault> {
    let blob = repository.find_blob(link.id())?;
    Ok(PathBuf::from(String::from_utf8_lossy(blob.content()).into_owned()))
}

/// True when a link in a folder of the repository leads to a path of it.
fn stays_within(folder: &Path, target: &Path) -> bool {
    let mut depth = folder.components().count();
    for part in target.components() {
        match part {
            Component::Normal(_) => depth += 1,
            Component::CurDir => {}
            Component::ParentDir if depth > 0 => depth -= 1,
            Component::ParentDir | Component::RootDir | Component::Prefix(_) => return false,
        }
    }
    true
}

/// Makes a symbolic link; false where the system has none.
#[cfg(unix)]
fn make_link(target: &Path, link: &Path) -> Result<bool, HistoryFault> {
    if let Some(folder) = link.parent() {
        fs::create_dir_all(folder)?;
    }
    std::os::unix::fs::symlink(target, link)?;
    Ok(true)
}

#[cfg(not(unix))]
fn make_link(_: &Path, _: &Path) -> Result<bool, HistoryFault> {
    Ok(false)
}

impl fmt::Display for Lost {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let path = name_within(Path::new(""), &self.path);
        match self.kind {
            LostKind::Submodule => write!(
                out,
                "`{path}` is a repository of its own that is not here up to this commit: `git submodule update --init` fetches it"
            ),
            LostKind::Link => write!(out, "`{path}` is a link that leads out of the repository"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_what_a_spec_reads_is_written_out() {
        let wanted = Path::new("house.txt");
        let writing = Writing { folder: Path::new(""), wanted, specs: Vec::new(), lost: Vec::new() };
        for path in
            ["house.framing", "parts/walls.framing", "jobs/storyrod.toml", "jobs/.gitignore", "house.txt"]
        {
            assert!(writing.is_read(Path::new(path)), "{path}");
        }
        for path in ["../house.framing", "/etc/house.framing", "a/../house.framing", "notes.md", "framing"] {
            assert!(!writing.is_read(Path::new(path)), "{path}");
        }
    }

    #[test]
    fn a_link_may_not_lead_out() {
        for (folder, target, is_within) in [
            ("jobs/a", "../../common", true),
            ("jobs/a", "../../../common", false),
            ("", "parts/./x", true),
            ("", "..", false),
            ("jobs", "/etc", false),
            ("jobs", "../x/../../y", false),
        ] {
            assert_eq!(stays_within(Path::new(folder), Path::new(target)), is_within, "{folder} {target}");
        }
    }
}

//! A git repository, made and filled here.

use std::path::Path;

use git2::{IndexAddOption, Signature, Time};

/// A repository, and its revisions by number: `r0`, `r1` and so on.
pub struct Repository {
    folder: tempfile::TempDir,
    pub git: git2::Repository,
    n_revisions: usize,
}

impl Repository {
    pub fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let git = git2::Repository::init(folder.path()).unwrap();
        Self { folder, git, n_revisions: 0 }
    }

    pub fn path(&self) -> &Path {
        self.folder.path()
    }

    /// Makes everything in the folder the next revision.
    pub fn commit(&mut self) {
        let mut index = self.git.index().unwrap();
        index.clear().unwrap();
        index.add_all(["*"], IndexAddOption::DEFAULT, None).unwrap();
        index.write().unwrap();
        let tree = self.git.find_tree(index.write_tree().unwrap()).unwrap();
        let time = Time::new(i64::try_from(self.n_revisions).unwrap(), 0);
        let builder = Signature::new("builder", "builder@example.org", &time).unwrap();
        let parent = self.git.head().ok().map(|head| head.peel_to_commit().unwrap());
        let parents: Vec<_> = parent.iter().collect();
        let commit = self.git.commit(Some("HEAD"), &builder, &builder, "next", &tree, &parents).unwrap();
        let commit = self.git.find_object(commit, None).unwrap();
        self.git.tag_lightweight(&format!("r{}", self.n_revisions), &commit, false).unwrap();
        self.n_revisions += 1;
    }
}

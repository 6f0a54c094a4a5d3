//! A repository made by the git program itself.

use std::path::Path;
use std::process::{Command, Output};

use crate::program::folder_with;

/// A repository in a folder of its own, out of reach of what the user or the machine has configured.
pub struct Repository {
    folder: tempfile::TempDir,
}

impl Repository {
    /// A repository with these files, not yet in a commit.
    pub fn with(files: &[(&str, &str)]) -> Self {
        let repository = Self { folder: folder_with(files) };
        repository.git(&["init", "--quiet", "--initial-branch=main", "."]);
        repository
    }

    pub fn path(&self) -> &Path {
        self.folder.path()
    }

    pub fn write(&self, name: &str, bytes: impl AsRef<[u8]>) {
        std::fs::write(self.path().join(name), bytes).unwrap();
    }

    /// Makes everything in the folder a commit.
    pub fn commit(&self) {
        self.git(&["add", "--all"]);
        self.git(&["commit", "--quiet", "--message=next"]);
    }

    /// What git prints; it must not fail.
    pub fn git(&self, arguments: &[&str]) -> String {
        let output = self.run(&[&["git"], arguments].concat());
        let log = String::from_utf8_lossy(&output.stderr);
        assert!(output.status.success(), "git {arguments:?}: {log}");
        String::from_utf8(output.stdout).unwrap()
    }

    /// Runs a program in the folder, with `storyrod` on its path.
    pub fn run(&self, command: &[&str]) -> Output {
        let program = assert_cmd::cargo::cargo_bin!("storyrod");
        let path = format!("{}:{}", program.parent().unwrap().display(), std::env::var("PATH").unwrap());
        self.run_with(&[("PATH", &path)], command)
    }

    /// Runs a program in the folder, with these variables in the environment.
    pub fn run_with(&self, variables: &[(&str, &str)], command: &[&str]) -> Output {
        let who = [("GIT_AUTHOR_NAME", "builder"), ("GIT_AUTHOR_EMAIL", "builder@example.org")];
        let by = [("GIT_COMMITTER_NAME", "builder"), ("GIT_COMMITTER_EMAIL", "builder@example.org")];
        let nothing = [("GIT_CONFIG_GLOBAL", "/dev/null"), ("GIT_CONFIG_NOSYSTEM", "1"), ("NO_COLOR", "1")];
        let mut run = Command::new(command[0]);
        run.args(&command[1..]).current_dir(self.path());
        // A run inside a hook of this very repository would tell git to look there.
        for variable in std::env::vars().map(|(name, _)| name).filter(|name| name.starts_with("GIT_")) {
            run.env_remove(variable);
        }
        run.envs(who).envs(by).envs(nothing).envs(variables.iter().copied()).output().unwrap()
    }
}

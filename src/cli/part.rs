//! `lint --changed-since`: which part of the specs a run looks at.

use std::path::{Path, PathBuf};

use anyhow::{Context, bail};
use clap::Args;

use crate::cli::input::{Found, STANDARD_INPUT, specs_of};
use crate::report::Part;
use crate::workspace::{Changes, History};

#[derive(Debug, Args)]
pub(in crate::cli) struct PartArguments {
    /// Look only at specs that can be affected by what changed since REVISION, a commit, branch or tag of the git
    /// repository: since the last commit that it and what is checked out have in common, so that a branch answers for
    /// its own changes. The files on disk count, committed or not, without those that git ignores
    #[arg(long, value_name = "REVISION", conflicts_with = "stdin_filename")]
    changed_since: Option<String>,
}

impl PartArguments {
    /// The part, for whoever reads the results.
    pub fn part(&self) -> Part<'_> {
        Part { changed_since: self.changed_since.as_deref() }
    }

    /// The specs of this part that the paths lead to.
    ///
    /// # Errors
    /// A path lies in no repository, or in one that does not know the revision.
    pub fn specs_of(&self, paths: &[PathBuf], stdin_name: Option<&Path>) -> anyhow::Result<Found> {
        let Some(revision) = &self.changed_since else { return Ok(specs_of(paths, stdin_name)) };
        if paths.iter().any(|path| path.as_os_str() == STANDARD_INPUT) {
            bail!("`--changed-since` compares files on disk: standard input is none");
        }
        let mut found = Found::default();
        let mut known: Vec<Changes> = Vec::new();
        for path in paths {
            let history = History::of(path).with_context(|| path.display().to_string())?;
            if !known.iter().any(|changes| changes.are_of(&history)) {
                known.push(history.changes_since(revision)?);
            }
            if let Some(changes) = known.iter().find(|changes| changes.are_of(&history)) {
                found.add_affected(path, changes);
            }
        }
        Ok(found.in_order())
    }
}

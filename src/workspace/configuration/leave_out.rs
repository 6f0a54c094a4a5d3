//! Which files the configurations above them leave out of a walk through folders.

use std::collections::HashMap;
use std::path::{Path, PathBuf};

use ignore::gitignore::{Gitignore, GitignoreBuilder};

use crate::workspace::CONFIGURATION_NAME;
use crate::workspace::configuration;

/// The patterns of one configuration, read as the lines of a `.gitignore` in its folder.
#[derive(Clone, Debug, Default)]
pub struct Patterns(Option<Gitignore>);

impl Patterns {
    /// The patterns that can be read, and of each other one its place in the list and what is wrong with it.
    pub fn of(folder: &Path, lines: &[&str]) -> (Self, Vec<(usize, String)>) {
        let mut builder = GitignoreBuilder::new(folder);
        let mut faults = Vec::new();
        for (at, line) in lines.iter().enumerate() {
            if line.trim().trim_start_matches('!').is_empty() || line.starts_with('#') {
                faults.push((at, "it leaves out nothing".to_owned()));
            } else if let Err(error) = builder.add_line(None, line) {
                faults.push((at, error.to_string()));
            }
        }
        (Self(builder.build().ok()), faults)
    }

    /// True when they leave a file out, or a folder that it lies in. The file lies below the folder of the patterns.
    fn has(&self, folder: &Path, file: &Path) -> bool {
        let Self(Some(patterns)) = self else { return false };
        let Ok(below) = file.strip_prefix(folder) else { return false };
        patterns.matched_path_or_any_parents(below, false).is_ignore()
    }
}

/// What the configurations leave out; each is read once.
#[derive(Default)]
pub struct LeftOut {
    known: HashMap<PathBuf, Patterns>,
}

impl LeftOut {
    /// True when the configuration of any folder above a file leaves it out. The path is absolute, links resolved.
    pub fn has(&mut self, file: &Path) -> bool {
        file.ancestors().skip(1).any(|folder| {
            if !self.known.contains_key(folder) {
                let path = folder.join(CONFIGURATION_NAME);
                let said =
                    if path.is_file() { configuration::read(&path).leave_out } else { Patterns::default() };
                self.known.insert(folder.to_owned(), said);
            }
            self.known.get(folder).is_some_and(|patterns| patterns.has(folder, file))
        })
    }
}

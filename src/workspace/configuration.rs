//! The configuration file `storyrod.toml`: it marks the root folder of a spec.

use std::fmt;
use std::path::{Path, PathBuf};

use toml::de::DeTable;

use crate::text::{ColumnEncoding, LineIndex};
use crate::workspace::file_text::{TextFault, text_of};

/// The name of the configuration file; its folder is a spec's root folder.
pub const CONFIGURATION_NAME: &str = "storyrod.toml";

/// What a file of an older version says, and where it stands now.
const SEVERITY: &str = "severity";
const SEVERITY_STANDS: &str = "the severity of a rule stands in the spec, under `project`, one line a rule: `severity RULE advice because \"…\"`";

/// Something wrong in a configuration file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ConfigurationFault {
    /// The file.
    pub path: PathBuf,
    /// Line and column in characters, from 1; `None` when the file gives no text at all.
    pub place: Option<(u32, u32)>,
    /// What is wrong; lower case, no final stop.
    pub message: String,
}

impl fmt::Display for ConfigurationFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{}", self.path.display())?;
        if let Some((line, column)) = self.place {
            write!(out, ":{line}:{column}")?;
        }
        write!(out, ": {}", self.message)
    }
}

/// What is wrong with a configuration file. An empty file is right.
pub(in crate::workspace) fn read(path: &Path) -> Vec<ConfigurationFault> {
    match text_of(path) {
        Ok(text) => {
            let lines = LineIndex::new(&text);
            let with_place = |(at, message): (usize, String)| {
                let at = u32::try_from(at).unwrap_or(u32::MAX);
                let place = lines.line_column(&text, at, ColumnEncoding::Utf32);
                ConfigurationFault {
                    path: path.to_owned(),
                    place: Some((place.line + 1, place.column + 1)),
                    message,
                }
            };
            faults_of(&text).into_iter().map(with_place).collect()
        }
        // It may stand there only to mark the root folder.
        Err(TextFault::Empty) => Vec::new(),
        Err(fault) => {
            vec![ConfigurationFault { path: path.to_owned(), place: None, message: fault.to_string() }]
        }
    }
}

/// Each fault with the byte it stands at.
fn faults_of(text: &str) -> Vec<(usize, String)> {
    let table = match DeTable::parse(text) {
        Ok(table) => table.into_inner(),
        Err(error) => {
            let at = error.span().unwrap_or(0..0).start;
            return vec![(at, format!("this is no TOML: {}", error.message().trim()))];
        }
    };
    let mut keys: Vec<_> = table.keys().collect();
    keys.sort_by_key(|key| key.span().start);
    keys.into_iter()
        .map(|key| {
            let name: &str = key.get_ref();
            let stands = if name == SEVERITY { format!(": {SEVERITY_STANDS}") } else { String::new() };
            (key.span().start, format!("`{name}` is no key of this file{stands}"))
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_key_that_is_not_known_is_named_with_its_place() {
        assert_eq!(faults_of("\n# nothing\n"), []);
        let faults = faults_of("rules = 3\n[severity]\nstair-headroom = \"off\"\n");
        assert_eq!(faults[0], (0, "`rules` is no key of this file".to_owned()));
        assert!(
            faults[1]
                .1
                .starts_with("`severity` is no key of this file: the severity of a rule stands in the spec")
        );
        assert_eq!((faults[1].0, faults.len()), (11, 2));
        assert!(faults_of("severity [\n")[0].1.starts_with("this is no TOML"));
    }
}

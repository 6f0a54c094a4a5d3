//! The configuration file `storyrod.toml`: it marks the root folder of a spec, and says what a run looks at and how.
//!
//! What a house is made of, limits and severities included, stands in its spec and nowhere else.

mod key;
mod leave_out;
mod reading;
mod schema;

use std::fmt;
use std::num::NonZeroUsize;
use std::path::{Path, PathBuf};

use crate::diagnostic::Severity;
use crate::workspace::configuration::leave_out::Patterns;
use crate::workspace::file_text::{TextFault, text_of};
use crate::workspace::path::real_path;

pub(in crate::workspace) use leave_out::LeftOut;
pub use schema::schema;

/// The name of the configuration file; its folder is a spec's root folder.
pub const CONFIGURATION_NAME: &str = "storyrod.toml";

/// What a configuration file says; nothing where it says nothing.
#[derive(Debug, Default)]
pub struct Configuration {
    /// What a run without an argument looks at, in the file's own folder.
    pub paths: Vec<ConfiguredPath>,
    /// Files that a walk through folders passes over.
    pub(in crate::workspace) leave_out: Patterns,
    /// So many specs are worked on at once.
    pub jobs: Option<NonZeroUsize>,
    /// Shape of `lint`'s output.
    pub format: Option<Format>,
    /// The least grave finding at which `lint` fails.
    pub fail_on: Option<Severity>,
    /// The file of the findings that are known, in the file's own folder.
    pub baseline: Option<PathBuf>,
    /// What stands before a rule's name in the address of its page.
    pub rules_address: Option<String>,
    /// The folder of the file, links resolved; empty when there is none.
    pub folder: PathBuf,
    /// What is wrong with it; what is right in it counts.
    pub faults: Vec<ConfigurationFault>,
}

/// A path that a configuration file gives.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ConfiguredPath {
    /// In the file's own folder.
    pub path: PathBuf,
    /// The fault to tell when nothing stands there.
    pub missing: ConfigurationFault,
}

/// Shape of what `lint` prints.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Format {
    /// For a person.
    #[default]
    Text,
    /// One line for each finding.
    Lines,
    /// For programs.
    Json,
    /// SARIF 2.1.0.
    Sarif,
    /// JUnit's XML.
    Junit,
    /// A summary.
    Markdown,
}

impl Format {
    /// All of them, the one without a choice first.
    pub const ALL: [Self; 6] =
        [Self::Text, Self::Lines, Self::Json, Self::Sarif, Self::Junit, Self::Markdown];

    /// The word for it, on the command line and in the configuration.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Text => "text",
            Self::Lines => "lines",
            Self::Json => "json",
            Self::Sarif => "sarif",
            Self::Junit => "junit",
            Self::Markdown => "markdown",
        }
    }

    /// What it is for.
    pub const fn meaning(self) -> &'static str {
        match self {
            Self::Text => "Each finding with its lines, for a person",
            Self::Lines => "`FILE:LINE:COLUMN: SEVERITY: MESSAGE [RULE]`, for an editor's list of errors",
            Self::Json => "For programs, described by grammar/lint-output.schema.json",
            Self::Sarif => "SARIF 2.1.0, for systems that take in what analysers find",
            Self::Junit => {
                "JUnit's XML, for systems that show tests: a finding at the fail level is a failed test"
            }
            Self::Markdown => "A summary for the page of a build or the comment on a review",
        }
    }
}

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

/// What the nearest configuration says, in `folder` or upwards of it.
pub fn configuration_of(folder: &Path) -> Configuration {
    let folder = real_path(folder);
    let files = folder.ancestors().map(|folder| folder.join(CONFIGURATION_NAME));
    files.into_iter().find(|file| file.is_file()).map(|file| read(&file)).unwrap_or_default()
}

/// What a configuration file says. An empty file says nothing and is right.
pub(in crate::workspace) fn read(path: &Path) -> Configuration {
    match text_of(path) {
        Ok(text) => reading::configuration(path, &text),
        // It may stand there only to mark the root folder.
        Err(TextFault::Empty) => reading::configuration(path, ""),
        Err(fault) => {
            let fault = ConfigurationFault { path: path.to_owned(), place: None, message: fault.to_string() };
            Configuration { faults: vec![fault], ..Configuration::default() }
        }
    }
}

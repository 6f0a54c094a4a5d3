//! The one table of the keys that a configuration file can have.

use crate::diagnostic::Severity;
use crate::workspace::Format;

/// A key.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Key {
    /// What a run without an argument looks at.
    Paths,
    /// What a walk through folders passes over.
    LeaveOut,
    /// So many specs at once.
    Jobs,
    /// Shape of `lint`'s output.
    Format,
    /// The least grave finding at which `lint` fails.
    FailOn,
    /// The file of known findings.
    Baseline,
    /// The address of the rules' pages.
    RulesAddress,
}

/// The table of keys that only `lint` asks for.
pub const LINT: &str = "lint";

/// What the table is.
pub const LINT_MEANING: &str = "What `storyrod lint` does where no argument says otherwise.";

/// What the value of a key is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Takes {
    /// A list of texts, none of them empty.
    Texts,
    /// A text that is not empty.
    Text,
    /// An address with its scheme.
    Address,
    /// A whole number from 1.
    Count,
    /// One of these words.
    Word(Vec<&'static str>),
}

impl Key {
    /// All of them, in the order in which they are told.
    pub const ALL: [Self; 7] = [
        Self::Paths,
        Self::LeaveOut,
        Self::Jobs,
        Self::Format,
        Self::FailOn,
        Self::Baseline,
        Self::RulesAddress,
    ];

    /// The table it stands in; `None` when it stands before any.
    pub const fn table(self) -> Option<&'static str> {
        match self {
            Self::Paths | Self::LeaveOut | Self::Jobs => None,
            Self::Format | Self::FailOn | Self::Baseline | Self::RulesAddress => Some(LINT),
        }
    }

    /// As a file writes it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Paths => "paths",
            Self::LeaveOut => "leave-out",
            Self::Format => "format",
            Self::FailOn => "fail-on",
            Self::Jobs => "jobs",
            Self::Baseline => "baseline",
            Self::RulesAddress => "rules-address",
        }
    }

    /// What it takes.
    pub fn takes(self) -> Takes {
        match self {
            Self::Paths | Self::LeaveOut => Takes::Texts,
            Self::Format => Takes::Word(Format::ALL.map(Format::word).to_vec()),
            Self::FailOn => Takes::Word(Severity::ALL.map(Severity::word).to_vec()),
            Self::Jobs => Takes::Count,
            Self::Baseline => Takes::Text,
            Self::RulesAddress => Takes::Address,
        }
    }

    /// What it does, for whoever writes the file.
    pub const fn meaning(self) -> &'static str {
        match self {
            Self::Paths => {
                "Files and folders that `lint` and `format` look at when no argument names one, relative to this file's folder. Without it they look at the working folder."
            }
            Self::LeaveOut => {
                "Files and folders that a walk through folders passes over, as lines of a `.gitignore` in this file's folder would. A file that an argument names is looked at all the same."
            }
            Self::Format => "Shape of the output, as `--format`: \"text\" without it.",
            Self::FailOn => {
                "Exit with 1 when a finding is at least this grave, as `--fail-on`: \"error\" without it."
            }
            Self::Jobs => {
                "So many specs are worked on at once by `lint` and `compare`, as `--jobs`; as many as there are cores without it."
            }
            Self::Baseline => {
                "The file of the findings that are known and left out, as `--baseline`, relative to this file's folder; so are the names of the specs in it."
            }
            Self::RulesAddress => {
                "What stands before a rule's name in the address of its page, as `--rules-address`."
            }
        }
    }

    /// A line that says it.
    pub const fn example(self) -> &'static str {
        match self {
            Self::Paths => r#"paths = ["houses"]"#,
            Self::LeaveOut => r#"leave-out = ["drafts/"]"#,
            Self::Format => r#"format = "markdown""#,
            Self::FailOn => r#"fail-on = "warning""#,
            Self::Jobs => "jobs = 4",
            Self::Baseline => r#"baseline = "known.toml""#,
            Self::RulesAddress => r#"rules-address = "https://example.org/rules/""#,
        }
    }
}

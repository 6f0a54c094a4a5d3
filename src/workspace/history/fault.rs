//! Why a revision can't be read, in a person's words.

use std::fmt;
use std::io;

/// Why a revision can't be read.
#[derive(Debug)]
pub enum HistoryFault {
    /// No repository holds the path.
    NoRepository,
    /// The repository has no working folder.
    Bare,
    /// The path lies elsewhere.
    Outside,
    /// Nothing was committed yet.
    NoCommit,
    /// The repository knows no commit by this name.
    NoRevision {
        /// The name.
        revision: String,
        /// Only the last commits were fetched.
        is_shallow: bool,
        /// What another repository's branch of this name is called here, or the nearest name there is.
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

impl fmt::Display for HistoryFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoRepository => write!(out, "no git repository holds it"),
            Self::Bare => write!(out, "the repository has no working folder"),
            Self::Outside => write!(out, "it lies outside the repository"),
            Self::NoCommit => write!(out, "the repository has no commit yet"),
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

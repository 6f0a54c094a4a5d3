//! Why results make up no whole.

use std::fmt;
use std::io;

use crate::diagnostic::Severity;
use crate::report::gather::ShardResult;

/// Why results make up no whole.
#[derive(Debug)]
pub enum GatherFault {
    /// There is no result.
    Nothing,
    /// A file is no result of a shard.
    Misread {
        /// Its name.
        file: String,
        /// Why.
        why: Misread,
    },
    /// Two results are of different runs.
    Differ {
        /// The files.
        files: [String; 2],
        /// What differs.
        what: &'static str,
        /// What it is in each.
        values: [String; 2],
    },
    /// Two results are of one shard.
    Twice {
        /// The files.
        files: [String; 2],
        /// Which shard.
        number: u32,
        /// Of how many.
        count: u32,
    },
    /// Shards of which there is no result.
    Missing {
        /// Which, as far as they are named.
        first: Vec<u32>,
        /// How many are missing.
        n_missing: u32,
        /// Of how many.
        count: u32,
    },
    /// JUnit's tests have failed by this severity already.
    FixedLevel(Severity),
    /// What the stream says.
    Stream(io::Error),
}

/// Why a file is no result of a shard.
#[derive(Debug)]
pub enum Misread {
    /// Nothing stands in it.
    Empty,
    /// It is something else.
    OtherFormat,
    /// It was written by another version.
    OtherVersion(String),
    /// A run without shards wrote it.
    Whole,
    /// It is not as `lint` wrote it.
    Damaged(String),
}

impl GatherFault {
    /// So many missing shards are named.
    pub(in crate::report::gather) const MOST_NAMED: usize = 5;

    pub(in crate::report::gather) fn differ(
        one: &ShardResult,
        other: &ShardResult,
        what: &'static str,
        values: &[&str; 2],
    ) -> Self {
        let files = [one.name.clone(), other.name.clone()];
        Self::Differ { files, what, values: values.map(str::to_owned) }
    }
}

impl fmt::Display for GatherFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Nothing => write!(out, "there is no result"),
            Self::Misread { file, why } => write!(out, "{file}: {why}"),
            Self::Differ { files: [one, other], what, values: [is, but] } => {
                write!(out, "{one} and {other} are of different runs: the {what} is {is} and {but}")
            }
            Self::Twice { files: [one, other], number, count } => {
                write!(out, "{one} and {other} are both of shard {number}/{count}")
            }
            Self::Missing { first, n_missing, count } => {
                let named: Vec<_> = first.iter().map(|number| format!("{number}/{count}")).collect();
                let n_named = u32::try_from(named.len()).unwrap_or(u32::MAX);
                let named = named.join(", ");
                match n_missing.saturating_sub(n_named) {
                    0 if *n_missing == 1 => write!(out, "the result of shard {named} is missing"),
                    0 => write!(out, "the results of shards {named} are missing"),
                    more => write!(out, "the results of shards {named} and {more} more are missing"),
                }
            }
            Self::FixedLevel(level) => {
                let level = level.word();
                write!(out, "these tests failed by `--fail-on {level}`: tell each shard another")
            }
            Self::Stream(error) => error.fmt(out),
        }
    }
}

impl fmt::Display for Misread {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => write!(out, "the file is empty: its shard did not come to its end"),
            Self::OtherFormat => write!(out, "no result of `lint` as json, sarif or junit"),
            Self::OtherVersion(version) => write!(
                out,
                "storyrod {version} wrote it, this is {}: one version writes and gathers",
                env!("CARGO_PKG_VERSION")
            ),
            Self::Whole => write!(out, "no result of a shard: `lint --shard` did not write it"),
            Self::Damaged(why) => write!(out, "not as `lint` wrote it: {why}"),
        }
    }
}

impl std::error::Error for GatherFault {
    fn source(&self) -> Option<&(dyn std::error::Error + 'static)> {
        match self {
            Self::Stream(error) => Some(error),
            _ => None,
        }
    }
}

impl From<io::Error> for GatherFault {
    fn from(error: io::Error) -> Self {
        Self::Stream(error)
    }
}

impl From<serde_json::Error> for Misread {
    fn from(error: serde_json::Error) -> Self {
        Self::Damaged(error.to_string())
    }
}

//! Which part of the specs a run looked at, for whoever could take it for the whole.

use std::fmt;

use crate::diagnostic::Severity;
use crate::report::counted;
use crate::syntax::value::Date;

/// Which part of the specs a run looked at; by default all.
#[derive(Clone, Copy, Debug, Default)]
pub struct Part<'a> {
    /// Those that depend on what changed since this revision.
    pub changed_since: Option<&'a str>,
    /// Those in one of several shards.
    pub shard: Option<Shard>,
}

/// One of several runs that share the specs, and what must be the same in all of them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Shard {
    /// Which it is, from 1.
    pub number: u32,
    /// How many there are.
    pub count: u32,
    /// The day by which waivers were judged.
    pub today: Date,
    /// The severity from which a finding counts.
    pub fail_on: Severity,
    /// A number for what else was asked: paths, configuration, baseline, commits.
    pub asked: u64,
}

impl Part<'_> {
    /// The part and how many specs there are in it, as a sentence; nothing for the whole.
    pub fn sentence(self, n_specs: usize) -> Option<String> {
        let place = self.shard.map(|shard| format!("in shard {shard}"));
        let change = self.changed_since.map(|revision| format!("on what changed since `{revision}`"));
        let (one, many) = match (place, change) {
            (None, None) => return None,
            (Some(place), None) => (format!("is {place}"), format!("are {place}")),
            (None, Some(change)) => (format!("depends {change}"), format!("depend {change}")),
            (Some(place), Some(change)) => {
                (format!("{place} depends {change}"), format!("{place} depend {change}"))
            }
        };
        Some(match n_specs {
            0 => format!("no spec looked at: none {one}"),
            1 => format!("1 spec looked at: no other {one}"),
            _ => format!("{} looked at: no others {many}", counted(n_specs, "spec")),
        })
    }
}

impl Shard {
    /// What was asked, as results write it.
    pub(in crate::report) fn asked_word(self) -> String {
        format!("{:016x}", self.asked)
    }
}

impl fmt::Display for Shard {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(out, "{}/{}", self.number, self.count)
    }
}

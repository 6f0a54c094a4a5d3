//! Which part of the specs a run looked at, for whoever could take it for the whole.

use crate::report::counted;

/// Which part of the specs a run looked at; by default all.
#[derive(Clone, Copy, Debug, Default)]
pub struct Part<'a> {
    /// Those that depend on what changed since this revision.
    pub changed_since: Option<&'a str>,
}

impl Part<'_> {
    /// The part and how many specs there are in it, as a sentence; nothing for the whole.
    pub fn sentence(self, n_specs: usize) -> Option<String> {
        let revision = self.changed_since?;
        let change = format!("on what changed since `{revision}`");
        Some(match n_specs {
            0 => format!("no spec looked at: none depends {change}"),
            1 => format!("1 spec looked at: the one that depends {change}"),
            _ => format!("{} looked at: those that depend {change}", counted(n_specs, "spec")),
        })
    }
}

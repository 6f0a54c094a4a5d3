//! Findings and lists for people and programs: prints, computes nothing.
//!
//! Everything here writes to a stream it is given and asks nothing of the terminal, so the same house prints the same
//! bytes anywhere.

mod calc;
mod caution;
mod change;
mod details;
mod documentation;
mod facts;
mod fingerprint;
mod gather;
mod json;
mod junit;
mod lines;
mod markdown;
mod markdown_text;
mod order;
mod palette;
mod part;
mod printable;
mod rod;
mod sarif;
mod sheet;
mod snippet;
mod steps;
mod summary;
mod takedown;
mod text;

pub use calc::{SheetForm, write_calc};
pub use caution::{CAUTION, STRENGTH_CAUTION};
pub use change::{
    ShownChange, ShownChanges, write_change_html, write_change_json, write_change_markdown,
    write_change_text, write_letter,
};
pub use documentation::{write_index, write_rule};
pub use facts::write_facts;
pub use fingerprint::{is_part_of, known_as};
pub use gather::{GatherFault, Gathered, ShardResult, gather};
pub use json::{Unusable, write_json};
pub use junit::write_junit;
pub use lines::{place_of, write_lines};
pub use markdown::write_markdown;
pub use order::place_in_order;
pub use palette::Palette;
pub use part::{Part, Shard};
pub use printable::printable;
pub use rod::{write_rod, write_rod_as_built};
pub use sarif::{Around, write_sarif};
pub use sheet::{NoSheet, Sheet};
pub use steps::write_steps;
pub use summary::{counted, write_summary};
pub use takedown::{write_contributors, write_takedown};
pub use text::TextReport;

use crate::diagnostic::{Diagnostic, Severity};
use crate::rules::Waived;
use crate::text::Source;

/// One spec with what was found in it.
#[derive(Clone, Copy, Debug)]
pub struct Checked<'a> {
    /// Its files; the first is its root.
    pub sources: &'a [Source],
    /// The name of each file as this reader should see it.
    pub names: &'a [String],
    /// No project includes it: it was read by itself.
    pub is_alone: bool,
    /// What was found: roots, by file, place and rule.
    pub findings: &'a [Diagnostic],
    /// What its waivers silence, by file, place and rule.
    pub waived: &'a [Waived],
    /// How many more a baseline holds: they are left out.
    pub n_known: usize,
}

impl Checked<'_> {
    /// The name of its root file.
    pub fn name(&self) -> &str {
        self.names.first().map(String::as_str).unwrap_or_default()
    }

    /// How many findings there are of a severity, what follows from others counted too.
    pub fn count(&self, severity: Severity) -> usize {
        let all = self.findings.iter().flat_map(Diagnostic::with_consequences);
        all.filter(|finding| finding.severity == severity).count()
    }

    /// The gravest severity of all findings and what follows from them.
    pub fn gravest(&self) -> Option<Severity> {
        self.findings.iter().flat_map(Diagnostic::with_consequences).map(|finding| finding.severity).max()
    }
}

//! How `storyrod compare` and `storyrod try` tell what changed.

use std::io::Write;

use clap::{Args, ValueEnum};

use crate::cli::Outcome;
use crate::cli::day::DayArguments;
use crate::cli::lint::Analysed;
use crate::compare::{self, Change, Stated};
use crate::diagnostic::Severity;
use crate::report::{
    Palette, ShownChanges, place_of, write_change_html, write_change_json, write_change_markdown,
    write_change_text,
};

#[derive(Debug, Args)]
pub(in crate::cli) struct OutputArguments {
    /// Exit with 1 when something fails that did not, and is at least this grave
    #[arg(long, value_enum, default_value_t = Severity::Error, value_name = "SEVERITY")]
    fail_on: Severity,
    /// Shape of the output
    #[arg(long, value_enum, default_value_t, value_name = "FORMAT")]
    format: Format,
    #[command(flatten)]
    pub day: DayArguments,
}

#[derive(Clone, Copy, Debug, Default, ValueEnum)]
enum Format {
    /// For a terminal
    #[default]
    Text,
    /// For the comment on a review
    Markdown,
    /// One page for a browser or a printer
    Html,
    /// For programs, described by grammar/change-output.schema.json
    Json,
}

impl OutputArguments {
    /// Writes what changed.
    ///
    /// # Errors
    /// What the stream says.
    pub fn write(
        &self,
        shown: &ShownChanges<'_>,
        palette: Palette,
        out: &mut impl Write,
    ) -> anyhow::Result<()> {
        match self.format {
            Format::Text => write_change_text(shown, palette, out)?,
            Format::Markdown => write_change_markdown(shown, out)?,
            Format::Html => write_change_html(shown, out)?,
            Format::Json => write_change_json(shown, out)?,
        }
        Ok(())
    }

    /// Does something fail that did not?
    pub fn outcome<'c>(&self, changes: impl IntoIterator<Item = &'c Change>) -> Outcome {
        let trades = changes.into_iter().flat_map(|change| &change.trades);
        let mut new_findings = trades.flat_map(|trade| &trade.consequences).filter_map(|consequence| {
            match &consequence.outcome {
                compare::Outcome::Fails(finding) => Some(finding.severity),
                compare::Outcome::StillFails(..)
                | compare::Outcome::Passes(_)
                | compare::Outcome::Waived(_)
                | compare::Outcome::Stale(_)
                | compare::Outcome::Moved(..) => None,
            }
        });
        let fails = new_findings.any(|severity| severity >= self.fail_on);
        if fails { Outcome::Found } else { Outcome::Clean }
    }
}

/// The place of each line that changed, in the state that holds it: what is gone stands in the old one.
pub(in crate::cli) fn places(change: &Change, old: &Analysed, new: &Analysed) -> Vec<String> {
    let stated = change.stated.iter();
    stated
        .map(|stated| {
            let holder = match stated.what {
                Stated::Went(_) => old,
                Stated::Came(_) | Stated::Title(..) | Stated::Line(..) | Stated::Unread(..) => new,
            };
            place_of(&holder.checked(), stated.place)
        })
        .collect()
}

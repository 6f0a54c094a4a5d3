//! `storyrod compare` and `storyrod try`: what changed between two states of a spec, and what follows from it.

use std::io::Write;
use std::path::{Path, PathBuf};

use anyhow::{Context, bail};
use clap::{Args, ValueEnum};

use crate::cli::day::DayArguments;
use crate::cli::input::specs_of;
use crate::cli::lint::{Analysed, FailOn, analysed};
use crate::cli::{Outcome, complain, revision};
use crate::compare::{self, Change, Stated, compare};
use crate::house::wish;
use crate::report::{
    Palette, ShownChange, place_of, write_change_html, write_change_json, write_change_markdown,
    write_change_text, write_letter,
};
use crate::snapshot::edited;
use crate::syntax::value::Date;

#[derive(Debug, Args)]
pub(in crate::cli) struct CompareArguments {
    /// The spec as it was: its root file, or a folder with one. With `--rev` the spec itself, else the one in this folder
    #[arg(required_unless_present = "rev")]
    old: Option<PathBuf>,
    /// The spec as it is
    #[arg(required_unless_present = "rev", conflicts_with = "rev")]
    new: Option<PathBuf>,
    /// Compare two revisions of the git repository: `A..B`; `A` alone is compared with the files on disk
    #[arg(long, value_name = "A..B")]
    rev: Option<String>,
    /// Write the answer to these corrections of a plan checker: a Markdown list that names elements or rules
    #[arg(long, value_name = "FILE", conflicts_with = "format")]
    letter: Option<PathBuf>,
    #[command(flatten)]
    output: OutputArguments,
}

#[derive(Debug, Args)]
pub(in crate::cli) struct TryArguments {
    /// The root file of a spec, or a folder with one
    spec: PathBuf,
    /// What to write otherwise: the name of an element and a line of it (`J1 size 2x12`), or `NAME without PHRASE`
    #[arg(required = true, value_name = "EDIT")]
    edits: Vec<String>,
    #[command(flatten)]
    output: OutputArguments,
}

#[derive(Debug, Args)]
struct OutputArguments {
    /// Exit with 1 when something fails that did not, and is at least this grave
    #[arg(long, value_enum, default_value_t, value_name = "SEVERITY")]
    fail_on: FailOn,
    /// Shape of the output
    #[arg(long, value_enum, default_value_t, value_name = "FORMAT")]
    format: Format,
    #[command(flatten)]
    day: DayArguments,
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

/// Compares two specs.
pub(in crate::cli) fn run(
    arguments: &CompareArguments,
    palette: Palette,
    out: &mut impl Write,
) -> anyhow::Result<Outcome> {
    let today = arguments.output.day.day()?;
    let Some((old, new)) = arguments.states(today)? else { return Ok(Outcome::Unusable) };
    let change = compare(&old.snapshot, &new.snapshot);
    // What is gone stands in the old spec.
    let places = places(&change, |what| match what {
        Stated::Went => &old,
        Stated::Came | Stated::Title(..) | Stated::Line(..) | Stated::Unread(..) => &new,
    });
    let shown = ShownChange { change: &change, places: &places };
    if let Some(file) = &arguments.letter {
        let corrections =
            std::fs::read_to_string(file).with_context(|| format!("can't read {}", file.display()))?;
        write_letter(&shown, &corrections, out)?;
        return Ok(arguments.output.outcome(&change));
    }
    arguments.output.write(&shown, palette, out)
}

/// Compares a spec with an edited copy of it.
pub(in crate::cli) fn run_try(
    arguments: &TryArguments,
    palette: Palette,
    out: &mut impl Write,
) -> anyhow::Result<Outcome> {
    let today = arguments.output.day.day()?;
    let Some(spec) = only_spec(&arguments.spec, today)? else { return Ok(Outcome::Unusable) };
    let mut edits = Vec::new();
    for wanted in &arguments.edits {
        match wish::edit_of(&spec.snapshot.house, wanted) {
            Ok(edit) => edits.push(edit),
            Err(why) => bail!("`{wanted}`: {why}"),
        }
    }
    edits.sort_by_key(|edit| edit.span);
    if edits.windows(2).any(|pair| matches!(pair, [one, other] if other.span.start < one.span.end)) {
        bail!("two of the edits change the same line");
    }
    let Some(after) = edited::with(&spec.snapshot, &edits) else { return Ok(Outcome::Unusable) };
    let change = compare(&spec.snapshot, &after);
    let tried = spec.with_snapshot(after);
    let places = places(&change, |_| &tried);
    arguments.output.write(&ShownChange { change: &change, places: &places }, palette, out)
}

impl CompareArguments {
    /// The two states; `None` when one can't be used, which is said then.
    fn states(&self, today: Date) -> anyhow::Result<Option<(Analysed, Analysed)>> {
        let here = Path::new(".");
        let old = self.old.as_deref().unwrap_or(here);
        if let Some(range) = &self.rev {
            return revision::states(range, old, today);
        }
        // Both are said, when neither can be used.
        let (old, new) = (only_spec(old, today)?, only_spec(self.new.as_deref().unwrap_or(here), today)?);
        Ok(old.zip(new))
    }
}

impl OutputArguments {
    fn write(
        &self,
        shown: &ShownChange<'_>,
        palette: Palette,
        out: &mut impl Write,
    ) -> anyhow::Result<Outcome> {
        match self.format {
            Format::Text => write_change_text(shown, palette, out)?,
            Format::Markdown => write_change_markdown(shown, out)?,
            Format::Html => write_change_html(shown, out)?,
            Format::Json => write_change_json(shown, out)?,
        }
        Ok(self.outcome(shown.change))
    }

    fn outcome(&self, change: &Change) -> Outcome {
        let consequences = change.trades.iter().flat_map(|trade| &trade.consequences);
        let mut new_findings = consequences.filter_map(|consequence| match &consequence.outcome {
            compare::Outcome::Fails(finding) => Some(finding.severity),
            compare::Outcome::StillFails(..)
            | compare::Outcome::Passes(_)
            | compare::Outcome::Waived(_)
            | compare::Outcome::Moved(..) => None,
        });
        let fails = new_findings.any(|severity| severity >= self.fail_on.severity());
        if fails { Outcome::Found } else { Outcome::Clean }
    }
}

/// The one spec that a path leads to; `None` when it can't be used, which is said then.
fn only_spec(path: &Path, today: Date) -> anyhow::Result<Option<Analysed>> {
    let found = specs_of(&[path.to_owned()], None);
    for unusable in &found.unusable {
        complain(&unusable.to_string());
    }
    let is_usable = found.unusable.is_empty();
    let mut specs = analysed(found.specs, today, 1)?.into_iter();
    match (specs.next(), specs.next()) {
        (Some(spec), None) if is_usable => Ok(Some(spec)),
        (Some(_), Some(_)) => bail!("{} holds several specs: name the root file of one", path.display()),
        (_, _) => Ok(None),
    }
}

/// The place of each line that changed, in the spec that holds it.
fn places<'a>(change: &Change, holder: impl Fn(&Stated) -> &'a Analysed) -> Vec<String> {
    let stated = change.stated.iter();
    stated.map(|stated| place_of(&holder(&stated.what).checked(), stated.place)).collect()
}

//! `storyrod try`: what would follow from some edits that nobody has made.

use std::io::Write;
use std::path::{Path, PathBuf};

use anyhow::bail;
use clap::Args;

use crate::cli::change_output::{OutputArguments, places};
use crate::cli::input::specs_of;
use crate::cli::lint::{Analysed, analysed};
use crate::cli::{Outcome, complain};
use crate::compare::compare;
use crate::house::wish;
use crate::report::{Palette, ShownChange, ShownChanges};
use crate::snapshot::edited;
use crate::syntax::value::Date;

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

/// Compares a spec with an edited copy of it.
pub(in crate::cli) fn run(
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
    let places = places(&change, &spec, &tried);
    let checked = spec.checked();
    let shown = ShownChange { spec: checked.name(), change: &change, places: &places };
    arguments.output.write(&ShownChanges { specs: &[shown], n_same: None }, palette, out)?;
    Ok(arguments.output.outcome([&change]))
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

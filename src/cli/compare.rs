//! `storyrod compare`: what changed between two states of some specs, and what follows from it.

use std::io::Write;
use std::path::{Path, PathBuf};

use anyhow::{Context, bail};
use clap::Args;

use crate::cli::change_output::{OutputArguments, places};
use crate::cli::configured::configuration_here;
use crate::cli::lint::{Analysed, show_progress};
use crate::cli::parallel::{JobsArguments, in_parallel};
use crate::cli::states::{Kept, Pair, States};
use crate::cli::{Outcome, revision};
use crate::compare::{self, Change, compare};
use crate::report::{Palette, ShownChange, ShownChanges, write_letter};
use crate::snapshot::Caches;
use crate::syntax::value::Date;

#[derive(Debug, Args)]
pub(in crate::cli) struct CompareArguments {
    /// The spec as it was, or a folder of specs. With `--rev` the spec or the folder itself, else this folder
    #[arg(required_unless_present = "rev")]
    old: Option<PathBuf>,
    /// The spec as it is, or the folder
    #[arg(required_unless_present = "rev", conflicts_with = "rev")]
    new: Option<PathBuf>,
    /// Compare two revisions of the git repository: `A..B`; `A...B` is what B changed since they parted, `A` alone is
    /// compared with the files on disk
    #[arg(long, value_name = "A..B")]
    rev: Option<String>,
    /// Write the answer to these corrections of a plan checker: a Markdown list that names elements or rules
    #[arg(long, value_name = "FILE", conflicts_with = "format")]
    letter: Option<PathBuf>,
    #[command(flatten)]
    output: OutputArguments,
    #[command(flatten)]
    jobs: JobsArguments,
}

/// Compares two states of some specs.
pub(in crate::cli) fn run(
    arguments: &CompareArguments,
    palette: Palette,
    out: &mut impl Write,
) -> anyhow::Result<Outcome> {
    let today = arguments.output.day.day()?;
    let here = Path::new(".");
    let old = arguments.old.as_deref().unwrap_or(here);
    let states = match &arguments.rev {
        Some(range) => revision::states(range, old)?,
        None => States::of_paths(old, arguments.new.as_deref().unwrap_or(here)),
    };
    let is_unusable = states.is_unusable;
    // One spec that was asked for is told even when nothing changed.
    let is_only = matches!((states.old.as_slice(), states.new.as_slice()), ([] | [_], [] | [_]));
    let (same, pairs): (Vec<Pair>, Vec<Pair>) =
        states.pairs().into_iter().partition(|pair| !is_only && pair.is_same_text());
    // Of what can't be read in one state nobody knows whether it is new or gone.
    let is_known = |pair: &Pair| !is_unusable || matches!(pair, Pair::Both(..));
    let pairs: Vec<Pair> = pairs.into_iter().filter(is_known).collect();
    let n_pairs = same.len() + pairs.len();
    let told = told(pairs, today, arguments.jobs.count(configuration_here().jobs))?;
    let changed = || told.iter().filter(|told| is_only || !told.change.is_empty());
    let shown: Vec<ShownChange<'_>> = changed().map(Told::shown).collect();
    let changes = ShownChanges { specs: &shown, n_same: (!is_only).then_some(n_pairs - shown.len()) };
    let outcome = arguments.output.outcome(told.iter().map(|told| &told.change));
    match (&arguments.letter, shown.as_slice()) {
        (None, []) if is_only || (is_unusable && n_pairs == 0) => {}
        (None, _) => arguments.output.write(&changes, palette, out)?,
        (Some(file), [one]) => {
            let corrections =
                std::fs::read_to_string(file).with_context(|| format!("can't read {}", file.display()))?;
            write_letter(one, &corrections, out)?;
        }
        (Some(_), _) if is_unusable => {}
        (Some(_), []) => bail!("no spec changed: there is nothing to answer with"),
        (Some(_), _) => bail!("{} specs changed: name the root file of the one to answer for", shown.len()),
    }
    Ok(if is_unusable { Outcome::Unusable } else { outcome })
}

/// What is told of one spec.
struct Told {
    name: String,
    change: Change,
    places: Vec<String>,
}

impl Told {
    fn shown(&self) -> ShownChange<'_> {
        ShownChange { spec: &self.name, change: &self.change, places: &self.places }
    }
}

/// Checks both states of each spec and compares them, so many specs at once.
fn told(pairs: Vec<Pair>, today: Date, jobs: usize) -> anyhow::Result<Vec<Told>> {
    let n_pairs = pairs.len();
    show_progress(0, n_pairs)?;
    let tell = |caches: &mut Caches, pair: Pair| told_of(pair, caches, today);
    let told = in_parallel(pairs, jobs, tell, |done| show_progress(done, n_pairs))?;
    Ok(told.into_iter().flatten().collect())
}

fn told_of(pair: Pair, caches: &mut Caches, today: Date) -> Option<Told> {
    let mut analysed = |kept: Kept| Analysed::of(&kept.spec, kept.names, caches, today);
    let name = |of: &Analysed| of.checked().name().to_owned();
    Some(match pair {
        Pair::Both(old, new) => {
            let (old, new) = (analysed(old)?, analysed(new)?);
            let change = compare(&old.snapshot, &new.snapshot);
            let places = places(&change, &old, &new);
            Told { name: name(&new), change, places }
        }
        Pair::Came(new) => {
            let new = analysed(new)?;
            Told { name: name(&new), change: compare::came(&new.snapshot), places: Vec::new() }
        }
        Pair::Went(old) => {
            let old = analysed(old)?;
            Told { name: name(&old), change: compare::went(&old.snapshot), places: Vec::new() }
        }
    })
}

//! `storyrod compare`: what changed between two states of some specs, and what follows from it.

use std::io::Write;
use std::path::{Path, PathBuf};

use anyhow::{Context, bail};
use clap::Args;

use crate::cli::change_output::{OutputArguments, places};
use crate::cli::configured::configuration_here;
use crate::cli::lint::{Analysed, analysed};
use crate::cli::parallel::JobsArguments;
use crate::cli::states::{Kept, Pair, States};
use crate::cli::{Outcome, revision};
use crate::compare::{self, Change, compare};
use crate::report::{Palette, ShownChange, ShownChanges, write_letter};
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
        (None, []) if is_only => {}
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

/// Checks both states of each spec, so many at once, and compares them.
fn told(pairs: Vec<Pair>, today: Date, jobs: usize) -> anyhow::Result<Vec<Told>> {
    let (mut specs, mut names, mut kinds) = (Vec::new(), Vec::new(), Vec::new());
    let mut keep = |kept: Kept| {
        specs.push(kept.spec);
        names.push(kept.names);
    };
    for pair in pairs {
        let kind = match pair {
            Pair::Both(old, new) => {
                keep(old);
                keep(new);
                (true, true)
            }
            Pair::Came(new) => {
                keep(new);
                (false, true)
            }
            Pair::Went(old) => {
                keep(old);
                (true, false)
            }
        };
        kinds.push(kind);
    }
    let mut states =
        analysed(specs, today, jobs)?.into_iter().zip(names).map(|(state, names)| state.with_names(names));
    let mut told = Vec::new();
    for (has_old, has_new) in kinds {
        let old = if has_old { states.next() } else { None };
        let new = if has_new { states.next() } else { None };
        told.extend(told_of(old.as_ref(), new.as_ref()));
    }
    Ok(told)
}

fn told_of(old: Option<&Analysed>, new: Option<&Analysed>) -> Option<Told> {
    let name = |of: &Analysed| of.checked().name().to_owned();
    Some(match (old, new) {
        (Some(old), Some(new)) => {
            let change = compare(&old.snapshot, &new.snapshot);
            let places = places(&change, old, new);
            Told { name: name(new), change, places }
        }
        (None, Some(new)) => {
            Told { name: name(new), change: compare::came(&new.snapshot), places: Vec::new() }
        }
        (Some(old), None) => {
            Told { name: name(old), change: compare::went(&old.snapshot), places: Vec::new() }
        }
        (None, None) => return None,
    })
}

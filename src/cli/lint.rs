//! `storyrod lint`: what is wrong with some specs.

use std::io::{self, IsTerminal, Write};
use std::path::{Path, PathBuf};

use clap::builder::PossibleValue;
use clap::{Args, ValueEnum};

use crate::cli::baseline::BaselineArguments;
use crate::cli::configured::{configuration_here, paths_of};
use crate::cli::day::DayArguments;
use crate::cli::input::{Found, names_from_here};
use crate::cli::parallel::{JobsArguments, in_parallel};
use crate::cli::part::{PartArguments, mark_of_asked};
use crate::cli::{Outcome, complain};
use crate::diagnostic::Severity;
use crate::report::{self, Around, Checked, Palette, TextReport};
use crate::snapshot::{Caches, Snapshot, analyse};
use crate::syntax::value::Date;
use crate::workspace::{Format, Spec, common_folder, real_path};

#[derive(Debug, Args)]
pub(in crate::cli) struct LintArguments {
    /// Files, folders (every spec below), or `-` for standard input [default: `paths` in storyrod.toml, else this folder]
    paths: Vec<PathBuf>,
    /// The file that standard input stands for: its includes and configuration count
    #[arg(long, value_name = "FILE")]
    stdin_filename: Option<PathBuf>,
    /// Exit with 1 when a finding is at least this grave [default: `fail-on` in storyrod.toml, else error]
    #[arg(long, value_enum, value_name = "SEVERITY")]
    fail_on: Option<Severity>,
    /// Shape of the output [default: `format` in storyrod.toml, else text]
    #[arg(long, value_enum, value_name = "FORMAT")]
    format: Option<Format>,
    /// What stands before a rule's name in the address of its page, which SARIF links [default: `rules-address` in
    /// storyrod.toml]
    #[arg(long, value_name = "ADDRESS", value_parser = address)]
    rules_address: Option<String>,
    #[command(flatten)]
    part: PartArguments,
    #[command(flatten)]
    baseline: BaselineArguments,
    #[command(flatten)]
    day: DayArguments,
    #[command(flatten)]
    jobs: JobsArguments,
}

impl ValueEnum for Severity {
    fn value_variants<'a>() -> &'a [Self] {
        &Self::ALL
    }

    fn to_possible_value(&self) -> Option<PossibleValue> {
        Some(PossibleValue::new(self.word()))
    }
}

impl ValueEnum for Format {
    fn value_variants<'a>() -> &'a [Self] {
        &Self::ALL
    }

    fn to_possible_value(&self) -> Option<PossibleValue> {
        Some(PossibleValue::new(self.word()).help(self.meaning()))
    }
}

pub(in crate::cli) fn run(
    arguments: &LintArguments,
    palette: Palette,
    out: &mut impl Write,
) -> anyhow::Result<Outcome> {
    let today = arguments.day.day()?;
    let mut configuration = configuration_here();
    let fail_on = arguments.fail_on.or(configuration.fail_on).unwrap_or(Severity::Error);
    let stdin_name = arguments.stdin_filename.as_deref();
    let paths = paths_of(&arguments.paths, &mut configuration);
    let baseline = arguments.baseline.file(&configuration);
    let mut found = arguments.part.specs_of(&paths, stdin_name, baseline.as_deref())?;
    // Each is told by the shard to which the file falls.
    found.add_faults(configuration.faults.iter().filter(|fault| arguments.part.has(&fault.path)));
    let Found { specs, unusable, since, .. } = found;
    let asked = mark_of_asked(&paths, &configuration, baseline.as_deref(), &since);
    let part = arguments.part.part(today, fail_on, asked);
    let rules_address = arguments.rules_address.as_deref().or(configuration.rules_address.as_deref());
    let mut analysed = analysed(specs, today, arguments.jobs.count(configuration.jobs))?;
    arguments.baseline.leave_out_known(&configuration, &mut analysed, &arguments.part)?;
    let all: Vec<_> = analysed.iter().map(Analysed::checked).collect();
    match arguments.format.or(configuration.format).unwrap_or_default() {
        Format::Text => {
            let mut text = TextReport::new(palette);
            for checked in &all {
                text.write(checked, out)?;
            }
            report::write_summary(&all, part, out)?;
        }
        Format::Lines => {
            for checked in &all {
                report::write_lines(checked, out)?;
            }
            report::write_summary(&all, part, out)?;
        }
        Format::Json => report::write_json(&all, &unusable, part, out)?,
        Format::Sarif => {
            let here = real_path(Path::new("."));
            let around = Around { here: &here, base: &common_folder(&here), rules_address };
            report::write_sarif(&all, &unusable, around, part, out)?;
        }
        Format::Junit => report::write_junit(&all, &unusable, fail_on, part, out)?,
        Format::Markdown => report::write_markdown(&all, &unusable, part, out)?,
    }
    for unusable in &unusable {
        complain(&unusable.to_string());
    }
    let gravest = all.iter().filter_map(Checked::gravest).max();
    Ok(match gravest {
        _ if !unusable.is_empty() => Outcome::Unusable,
        Some(gravest) if gravest >= fail_on => Outcome::Found,
        Some(_) | None => Outcome::Clean,
    })
}

/// A spec that was checked.
pub(in crate::cli) struct Analysed {
    pub snapshot: Snapshot,
    names: Vec<String>,
    is_alone: bool,
    /// How many findings a baseline took out.
    pub n_known: usize,
}

impl Analysed {
    /// A spec as on one day, its files by these names.
    pub fn of(spec: &Spec, names: Vec<String>, caches: &mut Caches, today: Date) -> Option<Self> {
        // Nobody cancels here.
        let snapshot = analyse(&spec.inputs, caches, today, &|| false).ok()?;
        Some(Self { snapshot, names, is_alone: spec.is_alone, n_known: 0 })
    }

    /// The same files at another moment.
    pub fn with_snapshot(&self, snapshot: Snapshot) -> Self {
        Self { snapshot, names: self.names.clone(), is_alone: self.is_alone, n_known: self.n_known }
    }

    pub fn checked(&self) -> Checked<'_> {
        Checked {
            sources: &self.snapshot.inputs.sources,
            names: &self.names,
            is_alone: self.is_alone,
            findings: &self.snapshot.findings,
            waived: &self.snapshot.waived,
            n_known: self.n_known,
        }
    }
}

/// Checks each spec as on one day, so many at once.
pub(in crate::cli) fn analysed(specs: Vec<Spec>, today: Date, jobs: usize) -> anyhow::Result<Vec<Analysed>> {
    let n_specs = specs.len();
    let here = real_path(Path::new("."));
    show_progress(0, n_specs)?;
    let check = |caches: &mut Caches, spec: Spec| {
        let names = names_from_here(&here, &spec);
        Analysed::of(&spec, names, caches, today)
    };
    let analysed = in_parallel(specs, jobs, check, |done| show_progress(done, n_specs))?;
    Ok(analysed.into_iter().flatten().collect())
}

/// One line on a terminal, written over and taken away at the end.
pub(in crate::cli) fn show_progress(done: usize, all: usize) -> io::Result<()> {
    let mut log = io::stderr();
    if all < 2 || !log.is_terminal() {
        return Ok(());
    }
    match done == all {
        true => write!(log, "\r\u{1b}[K")?,
        false => write!(log, "\r\u{1b}[Kchecking specs: {done} of {all}")?,
    }
    log.flush()
}

fn address(written: &str) -> Result<String, String> {
    url::Url::parse(written).map(|_| written.to_owned()).map_err(|error| error.to_string())
}

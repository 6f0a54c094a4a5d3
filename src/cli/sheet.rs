//! The commands that write a sheet: `takedown`, `calc`, `rod`, `steps`.

use std::io::Write;
use std::path::PathBuf;

use clap::{Args, ValueEnum};

use crate::cli::day::DayArguments;
use crate::cli::input::specs_of;
use crate::cli::lint::analysed;
use crate::cli::{Outcome, complain};
use crate::diagnostic::Severity;
use crate::report::{Palette, Sheet, SheetForm};

#[derive(Debug, Args)]
pub(in crate::cli) struct TakedownArguments {
    /// The root file of a spec, or a folder with one
    spec: PathBuf,
    /// An element by its name: show what makes up all it carries
    element: Option<String>,
    #[command(flatten)]
    day: DayArguments,
}

#[derive(Debug, Args)]
pub(in crate::cli) struct CalcArguments {
    /// The root file of a spec, or a folder with one
    spec: PathBuf,
    /// A member by its name; all of them without
    element: Option<String>,
    /// How the sheet is written
    #[arg(long, value_enum, default_value_t, value_name = "FORM")]
    format: Form,
    #[command(flatten)]
    day: DayArguments,
}

#[derive(Clone, Copy, Debug, Default, ValueEnum)]
enum Form {
    /// For a terminal
    #[default]
    Text,
    /// Markdown
    Markdown,
}

#[derive(Debug, Args)]
pub(in crate::cli) struct RodArguments {
    /// The root file of a spec, or a folder with one
    spec: PathBuf,
    /// Beside each drawn level what was measured, and below what follows from it: gaps, grout, cuts, risers
    #[arg(long)]
    as_built: bool,
    #[command(flatten)]
    day: DayArguments,
}

#[derive(Debug, Args)]
pub(in crate::cli) struct StepsArguments {
    /// The root file of a spec, or a folder with one
    spec: PathBuf,
    /// The upper floor
    upper: String,
    /// The lower floor
    lower: String,
    #[command(flatten)]
    day: DayArguments,
}

/// A sheet, the spec that it is wanted of, and the day on which it is.
#[derive(Debug)]
pub(in crate::cli) struct Wanted<'a> {
    spec: &'a PathBuf,
    day: &'a DayArguments,
    sheet: Sheet,
}

impl<'a> From<&'a TakedownArguments> for Wanted<'a> {
    fn from(TakedownArguments { spec, element, day }: &'a TakedownArguments) -> Self {
        Self { spec, day, sheet: Sheet::Takedown(element.clone()) }
    }
}

impl<'a> From<&'a CalcArguments> for Wanted<'a> {
    fn from(CalcArguments { spec, element, format, day }: &'a CalcArguments) -> Self {
        let form = match format {
            Form::Text => SheetForm::Text,
            Form::Markdown => SheetForm::Markdown,
        };
        Self { spec, day, sheet: Sheet::Calc(element.clone(), form) }
    }
}

impl<'a> From<&'a RodArguments> for Wanted<'a> {
    fn from(RodArguments { spec, as_built, day }: &'a RodArguments) -> Self {
        let sheet = if *as_built { Sheet::RodAsBuilt } else { Sheet::Rod };
        Self { spec, day, sheet }
    }
}

impl<'a> From<&'a StepsArguments> for Wanted<'a> {
    fn from(StepsArguments { spec, upper, lower, day }: &'a StepsArguments) -> Self {
        Self { spec, day, sheet: Sheet::Steps(upper.clone(), lower.clone()) }
    }
}

/// Writes the sheet of each house that is asked for.
pub(in crate::cli) fn run(
    wanted: &Wanted<'_>,
    palette: Palette,
    out: &mut impl Write,
) -> anyhow::Result<Outcome> {
    let today = wanted.day.day()?;
    let found = specs_of(std::slice::from_ref(wanted.spec), None);
    for unusable in &found.unusable {
        complain(&unusable.to_string());
    }
    let (mut has_errors, mut is_usable) = (false, found.unusable.is_empty());
    for analysed in analysed(found.specs, today, 1)? {
        let checked = analysed.checked();
        has_errors |= checked.count(Severity::Error) > 0;
        if let Err(why) = wanted.sheet.write(&checked, &analysed.snapshot, palette, out)? {
            is_usable = false;
            complain(&format!("{}: {why}", checked.name()));
        }
    }
    Ok(match (is_usable, has_errors) {
        (false, _) => Outcome::Unusable,
        (true, true) => Outcome::Found,
        (true, false) => Outcome::Clean,
    })
}

//! The commands that write a sheet: `takedown`, `calc`, `rod`, `steps`.

use std::io::Write;
use std::path::PathBuf;

use clap::{Args, ValueEnum};

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
}

#[derive(Debug, Args)]
pub(in crate::cli) struct StepsArguments {
    /// The root file of a spec, or a folder with one
    spec: PathBuf,
    /// The upper floor
    upper: String,
    /// The lower floor
    lower: String,
}

/// A sheet and the spec that it is wanted of.
#[derive(Debug)]
pub(in crate::cli) struct Wanted {
    spec: PathBuf,
    sheet: Sheet,
}

impl From<&TakedownArguments> for Wanted {
    fn from(arguments: &TakedownArguments) -> Self {
        Self { spec: arguments.spec.clone(), sheet: Sheet::Takedown(arguments.element.clone()) }
    }
}

impl From<&CalcArguments> for Wanted {
    fn from(arguments: &CalcArguments) -> Self {
        let form = match arguments.format {
            Form::Text => SheetForm::Text,
            Form::Markdown => SheetForm::Markdown,
        };
        Self { spec: arguments.spec.clone(), sheet: Sheet::Calc(arguments.element.clone(), form) }
    }
}

impl From<&RodArguments> for Wanted {
    fn from(arguments: &RodArguments) -> Self {
        Self { spec: arguments.spec.clone(), sheet: Sheet::Rod }
    }
}

impl From<&StepsArguments> for Wanted {
    fn from(arguments: &StepsArguments) -> Self {
        let sheet = Sheet::Steps(arguments.upper.clone(), arguments.lower.clone());
        Self { spec: arguments.spec.clone(), sheet }
    }
}

/// Writes the sheet of each house that is asked for.
pub(in crate::cli) fn run(
    wanted: &Wanted,
    palette: Palette,
    out: &mut impl Write,
) -> anyhow::Result<Outcome> {
    let found = specs_of(std::slice::from_ref(&wanted.spec), None);
    for unusable in &found.unusable {
        complain(&unusable.to_string());
    }
    let (mut has_errors, mut is_usable) = (false, found.unusable.is_empty());
    for analysed in analysed(found.specs)? {
        let checked = analysed.checked();
        has_errors |= checked.count(Severity::Error) > 0;
        if let Err(why) = wanted.sheet.write(&checked, &analysed.snapshot.house, palette, out)? {
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

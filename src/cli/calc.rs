//! `storyrod calc`: the calculation sheet of one member or of the whole house.

use std::io::Write;
use std::path::PathBuf;

use clap::{Args, ValueEnum};

use crate::cli::Outcome;
use crate::cli::forces::{Wanted, with_house};
use crate::report::{self, Palette, SheetForm};

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

pub(in crate::cli) fn run(
    arguments: &CalcArguments,
    palette: Palette,
    out: &mut impl Write,
) -> anyhow::Result<Outcome> {
    let form = match arguments.format {
        Form::Text => SheetForm::Text,
        Form::Markdown => SheetForm::Markdown,
    };
    let wanted = Wanted { spec: &arguments.spec, element: arguments.element.as_deref() };
    with_house(&wanted, out, |house, element, out| report::write_calc(house, element, form, palette, out))
}

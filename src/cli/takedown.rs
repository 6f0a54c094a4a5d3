//! `storyrod takedown`: what everything carries, down to the soil.

use std::io::Write;
use std::path::PathBuf;

use clap::Args;

use crate::cli::Outcome;
use crate::cli::forces::{Wanted, with_house};
use crate::report::{self, Palette};

#[derive(Debug, Args)]
pub(in crate::cli) struct TakedownArguments {
    /// The root file of a spec, or a folder with one
    spec: PathBuf,
    /// An element by its name: show what makes up all it carries
    element: Option<String>,
}

pub(in crate::cli) fn run(
    arguments: &TakedownArguments,
    palette: Palette,
    out: &mut impl Write,
) -> anyhow::Result<Outcome> {
    let wanted = Wanted { spec: &arguments.spec, element: arguments.element.as_deref() };
    with_house(&wanted, out, |house, element, out| match element {
        Some(element) => report::write_contributors(house, element, palette, out),
        None => report::write_takedown(house, palette, out),
    })
}

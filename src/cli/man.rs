//! `storyrod man`: the manual.

use std::fs;
use std::io::Write;
use std::path::PathBuf;

use anyhow::Context;
use clap::{Args, Command};
use clap_mangen::Man;

use crate::cli::Outcome;

#[derive(Debug, Args)]
pub(in crate::cli) struct ManArguments {
    /// The folder to write a page for every command into; without it the page of the program is printed
    #[arg(value_name = "DIR")]
    folder: Option<PathBuf>,
}

pub(in crate::cli) fn run(
    arguments: &ManArguments,
    program: Command,
    out: &mut impl Write,
) -> anyhow::Result<Outcome> {
    match &arguments.folder {
        Some(folder) => fs::create_dir_all(folder)
            .and_then(|()| clap_mangen::generate_to(program, folder))
            .with_context(|| folder.display().to_string())?,
        None => Man::new(program).render(out)?,
    }
    Ok(Outcome::Clean)
}

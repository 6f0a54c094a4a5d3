//! `storyrod completions`: what a shell completes.

use std::io::Write;

use clap::{Args, Command};
use clap_complete::Shell;

use crate::cli::Outcome;

#[derive(Debug, Args)]
pub(in crate::cli) struct CompletionsArguments {
    /// The shell
    shell: Shell,
}

pub(in crate::cli) fn run(
    arguments: &CompletionsArguments,
    mut program: Command,
    out: &mut impl Write,
) -> anyhow::Result<Outcome> {
    let name = program.get_name().to_owned();
    // The crate panics where a stream is closed; a list of bytes is not.
    let mut script = Vec::new();
    clap_complete::generate(arguments.shell, &mut program, name, &mut script);
    out.write_all(&script)?;
    Ok(Outcome::Clean)
}

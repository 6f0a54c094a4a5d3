//! `storyrod rod`: the list of elevations that a foundation crew keeps.

use std::io::Write;
use std::path::PathBuf;

use clap::Args;

use crate::cli::input::specs_of;
use crate::cli::lint::analysed;
use crate::cli::{Outcome, complain};
use crate::diagnostic::Severity;
use crate::report::{self, Palette, counted};

#[derive(Debug, Args)]
pub(in crate::cli) struct RodArguments {
    /// The root file of a spec, or a folder with one
    spec: PathBuf,
}

pub(in crate::cli) fn run(
    arguments: &RodArguments,
    palette: Palette,
    out: &mut impl Write,
) -> anyhow::Result<Outcome> {
    let found = specs_of(std::slice::from_ref(&arguments.spec), None);
    for unusable in &found.unusable {
        complain(&unusable.to_string());
    }
    let mut has_errors = false;
    for analysed in analysed(found.specs)? {
        let checked = analysed.checked();
        let n_errors = checked.count(Severity::Error);
        if n_errors > 0 {
            has_errors = true;
            writeln!(
                out,
                "{} has {}: settle them before anybody builds from this list (`storyrod lint` shows them)\n",
                checked.name(),
                counted(n_errors, "error")
            )?;
        }
        report::write_rod(&analysed.snapshot.house, palette, out)?;
    }
    Ok(match (found.unusable.is_empty(), has_errors) {
        (false, _) => Outcome::Unusable,
        (true, true) => Outcome::Found,
        (true, false) => Outcome::Clean,
    })
}

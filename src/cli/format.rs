//! `storyrod format`: specs in the one style the format has.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use clap::Args;
use similar::TextDiff;

use crate::cli::configured::{configuration_here, paths_of, unusable};
use crate::cli::input::{STANDARD_INPUT, standard_input, why_none_below};
use crate::cli::{Outcome, complain};
use crate::report::Palette;
use crate::syntax;
use crate::workspace::{self, Below, OpenDocuments, TextFault};

#[derive(Debug, Args)]
pub(in crate::cli) struct FormatArguments {
    /// Files, folders (every `*.framing` below), or `-` for standard input to standard output [default: `paths` in
    /// storyrod.toml, else this folder]
    paths: Vec<PathBuf>,
    /// Write nothing; print what would change and exit with 1 when something would
    #[arg(long)]
    check: bool,
}

pub(in crate::cli) fn run(
    arguments: &FormatArguments,
    palette: Palette,
    out: &mut impl Write,
) -> anyhow::Result<Outcome> {
    let mut n_changed = 0_usize;
    let mut n_refused = 0_usize;
    let mut refuse = |name: &str, why: &str| {
        complain(&format!("{name}: {why}"));
        n_refused += 1;
    };
    let mut configuration = configuration_here();
    let paths = paths_of(&arguments.paths, &mut configuration);
    let here = workspace::real_path(Path::new("."));
    let name_of = |path: PathBuf| (workspace::name_from(&here, &path), path);
    for path in &paths {
        let shown = path.display().to_string();
        let (files, unread) = match path.is_dir() {
            true => {
                let Below { files, unread } = workspace::below(path, &OpenDocuments::default());
                (files.into_iter().map(name_of).collect(), unread)
            }
            false => (vec![(shown.clone(), path.clone())], Vec::new()),
        };
        if files.is_empty() && unread.is_empty() {
            refuse(&shown, why_none_below(path));
        }
        for (folder, fault) in unread {
            refuse(&workspace::name_from(&here, &folder), &fault.to_string());
        }
        for (name, file) in files {
            let text = match text_at(&file) {
                Ok(text) => text,
                Err(fault) => {
                    refuse(&name, &fault.to_string());
                    continue;
                }
            };
            let formatted = syntax::format(&text);
            let is_changed = formatted != *text;
            n_changed += usize::from(is_changed);
            match (arguments.check, file.as_os_str() == STANDARD_INPUT) {
                (true, _) => write_diff(&name, &text, &formatted, palette, out)?,
                (false, true) => out.write_all(formatted.as_bytes())?,
                (false, false) if is_changed => {
                    if let Err(error) = std::fs::write(file, formatted) {
                        refuse(&name, &format!("it can't be written: {error}"));
                    }
                }
                (false, false) => {}
            }
        }
    }
    // Only then the configuration was asked.
    if arguments.paths.is_empty() {
        for fault in &configuration.faults {
            complain(&unusable(fault).to_string());
            n_refused += 1;
        }
    }
    Ok(match (n_refused, arguments.check && n_changed > 0) {
        (1.., _) => Outcome::Unusable,
        (0, true) => Outcome::Found,
        (0, false) => Outcome::Clean,
    })
}

fn text_at(path: &Path) -> Result<Arc<str>, TextFault> {
    if path.as_os_str() == STANDARD_INPUT { standard_input() } else { workspace::text_of(path) }
}

fn write_diff(
    name: &str,
    text: &str,
    formatted: &str,
    palette: Palette,
    out: &mut impl Write,
) -> anyhow::Result<()> {
    if text.contains('\r') {
        // The lines below would look alike.
        complain(&format!("{name}: its lines end with CR LF or CR; in the one style they end with LF"));
    }
    let diff = TextDiff::from_lines(text, formatted);
    let unified = diff.unified_diff().header(name, &format!("{name} (formatted)")).to_string();
    for line in unified.lines() {
        let is_heading = line.starts_with("@@") || line.starts_with("---") || line.starts_with("+++");
        let line = crate::report::printable(line);
        writeln!(out, "{}", if is_heading { palette.strong(&line) } else { line.into_owned() })?;
    }
    Ok(())
}

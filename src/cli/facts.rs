//! `storyrod facts`: a file as one line for each fact, the text conversion for `git diff`.
//!
//! Git hands over one version of one file, under a name and in a folder of its own; the working copy of the same file it
//! reads in place. So that both sides are read alike, a file is always read by itself.

use std::fs::File;
use std::io::{self, Read, Write};
use std::path::PathBuf;
use std::sync::Arc;

use anyhow::Context;
use clap::Args;

use crate::cli::Outcome;
use crate::cli::input::STANDARD_INPUT;
use crate::house::House;
use crate::inputs::Inputs;
use crate::report;
use crate::syntax::ElementCache;
use crate::syntax::value::Date;
use crate::text::Source;
use crate::workspace::{self, TextFault};

#[derive(Debug, Args)]
pub(in crate::cli) struct FactsArguments {
    /// A file, or `-` for standard input
    file: PathBuf,
}

/// No fact depends on the day.
const ANY_DAY: Date = Date { year: 2000, month: 1, day: 1 };

pub(in crate::cli) fn run(arguments: &FactsArguments, out: &mut impl Write) -> anyhow::Result<Outcome> {
    let bytes = if arguments.file.as_os_str() == STANDARD_INPUT {
        bytes_of(io::stdin().lock())
    } else {
        File::open(&arguments.file).map_err(anyhow::Error::from).and_then(bytes_of)
    };
    let Some(bytes) = bytes.with_context(|| arguments.file.display().to_string())? else {
        // A failure would stop the diff of every other file too.
        writeln!(out, "(not read)  {}", TextFault::TooLarge)?;
        return Ok(Outcome::Clean);
    };
    if std::str::from_utf8(&bytes).is_err() {
        writeln!(out, "(not read)  some bytes are not UTF-8 text: they stand here as \\xNN")?;
    }
    let sources = vec![Source::new("", text_of(&bytes))];
    let inputs = Inputs { sources, includes: Vec::new() };
    report::write_facts(&House::of(&Arc::new(inputs), &mut ElementCache::default(), ANY_DAY), out)?;
    Ok(Outcome::Clean)
}

/// All bytes; `None` when they are more than a file may have.
fn bytes_of(stream: impl Read) -> anyhow::Result<Option<Vec<u8>>> {
    match workspace::bytes_of(stream) {
        Ok(bytes) => Ok(Some(bytes)),
        Err(TextFault::TooLarge) => Ok(None),
        Err(fault) => Err(anyhow::anyhow!("{fault}")),
    }
}

/// The text of some bytes, what is no character written out.
fn text_of(bytes: &[u8]) -> String {
    let mut text = String::new();
    for chunk in bytes.utf8_chunks() {
        text.push_str(chunk.valid());
        text.extend(chunk.invalid().iter().map(|byte| format!("\\x{byte:02X}")));
    }
    text.strip_prefix('\u{feff}').map(str::to_owned).unwrap_or(text)
}

//! The command line: one file a subcommand.
//!
//! Results go to standard output, everything else to standard error. Exit code 0 means nothing found, 1 means found,
//! 2 means that something could not be used: an argument, a file, the configuration.

mod attempt;
mod baseline;
mod change_output;
mod compare;
mod completions;
mod configured;
mod day;
mod explain;
mod facts;
mod format;
mod gather;
mod input;
mod lint;
mod man;
mod parallel;
mod part;
mod revision;
mod sheet;
mod start;
mod states;
mod style;

use std::io::{self, BufWriter, ErrorKind, Write};
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use clap::{CommandFactory, Parser, Subcommand};

use crate::cli::style::ColourChoice;
use crate::server;

/// A plain-text format for the framing of a house, with a linter and a language server
#[derive(Debug, Parser)]
#[command(version, propagate_version = true, max_term_width = 100)]
struct Arguments {
    #[command(subcommand)]
    command: Command,
    /// Colour in the output; NO_COLOR in the environment counts as `never` where it is `auto`
    #[arg(long, value_enum, global = true, default_value_t, value_name = "WHEN")]
    color: ColourChoice,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Check specs for numbers that disagree and loads that reach no soil
    Lint(lint::LintArguments),
    /// Make one result of what the shards of a `lint` wrote
    Gather(gather::GatherArguments),
    /// Write specs in the one style the format has
    Format(format::FormatArguments),
    /// Tell what a rule looks for and why; without a name, list all rules
    Explain(explain::ExplainArguments),
    /// Tell what changed between two states of a spec and what follows from it, by who must act
    Compare(compare::CompareArguments),
    /// Tell what would follow from some edits; nothing is written
    Try(attempt::TryArguments),
    /// Write a file as one line for each fact, for `git diff` and other tools that compare lines
    ///
    /// Order and spelling of the lines don't depend on the text's, and comments are left out.
    /// Behind what an element states stands what follows, marked `(derived)`.
    /// The file is read by itself: includes are not followed, and where there are some nothing is derived.
    /// What can't be read is written as it stands, marked `(not read)`; that is no failure, since git would stop at one.
    ///
    /// For git: `git config diff.framing.textconv "storyrod facts"`, and `*.framing diff=framing` in `.gitattributes`.
    Facts(facts::FactsArguments),
    /// List every elevation from the footings up, for the crew with the rod
    Rod(sheet::RodArguments),
    /// Divide the step between two floors into risers, and tell which drops come free
    Steps(sheet::StepsArguments),
    /// Tell what everything carries, case by case, down to the soil, with the balance of it all
    Takedown(sheet::TakedownArguments),
    /// Write the calculation sheet: every check with its formulas, numbers, clause and ratio
    Calc(sheet::CalcArguments),
    /// Begin a repository of specs: a first house, hooks, files for editors and for hosted runners
    ///
    /// Nothing that stands is written over.
    /// Exit code 0 means that every file stands as this command writes it, 1 that something else stood in the place of one and was left, 2 that one could not be written.
    Start(start::StartArguments),
    /// Write what a shell completes after `storyrod`
    Completions(completions::CompletionsArguments),
    /// Write the manual page, or a page for every command into a folder
    Man(man::ManArguments),
    /// Serve an editor over standard input and output, by the Language Server Protocol
    Server(ServerArguments),
}

#[derive(Debug, clap::Args)]
struct ServerArguments {
    /// Write everything the server does to the end of this file
    #[arg(long, value_name = "FILE")]
    log: Option<PathBuf>,
}

/// How a command ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Outcome {
    /// Nothing found, nothing to do.
    Clean,
    /// Something was found.
    Found,
    /// Something could not be used.
    Unusable,
}

/// Runs the command of this process's arguments.
pub fn run() -> ExitCode {
    let arguments = Arguments::parse();
    let palette = style::palette(arguments.color);
    // Not locked: the server writes to standard output from its own threads.
    let mut out = BufWriter::new(io::stdout());
    let outcome = match &arguments.command {
        Command::Lint(lint) => lint::run(lint, palette, &mut out),
        Command::Gather(gather) => gather::run(gather, &mut out),
        Command::Format(format) => format::run(format, palette, &mut out),
        Command::Explain(explain) => explain::run(explain, palette, &mut out),
        Command::Compare(compare) => compare::run(compare, palette, &mut out),
        Command::Try(edits) => attempt::run(edits, palette, &mut out),
        Command::Facts(facts) => facts::run(facts, &mut out),
        Command::Rod(rod) => sheet::run(&rod.into(), palette, &mut out),
        Command::Steps(steps) => sheet::run(&steps.into(), palette, &mut out),
        Command::Takedown(takedown) => sheet::run(&takedown.into(), palette, &mut out),
        Command::Calc(calc) => sheet::run(&calc.into(), palette, &mut out),
        Command::Start(start) => start::run(start, palette, &mut out),
        Command::Completions(completions) => completions::run(completions, Arguments::command(), &mut out),
        Command::Man(man) => man::run(man, Arguments::command(), &mut out),
        Command::Server(server) => return serve(server.log.as_deref()),
    };
    let outcome = outcome.and_then(|outcome| out.flush().map(|()| outcome).map_err(anyhow::Error::from));
    match outcome {
        Ok(Outcome::Clean) => ExitCode::SUCCESS,
        Ok(Outcome::Found) => ExitCode::from(1),
        Ok(Outcome::Unusable) => ExitCode::from(2),
        Err(error) if is_closed_pipe(&error) => ExitCode::SUCCESS,
        Err(error) => {
            complain(&format!("{error:#}"));
            ExitCode::from(2)
        }
    }
}

fn serve(log: Option<&Path>) -> ExitCode {
    server::run(log).unwrap_or_else(|error| {
        complain(&format!("the server can't start: {error}"));
        ExitCode::from(2)
    })
}

/// Whoever read the output has had enough: no fault of ours, nothing to say.
fn is_closed_pipe(error: &anyhow::Error) -> bool {
    error.downcast_ref::<io::Error>().is_some_and(|error| error.kind() == ErrorKind::BrokenPipe)
}

/// Says on standard error what could not be used.
fn complain(message: &str) {
    // With standard error closed there is nobody left to tell.
    _ = writeln!(io::stderr(), "storyrod: {message}");
}

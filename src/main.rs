//! The program `storyrod`.

use std::process::ExitCode;

fn main() -> ExitCode {
    storyrod::cli::run()
}

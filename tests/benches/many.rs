//! How long a build waits for a repository of a thousand small projects. `cargo bench --bench many` prints the figures:
//! the whole run of the program, files read anew, the shortest of three.

#![allow(clippy::print_stdout, reason = "the figures are what it is run for")]
#![allow(clippy::unwrap_used, reason = "a measurement may stop where it fails")]
#![allow(clippy::string_slice, clippy::indexing_slicing, reason = "it cuts specs that it wrote itself")]

#[path = "../support/dice.rs"]
mod dice;
#[path = "../support/houses.rs"]
mod houses;
#[path = "../support/many.rs"]
mod many;

use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

const PROJECTS: u64 = 1_000;

fn main() {
    let folder = tempfile::tempdir().unwrap();
    many::write_projects(folder.path(), PROJECTS);
    let cores = std::thread::available_parallelism().unwrap();
    println!("{PROJECTS} projects, {cores} cores");
    for jobs in [1, 2, cores.get()] {
        for format in ["lines", "sarif"] {
            println!("  {jobs} at once, as {format}: {:?}", shortest(folder.path(), jobs, format));
        }
    }
}

fn shortest(folder: &Path, jobs: usize, format: &str) -> Duration {
    let times = (0..3).map(|_| {
        let start = Instant::now();
        let mut program = Command::new(env!("CARGO_BIN_EXE_storyrod"));
        program.current_dir(folder).args(["lint", "--format", format, "--jobs", &jobs.to_string()]);
        let status = program.stdout(Stdio::null()).stderr(Stdio::null()).status().unwrap();
        // Some of the projects are faulty.
        assert_eq!(status.code(), Some(1));
        start.elapsed()
    });
    times.min().unwrap_or_default()
}

//! How long a build waits for a repository of a thousand small projects, and for one line that changed in it.
//! `cargo bench --bench many` prints the figures: the whole run of the program, files read anew, the shortest of three.

#![allow(clippy::print_stdout, reason = "the figures are what it is run for")]
#![allow(clippy::unwrap_used, reason = "a measurement may stop where it fails")]
#![allow(clippy::string_slice, clippy::indexing_slicing, reason = "it cuts specs that it wrote itself")]

#[path = "../support/dice.rs"]
mod dice;
#[path = "../support/houses.rs"]
mod houses;
#[path = "../support/many.rs"]
mod many;

use std::fs;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use git2::{IndexAddOption, Repository, Signature, Time};

const PROJECTS: u64 = 1_000;

fn main() {
    let folder = tempfile::tempdir().unwrap();
    many::write_projects(folder.path(), PROJECTS);
    let cores = std::thread::available_parallelism().unwrap();
    println!("{PROJECTS} projects, {cores} cores");
    for jobs in [1, 2, cores.get()] {
        for format in ["lines", "sarif"] {
            // Some of the projects are faulty.
            let time = shortest(folder.path(), &["--format", format, "--jobs", &jobs.to_string()], 1);
            println!("  {jobs} at once, as {format}: {time:?}");
        }
    }
    for is_configured in [false, true] {
        if is_configured {
            fs::write(folder.path().join("storyrod.toml"), "").unwrap();
        }
        commit(folder.path());
        let house = folder.path().join("job-0500/house.framing");
        let text = fs::read_to_string(&house).unwrap();
        fs::write(&house, text.clone() + "\n-- a line more\n").unwrap();
        let time = shortest(folder.path(), &["--changed-since", "HEAD"], 0);
        fs::write(&house, text).unwrap();
        let place = if is_configured { "under one configuration" } else { "each by itself" };
        println!("  one line changed, projects {place}: {time:?}");
    }
}

/// Makes everything in the folder a revision of its repository. Its objects lie loose, which is slower than a fetched pack.
fn commit(folder: &Path) {
    let repository = Repository::init(folder).unwrap();
    let mut index = repository.index().unwrap();
    index.add_all(["*"], IndexAddOption::DEFAULT, None).unwrap();
    index.write().unwrap();
    let tree = repository.find_tree(index.write_tree().unwrap()).unwrap();
    let builder = Signature::new("builder", "builder@example.org", &Time::new(0, 0)).unwrap();
    let parent = repository.head().ok().map(|head| head.peel_to_commit().unwrap());
    let parents: Vec<_> = parent.iter().collect();
    repository.commit(Some("HEAD"), &builder, &builder, "next", &tree, &parents).unwrap();
}

fn shortest(folder: &Path, arguments: &[&str], code: i32) -> Duration {
    let times = (0..3).map(|_| {
        let start = Instant::now();
        let mut program = Command::new(env!("CARGO_BIN_EXE_storyrod"));
        program.current_dir(folder).arg("lint").args(arguments);
        let status = program.stdout(Stdio::null()).stderr(Stdio::null()).status().unwrap();
        assert_eq!(status.code(), Some(code));
        start.elapsed()
    });
    times.min().unwrap_or_default()
}

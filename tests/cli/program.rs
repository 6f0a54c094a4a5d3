//! Running the program in a folder of files.

use std::fs;
use std::path::{Path, PathBuf};

use assert_cmd::cargo::cargo_bin_cmd;

/// What a run of the program left behind.
pub struct Ran {
    pub code: i32,
    pub out: String,
    pub log: String,
}

/// Runs the program in a folder.
pub fn storyrod_in(folder: &Path, arguments: &[&str], input: &[u8]) -> Ran {
    storyrod_with(&[], folder, arguments, input)
}

/// Runs the program in a folder, with these variables in the environment.
pub fn storyrod_with(variables: &[(&str, &str)], folder: &Path, arguments: &[&str], input: &[u8]) -> Ran {
    let mut command = cargo_bin_cmd!("storyrod");
    let output = command
        .current_dir(folder)
        .env_remove("NO_COLOR")
        .env_remove("SOURCE_DATE_EPOCH")
        .envs(variables.iter().copied())
        .args(arguments)
        .write_stdin(input)
        .output()
        .unwrap();
    Ran {
        code: output.status.code().unwrap(),
        out: String::from_utf8(output.stdout).unwrap(),
        log: String::from_utf8(output.stderr).unwrap(),
    }
}

/// Runs the program in a folder of these files.
pub fn storyrod(files: &[(&str, &str)], arguments: &[&str]) -> Ran {
    storyrod_in(folder_with(files).path(), arguments, b"")
}

pub fn folder_with(files: &[(&str, &str)]) -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    for (name, text) in files {
        fs::create_dir_all(folder.path().join(name).parent().unwrap()).unwrap();
        fs::write(folder.path().join(name), text).unwrap();
    }
    folder
}

pub fn samples() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("grammar/samples")
}

pub fn sample(name: &str) -> String {
    fs::read_to_string(samples().join(name)).unwrap()
}

/// A spec in whose project one rule counts otherwise than by itself.
pub fn with_own_severity(spec: &str, severity: &str) -> String {
    let datum = spec.find("  datum ").unwrap();
    format!("{}  severity      {severity}\n{}", &spec[..datum], &spec[datum..])
}

/// The first sample with joists 2" deeper: 100'-0" - 3/4 - 11-1/4 - 1-1/2 = 98'-10 1/2" is where the wall tops belong,
/// and they are stated as 99'-0 1/2".
pub fn faulty_cabin() -> String {
    let cabin = sample("first.framing");
    assert!(cabin.contains("2x10 SPF"));
    cabin.replace("2x10 SPF", "2x12 SPF")
}

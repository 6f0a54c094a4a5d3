//! The shapes of `lint`'s output.

use std::fs;
use std::io::Read;
use std::process::Stdio;

use serde_json::Value;

use crate::program::{faulty_cabin, folder_with, sample, storyrod_in};

#[test]
fn colour_comes_when_asked_for_and_never_into_a_pipe_by_itself() {
    let folder = folder_with(&[("cabin.framing", &faulty_cabin())]);
    let has_escapes = |arguments: &[&str]| storyrod_in(folder.path(), arguments, b"").out.contains('\u{1b}');
    assert!(has_escapes(&["lint", "--color", "always"]));
    assert!(!has_escapes(&["lint"]));
    assert!(!has_escapes(&["lint", "--color", "never"]));
    assert!(!has_escapes(&["lint", "--format", "json", "--color", "always"]));
}

#[test]
fn a_reader_that_goes_away_is_no_fault() {
    let folder = tempfile::tempdir().unwrap();
    for index in 0..60 {
        fs::write(folder.path().join(format!("cabin-{index:02}.framing")), faulty_cabin()).unwrap();
    }
    let program = assert_cmd::cargo::cargo_bin!("storyrod");
    let mut child = std::process::Command::new(program)
        .current_dir(folder.path())
        .arg("lint")
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    drop(child.stdout.take());
    let mut log = String::new();
    child.stderr.take().unwrap().read_to_string(&mut log).unwrap();
    assert_ne!(child.wait().unwrap().code(), Some(101));
    assert_eq!(log, "");
}

#[test]
fn lines_hold_a_finding_each_and_what_follows_from_it() {
    let note = "-- é 北\n";
    let folder = folder_with(&[("cabin.framing", &(note.to_owned() + &faulty_cabin()))]);
    let ran = storyrod_in(folder.path(), &["lint", "--format", "lines", "--color", "always"], b"");
    let findings: Vec<_> = ran.out.lines().filter(|line| line.starts_with("cabin.framing:")).collect();
    let top = faulty_cabin().lines().position(|line| line.starts_with("  top ")).unwrap() + 2;
    let place = format!("cabin.framing:{top}:17: error: ");
    assert!(
        findings[0].starts_with(&place) && findings[0].ends_with(" [stack-does-not-close]"),
        "{}",
        ran.out
    );
    assert!(ran.out.contains("licensed professional"), "{}", ran.out);
    assert_eq!(ran.code, 1);
}

#[test]
fn json_keeps_its_published_shape() {
    let schema: Value = serde_json::from_str(include_str!("../../grammar/lint-output.schema.json")).unwrap();
    let schema = jsonschema::validator_for(&schema).unwrap();
    let folder = folder_with(&[
        ("cabin.framing", &faulty_cabin()),
        ("later/broken.framing", "project \"½ done\"\n  frost  12-6\nbeem B1\nstair S1\n  risers  3\n"),
        ("sub/storyrod.toml", "x = 1\n"),
        ("sub/cabin.framing", &sample("first.framing")),
    ]);
    let ran = storyrod_in(folder.path(), &["lint", "--format", "json", "none.framing", "."], b"");
    let output: Value = serde_json::from_str(&ran.out).unwrap();
    let faults: Vec<_> =
        schema.iter_errors(&output).map(|error| format!("{}: {error}", error.instance_path)).collect();
    assert!(faults.is_empty(), "{faults:#?}");
    assert_eq!(ran.code, 2);
    assert_eq!(output["schema"], 1);
    assert_eq!(output["unusable"][0]["file"], "none.framing");
    assert_eq!((&output["unusable"][1]["line"], &output["unusable"][1]["column"]), (&1.into(), &1.into()));
    let finding = &output["specs"][0]["findings"][0];
    assert_eq!(finding["rule"], "stack-does-not-close");
    // Byte, line and column name the same place.
    let text = faulty_cabin();
    let byte = usize::try_from(finding["place"]["start"]["byte"].as_u64().unwrap()).unwrap();
    let line_start = text[..byte].rfind('\n').map_or(0, |at| at + 1);
    assert_eq!(finding["place"]["start"]["line"], text[..byte].matches('\n').count() + 1);
    assert_eq!(finding["place"]["start"]["column"], text[line_start..byte].chars().count() + 1);
}

#[test]
fn sarif_names_files_from_the_working_folder_and_where_rules_are_told() {
    let folder = folder_with(&[("job/cabin.framing", &faulty_cabin())]);
    let lint = ["lint", "--format", "sarif", "none.framing", "job"];
    let with =
        |address: &str| storyrod_in(folder.path(), &[&lint[..], &["--rules-address", address]].concat(), b"");
    let ran = with("https://example.org/rules/");
    assert_eq!(ran.code, 2, "{}", ran.log);
    let log: Value = serde_json::from_str(&ran.out).unwrap();
    let run = &log["runs"][0];
    let base = run["originalUriBaseIds"]["%SRCROOT%"]["uri"].as_str().unwrap();
    let name = folder.path().file_name().unwrap().to_str().unwrap();
    assert!(base.starts_with("file:///") && base.ends_with(&format!("/{name}/")), "{base}");
    let result = &run["results"][0];
    assert_eq!(result["locations"][0]["physicalLocation"]["artifactLocation"]["uri"], "job/cabin.framing");
    assert_eq!(run["invocations"][0]["executionSuccessful"], false);
    let index = usize::try_from(result["ruleIndex"].as_u64().unwrap()).unwrap();
    let rule = &run["tool"]["driver"]["rules"][index];
    assert_eq!(rule["helpUri"], "https://example.org/rules/stack-does-not-close");
    let refused = with("rules.html");
    assert_eq!((refused.code, refused.out.as_str()), (2, ""));
    assert!(refused.log.contains("--rules-address"), "{}", refused.log);
}

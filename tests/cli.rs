//! The program as a person or a build runs it: arguments in; output, exit code and files out.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)] // helpers of tests

use std::fs;
use std::io::Read;
use std::path::{Path, PathBuf};
use std::process::Stdio;

use assert_cmd::cargo::cargo_bin_cmd;
use serde_json::Value;

/// What a run of the program left behind.
struct Ran {
    code: i32,
    out: String,
    log: String,
}

/// Runs the program in a folder.
fn storyrod_in(folder: &Path, arguments: &[&str], input: &[u8]) -> Ran {
    let mut command = cargo_bin_cmd!("storyrod");
    let output = command
        .current_dir(folder)
        .env_remove("NO_COLOR")
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
fn storyrod(files: &[(&str, &str)], arguments: &[&str]) -> Ran {
    storyrod_in(folder_with(files).path(), arguments, b"")
}

fn folder_with(files: &[(&str, &str)]) -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    for (name, text) in files {
        fs::create_dir_all(folder.path().join(name).parent().unwrap()).unwrap();
        fs::write(folder.path().join(name), text).unwrap();
    }
    folder
}

fn samples() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("grammar/samples")
}

fn sample(name: &str) -> String {
    fs::read_to_string(samples().join(name)).unwrap()
}

/// The first sample with joists 2" deeper: 100'-0" - 3/4 - 11-1/4 - 1-1/2 = 98'-10 1/2" is where the wall tops belong,
/// and they are stated as 99'-0 1/2".
fn faulty_cabin() -> String {
    let cabin = sample("first.framing");
    assert!(cabin.contains("2x10 SPF"));
    cabin.replace("2x10 SPF", "2x12 SPF")
}

#[test]
fn the_samples_are_clean() {
    let ran = storyrod_in(&samples(), &["lint"], b"");
    assert_eq!((ran.code, ran.log.as_str()), (0, ""), "{}", ran.out);
    assert!(ran.out.contains("first.framing: nothing found"), "{}", ran.out);
}

#[test]
fn a_finding_has_both_numbers_and_exit_code_1() {
    let ran = storyrod(&[("cabin.framing", &faulty_cabin())], &["lint", "cabin.framing"]);
    assert_eq!(ran.code, 1, "{}", ran.out);
    assert!(ran.out.contains("[stack-does-not-close]"), "{}", ran.out);
    assert!(ran.out.contains("99'-0 1/2\"") && ran.out.contains("98'-10 1/2\""), "{}", ran.out);
    assert!(ran.out.contains("─[ cabin.framing:"), "{}", ran.out);
    let [.., counts, not_checked, strength] = ran.out.lines().collect::<Vec<_>>()[..] else {
        panic!("{}", ran.out)
    };
    assert!(counts.starts_with("cabin.framing: 1 error"), "{}", ran.out);
    assert!(not_checked.starts_with("not checked: wind"), "{}", ran.out);
    assert!(strength.starts_with("strength: "), "{}", ran.out);
}

#[test]
fn the_same_input_prints_the_same_bytes() {
    let folder = folder_with(&[("a/cabin.framing", &faulty_cabin()), ("b/cabin.framing", &faulty_cabin())]);
    let first = storyrod_in(folder.path(), &["lint"], b"").out;
    for arguments in [vec!["lint", "."], vec!["lint", "b", "a"], vec!["lint", "a/cabin.framing", "b", "."]] {
        assert_eq!(storyrod_in(folder.path(), &arguments, b"").out, first, "{arguments:?}");
    }
    assert!(first.find("a/cabin.framing").unwrap() < first.find("b/cabin.framing").unwrap());
}

#[test]
fn a_severity_can_be_lowered_but_a_fail_level_raised() {
    let configuration = "[severity]\nstack-does-not-close = \"advice\"\n";
    let files = [("cabin.framing", faulty_cabin()), ("storyrod.toml", configuration.to_owned())];
    let files: Vec<_> = files.iter().map(|(name, text)| (*name, text.as_str())).collect();
    assert_eq!(storyrod(&files, &["lint"]).code, 0);
    assert_eq!(storyrod(&files, &["lint", "--fail-on", "advice"]).code, 1);
}

#[test]
fn what_can_t_be_used_is_named_on_standard_error_with_exit_code_2() {
    let folder = folder_with(&[
        ("empty.framing", " \n"),
        ("folder/notes.md", ""),
        ("wrong/storyrod.toml", "[severity]\nrisers-not-evn = \"off\"\n"),
        ("wrong/cabin.framing", &sample("first.framing")),
    ]);
    fs::write(folder.path().join("latin.framing"), b"-- ferme \xe9l\xe9gante\n").unwrap();
    let cases = [
        (vec!["lint", "none.framing"], "none.framing: there is no such file"),
        (vec!["lint", "empty.framing"], "empty.framing: the file is empty"),
        (vec!["lint", "folder"], "folder: there is no spec (`*.framing`) in this folder or below it"),
        (
            vec!["lint", "latin.framing"],
            "latin.framing: not UTF-8 text: byte 9 (line 1, column 10) fits no character",
        ),
        (
            vec!["lint", "wrong"],
            "wrong/storyrod.toml:2:1: there is no rule `risers-not-evn`; did you mean `risers-not-even`?",
        ),
        (vec!["lint", "-"], "standard input: the file is empty"),
        (vec!["format", "none.framing"], "none.framing: there is no such file"),
        (
            vec!["explain", "risers-not-evn"],
            "there is no rule `risers-not-evn`; did you mean `risers-not-even`?",
        ),
    ];
    for (arguments, message) in cases {
        let ran = storyrod_in(folder.path(), &arguments, b"");
        assert_eq!((ran.code, ran.log.trim_end()), (2, &*format!("storyrod: {message}")), "{arguments:?}");
    }
    assert_eq!(storyrod_in(folder.path(), &["lint", "--colour"], b"").code, 2);
}

#[cfg(unix)]
#[test]
fn a_file_without_read_permission_says_so() {
    use std::os::unix::fs::PermissionsExt;
    let folder = folder_with(&[("cabin.framing", &sample("first.framing"))]);
    let path = folder.path().join("cabin.framing");
    fs::set_permissions(&path, fs::Permissions::from_mode(0o000)).unwrap();
    if fs::read(&path).is_ok() {
        return; // An administrator may read everything.
    }
    let ran = storyrod_in(folder.path(), &["lint", "cabin.framing"], b"");
    assert_eq!((ran.code, ran.log.contains("does not let this user read it")), (2, true), "{}", ran.log);
}

#[test]
fn one_bad_file_keeps_no_other_from_being_checked() {
    let ran = storyrod(&[("cabin.framing", &faulty_cabin())], &["lint", "none.framing", "cabin.framing"]);
    assert_eq!(ran.code, 2);
    assert!(ran.out.contains("stack-does-not-close"), "{}", ran.out);
}

#[test]
fn standard_input_stands_for_the_file_it_is_named_after() {
    let cabin = faulty_cabin();
    let unnamed = storyrod_in(&samples(), &["lint", "-"], cabin.as_bytes());
    assert!(unnamed.out.contains("─[ stdin:"), "{}", unnamed.out);
    let named =
        storyrod_in(&samples(), &["lint", "-", "--stdin-filename", "first.framing"], cabin.as_bytes());
    assert_eq!(named.code, 1);
    assert!(named.out.contains("─[ first.framing:"), "{}", named.out);
}

#[test]
fn standard_input_is_read_once_and_only_when_asked_for() {
    let twice = storyrod_in(&samples(), &["lint", "-", "-"], sample("first.framing").as_bytes());
    assert_eq!((twice.code, twice.log.as_str()), (0, ""), "{}", twice.out);
    let unasked = storyrod_in(&samples(), &["lint", "first.framing", "--stdin-filename", "x.framing"], b"");
    assert_eq!(unasked.code, 2, "{}", unasked.out);
    assert!(unasked.log.contains("no `-` asks for it"), "{}", unasked.log);
}

#[test]
fn a_part_is_checked_in_its_project_and_a_stray_one_alone() {
    let barn = sample("hop-barn.framing");
    let (head, rest) = barn.split_at(barn.find("\nfloor main").unwrap() + 1);
    let root = format!("{head}include \"parts/rest.framing\"\n");
    let folder = folder_with(&[
        ("barn.framing", &root),
        ("parts/rest.framing", rest),
        ("stray.framing", "-- nothing yet\n"),
        ("storyrod.toml", ""),
    ]);
    let part = storyrod_in(folder.path(), &["lint", "parts/rest.framing"], b"");
    assert_eq!(
        (part.code, part.out.lines().next()),
        (0, Some("barn.framing: nothing found")),
        "{}",
        part.log
    );
    let all = storyrod_in(folder.path(), &["lint"], b"");
    assert!(all.out.contains("stray.framing (read alone: no project includes it)"), "{}", all.out);
}

#[test]
fn includes_that_lead_nowhere_are_findings_where_they_stand() {
    let root =
        format!("{}\ninclude \"parts/a.framing\"\ninclude \"none.framing\"\n", sample("first.framing"));
    let files = [("house.framing", root.as_str()), ("parts/a.framing", "include \"../house.framing\"\n")];
    let ran = storyrod(&files, &["lint"]);
    assert_eq!(ran.code, 1, "{}", ran.out);
    assert!(
        ran.out.contains("house.framing → parts/a.framing → house.framing [include-circle]"),
        "{}",
        ran.out
    );
    assert!(ran.out.contains("─[ parts/a.framing:1:10 ]"), "{}", ran.out);
    assert!(ran.out.contains("there is no file `none.framing` [include-not-found]"), "{}", ran.out);
}

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
    let schema: Value = serde_json::from_str(include_str!("../grammar/lint-output.schema.json")).unwrap();
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
fn every_rule_explains_itself() {
    let list = storyrod(&[], &["explain"]);
    assert_eq!(list.code, 0);
    let rules: Vec<_> =
        list.out.lines().filter_map(|line| line.strip_prefix("  ")?.split(' ').next()).collect();
    assert!(rules.contains(&"risers-not-even"), "{}", list.out);
    for rule in rules {
        let ran = storyrod(&[], &["explain", rule]);
        assert_eq!(ran.code, 0, "{rule}");
        for heading in ["Why", "Source", "Examples"] {
            assert!(ran.out.lines().any(|line| line == heading), "{rule} has no {heading}");
        }
    }
}

#[test]
fn format_shows_writes_and_is_then_content() {
    let untidy = "footing F1\n      at  A/1\n\n\n\nfooting F2\n at A/2   \n";
    let folder = folder_with(&[("pads.framing", untidy)]);
    let read = || fs::read_to_string(folder.path().join("pads.framing")).unwrap();

    let check = storyrod_in(folder.path(), &["format", "--check"], b"");
    assert_eq!((check.code, read().as_str()), (1, untidy));
    assert!(check.out.starts_with("--- pads.framing\n+++ pads.framing (formatted)\n@@ "), "{}", check.out);

    let piped = storyrod_in(folder.path(), &["format", "-"], untidy.as_bytes());
    let write = storyrod_in(folder.path(), &["format", "pads.framing"], b"");
    assert_eq!((write.code, write.out.as_str()), (0, ""));
    assert_eq!((piped.code, piped.out), (0, read()));

    let again = storyrod_in(folder.path(), &["format", "--check", "."], b"");
    assert_eq!((again.code, again.out.as_str()), (0, ""));
}

#[test]
fn the_rod_list_goes_from_the_footings_up() {
    let ran = storyrod_in(&samples(), &["rod", "first.framing"], b"");
    assert_eq!(ran.code, 0, "{}", ran.log);
    // Stated in the sample: footing top 95'-0 1/2", wall top 99'-0 1/2", subfloor 100'-0"; the footing is 8" thick.
    let at = |row: &str| ran.out.find(row).unwrap_or_else(|| panic!("no `{row}` in\n{}", ran.out));
    let bottom = at("footing F1 bottom    94'-4 1/2\"");
    let top = at("footing F1 top       95'-0 1/2\"");
    let wall = at("wall W1 top          99'-0 1/2\"");
    let floor = at("floor main subfloor");
    assert!(bottom < top && top < wall && wall < floor, "{}", ran.out);
    assert!(ran.out.contains("licensed professional"), "{}", ran.out);
}

/// Loon Cove, by hand: finishes at 100'-0 3/4" and 98'-4 5/8" + 5/8" = 98'-5 1/4", 19-1/2" apart: three risers of 6-1/2".
/// Seats at 5/8 + 6-1/2 - 1 = 6-1/8" and 12-5/8". With upper joists of 9-1/4", equal decks and 1/8" more finish above, the
/// joists meet at 9-3/8": the sunroom and what carries it go up 10-1/8", W5 from 97'-5 1/8" to 98'-3 1/4".
#[test]
fn steps_are_divided_and_say_what_moves() {
    let ran = storyrod_in(&samples(), &["steps", "loon-cove.framing", "main", "sunroom"], b"");
    assert_eq!((ran.code, ran.log.as_str()), (0, ""));
    for said in [
        "drop: 19-1/2\" from finish to finish, 19-3/8\" from deck to deck",
        "3 of 6-1/2\"\n    rough seats above the deck of sunroom: 6-1/8\", 12-5/8\"\n",
        "2x10 joists: 9-3/8\", 2 of 4-11/16\", low\n",
        "top of W5: 10-1/8\" up, from 97'-5 1/8\" to 98'-3 1/4\"",
        "licensed professional",
    ] {
        assert!(ran.out.contains(said), "no `{said}` in\n{}", ran.out);
    }
    let turned = storyrod_in(&samples(), &["steps", "loon-cove.framing", "sunroom", "main"], b"");
    assert_eq!(turned.out, ran.out);
}

#[test]
fn steps_between_floors_that_are_not_there_say_so() {
    let ran = storyrod_in(&samples(), &["steps", "loon-cove.framing", "main", "sunrom"], b"");
    assert_eq!((ran.code, ran.out.as_str()), (2, ""));
    assert_eq!(ran.log, "storyrod: loon-cove.framing: there is no floor `sunrom`; did you mean `sunroom`?\n");
}

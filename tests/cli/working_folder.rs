//! What a run says does not depend on the folder it is started in.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use serde_json::Value;

use crate::program::{faulty_cabin, folder_with, sample, storyrod_in};

/// The folders of one run each, with the argument that leads to both houses.
const FOLDERS: [(&str, &str); 3] = [("", "."), ("houses", ".."), ("houses/cabin", "../..")];

/// Two faulty houses, one of them in two files, and the file that makes their folder a whole.
fn houses(mark: &str) -> tempfile::TempDir {
    let cabin = faulty_cabin();
    let (head, rest) = cabin.split_at(cabin.find("\nwall W1").unwrap() + 1);
    folder_with(&[
        (mark, ""),
        ("houses/cabin/house.framing", &format!("{head}include \"../../shared/walls.framing\"\n")),
        ("houses/my barn/house.framing", &cabin),
        ("shared/walls.framing", rest),
        ("storyrod.toml", "leave-out = [\"none\"]\n"),
    ])
}

/// Rule, address and fingerprint of every finding, and the base of the addresses.
fn marks(folder: &Path, argument: &str) -> (BTreeSet<[String; 3]>, Value) {
    let ran = storyrod_in(folder, &["lint", "--format", "sarif", argument], b"");
    assert_eq!(ran.code, 1, "{}", ran.log);
    let log: Value = serde_json::from_str(&ran.out).unwrap();
    let run = &log["runs"][0];
    let results = run["results"].as_array().unwrap().iter().map(|result| {
        let place = &result["locations"][0]["physicalLocation"]["artifactLocation"];
        assert_eq!(place["uriBaseId"], "%SRCROOT%");
        [&result["ruleId"], &place["uri"], &result["partialFingerprints"]["storyrodFinding/v1"]]
            .map(|it| it.as_str().unwrap().to_owned())
    });
    (results.collect(), run["originalUriBaseIds"].clone())
}

#[test]
fn fingerprints_and_addresses_are_the_same_from_every_folder() {
    for mark in [".git", "notes.md"] {
        let folder = houses(mark);
        let at_top = marks(folder.path(), ".");
        let addresses: BTreeSet<&str> = at_top.0.iter().map(|[_, uri, _]| uri.as_str()).collect();
        assert!(addresses.contains("houses/my%20barn/house.framing"), "{addresses:?}");
        for (below, argument) in FOLDERS {
            assert_eq!(marks(&folder.path().join(below), argument), at_top, "{below}");
        }
    }
}

#[test]
fn what_lies_beside_the_working_folder_is_named_by_the_way_to_it() {
    let folder = houses("notes.md");
    let ran = storyrod_in(&folder.path().join("houses/cabin"), &["lint", "--format", "lines", "../.."], b"");
    let top = folder.path().file_name().unwrap().to_str().unwrap();
    assert!(!ran.out.contains(top), "{}", ran.out);
    assert!(
        ran.out.contains("\nhouse.framing: ") && ran.out.contains("\n../my barn/house.framing: "),
        "{}",
        ran.out
    );
    let json = storyrod_in(&folder.path().join("shared"), &["lint", "--format", "json", ".."], b"");
    let output: Value = serde_json::from_str(&json.out).unwrap();
    let files = output["specs"].as_array().unwrap().iter().map(|spec| spec["file"].as_str().unwrap());
    assert_eq!(
        files.collect::<Vec<_>>(),
        ["../houses/cabin/house.framing", "../houses/my barn/house.framing"]
    );
    // What is no part of the whole has no other name than its path.
    let other = folder_with(&[("other.framing", &sample("first.framing"))]);
    let other = other.path().canonicalize().unwrap().join("other.framing");
    let ran = storyrod_in(folder.path(), &["lint", other.to_str().unwrap()], b"");
    assert_eq!(ran.out.lines().next(), Some(&*format!("{}: nothing found", other.display())));
    // `format` names them alike.
    fs::write(folder.path().join("shared/walls.framing"), "wall W1\n top 1'\n").unwrap();
    let ran = storyrod_in(&folder.path().join("houses"), &["format", "--check", ".."], b"");
    assert_eq!(ran.out.lines().next(), Some("--- ../shared/walls.framing"), "{}", ran.log);
}

#[test]
fn a_baseline_without_a_configuration_names_specs_within_the_repository() {
    let folder = houses(".git");
    fs::remove_file(folder.path().join("storyrod.toml")).unwrap();
    let baseline = folder.path().join("known.toml");
    let run = |(below, argument): (&str, &str), update: bool| {
        let baseline = baseline.to_str().unwrap();
        let update: &[&str] = if update { &["--update-baseline"] } else { &[] };
        let arguments = [&["lint", "--baseline", baseline, argument], update].concat();
        storyrod_in(&folder.path().join(below), &arguments, b"")
    };
    let mut written = BTreeSet::new();
    for from in FOLDERS {
        _ = fs::remove_file(&baseline);
        run(from, true);
        written.insert(fs::read_to_string(&baseline).unwrap());
    }
    let written: Vec<_> = written.into_iter().collect();
    let [text] = &written[..] else { panic!("{written:#?}") };
    assert!(text.contains("spec = \"houses/my barn/house.framing\""), "{text}");
    for from in FOLDERS {
        let ran = run(from, false);
        assert!(ran.out.contains("known finding"), "{}{}", ran.out, ran.log);
        assert!(!ran.log.contains("mended"), "{}", ran.log);
    }
}

#[test]
fn a_baseline_takes_no_path_of_one_machine() {
    let folder = folder_with(&[("a/house.framing", &faulty_cabin()), ("b/house.framing", &faulty_cabin())]);
    let here = folder.path().join("b");
    let update = ["lint", "../a", ".", "--baseline", "known.toml", "--update-baseline"];
    let ran = storyrod_in(&here, &update, b"");
    let outside = folder.path().canonicalize().unwrap().join("a/house.framing");
    let why = format!("storyrod: known.toml: it would name `{}` by its whole path", outside.display());
    assert!(ran.code == 2 && ran.log.starts_with(&why), "{}", ran.log);
    assert!(!here.join("known.toml").exists());
    fs::write(folder.path().join("storyrod.toml"), "").unwrap();
    assert_eq!(storyrod_in(&here, &update, b"").code, 0);
    let text = fs::read_to_string(here.join("known.toml")).unwrap();
    assert!(text.contains("\"a/house.framing\"") && text.contains("\"b/house.framing\""), "{text}");
}

//! `storyrod lint --baseline`.

use std::fs;
use std::path::Path;

use serde_json::Value;

use crate::program::{Ran, faulty_cabin, folder_with, sample, storyrod_in};

const LINT: [&str; 3] = ["lint", "--baseline", "known.toml"];

fn lint(folder: &Path, more: &[&str]) -> Ran {
    storyrod_in(folder, &[&LINT[..], more].concat(), b"")
}

fn write(folder: &Path, text: &str) {
    fs::write(folder.join("cabin.framing"), text).unwrap();
}

fn known(folder: &Path) -> Vec<toml::Value> {
    let text = fs::read_to_string(folder.join("known.toml")).unwrap();
    let file: toml::Table = text.parse().unwrap();
    file.get("known").map(|known| known.as_array().unwrap().clone()).unwrap_or_default()
}

/// The messages of what was found.
fn found(ran: &Ran) -> Vec<&str> {
    ran.out.lines().filter(|line| line.starts_with("cabin.framing:") && line.ends_with(']')).collect()
}

#[test]
fn what_was_there_is_left_out_and_what_is_new_fails() {
    let folder = folder_with(&[("cabin.framing", &faulty_cabin())]);
    let path = folder.path();
    let ran = lint(path, &[]);
    assert_eq!((ran.code, ran.out.as_str()), (2, ""));
    assert!(ran.log.contains("known.toml: there is no such file"), "{}", ran.log);
    let n_before = storyrod_in(path, &["lint", "--format", "lines"], b"");
    let n_before = found(&n_before).len();
    let ran = lint(path, &["--update-baseline"]);
    assert_eq!((ran.code, known(path).len()), (0, n_before), "{}{}", ran.out, ran.log);
    // Lines move, elements too.
    let cabin = faulty_cabin();
    let wall = cabin.find("wall W1").unwrap();
    let moved = format!("-- said so\n\n{}\n\n-- and so\n{}", &cabin[wall..], &cabin[..wall]);
    write(path, &moved);
    let ran = lint(path, &["--format", "lines"]);
    assert_eq!((ran.code, found(&ran).len()), (0, 0), "{}", ran.out);
    // Nobody is to take it for mended.
    let left_out = format!("nothing new found, {n_before} known finding");
    assert!(ran.out.contains(&left_out), "{}", ran.out);
    let in_markdown = lint(path, &["--format", "markdown"]).out;
    assert!(in_markdown.starts_with("## storyrod: nothing new found in 1 spec, "), "{in_markdown}");
    assert!(ran.log.contains("left out") && !ran.log.contains("advice"), "{}", ran.log);
    // The same fault with another figure, 1/4" less, is the same one.
    write(path, &moved.replace("deck          3/4\"", "deck          1/2\""));
    assert_eq!(lint(path, &[]).code, 0);
    write(path, &moved.replace("top of F1 = 95'-0 1/2\"", "top of F1 = 95'-0\""));
    let ran = lint(path, &["--format", "lines"]);
    let new = found(&ran);
    assert_eq!((ran.code, new.len()), (1, 1), "{}", ran.out);
    assert!(new[0].contains("top of F1") && new[0].contains("[sheet-differs]"), "{}", new[0]);
    // An update takes nothing new in.
    assert_eq!(lint(path, &["--update-baseline"]).code, 1);
    assert_eq!(lint(path, &[]).code, 1);
}

#[test]
fn a_baseline_shrinks_and_a_mended_fault_makes_no_room_for_another() {
    let folder = folder_with(&[]);
    let path = folder.path();
    let sheets = |tops: [&str; 2]| {
        let cabin = sample("first.framing");
        let right = "  shows         top of W1 = 99'-0 1/2\"\n";
        assert!(cabin.contains(right));
        cabin.replace(right, &tops.map(|top| format!("  shows         top of W1 = {top}\n")).concat())
    };
    write(path, &sheets(["99'-0\"", "98'-0\""]));
    lint(path, &["--update-baseline"]);
    assert_eq!((lint(path, &[]).code, known(path).len()), (0, 2));
    // Both say the same apart from figures. One is mended, another comes.
    write(path, &sheets(["97'-0\"", "98'-0\""]));
    let ran = lint(path, &["--format", "lines"]);
    assert_eq!((ran.code, found(&ran).len()), (1, 1), "{}", ran.out);
    assert!(found(&ran)[0].contains("97'-0\""), "{}", ran.out);
    assert!(
        ran.log.contains("takes it out: cabin.framing: sheet S-101 shows top of W1 as 99'-0\""),
        "{}",
        ran.log
    );
    assert_eq!(known(path).len(), 2);
    write(path, &sheets(["99'-0 1/2\"", "98'-0\""]));
    assert_eq!((lint(path, &["--update-baseline"]).code, known(path).len()), (0, 1));
    write(path, &sheets(["99'-0\"", "98'-0\""]));
    assert_eq!(lint(path, &[]).code, 1);
    // A spec that was not looked at keeps its entries; one that is gone does not.
    fs::write(path.join("other.framing"), sample("first.framing")).unwrap();
    assert_eq!((lint(path, &["other.framing", "--update-baseline"]).code, known(path).len()), (0, 1));
    fs::remove_file(path.join("cabin.framing")).unwrap();
    assert_eq!((lint(path, &["--update-baseline"]).code, known(path).len()), (0, 0));
}

#[test]
fn what_is_left_of_a_finding_about_several_walls_is_no_new_one() {
    let folder = folder_with(&[("cabin.framing", &faulty_cabin())]);
    let path = folder.path();
    lint(path, &["--update-baseline"]);
    let message = |known: &toml::Value| known["message"].as_str().unwrap().to_owned();
    let of_walls = |path: &Path| known(path).iter().map(message).find(|message| message.contains("too high"));
    assert!(of_walls(path).unwrap().starts_with("the tops of walls W1 and W2 are 2\" too high"));
    // W1 is cut down, and its sheet says so.
    let mended = faulty_cabin()
        .replacen("top           99'-0 1/2\"", "top           98'-10 1/2\"", 1)
        .replace("top of W1 = 99'-0 1/2\"", "top of W1 = 98'-10 1/2\"");
    write(path, &mended);
    let whole = storyrod_in(path, &["lint", "--format", "lines"], b"");
    assert!(whole.out.contains("the top of wall W2 is 2\" too high"), "{}", whole.out);
    let ran = lint(path, &["--format", "lines"]);
    assert_eq!((ran.code, found(&ran).len()), (0, 0), "{}", ran.out);
    let advice = "advice: mended in part; `--update-baseline` writes what is left: cabin.framing: the tops of walls W1 and W2";
    assert!(ran.log.contains(advice), "{}", ran.log);
    assert_eq!(lint(path, &["--update-baseline"]).code, 0);
    assert!(of_walls(path).unwrap().starts_with("the top of wall W2 is 2\" too high"));
    // Then the other way round it is new.
    write(path, &faulty_cabin());
    assert_eq!(lint(path, &[]).code, 1);
}

#[test]
fn danger_and_what_is_wrong_with_the_text_are_never_left_out() {
    let cabin = sample("first.framing");
    let faulty = cabin
        .replace("2000 psf", "200 psf")
        .replace("  stands on     F1\n\nwall W2", "  stands on     F9\n  what\n\nwall W2");
    let folder = folder_with(&[("cabin.framing", &faulty)]);
    let path = folder.path();
    let ran = lint(path, &["--update-baseline", "--format", "lines"]);
    assert_eq!(ran.code, 1, "{}", ran.out);
    let rules = |found: &[&str]| {
        found.iter().map(|line| line.rsplit(['[', ']']).nth(1).unwrap().to_owned()).collect::<Vec<_>>()
    };
    let said = rules(&found(&ran));
    assert!(said.iter().any(|rule| rule == "unknown-name"), "{said:?}");
    assert!(said.iter().any(|rule| rule == "soil-pressure"), "{said:?}");
    for known in known(path) {
        assert!(!said.contains(&known["rule"].as_str().unwrap().to_owned()), "{known}");
    }
    let by_hand = "[[known]]\nspec = \"cabin.framing\"\nrule = \"soil-pressure\"\nelement = \"\"\nmessage = \"\"\nkey = \"\"\n";
    fs::write(path.join("known.toml"), by_hand).unwrap();
    let ran = lint(path, &[]);
    assert!(ran.log.contains("`soil-pressure` can't be left out"), "{}", ran.log);
    assert_eq!((ran.code, ran.out.as_str()), (2, ""));
}

#[test]
fn the_key_is_that_of_sarif() {
    let folder = folder_with(&[("cabin.framing", &faulty_cabin())]);
    let ran = storyrod_in(folder.path(), &["lint", "--format", "sarif"], b"");
    let log: Value = serde_json::from_str(&ran.out).unwrap();
    let results = log["runs"][0]["results"].as_array().unwrap();
    let marks: Vec<&str> =
        results.iter().map(|it| it["partialFingerprints"]["storyrodFinding/v1"].as_str().unwrap()).collect();
    lint(folder.path(), &["--update-baseline"]);
    let known = known(folder.path());
    assert!(!known.is_empty());
    for known in known {
        let key = format!("{}:1", known["key"].as_str().unwrap());
        assert!(marks.contains(&key.as_str()), "{key} {marks:?}");
    }
}

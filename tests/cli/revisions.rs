//! `storyrod compare --rev`, in repositories that are made here.

use std::fs;

use serde_json::Value;

use crate::program::{Ran, folder_with, sample, storyrod_in};
use crate::repository::Repository;

fn compare(history: &Repository, arguments: &[&str]) -> Ran {
    storyrod_in(history.path(), &[&["compare"], arguments].concat(), b"")
}

fn json(history: &Repository, arguments: &[&str]) -> Value {
    let ran = compare(history, &[arguments, &["--format", "json"]].concat());
    serde_json::from_str(&ran.out).unwrap_or_else(|_| panic!("{arguments:?}: {}", ran.log))
}

fn counts(change: &Value) -> (usize, usize) {
    (change["changed"].as_array().unwrap().len(), change["renamed"].as_array().unwrap().len())
}

/// Everything but where the lines stand.
fn without_places(mut change: Value) -> Value {
    for line in change["changed"].as_array_mut().unwrap() {
        line.as_object_mut().unwrap().remove("place");
    }
    change
}

#[test]
fn thirty_revisions_tell_what_was_done_in_each() {
    let mut history = Repository::new();
    let mut text = sample("first.framing");
    let (mut root, mut wall) = ("house.framing".to_owned(), "W1".to_owned());
    fs::write(history.path().join(&root), &text).unwrap();
    history.commit();
    // The ends of it all lie beside the repository's own files, as a person would put them.
    let beside = folder_with(&[("r0.framing", &text)]);
    let mut done = Vec::new();
    for turn in 1..=30 {
        done.push(match turn % 6 {
            1 => {
                let (was, is) = if text.contains("16\" x 8\"") { (16, 18) } else { (18, 16) };
                text = text.replace(&format!("{was}\" x 8\""), &format!("{is}\" x 8\""));
                (1, 0)
            }
            2 => {
                let next = format!("W{}", turn + 100);
                let spoken = |text: &str| text.matches(&wall).count();
                assert_eq!(spoken(&text), 4);
                text = text.replace(&wall, &next);
                wall = next;
                (0, 1)
            }
            3 => {
                let line = |word: &str| text.lines().find(|line| line.starts_with(word)).unwrap().to_owned();
                let (live, dead) = (line("  live"), line("  dead"));
                text = text.replace(&live, &format!("  live          {} psf", 40 + turn));
                text = text.replace(&dead, &format!("  dead          {} psf", 12 + turn));
                (2, 0)
            }
            4 => {
                text = format!("-- said in turn {turn}\n\n{text}");
                (0, 0)
            }
            5 => {
                fs::remove_file(history.path().join(&root)).unwrap();
                root = format!("house-{turn}.framing");
                (0, 0)
            }
            _ => {
                text += &format!(
                    "\nfooting F{turn} \"Pad\"\n  kind          pad\n  at            A/{}\n",
                    1 + turn % 2
                );
                (1, 0)
            }
        });
        fs::write(history.path().join(&root), &text).unwrap();
        fs::write(beside.path().join(format!("r{turn}.framing")), &text).unwrap();
        history.commit();
    }
    for (turn, done) in done.iter().enumerate() {
        let change = json(&history, &["--rev", &format!("r{turn}..r{}", turn + 1)]);
        assert_eq!(counts(&change), *done, "r{turn}: {change:#}");
    }
    for (from, to) in [(0, 30), (30, 0), (4, 17), (11, 29), (6, 6)] {
        let range = json(&history, &["--rev", &format!("r{from}..r{to}")]);
        let (old, new) = (format!("r{from}.framing"), format!("r{to}.framing"));
        let ends = storyrod_in(beside.path(), &["compare", &old, &new, "--format", "json"], b"");
        let ends: Value = serde_json::from_str(&ends.out).unwrap();
        assert_eq!(without_places(range), without_places(ends), "r{from}..r{to}");
    }
    // The root file is found by the name it has now, and by the one it had.
    for name in ["house-29.framing", "house-23.framing"] {
        assert_eq!(counts(&json(&history, &["--rev", "r24..r29", name])), (3, 1), "{name}");
    }
    // What is written on disk is the newest, committed or not.
    assert_eq!(compare(&history, &["--rev", "HEAD"]).out, "nothing that matters changed\n");
    fs::write(history.path().join(&root), text.replace(" x 8\"", " x 9\"")).unwrap();
    assert_eq!(counts(&json(&history, &["--rev", "HEAD", &root])), (1, 0));
    assert_eq!(counts(&json(&history, &["--rev", "r29"])), (2, 0));
}

#[test]
fn a_revision_has_its_own_includes_and_configuration() {
    let cabin = sample("first.framing");
    let (head, rest) = cabin.split_at(cabin.find("\nfloor main").unwrap() + 1);
    let mut history = Repository::new();
    let house = history.path().join("jobs/cabin");
    fs::create_dir_all(house.join("parts")).unwrap();
    fs::write(history.path().join("jobs/storyrod.toml"), "").unwrap();
    fs::write(history.path().join("notes.md"), "no spec").unwrap();
    fs::write(house.join("cabin.framing"), format!("{head}include \"parts/rest.framing\"\n")).unwrap();
    fs::write(house.join("parts/rest.framing"), rest).unwrap();
    history.commit();
    // Now in one file: the include is gone from disk, and nothing is otherwise.
    fs::remove_dir_all(house.join("parts")).unwrap();
    fs::write(house.join("cabin.framing"), cabin.replace("2x10", "2x12")).unwrap();
    history.commit();
    let ran = compare(&history, &["--rev", "r0..r1", "jobs"]);
    assert!(ran.out.contains("joists J1  size  2x10 SPF No.2 → 2x12 SPF No.2"), "{}{}", ran.out, ran.log);
    assert!(ran.out.contains("r1:jobs/cabin/cabin.framing:"), "{}", ran.out);
    assert_eq!(ran.code, 1);
    let ran = storyrod_in(&house, &["compare", "--rev", "r1..r0", "cabin.framing"], b"");
    assert!(ran.out.contains("r0:jobs/cabin/parts/rest.framing:"), "{}{}", ran.out, ran.log);
    // The part is read in its project.
    let ran = compare(&history, &["--rev", "r0..r0", "jobs/cabin/parts/rest.framing"]);
    assert_eq!(ran.out, "nothing that matters changed\n", "{}", ran.log);
}

#[test]
fn what_git_does_not_have_is_said() {
    let outside = folder_with(&[("house.framing", &sample("first.framing"))]);
    let ran = storyrod_in(outside.path(), &["compare", "--rev", "HEAD"], b"");
    assert_eq!((ran.code, ran.log.as_str()), (2, "storyrod: .: no git repository holds it\n"));
    let mut history = Repository::new();
    fs::write(history.path().join("notes.md"), "no spec").unwrap();
    history.commit();
    fs::write(history.path().join("house.framing"), "").unwrap();
    history.commit();
    fs::write(history.path().join("house.framing"), sample("first.framing")).unwrap();
    history.commit();
    for (arguments, complaint) in [
        (["--rev", "v9..r1", "."], "the repository has no revision `v9`"),
        (["--rev", "r0..r1...", "."], "write two dots between two revisions"),
        (["--rev", "r0..r2", "none.framing"], "none.framing: neither revision `r0` nor revision `r2` has it"),
        (["--rev", "r0..r2", "."], "revision `r0` has no house.framing, nor what it was renamed to or from"),
        (["--rev", "r1..r2", "house.framing"], "r1:house.framing: the file is empty"),
        (["--rev", "r0..r0", "."], "r0: there is no spec (`*.framing`) in this folder or below it"),
    ] {
        let ran = compare(&history, &arguments);
        assert!(ran.log.contains(complaint), "{arguments:?}: {}", ran.log);
        assert_eq!((ran.code, ran.out.as_str()), (2, ""), "{arguments:?}");
    }
    let ran = compare(&history, &["--rev", "r1..r2", "house.framing", "other.framing"]);
    assert_eq!(ran.code, 2);
    assert_eq!(compare(&history, &["house.framing"]).code, 2);
}

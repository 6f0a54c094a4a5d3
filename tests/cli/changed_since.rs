//! `storyrod lint --changed-since`, in repositories that are made here.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use serde_json::Value;

use crate::dice::Dice;
use crate::program::{Ran, faulty_cabin, folder_with, sample, storyrod_in};
use crate::repository::Repository;

/// What was found in each spec that was looked at, by its name from the folder.
fn looked_at(folder: &Path, arguments: &[&str]) -> BTreeMap<String, Value> {
    let ran = storyrod_in(folder, &[&["lint", "--format", "json"], arguments].concat(), b"");
    let output: Value =
        serde_json::from_str(&ran.out).unwrap_or_else(|_| panic!("{arguments:?}: {}", ran.log));
    let specs = output["specs"].as_array().unwrap().iter();
    specs.map(|spec| (spec["file"].as_str().unwrap().to_owned(), spec.clone())).collect()
}

fn since(folder: &Path, revision: &str) -> Vec<String> {
    looked_at(folder, &["--changed-since", revision]).into_keys().collect()
}

fn write(folder: &Path, name: &str, text: &str) {
    let path = folder.join(name);
    fs::create_dir_all(path.parent().unwrap()).unwrap();
    fs::write(path, text).unwrap();
}

fn repository_with(files: &[(&str, &str)]) -> Repository {
    let mut repository = Repository::new();
    for (name, text) in files {
        write(repository.path(), name, text);
    }
    repository.commit();
    repository
}

/// Three projects: one alone, one in parts, one under a configuration that asks for a file that is not there.
fn three_projects() -> Repository {
    repository_with(&[
        ("a/house.framing", "project \"A\"\n"),
        ("b/house.framing", "project \"B\"\ninclude \"parts/walls.framing\"\n"),
        ("b/parts/walls.framing", "include \"pads.framing\"\nwall W1\n"),
        ("b/parts/pads.framing", "footing F1\n"),
        ("c/storyrod.toml", ""),
        ("c/job/house.framing", "project \"C\"\ninclude \"../shared/later.framing\"\n"),
        (".gitignore", "drafts\n"),
        ("notes.md", "no spec\n"),
    ])
}

#[test]
fn what_reads_or_asks_for_a_changed_file_is_looked_at() {
    let (a, b, c) = ("a/house.framing", "b/house.framing", "c/job/house.framing");
    type Change = fn(&Path);
    let cases: [(Change, &[&str]); 16] = [
        (|_| {}, &[]),
        (|at| write(at, "notes.md", "still none\n"), &[]),
        (|at| write(at, "a/house.framing", "project \"A\"\ngrid\n"), &[a]),
        (|at| write(at, "b/house.framing", "project \"B\"\ninclude \"parts/walls.framing\"\ngrid\n"), &[b]),
        // A part of a part.
        (|at| write(at, "b/parts/pads.framing", "footing F2\n"), &[b]),
        (|at| fs::remove_file(at.join("b/parts/pads.framing")).unwrap(), &[b]),
        (|at| fs::remove_dir_all(at.join("b")).unwrap(), &[]),
        (
            |at| fs::rename(at.join("a/house.framing"), at.join("a/home.framing")).unwrap(),
            &["a/home.framing"],
        ),
        (|at| fs::rename(at.join("a"), at.join("b/a")).unwrap(), &["b/a/house.framing"]),
        // What was asked for in vain, as a file and as a folder.
        (|at| write(at, "c/shared/later.framing", "grid\n"), &[c]),
        (|at| write(at, "c/shared/later.framing/x.md", ""), &[c]),
        (|at| write(at, "c/storyrod.toml", "[severity]\n"), &[c]),
        (|at| fs::remove_file(at.join("c/storyrod.toml")).unwrap(), &[c]),
        (|at| write(at, "storyrod.toml", ""), &[a, b, c]),
        // A part that no project includes any more is a spec by itself, and so is what it includes.
        (
            |at| write(at, "b/house.framing", "project \"B\"\n"),
            &[b, "b/parts/pads.framing", "b/parts/walls.framing"],
        ),
        (|at| write(at, "drafts/house.framing", "project \"Draft\"\n"), &[]),
    ];
    for (number, (change, wanted)) in cases.into_iter().enumerate() {
        let mut repository = three_projects();
        change(repository.path());
        assert_eq!(since(repository.path(), "HEAD"), wanted, "case {number}, on disk");
        // Committed it is the same.
        repository.commit();
        assert_eq!(since(repository.path(), "r0"), wanted, "case {number}, committed");
        assert_eq!(since(repository.path(), "r1"), [""; 0], "case {number}");
    }
}

#[test]
fn the_files_on_disk_count_and_not_the_index() {
    let repository = three_projects();
    let house = repository.path().join("a/house.framing");
    fs::write(&house, "project \"Staged\"\n").unwrap();
    let stage = || {
        let mut index = repository.git.index().unwrap();
        index.add_path(Path::new("a/house.framing")).unwrap();
        index.write().unwrap();
    };
    stage();
    assert_eq!(since(repository.path(), "HEAD"), ["a/house.framing"]);
    fs::write(&house, "project \"A\"\n").unwrap();
    assert_eq!(since(repository.path(), "HEAD"), [""; 0]);
    // Taken out of the index, but not from disk.
    let mut index = repository.git.index().unwrap();
    index.remove_path(Path::new("b/house.framing")).unwrap();
    index.write().unwrap();
    write(repository.path(), "b/house.framing", "project \"B2\"\n");
    assert!(since(repository.path(), "HEAD").contains(&"b/house.framing".to_owned()));
}

#[test]
fn a_branch_answers_for_its_own_changes() {
    let mut repository = three_projects();
    let git = |branch: &str| {
        repository.git.set_head(&format!("refs/heads/{branch}")).unwrap();
        repository.git.checkout_head(Some(git2::build::CheckoutBuilder::new().force())).unwrap();
    };
    let start = repository.git.head().unwrap().peel_to_commit().unwrap();
    for branch in ["trunk", "topic"] {
        repository.git.branch(branch, &start, true).unwrap();
    }
    drop(start);
    git("trunk");
    write(repository.path(), "a/house.framing", "project \"A, by others\"\n");
    repository.commit();
    let git = |branch: &str| {
        repository.git.set_head(&format!("refs/heads/{branch}")).unwrap();
        repository.git.checkout_head(Some(git2::build::CheckoutBuilder::new().force())).unwrap();
    };
    git("topic");
    write(repository.path(), "b/parts/pads.framing", "footing F9\n");
    repository.commit();
    assert_eq!(since(repository.path(), "trunk"), ["b/house.framing"]);
    assert_eq!(since(repository.path(), "topic"), [""; 0]);
    assert_eq!(since(repository.path(), "HEAD~1"), ["b/house.framing"]);
}

#[test]
fn paths_and_sub_folders_narrow_it() {
    let repository = three_projects();
    let path = repository.path();
    write(path, "a/house.framing", "project \"A\"\ngrid\n");
    write(path, "b/parts/pads.framing", "footing F2\n");
    let looked_at = |folder: &str, more: &[&str]| {
        let arguments = [&["--changed-since", "HEAD"], more].concat();
        looked_at(&path.join(folder), &arguments).into_keys().collect::<Vec<_>>()
    };
    assert_eq!(looked_at("a", &[]), ["house.framing"]);
    assert_eq!(looked_at("c", &[]), [""; 0]);
    assert_eq!(looked_at("", &["b", "c"]), ["b/house.framing"]);
    // A file by its name, and a part that stands for its project.
    assert_eq!(looked_at("", &["a/house.framing", "c/job/house.framing"]), ["a/house.framing"]);
    assert_eq!(looked_at("b/parts", &["walls.framing"]).len(), 1);
    // A file that is not there is one that can't be used.
    let ran = storyrod_in(path, &["lint", "--changed-since", "HEAD", "none.framing", "a"], b"");
    assert_eq!((ran.code, ran.log.as_str()), (2, "storyrod: none.framing: there is no such file\n"));
    assert!(ran.out.contains("a/house.framing"), "{}", ran.out);
}

#[test]
fn nothing_changed_is_said_in_every_format() {
    let repository = repository_with(&[("house.framing", &faulty_cabin())]);
    let sentence = "no spec looked at: none depends on what changed since `HEAD`";
    for format in ["text", "lines", "json", "sarif", "junit", "markdown"] {
        let ran =
            storyrod_in(repository.path(), &["lint", "--changed-since", "HEAD", "--format", format], b"");
        assert_eq!((ran.code, ran.log.as_str()), (0, ""), "{format}");
        match format {
            "text" | "lines" => assert_eq!(ran.out, format!("{sentence}\n")),
            "markdown" => {
                assert!(
                    ran.out.starts_with("## storyrod: nothing checked\n\nno spec looked at: "),
                    "{}",
                    ran.out
                );
            }
            "junit" => assert!(ran.out.contains("tests=\"0\" failures=\"0\" errors=\"0\""), "{}", ran.out),
            _ => {
                let output: Value = serde_json::from_str(&ran.out).unwrap();
                let (found, revision) = match format {
                    "json" => (&output["specs"], &output["changed_since"]),
                    _ => (&output["runs"][0]["results"], &output["runs"][0]["properties"]["changedSince"]),
                };
                assert_eq!(
                    (found.as_array().unwrap().len(), revision.as_str()),
                    (0, Some("HEAD")),
                    "{format}"
                );
            }
        }
    }
    // What was looked at is told from what was not.
    write(repository.path(), "house.framing", &sample("first.framing"));
    let ran = storyrod_in(repository.path(), &["lint", "--changed-since", "HEAD"], b"");
    assert!(
        ran.out.contains("1 spec looked at: no other depends on what changed since `HEAD`\n"),
        "{}",
        ran.out
    );
}

#[test]
fn a_baseline_keeps_what_was_not_looked_at() {
    let mut repository = repository_with(&[("a.framing", &faulty_cabin()), ("b/b.framing", &faulty_cabin())]);
    let folder = repository.path().to_owned();
    let path = folder.as_path();
    let lint = |more: &[&str]| -> Ran {
        storyrod_in(path, &[&["lint", "--baseline", "known.toml"], more].concat(), b"")
    };
    // It begins with everything.
    let ran = lint(&["--update-baseline", "--changed-since", "HEAD"]);
    assert_eq!(ran.code, 2);
    assert!(ran.log.contains("without `--changed-since`"), "{}", ran.log);
    assert_eq!(lint(&["--update-baseline"]).code, 0);
    let before = fs::read_to_string(path.join("known.toml")).unwrap();
    repository.commit();
    write(path, "a.framing", &format!("-- moved\n{}", faulty_cabin()));
    let ran = lint(&["--update-baseline", "--changed-since", "HEAD"]);
    assert_eq!(ran.code, 0, "{}", ran.out);
    assert!(ran.out.contains("1 spec looked at"), "{}", ran.out);
    assert_eq!(fs::read_to_string(path.join("known.toml")).unwrap(), before);
    write(path, "a.framing", &sample("first.framing"));
    lint(&["--update-baseline", "--changed-since", "HEAD"]);
    let after = fs::read_to_string(path.join("known.toml")).unwrap();
    assert!(after.contains("b/b.framing") && !after.contains("\"a.framing\""), "{after}");
    // What it does not hold any more may be found in any spec.
    fs::write(path.join("known.toml"), "").unwrap();
    let ran = lint(&["--changed-since", "HEAD"]);
    assert_eq!(ran.code, 1);
    assert!(ran.out.contains("b/b.framing:") && ran.out.contains("2 specs looked at"), "{}", ran.out);
}

#[test]
fn what_git_can_t_tell_is_said() {
    let outside = folder_with(&[("house.framing", &sample("first.framing"))]);
    let ran = storyrod_in(outside.path(), &["lint", "--changed-since", "HEAD"], b"");
    assert_eq!((ran.code, ran.log.as_str()), (2, "storyrod: .: no git repository holds it\n"));
    git2::Repository::init(outside.path()).unwrap();
    let ran = storyrod_in(outside.path(), &["lint", "--changed-since", "HEAD"], b"");
    assert_eq!((ran.code, ran.log.as_str()), (2, "storyrod: the repository has no commit yet\n"));
    let repository = three_projects();
    let start = repository.git.head().unwrap().peel_to_commit().unwrap();
    repository.git.reference("refs/remotes/origin/trunk/new", start.id(), true, "fetched").unwrap();
    let tree = start.tree().unwrap();
    let author = start.author();
    repository.git.commit(Some("refs/heads/stranger"), &author, &author, "other", &tree, &[]).unwrap();
    let name = outside.path().to_str().unwrap();
    for (arguments, complaint) in [
        (&["v9"][..], "the repository has no revision `v9`"),
        (&["r0..HEAD"], "the repository has no revision `r0..HEAD`"),
        (&["trunk/new"], "the repository has no revision `trunk/new`; did you mean `origin/trunk/new`?"),
        (&["stranger"], "`stranger` and `HEAD` have no commit in common"),
        (&["r0", name], "the repository has no commit yet"),
        (&["r0", "-"], "`--changed-since` and `--shard` choose among files on disk: standard input is none"),
    ] {
        let arguments = [&["lint", "--changed-since"], arguments].concat();
        let ran = storyrod_in(repository.path(), &arguments, b"");
        assert_eq!((ran.code, ran.log.trim_end()), (2, &*format!("storyrod: {complaint}")), "{arguments:?}");
        assert_eq!(ran.out, "");
    }
    let arguments = ["lint", "-", "--stdin-filename", "a/house.framing", "--changed-since", "r0"];
    let ran = storyrod_in(repository.path(), &arguments, b"grid\n");
    assert_eq!((ran.code, ran.log.contains("cannot be used with")), (2, true), "{}", ran.log);
}

/// A clone of the last commit only, as builds fetch it.
#[test]
fn a_shallow_clone_says_what_to_fetch() {
    let mut repository = three_projects();
    write(repository.path(), "a/house.framing", "project \"A\"\ngrid\n");
    repository.commit();
    let start = repository.git.revparse_single("r0").unwrap().id();
    let head = repository.git.revparse_single("HEAD").unwrap().id();
    fs::write(repository.path().join(".git/shallow"), format!("{head}\n")).unwrap();
    let cure = "only the last commits were fetched: `git fetch --unshallow` fetches the rest";
    let first = start.to_string();
    for (revision, complaint) in [
        ("HEAD~1", "the repository has no revision `HEAD~1`".to_owned()),
        (first.as_str(), format!("`{first}` and `HEAD` have no commit in common")),
    ] {
        let ran = storyrod_in(repository.path(), &["lint", "--changed-since", revision], b"");
        assert_eq!((ran.code, ran.out.as_str()), (2, ""));
        assert_eq!(ran.log, format!("storyrod: {complaint}; {cure}\n"));
    }
}

/// A repository inside is another's matter: what lies in it is looked at, since nobody knows whether it changed.
#[test]
fn what_another_repository_holds_is_always_looked_at() {
    let repository = three_projects();
    let inner = repository.path().join("inner");
    git2::Repository::init(&inner).unwrap();
    write(&inner, "house.framing", "project \"Inner\"\n");
    assert_eq!(since(repository.path(), "HEAD"), ["inner/house.framing"]);
}

#[test]
fn a_worktree_has_its_own_files() {
    let repository = three_projects();
    let place = tempfile::tempdir().unwrap();
    let worktree = place.path().join("worktree");
    repository.git.worktree("worktree", &worktree, None).unwrap();
    assert!(worktree.join(".git").is_file());
    write(&worktree, "a/house.framing", "project \"A\"\ngrid\n");
    assert_eq!(since(&worktree, "r0"), ["a/house.framing"]);
    assert_eq!(since(repository.path(), "r0"), [""; 0]);
}

#[cfg(unix)]
#[test]
fn a_link_that_changed_may_lead_anywhere() {
    let mut repository = three_projects();
    let link = repository.path().join("b/parts/roof.framing");
    std::os::unix::fs::symlink("pads.framing", &link).unwrap();
    repository.commit();
    // What a link leads to is what is read.
    write(repository.path(), "b/parts/pads.framing", "footing F3\n");
    assert_eq!(since(repository.path(), "HEAD"), ["b/house.framing"]);
    repository.commit();
    fs::remove_file(&link).unwrap();
    std::os::unix::fs::symlink("walls.framing", &link).unwrap();
    assert_eq!(since(repository.path(), "HEAD").len(), 3);
}

/// Whatever is done to a repository at random: a spec of which something else is found than before is looked at, and what
/// is found in it is what a whole run finds.
#[test]
fn no_spec_is_missed_whatever_changes() {
    for seed in 1..=25 {
        let mut dice = Dice::new(seed);
        let mut repository = Repository::new();
        let folders = ["", "a/", "a/b/", "c/"];
        let names: Vec<String> = folders
            .iter()
            .flat_map(|folder| ["x", "y", "z"].map(|name| format!("{folder}{name}.framing")))
            .collect();
        let names: Vec<&str> = names.iter().map(String::as_str).collect();
        let text = |dice: &mut Dice| {
            let mut text = if dice.once_in(2) { "project \"P\"\n".to_owned() } else { String::new() };
            for _ in 0..dice.between(0, 2) {
                text += &format!("include \"{}{}\"\n", dice.one_of(&["", "../", "b/"]), dice.one_of(&names));
            }
            text + &format!("footing F{}\n", dice.between(1, 9))
        };
        let change = |dice: &mut Dice, folder: &Path| match dice.between(1, 6) {
            1 => {
                let at = folder.join(dice.one_of(&folders)).join("storyrod.toml");
                if at.exists() { fs::remove_file(at).unwrap() } else { fs::write(at, "").unwrap() }
            }
            2 => _ = fs::remove_file(folder.join(dice.one_of(&names))),
            _ => write(folder, dice.one_of(&names), &text(dice)),
        };
        for folder in folders {
            write(repository.path(), &format!("{folder}keep.md"), "");
        }
        for _ in 0..20 {
            change(&mut dice, repository.path());
        }
        repository.commit();
        let before = looked_at(repository.path(), &[]);
        for _ in 0..dice.between(1, 2) {
            change(&mut dice, repository.path());
        }
        let after = looked_at(repository.path(), &[]);
        let since = looked_at(repository.path(), &["--changed-since", "HEAD"]);
        for (name, _) in after.iter().filter(|(name, spec)| before.get(*name) != Some(*spec)) {
            assert!(since.contains_key(name), "seed {seed}: {name}");
        }
        for (name, spec) in &since {
            assert_eq!(after.get(name), Some(spec), "seed {seed}: {name}");
        }
    }
}

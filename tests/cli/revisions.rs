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

/// What was written otherwise, and what has another name, in the only spec.
fn counts(output: &Value) -> (usize, usize) {
    let change = &output["specs"][0];
    assert_eq!(output["specs"].as_array().unwrap().len(), 1, "{output:#}");
    (change["changed"].as_array().unwrap().len(), change["renamed"].as_array().unwrap().len())
}

/// Everything but where the lines stand.
fn without_places(mut output: Value) -> Value {
    let change = output["specs"][0].as_object_mut().unwrap();
    change.remove("spec");
    for line in change["changed"].as_array_mut().unwrap() {
        line.as_object_mut().unwrap().remove("place");
    }
    output
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

/// A part may be called anything, and what git ignores is no spec though it was committed once.
#[test]
fn a_revision_is_read_as_its_files_were_on_disk() {
    let cabin = sample("first.framing");
    let (head, rest) = cabin.split_at(cabin.find("\nfloor main").unwrap() + 1);
    let (walls, floor) = rest.split_at(rest.find("\nfooting F1").unwrap() + 1);
    let mut history = Repository::new();
    fs::create_dir_all(history.path().join("parts")).unwrap();
    let write = |name: &str, text: String| fs::write(history.path().join(name), text).unwrap();
    write(
        "house.framing",
        format!("{head}include \"parts/../parts/walls.txt\"\ninclude \"../outside.txt\"\n"),
    );
    write("parts/walls.txt", format!("{walls}include \"footings.txt\"\n"));
    write("parts/footings.txt", floor.to_owned());
    write("draft.framing", cabin.replace("One-room cabin", "Draft"));
    history.commit();
    let write = |name: &str, text: String| fs::write(history.path().join(name), text).unwrap();
    write("parts/footings.txt", floor.replace("16\" x 8\"", "18\" x 8\""));
    write(".gitignore", "draft.framing\n".to_owned());
    for range in ["r0", "HEAD..HEAD"] {
        let change = json(&history, &["--rev", range, "house.framing"]);
        assert_eq!(counts(&change), (usize::from(range == "r0"), 0), "{change:#}");
    }
    // Ignored on both sides, once that is committed; the index has it still.
    let mut index = history.git.index().unwrap();
    index.add_path(std::path::Path::new(".gitignore")).unwrap();
    index.add_path(std::path::Path::new("parts/footings.txt")).unwrap();
    index.write().unwrap();
    let tree = history.git.find_tree(index.write_tree().unwrap()).unwrap();
    let builder = git2::Signature::new("builder", "builder@example.org", &git2::Time::new(9, 0)).unwrap();
    let parent = history.git.head().unwrap().peel_to_commit().unwrap();
    history.git.commit(Some("HEAD"), &builder, &builder, "ignored", &tree, &[&parent]).unwrap();
    let ran = compare(&history, &["--rev", "HEAD"]);
    assert_eq!((ran.out.as_str(), ran.code), ("nothing that matters changed\n", 0), "{}", ran.log);
}

/// A house in a folder of its own, its walls elsewhere: `include` leads there.
fn in_two_files(include: &str) -> (String, String) {
    let cabin = sample("first.framing");
    let (head, walls) = cabin.split_at(cabin.find("\nwall W1").unwrap() + 1);
    (format!("{head}include \"{include}\"\n"), walls.to_owned())
}

#[test]
#[cfg(unix)]
fn links_of_a_revision_lead_where_they_led() {
    let (house, walls) = in_two_files("shared/walls.txt");
    let mut history = Repository::new();
    fs::write(history.path().join("storyrod.toml"), "").unwrap();
    for folder in ["common/of-all", "jobs/a"] {
        fs::create_dir_all(history.path().join(folder)).unwrap();
    }
    fs::write(history.path().join("jobs/a/house.framing"), &house).unwrap();
    fs::write(history.path().join("common/of-all/walls.txt"), &walls).unwrap();
    std::os::unix::fs::symlink("../../common/of-all", history.path().join("jobs/a/shared")).unwrap();
    history.commit();
    let untouched = compare(&history, &["--rev", "HEAD"]);
    assert_eq!(
        (untouched.out.as_str(), untouched.code),
        ("nothing that matters changed\n", 0),
        "{}",
        untouched.log
    );
    fs::write(
        history.path().join("common/of-all/walls.txt"),
        walls.replace("thick         8\"", "thick         10\""),
    )
    .unwrap();
    history.commit();
    for range in ["r0..r1", "r0"] {
        assert_eq!(counts(&json(&history, &["--rev", range])), (4, 0), "{range}");
    }
    // Out of the repository nothing is followed, and nobody is told that nothing changed.
    let outside = folder_with(&[("walls.txt", &walls)]);
    fs::remove_file(history.path().join("jobs/a/shared")).unwrap();
    std::os::unix::fs::symlink(outside.path(), history.path().join("jobs/a/shared")).unwrap();
    history.commit();
    let ran = compare(&history, &["--rev", "r2..r2"]);
    assert!(ran.log.contains("`jobs/a/shared` is a link that leads out of the repository"), "{}", ran.log);
    assert_eq!(ran.code, 2);
}

#[test]
fn a_repository_inside_one_is_read_up_to_its_commit() {
    let (house, walls) = in_two_files("parts/walls.framing");
    let history = Repository::new();
    fs::write(history.path().join("house.framing"), &house).unwrap();
    let inner = history.path().join("parts");
    let git = |folder: &std::path::Path, arguments: &[&str]| {
        let who = ["-c", "user.name=builder", "-c", "user.email=builder@example.org"];
        let ran =
            std::process::Command::new("git").current_dir(folder).args(who).args(arguments).output().unwrap();
        assert!(ran.status.success(), "{arguments:?}: {}", String::from_utf8_lossy(&ran.stderr));
    };
    fs::create_dir(&inner).unwrap();
    git(&inner, &["init", "--quiet"]);
    for (thick, tag) in [("8\"", "r0"), ("10\"", "r1")] {
        fs::write(
            inner.join("walls.framing"),
            walls.replace("thick         8\"", &format!("thick         {thick}")),
        )
        .unwrap();
        git(&inner, &["add", "."]);
        git(&inner, &["commit", "--quiet", "--message=next"]);
        git(history.path(), &["add", "."]);
        git(history.path(), &["commit", "--quiet", "--message=next"]);
        git(history.path(), &["tag", tag]);
        let untouched = compare(&history, &["--rev", "HEAD"]);
        assert_eq!(
            (untouched.out.as_str(), untouched.code),
            ("nothing that matters changed\n", 0),
            "{}",
            untouched.log
        );
    }
    assert_eq!(counts(&json(&history, &["--rev", "r0..r1"])), (4, 0));
    // It was never fetched here.
    fs::remove_dir_all(&inner).unwrap();
    let ran = compare(&history, &["--rev", "r0..r1"]);
    assert!(
        ran.log.contains("r0:parts/walls.framing: can't be read: `parts` is a repository of its own"),
        "{}",
        ran.log
    );
    assert_eq!(ran.code, 2);
}

#[test]
fn a_root_file_may_be_called_anything() {
    let mut history = Repository::new();
    let cabin = sample("first.framing");
    fs::write(history.path().join("house.txt"), &cabin).unwrap();
    history.commit();
    let ran = compare(&history, &["--rev", "HEAD", "house.txt"]);
    assert_eq!((ran.out.as_str(), ran.code), ("nothing that matters changed\n", 0), "{}", ran.log);
    fs::write(history.path().join("house.txt"), cabin.replace("dead          12", "dead          15"))
        .unwrap();
    history.commit();
    assert_eq!(counts(&json(&history, &["--rev", "r0..r1", "house.txt"])), (1, 0));
}

#[test]
fn a_revision_that_is_not_there_is_told_with_the_nearest() {
    let history = Repository::new();
    let empty = compare(&history, &["--rev", "HEAD"]);
    assert!(empty.log.contains("the repository has no commit yet"), "{}", empty.log);
    let mut history = Repository::new();
    fs::write(history.path().join("house.framing"), sample("first.framing")).unwrap();
    history.commit();
    let head = history.git.head().unwrap().peel_to_commit().unwrap();
    history.git.branch("wider-stair", &head, false).unwrap();
    let ran = compare(&history, &["--rev", "wider-stiar..HEAD"]);
    assert!(ran.log.contains("no revision `wider-stiar`; did you mean `wider-stair`?"), "{}", ran.log);
    assert_eq!(ran.code, 2);
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
        (["--rev", "r0....r1", "."], "write two dots between two revisions, or three"),
        (["--rev", "r0..r2", "none.framing"], "none.framing: neither revision `r0` nor revision `r2` has it"),
        (["--rev", "r1..r2", "house.framing"], "r1:house.framing: the file is empty"),
        (
            ["--rev", "r0..r0", "."],
            "there is no spec (`*.framing`) in it, neither in revision `r0` nor in revision `r0`",
        ),
    ] {
        let ran = compare(&history, &arguments);
        assert!(ran.log.contains(complaint), "{arguments:?}: {}", ran.log);
        assert_eq!((ran.code, ran.out.as_str()), (2, ""), "{arguments:?}");
    }
    // What the older one does not have is new.
    let ran = compare(&history, &["--rev", "r0..r2", "."]);
    assert!(
        ran.out.starts_with("r2:house.framing  One-room cabin\n\na new spec\n"),
        "{}{}",
        ran.out,
        ran.log
    );
    assert_eq!(ran.code, 0);
    let ran = compare(&history, &["--rev", "r2..r0", "."]);
    assert!(ran.out.contains("r2:house.framing") && ran.out.contains("this spec is gone"), "{}", ran.out);
    let ran = compare(&history, &["--rev", "r1..r2", "house.framing", "other.framing"]);
    assert_eq!(ran.code, 2);
    assert_eq!(compare(&history, &["house.framing"]).code, 2);
}

/// Both branches change the pad; three dots leave out what the first of them did.
#[test]
fn three_dots_tell_what_a_branch_did_since_it_parted() {
    let cabin = sample("first.framing");
    let mut history = Repository::new();
    let house = history.path().join("house.framing");
    fs::write(&house, &cabin).unwrap();
    history.commit();
    let fork = history.git.head().unwrap().peel_to_commit().unwrap().id();
    fs::write(&house, cabin.replace("live          40", "live          50")).unwrap();
    history.commit();
    let repository = git2::Repository::open(history.path()).unwrap();
    repository.branch("other", &repository.find_commit(fork).unwrap(), false).unwrap();
    repository.set_head("refs/heads/other").unwrap();
    fs::write(&house, cabin.replace("dead          12", "dead          15")).unwrap();
    history.commit();
    assert_eq!(counts(&json(&history, &["--rev", "r1..r2"])), (2, 0));
    assert_eq!(counts(&json(&history, &["--rev", "r1...r2"])), (1, 0));
    assert_eq!(counts(&json(&history, &["--rev", "r1..."])), (1, 0));
    let ran = compare(&history, &["--rev", "r2...r1"]);
    assert!(ran.out.contains("live  40 psf → 50 psf"), "{}", ran.out);
    // Two histories that never met.
    repository.set_head("refs/heads/orphan").unwrap();
    history.commit();
    let ran = compare(&history, &["--rev", "r1...r3"]);
    assert!(ran.log.contains("`r1` and `r3` have no commit in common"), "{}", ran.log);
    assert_eq!(ran.code, 2);
}

/// A folder of houses: the one that was renamed and changed is told as changed.
#[test]
fn all_houses_of_a_repository_are_told_at_once() {
    let cabin = |title: &str| sample("first.framing").replace("One-room cabin", title);
    let mut history = Repository::new();
    for house in ["a", "b", "c"] {
        fs::create_dir(history.path().join(house)).unwrap();
        fs::write(history.path().join(house).join("house.framing"), cabin(house)).unwrap();
    }
    history.commit();
    fs::create_dir(history.path().join("z")).unwrap();
    fs::rename(history.path().join("b/house.framing"), history.path().join("z/other.framing")).unwrap();
    let text = cabin("b").replace("live          40", "live          50");
    fs::write(history.path().join("z/other.framing"), text).unwrap();
    history.commit();
    for range in ["r0..r1", "r0"] {
        let change = json(&history, &["--rev", range]);
        assert_eq!((counts(&change), &change["same"]), ((1, 0), &2.into()), "{range}");
        assert!(change["specs"][0]["spec"].as_str().unwrap().ends_with("z/other.framing"), "{change:#}");
    }
    // From inside of one folder, and for it alone.
    let inside =
        storyrod_in(&history.path().join("z"), &["compare", "--rev", "r0..r1", "--format", "json"], b"");
    assert_eq!(counts(&serde_json::from_str(&inside.out).unwrap()), (1, 0), "{}", inside.log);
    assert_eq!(compare(&history, &["--rev", "r0..r1", "a"]).out, "nothing that matters changed\n");
}

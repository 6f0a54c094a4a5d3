//! `storyrod.toml`: what it says of a run, and of a walk through folders.

use std::fs;
use std::path::Path;

use crate::program::{Ran, faulty_cabin, folder_with, sample, storyrod_in};

fn run(folder: &Path, arguments: &[&str]) -> Ran {
    storyrod_in(folder, arguments, b"")
}

/// The files that `lint` looked at, in its order.
fn looked_at(ran: &Ran) -> Vec<&str> {
    let specs = ran.out.lines().filter_map(|line| line.strip_suffix(": nothing found"));
    specs.filter(|name| name.ends_with(".framing")).collect()
}

#[test]
fn without_an_argument_a_run_looks_at_the_paths_wherever_below_it_stands() {
    let cabin = sample("first.framing");
    let folder = folder_with(&[
        ("storyrod.toml", "paths = [\"jobs\", \"show/a.framing\"]\n"),
        ("jobs/one/a.framing", &cabin),
        ("jobs/two/a.framing", &cabin),
        ("show/a.framing", &cabin),
        ("show/b.framing", "project \"½ done\"\n  frost  12-6\n"),
        ("else/a.framing", &cabin),
    ]);
    let root = folder.path();
    let ran = run(root, &["lint"]);
    assert_eq!((ran.code, ran.log.as_str()), (0, ""));
    assert_eq!(looked_at(&ran), ["jobs/one/a.framing", "jobs/two/a.framing", "show/a.framing"]);
    // From a sub-folder the same ones, under the names that they have there.
    let below = run(&root.join("jobs/one"), &["lint"]);
    let names = looked_at(&below);
    assert_eq!((below.code, names.len(), names.contains(&"a.framing")), (0, 3, true), "{names:?}");
    // An argument stands before it.
    assert_eq!(looked_at(&run(root, &["lint", "else"])), ["else/a.framing"]);
    assert_eq!(looked_at(&run(&root.join("else"), &["lint", "."])), ["a.framing"]);
    // `format` looks at the same.
    for path in ["jobs/one/a.framing", "else/a.framing"] {
        fs::write(root.join(path), cabin.replace("  deck  ", "   deck  ")).unwrap();
    }
    let checked = run(&root.join("show"), &["format", "--check"]);
    assert_eq!(checked.code, 1, "{}", checked.log);
    assert_eq!(checked.out.matches("(formatted)").count(), 1, "{}", checked.out);
    assert_eq!(run(root, &["format"]).code, 0);
    assert_eq!(fs::read_to_string(root.join("jobs/one/a.framing")).unwrap(), cabin);
    assert_ne!(fs::read_to_string(root.join("else/a.framing")).unwrap(), cabin);
}

#[test]
fn without_paths_a_run_looks_at_the_working_folder() {
    let cabin = sample("first.framing");
    let folder =
        folder_with(&[("storyrod.toml", "jobs = 1\n"), ("a/a.framing", &cabin), ("b/b.framing", &cabin)]);
    assert_eq!(looked_at(&run(folder.path(), &["lint"])), ["a/a.framing", "b/b.framing"]);
    assert_eq!(looked_at(&run(&folder.path().join("a"), &["lint"])), ["a.framing"]);
}

#[test]
fn a_path_that_is_not_there_is_said_and_the_others_count() {
    let cabin = sample("first.framing");
    let folder = folder_with(&[
        ("storyrod.toml", "# houses\npaths = [\"jobs\", \"gone\"]\n"),
        ("jobs/a.framing", &cabin),
    ]);
    let says = "storyrod: storyrod.toml:2:18: `paths`: there is no file or folder `gone`\n";
    for command in [&["lint"][..], &["format", "--check"]] {
        let ran = run(folder.path(), command);
        assert_eq!((ran.code, ran.log.as_str()), (2, says), "{command:?}");
    }
    assert_eq!(looked_at(&run(folder.path(), &["lint"])), ["jobs/a.framing"]);
    // Nobody asks for it here.
    assert_eq!(run(folder.path(), &["lint", "jobs"]).code, 0);
    fs::remove_dir_all(folder.path().join("jobs")).unwrap();
    let ran = run(folder.path(), &["lint"]);
    assert_eq!((ran.code, ran.log.lines().count()), (2, 2), "{}", ran.log);
}

#[test]
fn what_is_left_out_is_passed_over_but_never_a_file_that_is_named() {
    let cabin = sample("first.framing");
    let folder = folder_with(&[
        ("storyrod.toml", "leave-out = [\"drafts/\"]\n"),
        ("a.framing", &cabin),
        ("drafts/b.framing", "project \"½ done\"\n  frost  12-6\n"),
        (
            "job/storyrod.toml",
            "leave-out = [\"/old.framing\"]\n[lint]\nformat = \"json\"\nfail-on = \"advice\"\n",
        ),
        ("job/c.framing", &cabin),
        ("job/old.framing", "project \"½ done\"\n  frost  12-6\n"),
        ("job/drafts/d.framing", "project \"½ done\"\n  frost  12-6\n"),
        ("elsewhere/notes.md", ""),
    ]);
    let root = folder.path();
    // The run is that of the upper file; what is left out is what either says, of the files below it.
    let ran = run(root, &["lint"]);
    assert_eq!((ran.code, looked_at(&ran)), (0, vec!["a.framing", "job/c.framing"]), "{}", ran.out);
    // The same from another folder.
    let ran = run(&root.join("elsewhere"), &["lint", "../job"]);
    assert_eq!((ran.code, looked_at(&ran).len()), (0, 1), "{}", ran.out);
    // The lower file is the one of a run below it.
    assert!(run(&root.join("job"), &["lint"]).out.starts_with('{'));
    assert_eq!(run(root, &["lint", "drafts/b.framing"]).code, 1);
    let said = "storyrod: drafts: every spec in this folder or below it is left out by a `storyrod.toml`";
    for command in ["lint", "format"] {
        let ran = run(root, &[command, "drafts"]);
        assert_eq!((ran.code, ran.log.trim_end()), (2, said), "{command}");
    }
    // Where nothing is named, all that is left out is nothing to check.
    for (below, format) in [("drafts", "text"), ("job/drafts", "json"), ("drafts", "junit")] {
        let ran = run(&root.join(below), &["lint", "--format", format]);
        assert_eq!((ran.code, ran.log.contains("left out")), (0, true), "{below}: {}", ran.log);
        assert!(!ran.out.contains("framing\""), "{}", ran.out);
    }
    let ran = run(&root.join("drafts"), &["format"]);
    let said =
        "storyrod: nothing to check: every spec in this folder or below it is left out by a `storyrod.toml`";
    assert_eq!((ran.code, ran.out.as_str(), ran.log.trim_end()), (0, "", said));
    for named in [&["lint", "."], &["format", "."]] {
        assert_eq!(run(&root.join("drafts"), named).code, 2);
    }
    // A folder without specs stays a mistake.
    assert_eq!(run(&root.join("elsewhere"), &["lint"]).code, 2);
    let input = fs::read(root.join("drafts/b.framing")).unwrap();
    let ran = storyrod_in(root, &["lint", "-", "--stdin-filename", "drafts/b.framing"], &input);
    assert_eq!(ran.code, 1, "{}", ran.log);
}

#[test]
fn an_argument_stands_before_what_the_configuration_says_of_lint() {
    let unused = sample("first.framing")
        + "\nproduct LV12\n  kind    composite lumber 1-3/4 x 11-7/8\n  values  E 2.0e6 psi, Fb 2600 psi, Fv 285 psi, Fc-perp 750 psi\n  source  \"invented for this test\" on 2027-01-15\n";
    let folder = folder_with(&[
        (
            "storyrod.toml",
            "[lint]\nformat = \"lines\"\nfail-on = \"advice\"\nrules-address = \"https://example.org/r/\"\n",
        ),
        ("a.framing", &unused),
        ("sub/notes.md", ""),
    ]);
    let root = folder.path();
    let ran = run(root, &["lint"]);
    assert_eq!(ran.code, 1, "{}", ran.out);
    assert!(ran.out.starts_with("a.framing:") && ran.out.contains(": advice: "), "{}", ran.out);
    assert_eq!(run(root, &["lint", "--fail-on", "warning"]).code, 0);
    assert!(run(root, &["lint", "--format", "text"]).out.starts_with("advice: "));
    // It holds for standard input and from a sub-folder too.
    let input = storyrod_in(&root.join("sub"), &["lint", "-"], unused.as_bytes());
    assert_eq!((input.code, input.out.starts_with("stdin:")), (1, true), "{}", input.out);
    let sarif = |more: &[&str]| run(root, &[&["lint", "--format", "sarif"], more].concat()).out;
    assert!(sarif(&[]).contains("https://example.org/r/element-unreferenced"));
    let other = sarif(&["--rules-address", "https://example.org/other/"]);
    assert!(other.contains("https://example.org/other/element-unreferenced") && !other.contains("org/r/"));
}

#[test]
fn a_configured_baseline_is_the_same_from_every_folder() {
    let folder = folder_with(&[
        ("storyrod.toml", "paths = [\"jobs\"]\n[lint]\nbaseline = \"ci/known.toml\"\n"),
        ("jobs/one/cabin.framing", &faulty_cabin()),
        ("ci/notes.md", ""),
    ]);
    let root = folder.path();
    let ran = run(root, &["lint"]);
    assert_eq!(ran.code, 2);
    assert!(
        ran.log.contains("ci/known.toml: there is no such file; `--update-baseline` writes it"),
        "{}",
        ran.log
    );
    // Written from one folder, it is used from others.
    assert_eq!(run(&root.join("jobs/one"), &["lint", "--update-baseline"]).code, 0);
    let known = fs::read_to_string(root.join("ci/known.toml")).unwrap();
    assert!(known.contains("spec = \"jobs/one/cabin.framing\""), "{known}");
    for below in ["", "jobs", "jobs/one", "ci"] {
        let ran = run(&root.join(below), &["lint"]);
        assert_eq!(ran.code, 0, "{below}: {}{}", ran.out, ran.log);
        assert!(ran.log.contains("left out") && !ran.log.contains("mended"), "{below}: {}", ran.log);
    }
    // Another one stands before it.
    let ran = run(root, &["lint", "--baseline", "none.toml"]);
    assert!(ran.log.contains("none.toml: there is no such file"), "{}", ran.log);
    fs::remove_file(root.join("storyrod.toml")).unwrap();
    let ran = run(root, &["lint", "--update-baseline"]);
    assert_eq!(
        (ran.code, ran.log.as_str()),
        (2, "storyrod: `--update-baseline` needs `--baseline FILE`, or `baseline` in storyrod.toml\n")
    );
}

#[test]
fn a_fault_of_the_configuration_is_told_once_also_where_no_spec_stands_under_it() {
    let cabin = sample("first.framing");
    let folder = folder_with(&[
        ("here/storyrod.toml", "leave-uot = []\n[lint]\nformat = \"jsno\"\nfail-on = \"advice\"\n"),
        ("here/a.framing", &cabin),
        ("there/a.framing", &cabin),
    ]);
    let says = |name: &str| {
        format!(
            "storyrod: {name}:1:1: `leave-uot` is no key of this file; did you mean `leave-out`?\nstoryrod: {name}:3:10: `format` can be \"text\", \"lines\", \"json\", \"sarif\", \"junit\", \"markdown\"; did you mean `json`?\n"
        )
    };
    for arguments in [&["lint"][..], &["lint", "../there"], &["lint", "."]] {
        let ran = run(&folder.path().join("here"), arguments);
        assert_eq!((ran.code, ran.log), (2, says("storyrod.toml")), "{arguments:?}");
        assert!(!ran.out.starts_with('{'));
    }
    let ran = run(folder.path(), &["lint", "here"]);
    assert_eq!((ran.code, ran.log), (2, says("here/storyrod.toml")));
}

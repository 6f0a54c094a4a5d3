//! Exit codes: 0 nothing found, 1 found, 2 something could not be used, whatever else was found.

use crate::program::{faulty_cabin, folder_with, sample, storyrod_in, with_own_severity};

const FORMATS: [&str; 6] = ["text", "lines", "json", "sarif", "junit", "markdown"];

#[test]
fn the_code_says_what_was_found_in_every_format() {
    let minor = with_own_severity(&faulty_cabin(), "stack-does-not-close advice because \"shimmed on site\"");
    let folder = folder_with(&[
        ("clean/cabin.framing", &sample("first.framing")),
        ("wrong/cabin.framing", &faulty_cabin()),
        ("minor/cabin.framing", &minor),
    ]);
    let code = |arguments: &[&str]| storyrod_in(folder.path(), arguments, b"").code;
    for format in FORMATS {
        let lint =
            |paths: &[&str], more: &[&str]| code(&[&["lint", "--format", format], paths, more].concat());
        assert_eq!(lint(&["clean"], &[]), 0, "{format}");
        assert_eq!(lint(&["wrong"], &[]), 1, "{format}");
        assert_eq!(lint(&["minor"], &[]), 0, "{format}");
        assert_eq!(lint(&["minor"], &["--fail-on", "warning"]), 0, "{format}");
        assert_eq!(lint(&["minor"], &["--fail-on", "advice"]), 1, "{format}");
        assert_eq!(lint(&["none.framing"], &[]), 2, "{format}");
        // What can't be used counts for more than what is found.
        assert_eq!(lint(&["none.framing", "wrong"], &[]), 2, "{format}");
        assert_eq!(lint(&["none.framing", "clean"], &[]), 2, "{format}");
    }
}

#[test]
fn other_commands_keep_to_the_same_codes() {
    let folder = folder_with(&[
        ("clean/cabin.framing", &sample("first.framing")),
        ("wrong/cabin.framing", &faulty_cabin()),
        ("loose/pads.framing", "footing F1\n      at  A/1\n"),
    ]);
    for (arguments, code) in [
        (&["--help"][..], 0),
        (&["--version"], 0),
        (&["lint", "--help"], 0),
        (&[], 2),
        (&["lnit"], 2),
        (&["lint", "--fail-on", "everything"], 2),
        (&["lint", "--format", "xml"], 2),
        (&["lint", "--changed-since", "HEAD", "clean"], 2),
        (&["lint", "--shard", "1/1", "clean"], 0),
        (&["lint", "--shard", "1/1", "wrong"], 1),
        (&["lint", "--shard", "1/1", "none.framing"], 2),
        (&["lint", "--shard", "2/1", "clean"], 2),
        (&["gather"], 2),
        (&["gather", "none.json"], 2),
        (&["gather", "clean/cabin.framing"], 2),
        (&["format", "--check", "clean"], 0),
        (&["format", "--check", "loose"], 1),
        (&["format", "--check", "none.framing"], 2),
        (&["rod", "clean"], 0),
        (&["rod", "wrong"], 1),
        (&["rod", "none.framing"], 2),
        (&["explain", "stack-does-not-close"], 0),
        (&["explain", "stack-does-not-clos"], 2),
    ] {
        assert_eq!(storyrod_in(folder.path(), arguments, b"").code, code, "{arguments:?}");
    }
}

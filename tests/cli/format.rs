//! `format`.

use std::fs;

use crate::program::{folder_with, storyrod_in};

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
fn other_line_ends_are_said_since_no_diff_shows_them() {
    let tidy = "footing F1\n  at            A/1\n";
    let folder = folder_with(&[("pads.framing", &tidy.replace('\n', "\r\n"))]);
    let check = storyrod_in(folder.path(), &["format", "--check"], b"");
    assert_eq!(check.code, 1);
    assert!(check.log.contains("pads.framing: its lines end with CR LF or CR"), "{}", check.log);
    assert_eq!(storyrod_in(folder.path(), &["format"], b"").code, 0);
    assert_eq!(fs::read_to_string(folder.path().join("pads.framing")).unwrap(), tidy);
}

#[test]
fn a_folder_without_specs_keeps_no_other_from_being_written() {
    let folder = folder_with(&[("empty/notes.md", ""), ("pads.framing", "footing F1\n at A/1\n")]);
    let ran = storyrod_in(folder.path(), &["format", "empty", "pads.framing"], b"");
    let why = "storyrod: empty: there is no spec (`*.framing`) in this folder or below it\n";
    assert_eq!((ran.code, ran.log.as_str()), (2, why));
    let now = fs::read_to_string(folder.path().join("pads.framing")).unwrap();
    assert_eq!(now, "footing F1\n  at            A/1\n");
}

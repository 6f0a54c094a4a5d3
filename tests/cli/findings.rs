//! `lint`: what is found, how grave it is, and the exit code.

use crate::program::{faulty_cabin, folder_with, samples, storyrod, storyrod_in};

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

//! `lint`: what is found, how grave it is, and the exit code.

use serde_json::Value;

use crate::program::{faulty_cabin, folder_with, sample, samples, storyrod, storyrod_in, with_own_severity};

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
    let cabin = with_own_severity(&faulty_cabin(), "stack-does-not-close advice because \"shimmed on site\"");
    let files = [("cabin.framing", &*cabin)];
    let ran = storyrod(&files, &["lint"]);
    assert_eq!(ran.code, 0, "{}", ran.out);
    let note = "advice by this project's own `severity`, in place of error: shimmed on site";
    assert!(ran.out.contains(note), "{}", ran.out);
    assert_eq!(storyrod(&files, &["lint", "--fail-on", "advice"]).code, 1);
}

#[test]
fn a_rule_that_is_off_is_silent_and_its_finding_suppressed_in_sarif() {
    let cabin = with_own_severity(&faulty_cabin(), "stack-does-not-close off because \"shimmed on site\"");
    let files = [("cabin.framing", &*cabin)];
    let ran = storyrod(&files, &["lint", "--fail-on", "advice"]);
    assert_eq!((ran.code, ran.out.lines().next()), (0, Some("cabin.framing: nothing found, 1 waived")));
    let page = storyrod(&files, &["lint", "--format", "markdown"]).out;
    assert_eq!(page.lines().next(), Some("## storyrod: nothing found in 1 spec, 1 waived"));
    // Beside what is found, and in the sum.
    let also = format!("{cabin}\nbeam B9\n");
    let also = storyrod(&[("a.framing", &also), ("b.framing", &cabin)], &["lint", "--format", "lines"]).out;
    let sums: Vec<_> = also.lines().filter(|line| line.ends_with("waived")).collect();
    let [a, b, all] = sums[..] else { panic!("{also}") };
    assert!(a.starts_with("a.framing: 1 error, ") && a.ends_with(", 1 waived"), "{a}");
    assert_eq!(b, "b.framing: nothing found, 1 waived");
    assert!(all.starts_with("2 specs: 1 error, ") && all.ends_with(", 2 waived"), "{all}");
    let log: Value = serde_json::from_str(&storyrod(&files, &["lint", "--format", "sarif"]).out).unwrap();
    let results = log["runs"][0]["results"].as_array().unwrap();
    assert!(!results.is_empty());
    for result in results {
        assert_eq!(result["suppressions"][0]["justification"], "shimmed on site", "{result}");
    }
}

/// The severities of rules were set in `storyrod.toml` once.
#[test]
fn a_severity_in_the_configuration_is_told_where_it_stands_now() {
    let files = [
        ("cabin.framing", &*sample("first.framing")),
        ("storyrod.toml", "[severity]\nstack-does-not-close = \"advice\"\n"),
    ];
    let ran = storyrod(&files, &["lint"]);
    assert_eq!(ran.code, 2);
    let says = "storyrod.toml:1:2: `severity` is no key of this file: the severity of a rule stands in the spec, under `project`, one line a rule: `severity RULE advice because \"…\"`";
    assert_eq!(ran.log, format!("storyrod: {says}\n"));
}

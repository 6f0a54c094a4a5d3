//! The day by which waivers are judged.

use crate::program::{Ran, faulty_cabin, folder_with, storyrod_with};

/// The first sample with joists 2" too deep, which is waived on the walls until 2027-06-01.
fn waived_cabin() -> String {
    let waiver = "  waive         stack-does-not-close because \"the pour waits\" until 2027-06-01\n";
    let cabin = faulty_cabin();
    let end = cabin.find("\nwall W1 ").unwrap();
    let joists = cabin[..end].rfind("bears on").unwrap();
    let line_end = joists + cabin[joists..].find('\n').unwrap() + 1;
    format!("{}{waiver}{}", &cabin[..line_end], &cabin[line_end..])
}

fn run(variables: &[(&str, &str)], arguments: &[&str]) -> Ran {
    let folder = folder_with(&[("cabin.framing", &waived_cabin())]);
    storyrod_with(variables, folder.path(), arguments, b"")
}

const SILENCED: &str = "cabin.framing: nothing found, 1 waived\n";
const RUN_OUT: &str = "[waiver-out-of-date]";

#[test]
fn a_waiver_counts_on_its_last_day_and_not_on_the_next() {
    let last = run(&[], &["lint", "--today", "2027-06-01"]);
    assert_eq!(last.code, 0, "{}", last.out);
    assert!(last.out.starts_with(SILENCED), "{}", last.out);
    let next = run(&[], &["lint", "--today", "2027-06-02"]);
    assert_eq!(next.code, 1);
    assert!(next.out.contains("[stack-does-not-close]") && next.out.contains(RUN_OUT), "{}", next.out);
}

/// 57 years with 14 leap days, 151 days of 2027 and the first of June are over when the next day begins.
#[test]
fn a_build_says_its_day_in_seconds_and_the_argument_stands_before_it() {
    const END: i64 = (57 * 365 + 14 + 151 + 1) * 86_400;
    let last = (END - 1).to_string();
    let next = END.to_string();
    assert_eq!(last, "1811894399");
    let of = |seconds: &str, arguments: &[&str]| run(&[("SOURCE_DATE_EPOCH", seconds)], arguments);
    assert!(of(&last, &["lint"]).out.starts_with(SILENCED));
    assert!(of(&next, &["lint"]).out.contains(RUN_OUT));
    assert!(of(&next, &["lint", "--today", "2027-06-01"]).out.starts_with(SILENCED));
    // What can't be read does not matter where it is not asked.
    assert_eq!(of("soon", &["lint", "--today", "2027-06-01"]).code, 0);
}

#[test]
fn every_command_that_judges_waivers_has_a_day() {
    for command in [&["takedown", "."][..], &["calc", "."], &["rod", "."]] {
        for (day, code) in [("2027-06-01", 0), ("2027-06-02", 1)] {
            let arguments = [command, &["--today", day]].concat();
            assert_eq!(run(&[], &arguments).code, code, "{arguments:?}");
        }
    }
    // Without the waiver's line the fault is new as long as the waiver counted.
    for (day, code) in [("2027-06-01", 1), ("2027-06-02", 0)] {
        let edit = "J1 without waive";
        let ran = run(&[], &["try", ".", edit, "--today", day]);
        assert_eq!(ran.code, code, "{}{}", ran.out, ran.log);
    }
}

#[test]
fn what_is_no_day_is_refused_before_anything_is_printed() {
    for written in ["2027-02-29", "2027-6-1", "today", ""] {
        let ran = run(&[], &["lint", "--today", written]);
        assert_eq!((ran.code, ran.out.as_str()), (2, ""), "{written}");
        assert!(ran.log.contains("--today"), "{}", ran.log);
    }
    for seconds in ["soon", "", "1.5", "99999999999999999999"] {
        for command in ["lint", "rod"] {
            let ran = run(&[("SOURCE_DATE_EPOCH", seconds)], &[command, "."]);
            let said =
                format!("storyrod: SOURCE_DATE_EPOCH is `{seconds}`: a whole number of seconds is wanted\n");
            assert_eq!((ran.code, ran.out.as_str(), ran.log), (2, "", said));
        }
    }
}

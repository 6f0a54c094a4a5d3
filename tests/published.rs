//! Published examples, code tables, derivations and remembered values against the clauses and products of this crate.
//!
//! Each file of cases in `tests/data` names the source beside every value. Nothing is passed over in silence: a case that
//! no checker takes must be listed with a reason, and a checker must compare every expected value of a case or say why
//! not. What was compared is counted in `tests/data/checked-values.md`.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)] // helpers of tests

#[path = "published/cases.rs"]
mod cases;
#[path = "published/concrete.rs"]
mod concrete;
#[path = "published/steel.rs"]
mod steel;
#[path = "published/wood.rs"]
mod wood;

use std::collections::BTreeMap;
use std::io::Write as _;

use cases::{Case, Comparison, Kind};

/// A file of cases, and who checks them.
pub struct Book {
    /// The text of the file.
    pub text: &'static str,
    /// The checkers, each of one standard.
    pub checkers: &'static [Checker],
    /// Identifiers, or their beginnings with a `*`, of cases that nothing here answers, and why.
    pub unanswered: &'static [(&'static str, &'static str)],
}

/// What checks the cases of one standard.
pub struct Checker {
    /// The standard, as the table of checked values names it.
    pub standard: &'static str,
    /// Compares one case; `None` when the case is not its own.
    pub check: fn(&Case) -> Option<Comparison>,
}

const BOOKS: &[&Book] = &[&wood::BOOK, &concrete::BOOK];

#[test]
fn published_values_are_met() {
    all_hold(Kind::Published);
}

#[test]
fn derived_values_are_met() {
    all_hold(Kind::Derived);
}

#[test]
fn from_memory_values_are_met() {
    all_hold(Kind::FromMemory);
}

#[test]
fn low_grade_copies_are_met() {
    all_hold(Kind::LowGradeCopy);
}

#[test]
fn oracle_values_are_met() {
    all_hold(Kind::Oracle);
}

#[test]
fn no_case_is_passed_over_in_silence() {
    for book in BOOKS {
        let cases = cases::all(book.text);
        for case in &cases {
            let takers = book.checkers.iter().filter(|checker| (checker.check)(case).is_some()).count();
            let reasons = book.unanswered.iter().filter(|(id, _)| names(id, &case.id)).count();
            assert!(
                takers + reasons == 1,
                "{}: {takers} checkers take it, {reasons} reasons excuse it",
                case.id
            );
        }
        for (id, reason) in book.unanswered {
            assert!(cases.iter().any(|case| names(id, &case.id)), "`{id}` names no case");
            assert!(!reason.is_empty());
        }
    }
}

#[test]
fn the_count_of_checked_values_is_written_down() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/data/checked-values.md");
    let table = table_of_counts();
    if std::env::var_os("UPDATE").is_some() {
        std::fs::write(path, &table).unwrap();
    }
    let written = std::fs::read_to_string(path).unwrap_or_default();
    assert_eq!(written, table, "UPDATE=1 cargo test --test published writes it");

    let counts = counts();
    let readme = concat!(env!("CARGO_MANIFEST_DIR"), "/README.md");
    let text = std::fs::read_to_string(readme).unwrap();
    let (before, rest) = text.split_once(BEGIN).unwrap();
    let (_, after) = rest.split_once(END).unwrap();
    let told = format!("{before}{BEGIN}\n{counts}{END}{after}");
    if std::env::var_os("UPDATE").is_some() {
        std::fs::write(readme, &told).unwrap();
    }
    assert_eq!(
        std::fs::read_to_string(readme).unwrap(),
        told,
        "UPDATE=1 cargo test --test published writes it"
    );
    // Past the capture of the test's output: whoever runs the tests reads what was checked, and how sure it is.
    writeln!(std::io::stderr(), "\nchecked against values from outside:\n{counts}").unwrap();
}

const BEGIN: &str = "<!-- checked values: begin -->";
const END: &str = "<!-- checked values: end -->";

/// Fails with every case of this kind that does not hold.
fn all_hold(kind: Kind) {
    let faults: Vec<String> = compared()
        .filter(|(case, _, _)| case.kind == kind)
        .flat_map(|(case, _, comparison)| comparison.faults(&case))
        .collect();
    assert!(faults.is_empty(), "\n{}", faults.join("\n"));
}

/// Every case that a checker takes.
fn compared() -> impl Iterator<Item = (Case, &'static str, Comparison)> {
    BOOKS.iter().flat_map(|book| {
        cases::all(book.text).into_iter().filter_map(|case| {
            let (standard, comparison) =
                book.checkers.iter().find_map(|checker| Some((checker.standard, (checker.check)(&case)?)))?;
            Some((case, standard, comparison))
        })
    })
}

fn names(pattern: &str, id: &str) -> bool {
    pattern.strip_suffix('*').map_or(pattern == id, |beginning| id.starts_with(beginning))
}

/// Values compared, by standard and kind.
fn counts() -> String {
    let mut counts: BTreeMap<(&str, Kind), (usize, usize)> = BTreeMap::new();
    for (case, standard, comparison) in compared() {
        let count = counts.entry((standard, case.kind)).or_default();
        count.0 += 1;
        count.1 += comparison.compared();
    }
    let mut text = String::from("| standard | kind of value | cases | values |\n| --- | --- | --- | --- |\n");
    for ((standard, kind), (cases, values)) in &counts {
        text += &format!("| {standard} | {} | {cases} | {values} |\n", kind.words());
    }
    text
}

/// Values compared, and below them what is left out and why.
fn table_of_counts() -> String {
    let mut passed_over: BTreeMap<(&str, &str), usize> = BTreeMap::new();
    for (_, standard, comparison) in compared() {
        for reason in comparison.reasons() {
            *passed_over.entry((standard, reason)).or_default() += 1;
        }
    }
    let mut text = counts();
    text += "\n| values left out | why | values |\n| --- | --- | --- |\n";
    for ((standard, reason), count) in passed_over {
        text += &format!("| {standard} | {reason} | {count} |\n");
    }
    text += "\n| cases left out | why | cases |\n| --- | --- | --- |\n";
    for book in BOOKS {
        let cases = cases::all(book.text);
        for (id, reason) in book.unanswered {
            let count = cases.iter().filter(|case| names(id, &case.id)).count();
            text += &format!("| `{id}` | {reason} | {count} |\n");
        }
    }
    text
}

//! Suite files: a small spec, what a person works out by hand for it, and what the program makes of it.
//!
//! `tests/suite/TOPIC/CASE.md` has prose, one `framing` block, and blocks named after an output. A `by-hand` block holds
//! facts of the house with their values, worked out on paper; it is evaluated and never rewritten. A suite file of forces
//! without one fails. Every other block is compared with the output of that name; `UPDATE=1 cargo test --test suite`
//! writes it anew.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)] // a test

use std::path::{Path, PathBuf};
use std::sync::Arc;

use storyrod::facts::comparison::{Outcome, outcome_of};
use storyrod::house::House;
use storyrod::inputs::Inputs;
use storyrod::model::promises::Promise;
use storyrod::report::{self, Palette, SheetForm};
use storyrod::syntax::ElementCache;
use storyrod::syntax::value::Date;
use storyrod::text::Source;

const TODAY: Date = Date { year: 2027, month: 6, day: 1 };

#[test]
fn every_case_is_as_written() {
    let mut faults = Vec::new();
    let mut n_by_hand = 0;
    for path in cases(Path::new("tests/suite")) {
        let text = std::fs::read_to_string(&path).unwrap();
        let (written, n_lines) = rendered(&path, &text, &mut faults);
        n_by_hand += n_lines;
        if written != text {
            if std::env::var_os("UPDATE").is_some() {
                std::fs::write(&path, written).unwrap();
            } else {
                faults.push(format!("{}: an output differs; UPDATE=1 shows it in the diff", path.display()));
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    assert!(n_by_hand > 20, "{n_by_hand} lines worked out by hand");
    println!("suite: {n_by_hand} lines worked out by hand hold");
}

fn cases(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            found.extend(cases(&path));
        } else if path.extension().is_some_and(|extension| extension == "md") {
            found.push(path);
        }
    }
    found.sort();
    found
}

/// The file with its outputs written anew, and how many lines of it were worked out by hand.
fn rendered(path: &Path, text: &str, faults: &mut Vec<String>) -> (String, usize) {
    let spec = block(text, "framing").unwrap_or_else(|| panic!("{}: no framing block", path.display()));
    let house = house(&spec);
    let by_hand = block(text, "by-hand").unwrap_or_default();
    let is_of_forces = path.components().any(|part| part.as_os_str() == "forces");
    if is_of_forces && by_hand.trim().is_empty() {
        faults.push(format!("{}: a case of forces without a by-hand block", path.display()));
    }
    let n_lines = hold_by_hand(path, &spec, &by_hand, faults);
    if house.forces.balance.error() > 1e-9 {
        faults.push(format!("{}: the balance is off by {:e}", path.display(), house.forces.balance.error()));
    }

    let mut out = String::new();
    let mut lines = text.split_inclusive('\n');
    while let Some(line) = lines.next() {
        out.push_str(line);
        let Some(name) = line.trim_end().strip_prefix("```").filter(|name| !name.is_empty()) else {
            continue;
        };
        let body: String = lines.by_ref().take_while(|line| line.trim_end() != "```").collect();
        out.push_str(&output(&house, name).unwrap_or(body));
        out.push_str("```\n");
    }
    (out, n_lines)
}

/// The body of the first block of this name.
fn block(text: &str, name: &str) -> Option<String> {
    let start = text.find(&format!("```{name}\n"))?;
    let body = &text[start + name.len() + 4..];
    Some(body[..body.find("```")?].to_owned())
}

/// Each line as an intent of the house: it must hold.
fn hold_by_hand(path: &Path, spec: &str, by_hand: &str, faults: &mut Vec<String>) -> usize {
    let lines: Vec<&str> = by_hand.lines().filter(|line| !line.trim().is_empty()).collect();
    for line in &lines {
        let house = house(&format!("{spec}\nintent \"by hand\"\n  keep {line}\n"));
        let intent = house.model.intents.last();
        let promise = intent.and_then(|intent| intent.promises.first());
        let outcome = match promise {
            Some(Promise::Holds(assertion)) => outcome_of(&house, assertion),
            _ => {
                faults.push(format!("{}: can't read `{line}`", path.display()));
                continue;
            }
        };
        if outcome != Outcome::Holds {
            faults.push(format!("{}: `{line}`: {outcome:?}", path.display()));
        }
    }
    lines.len()
}

/// An output of a house by its block's name: `takedown`, `takedown C1`, `calc B1`.
fn output(house: &House, name: &str) -> Option<String> {
    let (command, element) =
        name.split_once(' ').map_or((name, None), |(command, name)| (command, Some(name)));
    let element = element.map(|name| house.model.named(name).unwrap_or_else(|| panic!("no element {name}")));
    let mut out = Vec::new();
    match (command, element) {
        ("takedown", None) => report::write_takedown(house, Palette::Plain, &mut out).unwrap(),
        ("takedown", Some(of)) => report::write_contributors(house, of, Palette::Plain, &mut out).unwrap(),
        ("calc", of) => report::write_calc(house, of, SheetForm::Text, Palette::Plain, &mut out).unwrap(),
        _ => return None,
    }
    Some(String::from_utf8(out).unwrap())
}

fn house(text: &str) -> House {
    let inputs = Inputs { sources: vec![Source::new("case.framing", text)], includes: Vec::new() };
    House::of(&Arc::new(inputs), &mut ElementCache::default(), TODAY)
}

//! What follows from a change, against what a person works out by hand.
//!
//! `tests/changes/CASE.md` names a house, holds an `edit` block (lines that go, `- `, and lines that come, `+ `, each
//! pair in place of the other), a `by-hand` block and the text of the change. Each line of `by-hand` is `TRADE: WORDS`:
//! that trade must have a consequence that holds all the words, parted by ` | `; `TRADE: without WORDS` that none holds
//! them all, `TRADE: nothing` that none follows.
//! It is never rewritten; `UPDATE=1 cargo test --test changes` writes the text anew.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)] // a test

#[path = "support/analysis.rs"]
mod analysis;
#[path = "support/dice.rs"]
mod dice;

use std::path::PathBuf;

use analysis::of as snapshot;
use dice::Dice;
use storyrod::compare::{Change, FactKey, Outcome, compare};
use storyrod::facts::FactValue;
use storyrod::facts::answers::answer_in_case;
use storyrod::ide;
use storyrod::model::element::ElementId;
use storyrod::report::{self, Palette, ShownChange, ShownChanges};
use storyrod::snapshot::{Snapshot, edited as snapshot_edited};
use storyrod::text::FileId;

fn cases() -> Vec<PathBuf> {
    let mut found: Vec<PathBuf> =
        std::fs::read_dir("tests/changes").unwrap().map(|entry| entry.unwrap().path()).collect();
    found.sort();
    found
}

fn samples() -> Vec<String> {
    let files = std::fs::read_dir("grammar/samples").unwrap().map(|entry| entry.unwrap().path());
    let mut files: Vec<PathBuf> =
        files.filter(|path| path.extension().is_some_and(|it| it == "framing")).collect();
    files.sort();
    let texts = files.iter().map(|path| std::fs::read_to_string(path).unwrap());
    texts.filter(|text| text.lines().any(|line| line.starts_with("project"))).collect()
}

#[test]
fn every_change_has_the_consequences_that_were_worked_out() {
    let mut faults = Vec::new();
    let mut n_by_hand = 0;
    for path in cases() {
        let text = std::fs::read_to_string(&path).unwrap();
        let name = path.display();
        let house = text.lines().find_map(|line| line.strip_prefix("House: ")).expect("a line `House: PATH`");
        let before = std::fs::read_to_string(house).unwrap();
        let after = edited(&before, &block(&text, "edit")).unwrap_or_else(|fault| panic!("{name}: {fault}"));
        let (old, new) = (snapshot(&before), snapshot(&after));
        let change = compare(&old, &new);
        for line in block(&text, "by-hand").lines().filter(|line| !line.trim().is_empty()) {
            n_by_hand += 1;
            if !holds(&change, line) {
                faults.push(format!("{name}: `{line}` does not hold"));
            }
        }
        numbers_are_facts(&change, &old, &new);
        let written = replaced(&text, "change", &shown(&change));
        if written != text {
            if std::env::var_os("UPDATE").is_some() {
                std::fs::write(&path, written).unwrap();
            } else {
                faults.push(format!("{name}: the text differs; UPDATE=1 shows it in the diff"));
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    println!("changes: {n_by_hand} lines worked out by hand hold");
}

/// The text with each line of the edit put in place of its partner: a `- ` line alone goes, a `+ ` line alone comes
/// behind the last line that was named; behind a `\\` it stands in the first column. Runs of blanks count as one. A
/// heading above says in which element.
fn edited(text: &str, edit: &str) -> Result<String, String> {
    let plain =
        |line: &str| line.split(" -- ").next().unwrap_or("").split_whitespace().collect::<Vec<_>>().join(" ");
    let mut lines: Vec<String> = text.lines().map(str::to_owned).collect();
    let (mut at, mut element) = (0, None);
    let mut gone: Option<usize> = None;
    for line in edit.lines().filter(|line| !line.trim().is_empty()) {
        match line.split_at_checked(2) {
            Some(("- ", old)) => {
                let found = (element.unwrap_or(0)..lines.len()).find(|at| plain(&lines[*at]) == plain(old));
                at = found.ok_or(format!("no line `{old}`"))?;
                lines[at] = String::new();
                gone = Some(at);
            }
            Some(("+ ", new)) => {
                let new = new.strip_prefix('\\').map_or(format!("  {new}"), str::to_owned);
                match gone.take() {
                    Some(place) => lines[place] = new,
                    None => {
                        at += 1;
                        lines.insert(at, new);
                    }
                }
            }
            _ => {
                let found =
                    lines.iter().position(|it| plain(it).starts_with(&plain(line)) && !it.starts_with(' '));
                at = found.ok_or(format!("no element `{line}`"))?;
                element = Some(at);
                gone = None;
            }
        }
    }
    Ok(lines.join("\n") + "\n")
}

fn block(text: &str, name: &str) -> String {
    let start = text.find(&format!("```{name}\n")).unwrap_or_else(|| panic!("no block `{name}`"));
    let body = &text[start + name.len() + 4..];
    body[..body.find("```").unwrap()].to_owned()
}

fn replaced(text: &str, name: &str, body: &str) -> String {
    let start = text.find(&format!("```{name}\n")).unwrap() + name.len() + 4;
    let end = start + text[start..].find("```").unwrap();
    format!("{}{body}{}", &text[..start], &text[end..])
}

fn shown(change: &Change) -> String {
    let mut out = Vec::new();
    let shown = ShownChange { spec: "", change, places: &[] };
    let shown = ShownChanges { specs: &[shown], n_same: None };
    report::write_change_text(&shown, Palette::Plain, &mut out).unwrap();
    String::from_utf8(out).unwrap().lines().map(|line| format!("{}\n", line.trim_end())).collect()
}

/// Does a line of `by-hand` hold?
fn holds(change: &Change, line: &str) -> bool {
    let (who, what) = line.split_once(": ").expect("`TRADE: WORDS`");
    if who == "all" {
        return what == "nothing" && change.trades.iter().all(|trade| trade.consequences.is_empty());
    }
    if who == "renamed" {
        return change.renamed.iter().any(|(was, is)| format!("{was} to {is}") == what);
    }
    let trade = change.trades.iter().find(|trade| trade.trade.word() == who);
    let trade = trade.unwrap_or_else(|| panic!("no trade `{who}`"));
    if what == "nothing" {
        return trade.consequences.is_empty();
    }
    let (what, is_wanted) = match what.strip_prefix("without ") {
        Some(what) => (what, false),
        None => (what, true),
    };
    let is_found = trade.consequences.iter().any(|consequence| {
        let one = Change {
            whole: None,
            title: String::new(),
            renamed: Vec::new(),
            stated: Vec::new(),
            trades: vec![storyrod::compare::TradeChange {
                trade: trade.trade,
                consequences: vec![consequence.clone()],
                untouched: Vec::new(),
            }],
            n_slight: 0,
        };
        let text = format!("{} {}", consequence.element, shown(&one));
        what.split(" | ").all(|words| text.contains(words))
    });
    is_found == is_wanted
}

/// Every number of a consequence is what the facts of the two houses say.
fn numbers_are_facts(change: &Change, old: &Snapshot, new: &Snapshot) {
    let of_old: Vec<(&str, &str)> = change
        .renamed
        .iter()
        .map(|(was, is)| (is.rsplit(' ').next().unwrap(), was.rsplit(' ').next().unwrap()))
        .collect();
    for consequence in change.trades.iter().flat_map(|trade| &trade.consequences) {
        let Outcome::Moved(key, was, is) = &consequence.outcome else { continue };
        let ask = |snapshot: &Snapshot, key: &FactKey, name: &dyn Fn(&str) -> String| {
            let ids: Option<Vec<ElementId>> =
                key.of.iter().map(|of| snapshot.house.model.named(&name(of))).collect();
            answer_in_case(&snapshot.house, &key.words, key.case.as_deref(), &ids?).ok().map(|it| it.value)
        };
        let before = |name: &str| {
            let renamed = of_old.iter().find(|(is, _)| *is == name);
            renamed.map_or(name, |(_, was)| was).to_owned()
        };
        let now = |name: &str| name.to_owned();
        assert_eq!(ask(old, key, &before), *was, "{key:?}");
        assert_eq!(ask(new, key, &now), *is, "{key:?}");
        for also in &consequence.also {
            let printed = |value: Option<FactValue>| value.map(|it| it.to_string());
            assert_eq!(printed(ask(old, also, &before)), printed(was.clone()), "{also:?}");
            assert_eq!(printed(ask(new, also, &now)), printed(is.clone()), "{also:?}");
        }
    }
}

#[test]
fn order_comments_and_spelling_change_nothing() {
    for text in samples() {
        let old = snapshot(&text);
        let mut dice = Dice::new(11);
        let mut shuffled: Vec<&str> = elements(&text);
        for at in (1..shuffled.len()).rev() {
            shuffled.swap(at, usize::try_from(dice.between(0, i64::try_from(at).unwrap())).unwrap());
        }
        let commented =
            text.lines().map(|line| format!("{line} -- said so\n-- and so\n")).collect::<String>();
        let spelled = text.replace("24\"", "2'").replace("12\" ", "1'-0\" ").replace(" SPF No.2", " SPF #2");
        for other in [
            text.clone(),
            shuffled.concat(),
            commented,
            spelled,
            text.replace('\n', "\r\n"),
            storyrod::syntax::format(&text),
        ] {
            let change = compare(&old, &snapshot(&other));
            assert!(change.is_empty(), "{}", shown(&change));
        }
    }
}

/// The elements of a spec, with what stands before the first.
fn elements(text: &str) -> Vec<&str> {
    let mut starts: Vec<usize> = vec![0];
    let mut at = 0;
    for line in text.split_inclusive('\n') {
        if line.starts_with(|first: char| first.is_alphabetic()) && at > 0 {
            starts.push(at);
        }
        at += line.len();
    }
    starts.push(text.len());
    starts.windows(2).map(|pair| &text[pair[0]..pair[1]]).collect()
}

#[test]
fn another_name_is_told_as_a_name_and_nothing_else() {
    let mut n_renamed = 0;
    for text in samples() {
        let old = snapshot(&text);
        let mut dice = Dice::new(3);
        let places: Vec<_> = old.house.model.mentions.iter().map(|mention| mention.span).collect();
        for _ in 0..8 {
            let place = dice.one_of(&places);
            let Ok(edits) = ide::rename(&old.house, FileId(0), place.start, "Qq7") else { continue };
            let change = compare(&old, &snapshot_edited::with(&old, &edits).unwrap());
            let others =
                change.stated.len() + change.trades.iter().map(|it| it.consequences.len()).sum::<usize>();
            assert_eq!(
                (change.renamed.len(), others),
                (1, 0),
                "{}\n{}",
                old.house.text_at(place),
                shown(&change)
            );
            n_renamed += 1;
        }
    }
    assert!(n_renamed > 20, "{n_renamed} names");
}

#[test]
fn there_and_back_is_the_same_change_the_other_way_round() {
    for path in cases() {
        let text = std::fs::read_to_string(&path).unwrap();
        let house = text.lines().find_map(|line| line.strip_prefix("House: ")).unwrap();
        let before = std::fs::read_to_string(house).unwrap();
        let after = edited(&before, &block(&text, "edit")).unwrap();
        let (old, new) = (snapshot(&before), snapshot(&after));
        let count = |change: &Change| {
            let all = change.trades.iter().flat_map(|trade| &trade.consequences);
            let (mut fails, mut passes, mut moved) = (0, 0, 0);
            for consequence in all {
                match consequence.outcome {
                    Outcome::Fails(_) => fails += 1,
                    Outcome::Passes(_) => passes += 1,
                    Outcome::Moved(..) => moved += 1,
                    Outcome::StillFails(..) | Outcome::Waived(_) | Outcome::Stale(_) => {}
                }
            }
            (fails, passes, moved, change.renamed.len())
        };
        let (there, back) = (count(&compare(&old, &new)), count(&compare(&new, &old)));
        assert_eq!(there, (back.1, back.0, back.2, back.3), "{}", path.display());
    }
}

//! The house as built, of whole houses: measured as drawn it is the drawn one, measured otherwise it is where it was measured.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)] // a test

#[path = "support/analysis.rs"]
mod analysis;
#[path = "support/dice.rs"]
mod dice;

use analysis::of as snapshot;
use dice::Dice;
use storyrod::facts::answers::answer;
use storyrod::house::lines::added;
use storyrod::model::element::ElementId;
use storyrod::report::{Palette, write_rod_as_built};
use storyrod::snapshot::{Snapshot, edited};
use storyrod::syntax::vocabulary::ElementKind;
use storyrod::units::Length;

fn samples() -> Vec<(String, String)> {
    let files = std::fs::read_dir("grammar/samples").unwrap().map(|entry| entry.unwrap().path());
    let texts = files.filter(|path| path.extension().is_some_and(|it| it == "framing"));
    let texts = texts.map(|path| (path.display().to_string(), std::fs::read_to_string(path).unwrap()));
    // Its own shot would count beside ours.
    let without_shots = |text: String| {
        text.split_inclusive('\n').filter(|line| !line.trim_start().starts_with("shot")).collect()
    };
    texts.map(|(name, text)| (name, without_shots(text))).collect()
}

/// What a crew measures, with what is drawn there: whole sixteenths only, which a line can say.
fn measurable(snapshot: &Snapshot) -> Vec<(ElementId, &'static str, Length)> {
    let house = &snapshot.house;
    let mut all = Vec::new();
    for common in house.model.commons() {
        let facts: &[&str] = match common.id.kind {
            ElementKind::Wall
            | ElementKind::Footing
            | ElementKind::Slab
            | ElementKind::Ledger
            | ElementKind::Stoop
            | ElementKind::Landing
            | ElementKind::Beam => &["top"],
            ElementKind::Shelf | ElementKind::Pocket => &["seat"],
            ElementKind::Floor => &["subfloor", "finish"],
            _ => &[],
        };
        for fact in facts {
            let Ok(answer) = answer(house, fact, &[common.id]) else { continue };
            let level = answer.value.as_length().unwrap();
            if level.rounded_to(Length::sixteenths(0, 1)) == level {
                all.push((common.id, *fact, level));
            }
        }
    }
    all
}

fn measured(snapshot: &Snapshot, shots: &[(ElementId, &str, Length)]) -> Snapshot {
    let edits: Vec<_> = shots
        .iter()
        .map(|(of, fact, level)| {
            let common = snapshot.house.model.common(*of).unwrap();
            added(&snapshot.house, common, &format!("shot {fact} {} on 2027-04-03", level.in_feet())).unwrap()
        })
        .collect();
    edited::with(snapshot, &edits).unwrap()
}

#[test]
fn measured_as_drawn_nothing_follows() {
    let mut n_measured = 0;
    for (name, text) in samples() {
        let drawn = snapshot(&text);
        let shots = measurable(&drawn);
        n_measured += shots.len();
        let with_shots = measured(&drawn, &shots);
        let built = with_shots.house.as_built().unwrap();
        assert_eq!(built.measured.len(), shots.len(), "{name}");
        assert!(built.measured.iter().all(|shot| shot.by().is_none_or(|by| by == Length::ZERO)), "{name}");
        assert_eq!((built.gaps(&with_shots.house).len(), built.grouts.len()), (0, 0), "{name}");
        let mut out = Vec::new();
        write_rod_as_built(&with_shots, Palette::Plain, &mut out).unwrap();
        let out = String::from_utf8(out).unwrap();
        assert!(out.contains("nothing else follows"), "{name}: {out}");
    }
    assert!(n_measured > 80, "{n_measured} levels");
    println!("as built: {n_measured} levels measured as drawn");
}

/// Each level that can be followed is where it was measured, whatever else was; the drawn house does not move.
#[test]
fn measured_otherwise_it_is_where_it_was_measured() {
    let (mut n_followed, mut dice) = (0, Dice::new(5));
    for (name, text) in samples() {
        let drawn = snapshot(&text);
        let all = measurable(&drawn);
        for _ in 0..6 {
            let mut shots: Vec<(ElementId, &str, Length)> = Vec::new();
            for (of, fact, level) in &all {
                if dice.between(0, 3) == 0 {
                    shots.push((*of, fact, *level + Length::sixteenths(0, dice.between(-12, 12))));
                }
            }
            if shots.is_empty() {
                continue;
            }
            let with_shots = measured(&drawn, &shots);
            let built = with_shots.house.as_built().unwrap();
            for (of, fact, level) in &shots {
                let shot = built.measured.iter().find(|shot| shot.of == *of && *shot.fact == **fact).unwrap();
                let common = with_shots.house.model.common(*of).unwrap();
                let at = |house| answer(house, fact, &[*of]).unwrap().value.as_length().unwrap();
                if shot.not_followed.is_none() {
                    n_followed += 1;
                    assert_eq!(at(&built.house), *level, "{name}: {fact} of {}", common.label());
                }
                assert_eq!(at(&with_shots.house), at(&drawn.house), "{name}: {fact} of {}", common.label());
            }
        }
    }
    assert!(n_followed > 100, "{n_followed} levels");
    println!("as built: {n_followed} levels are where they were measured");
}

//! A name that changes changes nothing else, in whole houses and in damaged ones.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop where it fails")]

#[path = "support/analysis.rs"]
mod analysis;
#[path = "support/damage.rs"]
mod damage;
#[path = "support/dice.rs"]
mod dice;

use dice::Dice;
use storyrod::diagnostic::{Diagnostic, Edit};
use storyrod::ide;
use storyrod::snapshot::Snapshot;
use storyrod::text::{FileId, Span};

/// How often each text is damaged; `STORYROD_DAMAGES` says otherwise.
const DAMAGES: u64 = 4;

/// So many names are changed in each text.
const NAMES: usize = 6;

#[test]
fn findings_stay_what_they_are() {
    let damages = std::env::var("STORYROD_DAMAGES").map_or(DAMAGES, |count| count.parse().unwrap());
    let samples = [
        include_str!("../grammar/samples/first.framing"),
        include_str!("../grammar/samples/hop-barn.framing"),
        include_str!("../grammar/samples/hill-studio.framing"),
    ];
    let mut n_changed = 0;
    for sample in samples {
        for seed in 0..damages {
            let mut dice = Dice::new(seed);
            let text = damage::damaged(sample, &mut dice);
            let before = analysis::of(&text);
            let mut places: Vec<Span> =
                before.house.model.mentions.iter().map(|mention| mention.span).collect();
            places.extend(before.house.model.grid.lines.values().map(|line| line.span));
            for _ in 0..NAMES.min(places.len()) {
                let place = dice.one_of(&places);
                let name = before.house.text_at(place);
                // Of two elements with one name, another name for either mends the text.
                let is_reused =
                    |it: &Diagnostic| it.rule.ends_with("reused") && before.house.text_at(it.span) == name;
                if before.findings.iter().flat_map(Diagnostic::with_consequences).any(is_reused) {
                    continue;
                }
                let edits = ide::rename(&before.house, FileId(0), place.start, "Qq7");
                let Ok(edits) = edits else { continue };
                n_changed += 1;
                let renamed = after(&text, &edits);
                let now = analysis::of(&renamed);
                assert_eq!(told(&before, &edits), told(&now, &[]), "{name} of seed {seed} in:\n{text}");
            }
        }
    }
    assert!(n_changed > 40, "{n_changed} names could be changed");
}

fn after(text: &str, edits: &[Edit]) -> String {
    let mut text = text.to_owned();
    for edit in edits.iter().rev() {
        text.replace_range(edit.span.start as usize..edit.span.end as usize, &edit.text);
    }
    text
}

/// Rule and place of everything that is told, the place as it is behind the edits.
fn told(snapshot: &Snapshot, edits: &[Edit]) -> Vec<(u32, u32, &'static str)> {
    let moved = |byte: u32| {
        let before = edits.iter().filter(|edit| edit.span.end <= byte);
        before.fold(byte, |byte, edit| {
            byte + u32::try_from(edit.text.len()).unwrap() - (edit.span.end - edit.span.start)
        })
    };
    let all = snapshot.findings.iter().flat_map(Diagnostic::with_consequences);
    let mut told: Vec<_> =
        all.map(|finding| (moved(finding.span.start), moved(finding.span.end), finding.rule)).collect();
    told.sort_unstable();
    told
}

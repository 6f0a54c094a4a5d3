//! A file as one line for each fact: nothing is lost, and only what is said otherwise is told otherwise, in whole houses
//! and in damaged ones.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop where it fails")]

#[path = "support/analysis.rs"]
mod analysis;
#[path = "support/damage.rs"]
mod damage;
#[path = "support/dice.rs"]
mod dice;

use dice::Dice;
use storyrod::compare::compare;
use storyrod::report::write_facts;
use storyrod::syntax;

/// How often each text is damaged; `STORYROD_DAMAGES` says otherwise.
const DAMAGES: u64 = 12;

const SAMPLES: [&str; 4] = [
    include_str!("../grammar/samples/first.framing"),
    include_str!("../grammar/samples/hop-barn.framing"),
    include_str!("../grammar/samples/alley-house.framing"),
    include_str!("../grammar/samples/loon-cove.framing"),
];

fn facts(text: &str) -> Vec<String> {
    let mut out = Vec::new();
    write_facts(&analysis::of(text).house, &mut out).unwrap();
    String::from_utf8(out).unwrap().lines().map(str::to_owned).collect()
}

/// Whole samples, and damaged ones.
fn texts() -> Vec<String> {
    let damages = std::env::var("STORYROD_DAMAGES").map_or(DAMAGES, |count| count.parse().unwrap());
    let mut texts: Vec<String> = SAMPLES.map(str::to_owned).into();
    for sample in SAMPLES {
        texts.extend((0..damages).map(|seed| damage::damaged(sample, &mut Dice::new(seed))));
    }
    texts
}

/// The texts of the elements and of whatever else begins in the first column.
fn chunks(text: &str) -> Vec<String> {
    let tree = syntax::parse_fresh(text);
    let chunks = tree.chunks.iter();
    let chunk = |start: u32, length: u32| text[start as usize..(start + length) as usize].to_owned();
    chunks.map(|it| chunk(it.start, it.body.length)).collect()
}

#[test]
fn every_line_of_the_text_is_told_once() {
    for text in texts() {
        let tree = syntax::parse_fresh(&text);
        let lines = tree.chunks.iter().flat_map(|chunk| &chunk.body.lines);
        let n_saying = lines
            .filter(|line| !matches!(line.kind, syntax::LineKind::Blank | syntax::LineKind::Comment))
            .count();
        let facts = facts(&text);
        let is_of_text =
            |line: &&String| !line.ends_with("(derived)") && !line.starts_with("no derived facts");
        // The first line of an element that can't be read whole is told as what it is and as it stands.
        let n_twice = tree.chunks.iter().filter(|chunk| {
            let opening = chunk.body.lines.iter().find(|line| line.kind == syntax::LineKind::Opening);
            let is_element = matches!(chunk.body.opening, syntax::Opening::Element(_));
            let is_wrong = |end: u32| chunk.body.problems.iter().any(|problem| problem.span.start < end);
            is_element && opening.is_some_and(|line| is_wrong(line.span.end))
        });
        assert_eq!(facts.iter().filter(is_of_text).count(), n_saying + n_twice.count(), "{text}");
    }
}

#[test]
fn order_comments_and_style_are_not_told() {
    for (seed, text) in (0..).zip(texts()) {
        let mut dice = Dice::new(seed);
        let mut chunks = chunks(&text);
        // A fact before all elements stays there.
        for at in (2..chunks.len()).rev() {
            chunks.swap(at, usize::try_from(dice.between(1, i64::try_from(at).unwrap())).unwrap());
        }
        let is_ended = chunks.iter().all(|chunk| chunk.ends_with('\n'));
        let of = facts(&text);
        assert_eq!(facts(&syntax::format(&text)), of, "{text}");
        let commented = text.replace("\n", "\n-- said so\n");
        assert_eq!(facts(&commented), of, "{text}");
        // Which of two elements with one name counts is decided by their order.
        let is_clean = !analysis::of(&text).findings.iter().any(|found| found.rule.ends_with("reused"));
        if is_ended && is_clean {
            assert_eq!(facts(&chunks.concat()), of, "{text}");
        }
    }
}

#[test]
fn whatever_somebody_wrote_otherwise_is_told() {
    let mut n_told = 0;
    for sample in SAMPLES {
        let old = analysis::of(sample);
        for seed in 100..112 {
            let text = damage::damaged(sample, &mut Dice::new(seed));
            if compare(&old, &analysis::of(&text)).stated.is_empty() {
                continue;
            }
            n_told += 1;
            assert_ne!(facts(&text), facts(sample), "seed {seed}:\n{text}");
        }
    }
    assert!(n_told > 20, "{n_told} changes");
}

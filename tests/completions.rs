//! Completion and help with a fact's values, wherever the cursor stands and however broken the text is.
#![allow(
    clippy::panic,
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "a test may stop where it fails"
)]

#[path = "support/analysis.rs"]
mod analysis;
#[path = "support/damage.rs"]
mod damage;
#[path = "support/dice.rs"]
mod dice;

use dice::Dice;
use storyrod::ide::{Completion, completion, signature};
use storyrod::snapshot::Snapshot;
use storyrod::syntax::{ProblemKind, parse_fresh};

const SAMPLES: [&str; 5] = [
    include_str!("../grammar/samples/first.framing"),
    include_str!("../grammar/samples/hop-barn.framing"),
    include_str!("../grammar/samples/loon-cove.framing"),
    include_str!("../grammar/samples/alley-house.framing"),
    include_str!("../grammar/samples/hill-studio.framing"),
];

fn offered(text: &str, at: usize, last: &Snapshot) -> Vec<Completion> {
    completion(text, u32::try_from(at).unwrap(), Some(last), &|| vec!["other.framing".to_owned()]).items
}

/// Asks at a byte of a text, which may stand inside a character: what is offered takes the place of a piece of one line
/// that reaches to the cursor.
fn ask(text: &str, at: usize, last: &Snapshot) {
    signature(text, u32::try_from(at).unwrap());
    for item in offered(text, at, last) {
        let (start, end) = (item.replace.start as usize, item.replace.end as usize);
        let replaced =
            text.get(start..end).unwrap_or_else(|| panic!("{start}..{end} is no piece of the text"));
        assert!(!replaced.contains(['\n', '\r']), "{replaced:?} is no piece of a line");
        assert!((start..=end).contains(&(item.cursor as usize)), "{item:?}");
    }
}

/// Every so many bytes; with `STORYROD_EVERY_BYTE` every one.
#[test]
fn wherever_the_cursor_stands_in_a_sample() {
    let step = if std::env::var_os("STORYROD_EVERY_BYTE").is_some() { 1 } else { 97 };
    for text in SAMPLES {
        let last = analysis::of(text);
        let step = if text == SAMPLES[0] { 3.min(step) } else { step };
        (0..=text.len()).step_by(step).for_each(|at| ask(text, at, &last));
    }
}

/// The last house is that of the whole text: the text of now has gone another way since.
#[test]
fn in_damaged_texts() {
    for whole in SAMPLES {
        let last = analysis::of(whole);
        for seed in 0..8 {
            let mut dice = Dice::new(seed);
            let mut text = damage::damaged(whole, &mut dice);
            match seed % 4 {
                0 => text = text.replace('\n', "\r\n"),
                1 => text = text.replace(' ', "\u{a0}"),
                2 => text = text.replace("W", "🏠W"),
                _ => {}
            }
            let length = i64::try_from(text.len()).unwrap();
            for _ in 0..20 {
                ask(&text, usize::try_from(dice.between(0, length)).unwrap(), &last);
            }
        }
    }
    let last = analysis::of(SAMPLES[0]);
    for text in [
        "",
        "\n",
        "\r\n",
        "\u{feff}",
        "\u{feff}beam ",
        "\"",
        "include \"",
        "  ",
        "  top",
        "beam B1\n  from A/",
        "🏠",
    ] {
        (0..=text.len() + 1).for_each(|at| ask(text, at, &last));
    }
}

#[test]
fn a_long_line_takes_no_time() {
    let last = analysis::of(SAMPLES[1]);
    for stuff in ["half of ", "1\" plus ", "a ", "A/1 to ", "\"", "9 1/", "(", "W1, ", "-- "] {
        for opening in
            ["beam B1\n  load ", "intent \"I\"\n  keep ", "wall W1\n  top ", "footing F9\n  under ", ""]
        {
            let text = format!("{opening}{}", stuff.repeat(5_000 / stuff.len()));
            let start = std::time::Instant::now();
            ask(&text, text.len(), &last);
            assert!(start.elapsed().as_secs() < 5, "{stuff} {opening}");
        }
    }
}

/// Each line of the samples is typed again word by word: whatever is offered behind a blank is read there, or stops at the
/// line's end because more must follow.
#[test]
fn what_is_offered_can_be_read_where_it_is_put() {
    let mut report = String::new();
    for text in [SAMPLES[0]] {
        let last = analysis::of(text);
        let mut start = 0;
        for line in text.split_inclusive('\n') {
            let words = line.trim_end().split(' ').scan(0, |at, word| {
                *at += word.len() + 1;
                Some((*at, word))
            });
            for (end, word) in words.filter(|(_, word)| !word.is_empty()) {
                let is_whole = end > line.trim_end().len();
                if !line.starts_with("  ")
                    || line.contains("--")
                    || word.contains('"') && !word.ends_with('"')
                {
                    continue;
                }
                let head = format!("{}{}", &text[..start], line[..end.min(line.trim_end().len())].trim_end());
                let tail = &text[start + line.trim_end().len()..];
                let now = format!("{head} {tail}");
                for item in offered(&now, head.len() + 1, &last) {
                    let (from, to) = (item.replace.start as usize, item.replace.end as usize);
                    let applied = format!("{}{}{}", &now[..from], item.text, &now[to..]);
                    let end = (from + item.text.len()).max(head.len());
                    if let Some(fault) = fault_before(&applied, start, end) {
                        report.push_str(&format!(
                            "`{}` {is_whole}: {}: {fault}\n",
                            applied[start..end].trim_end(),
                            item.label
                        ));
                    }
                }
            }
            start += line.len();
        }
    }
    assert!(report.is_empty(), "{report}");
}

/// What cannot be read between two bytes, but for the line's end.
fn fault_before(text: &str, from: usize, to: usize) -> Option<String> {
    let tree = parse_fresh(text);
    let chunk = tree.chunk_at(u32::try_from(from).unwrap())?;
    let end = from + text[from..to].trim_end().len();
    let problems = chunk.body.problems.iter().filter(|problem| {
        let at = (chunk.start + problem.span.start) as usize;
        // A length that is cut off in its middle is odd whatever follows it.
        (from..end).contains(&at) && !matches!(problem.kind, ProblemKind::OddDimension(_))
    });
    problems.map(|problem| format!("{:?}", problem.kind)).next()
}

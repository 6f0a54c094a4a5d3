//! What there is to say about the place under the cursor.
//!
//! One file a kind of answer. What is wrong comes first, then the thing itself, then what the format says of it.

mod assumed;
mod checks;
mod comparison;
mod cursor;
mod element;
mod finding;
mod here;
mod include;
mod levels;
mod loads;
mod markdown;
mod member;
mod place;
mod rule;
mod sentence;
mod value;
mod vocabulary;

use crate::ide::hover::cursor::Cursor;
use crate::report::STRENGTH_CAUTION;
use crate::snapshot::Snapshot;
use crate::text::{FileId, Span};

pub use markdown::plain;

/// What there is to say about a place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hover {
    /// The place it is about.
    pub span: Span,
    /// What there is to say, in Markdown; [`plain`] takes the marks away.
    pub text: String,
}

/// Whether the editor shows what a finding says beside the hover by itself.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum FindingsBeside {
    /// It does not: the hover says all of it.
    #[default]
    No,
    /// It does: the hover says what lies behind it only.
    Yes,
}

/// One kind of answer.
#[derive(Debug)]
struct Piece {
    span: Span,
    worth: Worth,
    text: String,
    /// Loads, ratios or capacities stand in it: the caution goes with them.
    has_figures: bool,
}

/// What may go when there is too much to say, the least first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Worth {
    Least,
    Some,
    Much,
    Most,
}

/// Longer answers are not read.
const MOST_LINES: usize = 30;

/// What is wrong at `offset` and why that matters; then the thing that stands there with its figures; then what the
/// format says of it.
pub fn hover(snapshot: &Snapshot, file: FileId, offset: u32, beside: FindingsBeside) -> Option<Hover> {
    let cursor = Cursor::at(snapshot, file, offset)?;
    let mut pieces = finding::pieces(&cursor, beside);
    pieces.extend(thing(&cursor));
    pieces.extend(here::piece(&cursor));
    pieces.extend(vocabulary::piece(&cursor));
    let span = pieces.first()?.span;
    while lines_of(&pieces) > MOST_LINES {
        let Some(least) = pieces.iter().map(|piece| piece.worth).min() else { break };
        let Some(at) = pieces.iter().rposition(|piece| piece.worth == least) else { break };
        if pieces.len() == 1 {
            break;
        }
        pieces.remove(at);
    }
    let last_with_figures = pieces.iter().rposition(|piece| piece.has_figures);
    let texts = pieces.into_iter().enumerate().map(|(at, piece)| {
        let text = cut(&piece.text);
        if Some(at) == last_with_figures { format!("{text}\n\n_{STRENGTH_CAUTION}_") } else { text }
    });
    Some(Hover { span, text: texts.collect::<Vec<_>>().join("\n\n---\n\n") })
}

/// The thing at the cursor: the first that has something to say.
fn thing(cursor: &Cursor<'_>) -> Option<Piece> {
    comparison::piece(cursor)
        .or_else(|| element::piece(cursor))
        .or_else(|| rule::piece(cursor))
        .or_else(|| include::piece(cursor))
        .or_else(|| member::piece(cursor))
        .or_else(|| place::piece(cursor))
        .or_else(|| value::piece(cursor))
}

fn lines_of(pieces: &[Piece]) -> usize {
    pieces.iter().map(|piece| piece.text.lines().filter(|line| !line.is_empty()).count() + 1).sum()
}

/// A piece up to the last line that is still read.
fn cut(text: &str) -> String {
    let mut lines = Vec::new();
    let (mut told, mut fence) = (0, None);
    for line in text.lines() {
        told += usize::from(!line.is_empty());
        if told > MOST_LINES {
            lines.extend(fence);
            lines.push("…");
            break;
        }
        if line.starts_with("```") {
            let mark = line.trim_end_matches(|c| c != '`');
            fence = if fence.is_none() { Some(mark) } else { None };
        }
        lines.push(line);
    }
    lines.join("\n")
}

#[cfg(test)]
pub(crate) mod tests {
    use super::*;
    use crate::syntax::vocabulary::{ElementKind, spec_of};
    use crate::testing::cursor::{in_sample, snapshot_of};

    pub const CABIN: &str = include_str!("../../grammar/samples/first.framing");
    pub const LOON_COVE: &str = include_str!("../../grammar/samples/loon-cove.framing");
    pub const HOP_BARN: &str = include_str!("../../grammar/samples/hop-barn.framing");
    const SAMPLES: [&str; 5] = [
        CABIN,
        LOON_COVE,
        HOP_BARN,
        include_str!("../../grammar/samples/alley-house.framing"),
        include_str!("../../grammar/samples/hill-studio.framing"),
    ];

    /// What is said at `$0`, which stands in `piece`, a piece of the text; and the text it is about.
    pub fn said(text: &str, piece: &str) -> Option<(String, String)> {
        let (snapshot, file, offset) = in_sample(text, piece);
        let hover = hover(&snapshot, file, offset, FindingsBeside::No)?;
        Some((snapshot.house.text_at(hover.span).to_owned(), hover.text))
    }

    /// Checks what is said at `$0` in a piece of the text: what it is about, and what stands in it in this order.
    pub fn check(text: &str, piece: &str, about: &str, expected: &[&str]) {
        let (place, said) = said(text, piece).expect("there is something to say");
        assert_eq!(place, about, "{said}");
        let mut rest = said.as_str();
        for part in expected {
            let Some(at) = rest.find(part) else {
                panic!("`{part}` does not stand, or not there, in:\n{said}")
            };
            rest = &rest[at + part.len()..];
        }
    }

    #[test]
    fn a_fact_says_its_meaning_at_its_phrase_and_at_its_value() {
        let wall = spec_of(ElementKind::Wall);
        let meaning = wall.facts.iter().find(|fact| fact.phrase == "thick").unwrap().meaning;
        for piece in ["$0thick         8\"", "th$0ick         8\""] {
            check(CABIN, piece, "thick         8\"", &[meaning]);
        }
        check(CABIN, "thick         8\"$0", "8\"", &["8\" = 0'-8\" = 203.2 mm", meaning]);
    }

    #[test]
    fn a_heading_says_the_element_and_then_what_such_elements_are() {
        let summary = spec_of(ElementKind::Footing).summary;
        check(CABIN, "foot$0ing F1 \"Strip", "footing", &["**footing F1** \"Strip footing\"", summary]);
        check(CABIN, "footing F$01 \"Strip", "F1", &["strip, 16\" x 8\", under W1, W2, W3 and W4", summary]);
        check(CABIN, "footing F1 \"Str$0ip", "Strip footing", &["**footing F1**", summary]);
    }

    #[test]
    fn there_is_nothing_to_say_of_comments_and_blank_lines() {
        assert_eq!(said(CABIN, "-- A cab$0in of one room"), None);
        assert_eq!(said(CABIN, "$0\ngrid\n"), None);
    }

    #[test]
    fn a_finding_stands_before_the_thing_and_the_thing_before_the_format() {
        let text = LOON_COVE.replace("2'-9\" x 2'-9\" x 14\"", "2'-6\" x 2'-6\" x 14\"");
        check(
            &text,
            "2'-6\" x 2$0'-6\" x 14\"",
            "2'-6\" x 2'-6\" x 14\"",
            &["`soil-pressure`", "2,000 psf", "have it checked", "2'-6\" = 762 mm", "**size**"],
        );
    }

    /// An author's words can't make marks, links or pages of their own.
    #[test]
    fn the_words_of_the_author_stay_words() {
        let text = CABIN.replace("\"South wall\"", "\"![x](http://a) <b> `c`\"");
        check(&text, "wall W$01 \"", "W1", &["\"!\\[x\\](http://a) \\<b\\> \\`c\\`\""]);
    }

    /// No place of a sample, whole or broken, makes it panic or say more than is read.
    #[test]
    fn every_place_of_every_sample_has_a_short_answer() {
        for sample in SAMPLES {
            for text in [sample.to_owned(), sample.replace("x 1", "x ;").replace("on ", "onn ")] {
                let snapshot = snapshot_of(&text);
                let mut longest = 0;
                for (offset, _) in text.char_indices().step_by(3) {
                    let Some(hover) =
                        hover(&snapshot, FileId(0), u32::try_from(offset).unwrap(), FindingsBeside::No)
                    else {
                        continue;
                    };
                    longest = longest.max(hover.text.lines().filter(|line| !line.is_empty()).count());
                    let plain = plain(&hover.text);
                    assert!(!plain.contains("**") && !plain.contains("```"), "{plain}");
                }
                assert!(longest <= MOST_LINES + 8, "{longest} lines");
            }
        }
    }
}

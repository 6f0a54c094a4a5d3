//! What an editor shows of the look and shape of a file holds together, in whole houses and in damaged ones.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop where it fails")]

#[path = "support/analysis.rs"]
mod analysis;
#[path = "support/damage.rs"]
mod damage;
#[path = "support/dice.rs"]
mod dice;

use dice::Dice;
use storyrod::house::House;
use storyrod::ide::{self, Symbol};
use storyrod::text::{FileId, Span};

/// How often each text is damaged; `STORYROD_DAMAGES` says otherwise.
const DAMAGES: u64 = 8;

const FILE: FileId = FileId(0);

fn check_all(check: impl Fn(&House, &str, &mut Dice)) {
    let damages = std::env::var("STORYROD_DAMAGES").map_or(DAMAGES, |count| count.parse().unwrap());
    for sample in [
        include_str!("../grammar/samples/first.framing"),
        include_str!("../grammar/samples/hop-barn.framing"),
        include_str!("../grammar/samples/alley-house.framing"),
    ] {
        check(&analysis::of(sample).house, sample, &mut Dice::new(0));
        for seed in 0..damages {
            let mut dice = Dice::new(seed);
            let text = damage::damaged(sample, &mut dice);
            check(&analysis::of(&text).house, &text, &mut dice);
        }
    }
}

fn place(text: &str, dice: &mut Dice) -> u32 {
    let at = usize::try_from(dice.between(0, i64::try_from(text.len()).unwrap())).unwrap();
    u32::try_from(text.floor_char_boundary(at)).unwrap()
}

#[test]
fn tokens_lie_in_order_on_one_line_each() {
    check_all(|house, text, dice| {
        let words = ide::tokens(house, FILE, None);
        assert!(words.windows(2).all(|two| two[0].span.end <= two[1].span.start), "{text}");
        for word in &words {
            let covered = text.get(word.span.start as usize..word.span.end as usize).unwrap();
            assert!(!covered.is_empty() && !covered.contains(['\n', '\r']), "{covered:?} of:\n{text}");
        }
        let (one, other) = (place(text, dice), place(text, dice));
        let some = ide::tokens(house, FILE, Some(Span::new(FILE, one.min(other), one.max(other))));
        let first = words.iter().position(|word| some.first() == Some(word)).unwrap_or(0);
        assert_eq!(some, words[first..first + some.len()], "{one} to {other} of:\n{text}");
    });
}

#[test]
fn folds_hold_each_other_or_have_no_line_in_common() {
    check_all(|house, text, _| {
        let lines = &house.inputs.sources[0].lines;
        let folds: Vec<(u32, u32)> = ide::folding(house, FILE)
            .iter()
            .map(|fold| (lines.line_of(fold.span.start), lines.line_of(fold.span.end)))
            .collect();
        for (at, (first, last)) in folds.iter().enumerate() {
            assert!(first < last);
            for (other_first, other_last) in &folds[at + 1..] {
                let is_inside = first < other_first && other_last <= last;
                assert!(
                    is_inside || last < other_first,
                    "{first}-{last}, {other_first}-{other_last}:\n{text}"
                );
            }
        }
    });
}

#[test]
fn a_selection_grows_strictly_round_its_place() {
    check_all(|house, text, dice| {
        let places: Vec<u32> = (0..40).map(|_| place(text, dice)).collect();
        for (at, grown) in places.iter().zip(ide::selection(house, FILE, &places)) {
            let last = grown.last().unwrap();
            assert_eq!((last.start, last.end as usize), (0, text.len()));
            assert!(grown.iter().all(|span| span.touches(*at)));
            for two in grown.windows(2) {
                let is_held = two[1].start <= two[0].start && two[0].end <= two[1].end && two[0] != two[1];
                assert!(is_held, "{two:?} at {at} of:\n{text}");
            }
        }
    });
}

#[test]
fn what_an_outline_shows_lies_inside_what_holds_it() {
    fn check(symbols: &[Symbol], around: Span, text: &str) {
        for symbol in symbols {
            let (outer, inner) = (symbol.span, symbol.name_span);
            assert!(around.start <= outer.start && outer.end <= around.end, "{symbol:?} of:\n{text}");
            assert!(outer.start <= inner.start && inner.end <= outer.end, "{symbol:?} of:\n{text}");
            assert!(!symbol.name.trim().is_empty());
            check(&symbol.children, outer, text);
        }
    }
    check_all(|house, text, _| {
        let whole = Span::new(FILE, 0, u32::try_from(text.len()).unwrap());
        check(&ide::symbols(house, FILE), whole, text);
        for link in ide::links(house, FILE) {
            assert!(text.get(link.span.start as usize..link.span.end as usize).is_some());
        }
    });
}

#[test]
fn lines_that_are_formatted_alone_are_those_of_the_whole() {
    check_all(|_, text, dice| {
        let after = |edits: &[ide::Replacement]| {
            let mut text = text.to_owned();
            for edit in edits.iter().rev() {
                text.replace_range(edit.start as usize..edit.end as usize, &edit.text);
            }
            text
        };
        let whole = after(&ide::formatting(text));
        let (one, other) = (place(text, dice), place(text, dice));
        let part = after(&ide::formatting_of_lines(text, one.min(other), one.max(other)));
        let mut again = part.clone();
        for edit in ide::formatting(&part).iter().rev() {
            again.replace_range(edit.start as usize..edit.end as usize, &edit.text);
        }
        assert_eq!(again, whole, "{one} to {other} of:\n{text}");
    });
}

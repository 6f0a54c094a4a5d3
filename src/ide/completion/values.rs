//! What can stand at the cursor inside a fact, value by value and word by word.

use crate::ide::completion::{Completion, CompletionKind, Place, grid, names, numbers, sizes, slugs};
use crate::ide::cursor::Reading;
use crate::syntax::form::Kind;
use crate::syntax::lexer::{Token, TokenKind};
use crate::syntax::next::{self, Next, Walk, What};
use crate::syntax::value::{Date, Side};
use crate::syntax::vocabulary::ElementKind;
use crate::text::LocalSpan;

/// A value that can stand at the cursor, or go on there.
pub(super) struct Wanted<'a> {
    /// The fact.
    pub reading: &'a Reading,
    /// The value's label in the fact; empty of what is no value.
    pub label: &'static str,
    /// What the whole value is.
    pub kind: Option<&'static Kind>,
    /// The byte of the line where it begins.
    pub from: usize,
    /// The tokens of the fact behind its phrase.
    pub tokens: &'a [Token<'a>],
}

/// Everything that the fact under the cursor can go on with: values first, then the words between them.
pub(super) fn in_fact(place: &Place<'_>, items: &mut Vec<Completion>) {
    let readings = place.cursor.readings();
    let walks: Vec<_> = readings.iter().map(|reading| (reading, reading.walk(&place.cursor))).collect();
    let all = || {
        walks.iter().flat_map(|(reading, walk)| {
            let tokens = place.cursor.before.get(reading.n_words..).unwrap_or_default();
            walk.next.iter().map(move |next| (next.what, wanted(place, reading, walk, next, tokens)))
        })
    };
    // What stands below a wall is most often a floor, what stands below a post is not.
    let is_wall = place
        .cursor
        .element()
        .is_some_and(|spec| matches!(spec.kind, ElementKind::Wall | ElementKind::Jacks));
    let rank = |what: What, wanted: &Wanted<'_>| match what {
        What::Value(_) => 0,
        What::Name(_) => 1 + i32::from((wanted.label == "floor") != is_wall),
        What::Fact(_) | What::GridLine(_) | What::Unit(_) | What::Relation => 3,
        What::Words(_) | What::Comma => 4,
        What::Slash | What::End => 5,
    };
    let mut ranked: Vec<_> = all().map(|(what, wanted)| (rank(what, &wanted), what, wanted)).collect();
    ranked.sort_by_key(|(rank, ..)| *rank);
    for (_, what, wanted) in &ranked {
        match what {
            What::Words(words) => items.extend(word(place, wanted, words)),
            What::Comma => behind_comma(place, wanted, items),
            What::Value(_)
            | What::Name(_)
            | What::Fact(_)
            | What::GridLine(_)
            | What::Unit(_)
            | What::Relation
            | What::Slash
            | What::End => value(place, wanted, *what, items),
        }
    }
}

fn wanted<'a>(
    place: &Place<'_>,
    reading: &'a Reading,
    walk: &Walk,
    next: &Next,
    tokens: &'a [Token<'a>],
) -> Wanted<'a> {
    let slot = next.slot.and_then(|slot| walk.slots.get(slot));
    let begun = tokens.get(next.since).map(|token| token.span.start as usize);
    Wanted {
        reading,
        label: slot.map_or("", |(label, _)| label),
        kind: slot.map(|(_, kind)| *kind),
        from: begun.unwrap_or(place.cursor.typed_from),
        tokens,
    }
}

fn value(place: &Place<'_>, wanted: &Wanted<'_>, what: What, items: &mut Vec<Completion>) {
    match what {
        What::Name(kinds) => names::of_kinds(place, wanted, kinds, items),
        What::GridLine(axis) => grid::lines(place, wanted, axis, items),
        What::Fact(name) => {
            let joined = name.first.joined_by;
            let item = place.item(format!("{} {joined}", name.words), CompletionKind::Fact);
            let text = format!("{} {joined} ", name.words);
            items
                .push(Completion { text, ..item }.detail(name.meaning).about(format!("name {}", name.words)));
        }
        What::Unit(kind) => units(place, kind, "", items),
        What::Relation => {
            for (sign, meaning) in [
                ("=", "equal"),
                ("<=", "at most"),
                (">=", "at least"),
                ("<", "less than"),
                (">", "more than"),
            ] {
                items.push(place.item(sign, CompletionKind::Word).detail(meaning));
            }
        }
        What::Value(kind) => of_kind(place, wanted, kind, items),
        What::Words(_) | What::Comma | What::Slash | What::End => {}
    }
}

fn of_kind(place: &Place<'_>, wanted: &Wanted<'_>, kind: &'static Kind, items: &mut Vec<Completion>) {
    match kind {
        Kind::Length | Kind::Elevation | Kind::AnyValue | Kind::Count => {
            numbers::that_follow(place, wanted, kind, items);
            units_behind_digits(place, kind, items);
        }
        Kind::Load | Kind::Stress | Kind::Area => units_behind_digits(place, kind, items),
        Kind::Side => {
            items.extend(Side::ALL.iter().map(|side| place.item(side.word(), CompletionKind::Word)));
        }
        Kind::Bar => items.extend((3..=11).map(|number| {
            place.item(format!("#{number}"), CompletionKind::Size).detail(format!("{number}/8\" bar"))
        })),
        Kind::Date => {
            if let Some(house) = place.house() {
                let Date { year, month, day } = house.today;
                let today = format!("{year:04}-{month:02}-{day:02}");
                items.push(place.item(today, CompletionKind::Number).detail("today"));
            }
        }
        Kind::Slug => slugs::of(place, wanted, items),
        Kind::Member => sizes::members(place, wanted, items),
        Kind::Dimensions(..) => sizes::footings(place, wanted, items),
        Kind::Text
        | Kind::Number
        | Kind::Percent
        | Kind::Name(_)
        | Kind::GridLine
        | Kind::GridRef
        | Kind::Point
        | Kind::Rect
        | Kind::Line
        | Kind::Word(_)
        | Kind::FreeWords
        | Kind::FactName
        | Kind::Comparison => {}
    }
}

/// The units of a number under the cursor that has none yet, or half of one.
fn units_behind_digits(place: &Place<'_>, kind: &Kind, items: &mut Vec<Completion>) {
    let typed = place.cursor.typed();
    let number = typed.trim_end_matches(|letter: char| letter.is_ascii_alphabetic());
    let is_number = number.ends_with(|last: char| last.is_ascii_digit())
        && number.chars().all(|sign| sign.is_ascii_digit() || matches!(sign, '.' | '-' | '/'));
    if is_number {
        units(place, kind, number, items);
    }
}

fn units(place: &Place<'_>, kind: &Kind, number: &str, items: &mut Vec<Completion>) {
    let units: &[&str] = match kind {
        Kind::Length | Kind::Elevation => &["in", "ft", "mm", "m"],
        Kind::Load => &["psf", "plf", "lb", "kip", "pcf", "kPa", "kN/m"],
        Kind::Stress => &["psi", "ksi", "MPa"],
        Kind::Area => &["sq ft"],
        Kind::AnyValue => &["in", "ft", "psf", "plf", "lb", "psi", "sq ft"],
        _ => &[],
    };
    let marks: &[&str] = match kind {
        Kind::Length | Kind::Elevation if !number.is_empty() => &["\"", "'"],
        _ => &[],
    };
    items.extend(marks.iter().map(|mark| place.item(format!("{number}{mark}"), CompletionKind::Unit)));
    let blank = if number.is_empty() { "" } else { " " };
    items.extend(units.iter().map(|unit| place.item(format!("{number}{blank}{unit}"), CompletionKind::Unit)));
}

/// Words of a fact. What a member is made of is not asked of steel and products.
fn word(place: &Place<'_>, wanted: &Wanted<'_>, words: &'static str) -> Option<Completion> {
    if !words.to_lowercase().starts_with(&place.cursor.typed().to_lowercase()) {
        return None;
    }
    let is_stuff = wanted.kind == Some(&Kind::Member);
    if is_stuff && !sizes::takes_stuff(place, wanted, words) {
        return None;
    }
    let item = place.item(words, if is_stuff { CompletionKind::Size } else { CompletionKind::Word });
    Some(match slugs::meaning_of_word(wanted, words) {
        Some(meaning) => item.detail(meaning),
        None => item,
    })
}

/// The words that can follow a comma, with the comma; it stands where the last value ends.
fn behind_comma(place: &Place<'_>, wanted: &Wanted<'_>, items: &mut Vec<Completion>) {
    let tokens = wanted.tokens;
    let Some(last) = tokens.last().filter(|_| place.cursor.typed().is_empty()) else { return };
    let comma = Token { kind: TokenKind::Comma, text: ",", span: LocalSpan::default() };
    let walk = next::next(&[wanted.reading.form], &[tokens, &[comma]].concat());
    let from = last.span.end as usize;
    let blanks = place.cursor.line.get(from..place.cursor.at).unwrap_or("");
    for next in &walk.next {
        if let What::Words(words) = next.what {
            let item = place.item_from(from, format!(", {words}"), CompletionKind::Word);
            items.push(Completion { filter: Some(format!("{blanks}, {words}")), ..item });
        }
    }
}

//! A member's size and stuff: how many, which section, made as what, of which wood and grade.

use chumsky::prelude::*;

use crate::syntax::facts::expected::Label;
use crate::syntax::facts::values::{dimension, name};
use crate::syntax::facts::{Misfit, Reader, token, words_of};
use crate::syntax::lexer::{Token, TokenKind};
use crate::syntax::value::{Member, Section};
use crate::syntax::vocabulary::ElementKind;
use crate::text::LocalSpan;
use crate::units::Length;

/// What a member is made as, when it is not sawn.
pub const MAKES: &[&str] = &["I-joist", "glulam", "LVL", "PSL", "LSL", "rim board"];

/// Stamps of species and their groups.
pub const SPECIES: &[&str] = &["SPF", "SPF-S", "DF", "DF-L", "HF", "SP", "SYP"];

/// Grades that are words; `No.2` and marks that begin with a figure (`24F-V4`, `1650f-1.5E`) are grades too.
pub const GRADES: &[&str] = &["SS", "No.1", "No.2", "No.3", "Stud", "Construction", "Standard", "Utility"];

/// Any member.
pub(super) fn member<'t, E: Misfit<'t>>() -> Reader<'t, Member, E> {
    plies()
        .or_not()
        .then(choice((marked_section(), built(), product())))
        .map_with(|(plies, section), read| (plies, section, last(read.slice())))
        .then(stuff())
        .map(|(head, stuff)| assembled(head, stuff))
        .labelled(Label::Plain("a member size"))
        .boxed()
}

/// A member that no number, name or fact can be taken for.
pub(super) fn unmistakable<'t, E: Misfit<'t>>() -> Reader<'t, Member, E> {
    let with_plies = plies()
        .then(choice((marked_section(), built(), product())))
        .map_with(|(plies, section), read| (Some(plies), section, last(read.slice())));
    let alone =
        choice((marked_section(), built())).map_with(|section, read| (None, section, last(read.slice())));
    choice((with_plies, alone)).then(stuff()).map(|(head, stuff)| assembled(head, stuff)).boxed()
}

/// What the words behind a section say.
#[derive(Default)]
struct Stuff {
    make: Option<Box<str>>,
    species: Option<Box<str>>,
    grade: Option<Box<str>>,
    is_treated: bool,
}

/// How many, the section with its make, and where the last word of the section stands.
type Head = (Option<u32>, SectionAndMake, LocalSpan);

fn last(tokens: &[Token<'_>]) -> LocalSpan {
    tokens.last().map(|token| token.span).unwrap_or_default()
}

fn assembled((plies, (section, make), last): Head, stuff: Stuff) -> Member {
    let make = make.or(stuff.make);
    let section = match section {
        // Bare whole numbers are nominal, unless a make says that the size is true.
        Section::Nominal(width, depth) if make.is_some() => {
            let [width, depth] = [width, depth].map(|inches| Length::inches(i64::from(inches)));
            Section::Built(width, depth)
        }
        section => section,
    };
    Member {
        plies: plies.unwrap_or(1),
        product_span: matches!(section, Section::Product(_)).then_some(last),
        section,
        make,
        species: stuff.species,
        grade: stuff.grade,
        is_treated: stuff.is_treated,
    }
}

/// `3-ply`, `2 of` or `(2)`.
fn plies<'t, E: Misfit<'t>>() -> Reader<'t, u32, E> {
    let ply = just_kind(|kind| match kind {
        TokenKind::Ply(plies) => Some(plies),
        _ => None,
    });
    let whole = || {
        just_kind(|kind| match kind {
            TokenKind::Whole(count) => Some(count),
            _ => None,
        })
    };
    let open = just_kind(|kind| (kind == TokenKind::Open).then_some(()));
    let close = just_kind(|kind| (kind == TokenKind::Close).then_some(()));
    choice((ply, whole().then_ignore(words_of("of")), whole().delimited_by(open, close))).boxed()
}

type SectionAndMake = (Section, Option<Box<str>>);

/// Sections that a word or a nominal size gives away.
fn marked_section<'t, E: Misfit<'t>>() -> Reader<'t, SectionAndMake, E> {
    let nominal = just_kind(|kind| match kind {
        TokenKind::Nominal((width, depth)) => Some(Section::Nominal(width, depth)),
        _ => None,
    });
    let by = || words_of("x");
    let two = || dimension().then_ignore(by()).then(dimension());
    let tube_sides = choice((
        two(),
        just_kind(|kind| match kind {
            TokenKind::Nominal((a, b)) => Some((Length::inches(i64::from(a)), Length::inches(i64::from(b)))),
            _ => None,
        }),
    ));
    let tube = words_of("HSS")
        .ignore_then(tube_sides)
        .then_ignore(by())
        .then(dimension())
        .map(|((one, other), wall)| Section::Tube(one, other, wall));
    let filled = words_of("filled pipe").ignore_then(dimension()).map(Section::FilledPipe);
    let pipe = words_of("pipe").ignore_then(two()).map(|(outside, wall)| Section::Pipe(outside, wall));
    let rolled = token(Label::Plain("a member size"), |token: &Token<'t>| {
        (token.kind == TokenKind::Word).then(|| rolled_mark(token.text)).flatten().map(Section::Rolled)
    });
    choice((nominal, rolled.boxed(), tube.boxed(), filled.boxed(), pipe.boxed()))
        .map(|section| (section, None))
        .boxed()
}

/// `1-3/4 x 16`, or a depth alone with its make: `11-7/8 I-joist`.
fn built<'t, E: Misfit<'t>>() -> Reader<'t, SectionAndMake, E> {
    let whole = || {
        just_kind(|kind| match kind {
            TokenKind::Whole(inches) => Some(inches),
            _ => None,
        })
    };
    let nominal = whole()
        .then_ignore(words_of("x"))
        .then(whole())
        .map(|(width, depth)| (Section::Nominal(width, depth), None));
    let second = words_of("x").ignore_then(dimension()).then(make().or_not());
    let alone = make().map(|make| (None, Some(make)));
    let true_size = dimension().then(choice((second.map(|(depth, make)| (Some(depth), make)), alone))).map(
        |(first, (second, make))| match second {
            Some(second) => (Section::Built(first, second), make),
            None => (Section::Depth(first), make),
        },
    );
    choice((nominal.boxed(), true_size.boxed())).boxed()
}

fn product<'t, E: Misfit<'t>>() -> Reader<'t, SectionAndMake, E> {
    name(&[ElementKind::Product]).map(|name| (Section::Product(name), None)).boxed()
}

fn stuff<'t, E: Misfit<'t>>() -> Reader<'t, Stuff, E> {
    let treated = || words_of("treated").or_not().map(|found| found.is_some());
    make()
        .or_not()
        .then(treated())
        .then(listed("a species", SPECIES).or_not())
        .then(grade().or_not())
        .then(treated())
        .map(|((((make, before), species), grade), behind)| Stuff {
            make,
            species,
            grade,
            is_treated: before || behind,
        })
        .boxed()
}

fn make<'t, E: Misfit<'t>>() -> Reader<'t, Box<str>, E> {
    let makes = MAKES.iter().map(|make| words_of(make).map(move |()| Box::from(*make)));
    choice(makes.collect::<Vec<_>>()).labelled(Label::Plain("what it is made as")).boxed()
}

fn grade<'t, E: Misfit<'t>>() -> Reader<'t, Box<str>, E> {
    let number = || {
        just_kind(|kind| match kind {
            TokenKind::Whole(number) => Some(number),
            _ => None,
        })
    };
    let class = words_of("class").ignore_then(number()).map(|number| format!("class {number}").into());
    let numbered = words_of("No.").ignore_then(number()).map(|number| format!("No.{number}").into());
    let marked = token(Label::Plain("a grade"), |token: &Token<'t>| match token.kind {
        TokenKind::Marking => Some(token.text.into()),
        TokenKind::Bar(number @ 1..=3) => Some(format!("No.{number}").into()),
        // The series of an I-joist: `PRI-40`.
        TokenKind::Word => {
            let is_series = token.text.starts_with("PRI-");
            is_series.then(|| token.text.into())
        }
        _ => None,
    });
    let rated =
        words_of("MSR").ignore_then(just_text(TokenKind::Marking)).map(|mark| format!("MSR {mark}").into());
    choice((listed("a grade", GRADES), marked.boxed(), class.boxed(), numbered.boxed(), rated.boxed()))
        .labelled(Label::Plain("a grade"))
        .boxed()
}

/// A word of a closed list.
fn listed<'t, E: Misfit<'t>>(label: &'static str, words: &'static [&'static str]) -> Reader<'t, Box<str>, E> {
    token(Label::Plain(label), move |token: &Token<'t>| {
        words.iter().find(|word| token.is_word(word)).map(|word| Box::from(*word))
    })
    .boxed()
}

fn just_kind<'t, O: 't, E: Misfit<'t>>(read: impl Fn(TokenKind) -> Option<O> + 't) -> Reader<'t, O, E> {
    token(Label::Plain("a member size"), move |token: &Token<'t>| read(token.kind)).boxed()
}

fn just_text<'t, E: Misfit<'t>>(kind: TokenKind) -> Reader<'t, &'t str, E> {
    token(Label::Plain("a grade"), move |token: &Token<'t>| (token.kind == kind).then_some(token.text))
        .boxed()
}

/// The mark of a rolled shape in capitals, if the word is one: one or two letters, a depth, `x`, a weight.
fn rolled_mark(word: &str) -> Option<Box<str>> {
    let mark = word.to_uppercase().replace('×', "X");
    let figures = mark.trim_start_matches(|letter: char| letter.is_ascii_uppercase() && letter != 'X');
    let n_letters = mark.len() - figures.len();
    let (depth, weight) = figures.split_once('X')?;
    let is_figures = |text: &str| {
        text.starts_with(|first: char| first.is_ascii_digit())
            && text.chars().all(|character| character.is_ascii_digit() || character == '.')
    };
    ((1..=2).contains(&n_letters) && is_figures(depth) && is_figures(weight)).then(|| mark.into())
}

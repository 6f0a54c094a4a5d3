//! Specs at random, drawn from the vocabulary's own forms: every line can be read, the house makes no sense.
#![allow(dead_code, reason = "each test takes the part it needs")]

use storyrod::syntax::form::{Form, Kind};
use storyrod::syntax::vocabulary::{
    ELEMENTS, ElementKind, ElementSpec, FACT_NAMES, FactNameSpec, FactSpec, Naming,
};

use crate::dice::Dice;

/// A spec of so many elements, each with most of its facts and a claim.
pub fn spec(dice: &mut Dice, n_elements: usize) -> String {
    let mut text = String::new();
    for _ in 0..n_elements {
        let spec = dice.one_of(ELEMENTS);
        text.push_str(&element(dice, spec));
        text.push('\n');
    }
    text
}

/// An element with its facts.
pub fn element(dice: &mut Dice, spec: &ElementSpec) -> String {
    let mut text = heading(dice, spec);
    for fact in spec.all_facts() {
        if dice.once_in(5) {
            continue;
        }
        let times = if fact.repeatable { dice.between(1, 3) } else { 1 };
        for _ in 0..times {
            text.push_str(&format!("  {}\n", fact_line(dice, fact)));
        }
    }
    let claimable: Vec<_> = spec.claimable().collect();
    if !claimable.is_empty() {
        let words = dice.one_of(&claimable).words;
        let value = value(dice, &Kind::AnyValue);
        text.push_str(&format!("  {words} should be {value}\n"));
    }
    text
}

/// A line of a fact, without indent.
pub fn fact_line(dice: &mut Dice, fact: &FactSpec) -> String {
    loop {
        let mut words = vec![fact.phrase.to_owned()];
        put(dice, &fact.form, &mut words);
        let line = words.join(" ").replace(" ,", ",");
        // Behind a bare figure `in` means inches.
        if !line
            .split_once(" in web")
            .is_some_and(|(before, _)| before.ends_with(|c: char| c.is_ascii_digit()))
        {
            return line;
        }
    }
}

fn heading(dice: &mut Dice, spec: &ElementSpec) -> String {
    let title = if dice.once_in(2) { format!(" {}", value(dice, &Kind::Text)) } else { String::new() };
    let keyword =
        if dice.once_in(4) { spec.also.first().copied().unwrap_or(spec.keyword) } else { spec.keyword };
    match spec.naming {
        Naming::Name => format!("{keyword} {}{title}\n", name(dice)),
        Naming::Title => format!("{keyword}{title}\n"),
        Naming::None => format!("{keyword}\n"),
    }
}

fn put(dice: &mut Dice, form: &Form, words: &mut Vec<String>) {
    match form {
        Form::Nothing => {}
        Form::Words(fixed) | Form::Mark(fixed) => words.push((*fixed).to_owned()),
        // Right behind a numbered grid line a fraction would belong to the number.
        Form::Slot(_, Kind::Length) if words.last().is_some_and(|word| NUMBERED.contains(&word.as_str())) => {
            words.push(format!("{}'-3 1/2\"", dice.between(1, 40)));
        }
        Form::Slot(_, kind) => words.push(value(dice, kind)),
        Form::Comma => words.push(",".to_owned()),
        Form::Sequence(parts) => parts.iter().for_each(|part| put(dice, part, words)),
        Form::Optional(inner) => {
            if dice.once_in(2) {
                put(dice, inner, words);
            }
        }
        Form::OneOf(choices) => {
            let choice = dice.one_of(choices);
            put(dice, &choice, words);
        }
        Form::List(inner) => {
            put(dice, inner, words);
            for _ in 0..dice.between(0, 3) {
                words.push(",".to_owned());
                put(dice, inner, words);
            }
        }
    }
}

/// A value of a kind, as a person could write it.
fn value(dice: &mut Dice, kind: &Kind) -> String {
    match kind {
        Kind::Length => length(dice),
        Kind::Elevation => elevation(dice),
        Kind::Load => {
            let number = dice.between(1, 20_000);
            format!("{number} {}", dice.one_of(&["psf", "plf", "lb", "kip", "pcf", "kPa", "kN/m"]))
        }
        Kind::Stress => dice.one_of(&["875 psi", "1.4e6 psi", "50 ksi", "12 MPa", "2500 psi"]).to_string(),
        Kind::Area => format!("{} sq ft", dice.between(1, 900)),
        Kind::Date => {
            format!("20{:02}-{:02}-{:02}", dice.between(0, 99), dice.between(1, 12), dice.between(1, 28))
        }
        Kind::Text => {
            dice.one_of(&["\"centre girder\"", "\"see note 3, -- not to scale\"", "\"é 北\""]).to_string()
        }
        Kind::Count => dice.between(1, 40).to_string(),
        Kind::Number => dice.one_of(&["6", "7.5", "12", "250e6"]).to_string(),
        Kind::Percent => format!("{}%", dice.between(1, 30)),
        Kind::Name(_) => name(dice),
        Kind::GridLine => grid_line(dice),
        Kind::GridRef => grid_ref(dice),
        Kind::Point => point(dice),
        Kind::Rect => {
            let [x, x_to, y, y_to] = [grid_ref(dice), grid_ref(dice), grid_ref(dice), grid_ref(dice)];
            format!("{x} to {x_to} by {y} to {y_to}")
        }
        Kind::Line => format!("{} to {}", point(dice), point(dice)),
        Kind::Side => dice.one_of(&["north", "south", "east", "west", "left", "right"]).to_string(),
        Kind::Dimensions(least, most) => dimensions(dice, *least, *most),
        Kind::Member => member(dice),
        Kind::Word(words) => dice.one_of(words).to_owned(),
        Kind::Slug => dice.one_of(&["bearing-short", "irc-2021", "riser-difference"]).to_string(),
        Kind::FreeWords => {
            dice.one_of(&["plank", "fir plank", "linoleum on board", "crushed stone"]).to_string()
        }
        Kind::Bar => format!("#{}", dice.between(3, 8)),
        Kind::FactName => fact_name(dice),
        Kind::Comparison => comparison(dice),
        Kind::AnyValue => match dice.between(0, 3) {
            0 => value(dice, &Kind::Load),
            1 => value(dice, &Kind::Area),
            2 => value(dice, &Kind::Count),
            _ => length(dice),
        },
    }
}

fn length(dice: &mut Dice) -> String {
    let (feet, inches, fraction) = (dice.between(1, 40), dice.between(0, 11), fraction(dice));
    match dice.between(0, 7) {
        0 => format!("{feet}'"),
        1 => format!("{feet}'-{inches}\""),
        2 => format!("{feet}'-{inches} {fraction}\""),
        3 => format!("{feet}' {inches}-{fraction}\""),
        4 => format!("{feet}-{fraction}\""),
        5 => format!("{fraction}\""),
        6 => format!("{} mm", dice.between(1, 9_000)),
        _ => format!("{inches}.25 in"),
    }
}

fn fraction(dice: &mut Dice) -> &'static str {
    dice.one_of(&["1/2", "1/4", "3/4", "5/8", "1/16", "13/16", "31/32", "5/64"])
}

fn elevation(dice: &mut Dice) -> String {
    let sign = dice.one_of(&["", "", "-", "EL ", "EL "]);
    format!("{sign}{}'-{} {}\"", dice.between(0, 110), dice.between(0, 11), fraction(dice))
}

const LETTERED: &[&str] = &["A", "B", "C", "AA", "north-wall"];
const NUMBERED: &[&str] = &["1", "2", "3", "3.4", "12"];

fn grid_line(dice: &mut Dice) -> String {
    let axis = dice.one_of(&[LETTERED, NUMBERED]);
    dice.one_of(axis).to_owned()
}

fn grid_ref(dice: &mut Dice) -> String {
    let axis = dice.one_of(&[LETTERED, NUMBERED]);
    grid_ref_of(dice, axis)
}

fn grid_ref_of(dice: &mut Dice, axis: &[&str]) -> String {
    let line = dice.one_of(axis);
    match dice.between(0, 3) {
        0 => format!("{line} plus {}", length(dice)),
        1 => format!("{line} less {}", length(dice)),
        _ => line.to_owned(),
    }
}

/// Letters name the lines of one axis, digits those of the other.
fn point(dice: &mut Dice) -> String {
    let (x_axis, y_axis) = dice.one_of(&[(LETTERED, NUMBERED), (NUMBERED, LETTERED)]);
    let (x, y) = (grid_ref_of(dice, x_axis), grid_ref_of(dice, y_axis));
    if x.contains(' ') || y.contains(' ') { format!("{x} / {y}") } else { format!("{x}/{y}") }
}

fn dimensions(dice: &mut Dice, least: usize, most: usize) -> String {
    let least = i64::try_from(least).unwrap();
    let most = i64::try_from(most).unwrap();
    let side = |dice: &mut Dice| match dice.between(0, 3) {
        0 => format!("{}-{}", dice.between(1, 20), fraction(dice)),
        1 => fraction(dice).to_owned(),
        _ => length(dice),
    };
    (0..dice.between(least, most)).map(|_| side(dice)).collect::<Vec<_>>().join(" x ")
}

fn member(dice: &mut Dice) -> String {
    dice.one_of(&[
        "2x10",
        "2x8 SPF No.2",
        "2x6 treated",
        "2x10 SPF No.2 treated",
        "3-ply 2x10 SPF No.2",
        "8x8 DF No.1",
        "11-7/8 I-joist class 40",
        "5-1/8 x 12 glulam 24F",
        "1-1/8\" rim board",
        "W8x24",
        "HSS 4 x 4 x 3/16",
        "pipe 3-1/2 x 0.226",
        "filled pipe 4",
        "3-ply LV14",
    ])
    .to_string()
}

/// A name that opens no element and is no word of any form.
fn name(dice: &mut Dice) -> String {
    let letter = dice.one_of(&["Q", "Wn", "Beam_", "é", "K-", "J."]);
    format!("{letter}{}", dice.between(1, 999))
}

fn fact_name(dice: &mut Dice) -> String {
    let name: &FactNameSpec = dice.one_of(&FACT_NAMES.iter().collect::<Vec<_>>());
    let mut text = String::new();
    if name.takes_case && dice.once_in(2) {
        text.push_str(dice.one_of(&["dead ", "live ", "snow ", "all "]));
    }
    text.push_str(name.words);
    for argument in name.arguments() {
        text.push_str(&format!(" {} {}", argument.joined_by, self::name(dice)));
    }
    text
}

fn comparison(dice: &mut Dice) -> String {
    let (left, sign) = (expression(dice), dice.one_of(&["=", "<", "<=", ">", ">="]).to_string());
    let within = if dice.once_in(3) { format!(" within {}", length(dice)) } else { String::new() };
    format!("{left} {sign} {}{within}", expression(dice))
}

fn expression(dice: &mut Dice) -> String {
    let mut text = term(dice);
    for _ in 0..dice.between(0, 2) {
        let sign = dice.one_of(&["plus", "less"]);
        text.push_str(&format!(" {sign} {}", term(dice)));
    }
    text
}

fn term(dice: &mut Dice) -> String {
    match dice.between(0, 5) {
        0 => format!("{} times {}", dice.between(2, 9), fact_name(dice)),
        1 => format!("half of {}", fact_name(dice)),
        2 => format!("half of {}", length(dice)),
        3 => length(dice),
        _ => fact_name(dice),
    }
}

/// Every kind of element once.
pub fn every_element(dice: &mut Dice) -> String {
    ELEMENTS
        .iter()
        .filter(|spec| spec.kind != ElementKind::Project)
        .map(|spec| element(dice, spec) + "\n")
        .collect()
}

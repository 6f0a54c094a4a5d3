//! The ways people write a dimension, and what is refused because it can be read in two ways.
//!
//! Each reader tries one way at a text's beginning, the longest first. A spelling with several readings becomes
//! [`TokenKind::Wrong`] and names them: a dimension is never guessed.

use crate::syntax::ProblemKind;
use crate::syntax::lexer::mixed::{Mixed, mixed, plain_number};
use crate::syntax::lexer::numbers::{self, Fault, Figures, INCH, Rest, Unit};
use crate::syntax::lexer::{Reading, TokenKind};
use crate::syntax::value::Load;
use crate::units::Length;

const FOOT_MARKS: &[&str] = &["'", "’", "′"];
const INCH_MARKS: &[&str] = &["\"", "”", "″", "''", "’’", "′′"];
const SIZE_MARKS: &[char] = &['x', 'X', '×'];

/// True for a character that can begin a number.
pub(super) fn begins(character: char) -> bool {
    character.is_ascii_digit() || numbers::vulgar(character).is_some()
}

/// The number, length, load, size, day or mark at the beginning of a text that begins with a figure.
pub(super) fn quantity(text: &str) -> Reading {
    let found = day(text)
        .or_else(|| with_commas(text))
        .or_else(|| too_long(text))
        .or_else(|| feet(text))
        .or_else(|| dashed(text))
        .or_else(|| nominal(text))
        .or_else(|| number(text));
    found.unwrap_or_else(|| wrong(text.chars().next().map_or(0, char::len_utf8), ProblemKind::StrayCharacter))
}

/// A quantity behind a sign. Only elevations are written with `+`, `±` or `(-)`.
pub(super) fn signed(text: &str) -> Reading {
    let mut rest = Rest(text);
    let is_plain = rest.take_one_of(&["-", "−"]);
    let is_negative = is_plain || rest.take_one_of(&["(-) ", "(-)"]);
    let is_about = !is_negative && rest.take_one_of(&["±", "+/-"]);
    if !is_negative && !is_about {
        rest.take("+");
    }
    let sign_length = text.len() - rest.0.len();
    let mut reading = quantity(rest.0);
    reading.length += sign_length;
    reading.kind = match reading.kind {
        _ if is_about && !is_zero(reading.kind) => {
            let plain = rest.0.get(..reading.length - sign_length).unwrap_or("");
            return unclear(reading.length, [plain.into(), format!("within {plain}")]);
        }
        TokenKind::Whole(_) | TokenKind::Length(_) if is_about => TokenKind::Elevation(Length::ZERO),
        TokenKind::Length(length) if is_plain => TokenKind::Length(-length),
        TokenKind::Length(length) if is_negative => TokenKind::Elevation(-length),
        TokenKind::Length(length) => TokenKind::Elevation(length),
        TokenKind::Whole(number) if is_negative => TokenKind::Decimal(-f64::from(number)),
        TokenKind::Decimal(number) if is_negative => TokenKind::Decimal(-number),
        TokenKind::Fraction(length) if is_negative => TokenKind::Fraction(-length),
        TokenKind::Load(load) if is_negative => TokenKind::Load(negative(load)),
        kind => kind,
    };
    if is_negative && let Some(ProblemKind::UnclearDimension(readings)) = &mut reading.problem {
        readings.iter_mut().for_each(|reading| *reading = format!("-{reading}").into());
    }
    reading
}

/// An elevation behind `EL`: a length, never a number without a unit.
pub(super) fn elevation(text: &str) -> Reading {
    let mut rest = Rest(text);
    rest.take("EL");
    rest.take(".");
    rest.take_blanks();
    let opening = text.len() - rest.0.len();
    let mut reading = if rest.is_at_figure() { quantity(rest.0) } else { signed(rest.0) };
    let plain = rest.0.get(..reading.length).unwrap_or("");
    reading.length += opening;
    match reading.kind {
        TokenKind::Length(length) => Reading { kind: TokenKind::Elevation(length), ..reading },
        TokenKind::Elevation(_) | TokenKind::Wrong => reading,
        _ if is_zero(reading.kind) => Reading { kind: TokenKind::Elevation(Length::ZERO), ..reading },
        _ => unclear(reading.length, [format!("EL {plain} ft")]),
    }
}

fn is_zero(kind: TokenKind) -> bool {
    matches!(kind, TokenKind::Whole(0) | TokenKind::Length(Length::ZERO))
}

fn negative(load: Load) -> Load {
    match load {
        Load::Area(value) => Load::Area(value * -1.0),
        Load::Line(value) => Load::Line(value * -1.0),
        Load::Point(value) => Load::Point(value * -1.0),
        Load::Volume(value) => Load::Volume(value * -1.0),
    }
}

fn right(length: usize, kind: TokenKind) -> Reading {
    Reading { length, kind, problem: None }
}

fn wrong(length: usize, problem: ProblemKind) -> Reading {
    Reading { length, kind: TokenKind::Wrong, problem: Some(problem) }
}

fn unclear(length: usize, readings: impl IntoIterator<Item = String>) -> Reading {
    wrong(length, ProblemKind::UnclearDimension(readings.into_iter().map(Into::into).collect()))
}

fn settled(length: usize, kind: Result<TokenKind, ProblemKind>) -> Reading {
    match kind {
        Ok(kind) => right(length, kind),
        Err(problem) => wrong(length, problem),
    }
}

/// `2027-03-01`
fn day(text: &str) -> Option<Reading> {
    let (length, day) = numbers::day(text)?;
    Some(settled(length, day.map(TokenKind::Date)))
}

/// `12,000`: refused, since a comma parts a list.
fn with_commas(text: &str) -> Option<Reading> {
    let mut rest = Rest(text);
    let mut plain = rest.take_digits()?.to_owned();
    let mut end = None;
    loop {
        let mut group = rest;
        let digits = group.take(",").then(|| group.take_digits()).flatten();
        let Some(digits) = digits.filter(|digits| digits.len() == 3) else { break };
        plain.push_str(digits);
        rest = group;
        end = Some(text.len() - rest.0.len());
    }
    Some(wrong(end?, ProblemKind::CommaInNumber(plain.into())))
}

/// More figures than any house needs.
fn too_long(text: &str) -> Option<Reading> {
    let mut rest = Rest(text);
    rest.take_digits()?;
    let mut point = rest;
    if point.take(".") && point.take_digits().is_some() {
        rest = point;
    }
    let figures = text.get(..text.len() - rest.0.len())?;
    (Figures::decimal(figures) == Err(Fault::TooLarge))
        .then(|| wrong(figures.len(), ProblemKind::NumberTooLarge))
}

/// `12'`, `12'-6"`, `12'-6 1/2"`, `12' 6"`, `7'-6.5"`.
fn feet(text: &str) -> Option<Reading> {
    let mut rest = Rest(text);
    let feet = plain_number(&mut rest)?;
    rest.take(" ");
    if INCH_MARKS.iter().any(|mark| rest.0.starts_with(mark)) || !rest.take_one_of(FOOT_MARKS) {
        return None;
    }
    let length_of = |rest: Rest<'_>| text.len() - rest.0.len();
    let (feet_units, feet_are_exact) = feet.of(Length::feet(1).to_units());

    if let Some((inches, after)) = dashed_inches(rest) {
        let whole = numbers::checked(feet_units).unwrap_or_default();
        let inches = inches.units().ok().and_then(|units| numbers::checked(units).ok()).unwrap_or_default();
        let readings = [(whole + inches).in_feet().to_string(), (whole - inches).in_feet().to_string()];
        return Some(unclear(length_of(after), readings));
    }
    let Some(Inches { part, end, is_marked }) = inches_behind_feet(rest) else {
        let kind = numbers::with_unit(feet, "ft", Unit::Length(Length::feet(1).to_units(), 2));
        return Some(settled(length_of(rest), kind));
    };
    let length = length_of(end);
    if part.fraction.is_some_and(Figures::is_improper) || !feet_are_exact || !feet.is_whole() {
        return Some(wrong(length, ProblemKind::UnclearDimension(Vec::new())));
    }
    let units = match part.units() {
        Ok(inches) => feet_units + inches,
        Err(inches) => return Some(wrong(length, numbers::between_sixty_fourths(feet_units + inches, true))),
    };
    let reading = settled(length, numbers::checked(units).map(TokenKind::Length));
    let TokenKind::Length(value) = reading.kind else { return Some(reading) };
    let is_plain = is_marked && units - feet_units < i128::from(Length::feet(1).to_units());
    let odd = || ProblemKind::OddDimension(value.in_feet().to_the(64).to_string().into());
    Some(Reading { problem: (!is_plain).then(odd), ..reading })
}

/// What stands behind the feet of a length.
struct Inches<'t> {
    part: Mixed,
    end: Rest<'t>,
    is_marked: bool,
}

/// Inches joined to feet by a dash, by one blank, or by nothing. Only behind a blank must they carry their mark.
fn inches_behind_feet(rest: Rest<'_>) -> Option<Inches<'_>> {
    let mut rest = rest;
    let is_apart = !rest.take("-") && rest.take(" ");
    let part = mixed(&mut rest)?;
    let is_marked = takes_inch_mark(&mut rest);
    (is_marked || (!is_apart && !rest.next().is_some_and(char::is_alphanumeric))).then_some(Inches {
        part,
        end: rest,
        is_marked,
    })
}

/// Inches behind a dash with a blank on either side of it: joined or taken away?
fn dashed_inches(rest: Rest<'_>) -> Option<(Mixed, Rest<'_>)> {
    let mut rest = rest;
    let blanks_before = rest.take_blanks();
    let blanks_behind = rest.take("-").then(|| rest.take_blanks())?;
    let part = mixed(&mut rest)?;
    takes_inch_mark(&mut rest);
    (blanks_before + blanks_behind > 0).then_some((part, rest))
}

fn takes_inch_mark(rest: &mut Rest<'_>) -> bool {
    if rest.take_one_of(INCH_MARKS) {
        return true;
    }
    let mut behind = *rest;
    let is_inch = numbers::unit(&mut behind).is_some_and(|(_, unit)| unit.is_inch());
    if is_inch {
        *rest = behind;
    }
    is_inch
}

/// `12-6` and `9 - 1/2"`: feet and inches, or one number less another? Not the dash of `3-ply` or of `9-1/2"`.
fn dashed(text: &str) -> Option<Reading> {
    let mut rest = Rest(text);
    let whole = plain_number(&mut rest).filter(|figures| figures.is_whole())?;
    let blanks_before = rest.take_blanks();
    let blanks_behind = rest.take("-").then(|| rest.take_blanks())?;
    let part = mixed(&mut rest)?;
    let is_joined = blanks_before + blanks_behind == 0;
    // A dash that touches only the second number is that number's sign.
    let is_sign = blanks_before > 0 && blanks_behind == 0;
    if is_sign || (is_joined && (part.whole.is_none() || rest.next().is_some_and(char::is_alphabetic))) {
        return None;
    }
    takes_inch_mark(&mut rest);
    let length = text.len() - rest.0.len();
    if part.whole.is_none() {
        let inches = Mixed { whole: Some(whole), ..part };
        return Some(unclear(length, inches.units().map(in_inches)));
    }
    let feet = whole.of(Length::feet(1).to_units()).0;
    let joined = part.units().map_or(feet, |inches| feet + inches);
    Some(match numbers::checked(joined) {
        Ok(joined) => {
            let less = text.get(..length).unwrap_or("").replacen('-', " less ", 1);
            unclear(
                length,
                [joined.in_feet().to_string(), less.split_whitespace().collect::<Vec<_>>().join(" ")],
            )
        }
        Err(problem) => wrong(length, problem),
    })
}

fn in_inches(units: i128) -> String {
    numbers::checked(units).unwrap_or_default().in_inches().to_the(64).to_string()
}

/// `2x10`; not the beginning of `4x4x1/4` or of `2x10'`.
fn nominal(text: &str) -> Option<Reading> {
    let mut rest = Rest(text);
    let width = rest.take_digits()?.parse().ok()?;
    rest.0 = rest.0.strip_prefix(SIZE_MARKS)?;
    let depth = rest.take_digits()?.parse().ok()?;
    let length = text.len() - rest.0.len();
    let ends = match rest.next() {
        Some('.') => {
            rest.take(".");
            !rest.is_at_figure()
        }
        Some('-') => {
            rest.take("-");
            !rest.is_at_figure()
        }
        Some(next) => !next.is_alphanumeric() && !"/'\"’”′″_×".contains(next),
        None => true,
    };
    ends.then(|| right(length, TokenKind::Nominal((width, depth))))
}

/// Everything that begins with one number: inches, metric lengths, loads, shares, plies, marks, bare numbers.
fn number(text: &str) -> Option<Reading> {
    let mut rest = Rest(text);
    if let Some((value, after)) = scientific(rest) {
        let mut behind = after;
        let kind = match numbers::unit(&mut behind) {
            Some((_, Unit::Stress(of))) => TokenKind::Stress(of(value)),
            Some((_, Unit::Load(of))) => TokenKind::Load(of(value)),
            Some((_, Unit::Area(of))) => TokenKind::Area(of(value)),
            // A length is exact: its unit stays behind, so that the line can't be read as if it had none.
            Some((_, Unit::Length(..))) | None => {
                behind = after;
                TokenKind::Decimal(value)
            }
        };
        return Some(right(text.len() - behind.0.len(), kind));
    }
    let part = mixed(&mut rest)?;
    let unit = if rest.take_one_of(INCH_MARKS) { Some(("\"", INCH)) } else { numbers::unit(&mut rest) };
    let length = text.len() - rest.0.len();
    if let Some(fraction) = part.fraction {
        return Some(fractional(text, length, part, fraction, unit));
    }
    let figures = part.whole?;
    if let Some((spelling, unit)) = unit {
        return Some(settled(length, numbers::with_unit(figures, spelling, unit)));
    }
    if rest.take("%") {
        return Some(right(length + 1, TokenKind::Percent(figures.to_f64())));
    }
    let whole = figures.is_whole().then(|| u32::try_from(figures.numerator).ok());
    let mut behind = rest;
    if let Some(Some(plies)) = whole
        && behind.take("-ply")
        && !behind.next().is_some_and(char::is_alphanumeric)
    {
        return Some(right(text.len() - behind.0.len(), TokenKind::Ply(plies)));
    }
    if let Some(mark) = mark(rest) {
        return Some(right(length + mark, TokenKind::Marking));
    }
    Some(match whole {
        Some(Some(number)) => right(length, TokenKind::Whole(number)),
        Some(None) => wrong(length, ProblemKind::NumberTooLarge),
        None => right(length, TokenKind::Decimal(figures.to_f64())),
    })
}

/// A number that ends in a fraction.
fn fractional(
    text: &str,
    length: usize,
    part: Mixed,
    fraction: Figures,
    unit: Option<(&'static str, Unit)>,
) -> Reading {
    if fraction.denominator == 0 {
        return wrong(length, ProblemKind::UnclearDimension(Vec::new()));
    }
    if fraction.is_improper() {
        return wrong(length, ProblemKind::UnclearDimension(improper_readings(text, part, fraction)));
    }
    let kind = match unit {
        None => part
            .units()
            .map_err(|units| numbers::between_sixty_fourths(units, false))
            .and_then(numbers::checked),
        Some((_, unit)) if unit.is_inch() => {
            let units = part.units().map_err(|units| numbers::between_sixty_fourths(units, false));
            return settled(length, units.and_then(numbers::checked).map(TokenKind::Length));
        }
        Some((spelling, unit)) => {
            let whole = part.whole.map_or(0, |whole| whole.numerator);
            let numerator = whole * fraction.denominator + fraction.numerator;
            return settled(length, numbers::with_unit(Figures { numerator, ..fraction }, spelling, unit));
        }
    };
    settled(length, kind.map(TokenKind::Fraction))
}

/// `11/2"`: a dropped blank (1-1/2"), or eleven halves (5-1/2")?
fn improper_readings(text: &str, part: Mixed, fraction: Figures) -> Vec<Box<str>> {
    let mut readings = Vec::new();
    let (above, below) = (fraction.numerator.to_string(), fraction.denominator.to_string());
    if part.whole.is_none() && text.starts_with(above.as_str()) {
        for (at, _) in above.char_indices().skip(1) {
            let (whole, above) = above.split_at(at);
            let is_proper = !above.starts_with('0')
                && Figures::fraction(above, &below).is_ok_and(|figures| !figures.is_improper());
            if is_proper {
                readings.push(format!("{whole}-{above}/{below}\"").into());
            }
        }
    }
    if let Ok(units) = part.units() {
        readings.push(in_inches(units).into());
    }
    readings
}

/// `1.4e6`
fn scientific(rest: Rest<'_>) -> Option<(f64, Rest<'_>)> {
    let mut after = rest;
    plain_number(&mut after)?;
    if !after.take_one_of(&["e", "E"]) {
        return None;
    }
    after.take_one_of(&["+", "-"]);
    after.take_digits().filter(|digits| digits.len() <= 2)?;
    if after.next().is_some_and(char::is_alphanumeric) {
        return None;
    }
    let text = rest.0.get(..rest.0.len() - after.0.len())?;
    Some((text.parse().ok()?, after))
}

/// How long the letters behind a number are that make it a mark: the `F-V4` of `24F-V4`. An `x` before a figure parts
/// two lengths instead.
fn mark(rest: Rest<'_>) -> Option<usize> {
    let mut after = rest;
    if !after.next()?.is_alphabetic() {
        return None;
    }
    if after.0.strip_prefix(SIZE_MARKS).is_some_and(|behind| behind.starts_with(begins)) {
        return None;
    }
    loop {
        after.take_while(|character| character.is_alphanumeric() && numbers::vulgar(character).is_none());
        let mut behind = after;
        if !behind.take_one_of(&["-", "."]) || !behind.next().is_some_and(char::is_alphanumeric) {
            return Some(rest.0.len() - after.0.len());
        }
        after = behind;
    }
}

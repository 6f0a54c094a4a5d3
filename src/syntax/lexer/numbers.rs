//! Figures, fractions, units and days, read exactly.

use crate::syntax::ProblemKind;
use crate::syntax::lexer::TokenKind;
use crate::syntax::value::{Date, Load};
use crate::units::{Area, AreaLoad, Density, Force, Length, LineLoad, Stress};

/// More figures than this in a row are no number of any house.
const MOST_FIGURES: usize = 12;

/// What is left of a text while something is read from its beginning. A copy is a place to come back to.
#[derive(Clone, Copy)]
pub(super) struct Rest<'t>(pub &'t str);

impl<'t> Rest<'t> {
    /// The next character.
    pub fn next(self) -> Option<char> {
        self.0.chars().next()
    }

    /// True before a figure or a fraction in one character.
    pub fn is_at_figure(self) -> bool {
        self.next().is_some_and(|character| character.is_ascii_digit() || vulgar(character).is_some())
    }

    /// Steps over one character.
    pub fn skip(&mut self) {
        let mut characters = self.0.chars();
        characters.next();
        self.0 = characters.as_str();
    }

    /// Steps over `mark` if it stands here.
    pub fn take(&mut self, mark: &str) -> bool {
        match self.0.strip_prefix(mark) {
            Some(rest) => {
                self.0 = rest;
                true
            }
            None => false,
        }
    }

    /// Steps over the first of these marks that stands here.
    pub fn take_one_of(&mut self, marks: &[&str]) -> bool {
        marks.iter().any(|mark| self.take(mark))
    }

    /// Steps over the characters that `fit` and returns them.
    pub fn take_while(&mut self, fit: impl Fn(char) -> bool) -> &'t str {
        let rest = self.0.trim_start_matches(fit);
        let (taken, rest) = self.0.split_at(self.0.len() - rest.len());
        self.0 = rest;
        taken
    }

    /// Steps over digits and returns them; `None` when there are none.
    pub fn take_digits(&mut self) -> Option<&'t str> {
        let digits = self.take_while(|character| character.is_ascii_digit());
        (!digits.is_empty()).then_some(digits)
    }

    /// Steps over blanks and says how many there were.
    pub fn take_blanks(&mut self) -> usize {
        self.take_while(|character| matches!(character, ' ' | '\t' | '\u{a0}')).chars().count()
    }
}

/// A number as its figures say: `numerator / denominator`, exact.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Figures {
    pub numerator: i128,
    pub denominator: i128,
    /// Written as a fraction, so that neighbours are named as fractions too.
    pub is_fraction: bool,
}

/// Why figures are no number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Fault {
    TooLarge,
}

impl Figures {
    /// From a text of digits with at most one point.
    pub fn decimal(text: &str) -> Result<Self, Fault> {
        let (whole, part) = text.split_once('.').unwrap_or((text, ""));
        let significant = whole.trim_start_matches('0').len() + part.len();
        if significant > MOST_FIGURES {
            return Err(Fault::TooLarge);
        }
        let digits = whole.bytes().chain(part.bytes()).map(|digit| i128::from(digit.wrapping_sub(b'0')));
        let numerator = digits.fold(0, |number, digit| number * 10 + digit);
        let denominator = 10_i128.pow(u32::try_from(part.len()).unwrap_or(0));
        Ok(Self { numerator, denominator, is_fraction: false })
    }

    /// From the digits above and below a fraction's line. The lower may be zero; nobody divides by it here.
    pub fn fraction(above: &str, below: &str) -> Result<Self, Fault> {
        let (above, below) = (Self::decimal(above)?, Self::decimal(below)?);
        Ok(Self { numerator: above.numerator, denominator: below.numerator, is_fraction: true })
    }

    /// True for a fraction that is no part of one: `11/2`, `3/0`.
    pub fn is_improper(self) -> bool {
        self.is_fraction && self.numerator >= self.denominator
    }

    /// True when nothing is behind the point.
    pub fn is_whole(self) -> bool {
        !self.is_fraction && self.denominator == 1
    }

    /// This many of a unit that is `per` exact units long, and whether that is a whole number of exact units.
    /// The count is rounded down.
    pub fn of(self, per: i64) -> (i128, bool) {
        let (above, below) = (self.numerator * i128::from(per), self.denominator.max(1));
        (above.div_euclid(below), above.rem_euclid(below) == 0)
    }

    /// As a floating-point number.
    pub fn to_f64(self) -> f64 {
        self.numerator as f64 / self.denominator.max(1) as f64
    }
}

/// The fraction a single character stands for.
pub(super) fn vulgar(character: char) -> Option<Figures> {
    let (numerator, denominator) = match character {
        '½' => (1, 2),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        _ => return None,
    };
    Some(Figures { numerator, denominator, is_fraction: true })
}

/// A unit written in letters behind a number.
#[derive(Clone, Copy, Debug)]
pub(super) enum Unit {
    /// A length of this many exact units, and with how many decimals every number of it is whole.
    Length(i64, u32),
    Load(fn(f64) -> Load),
    Stress(fn(f64) -> Stress),
    Area(fn(f64) -> Area),
}

impl Unit {
    pub fn is_inch(self) -> bool {
        matches!(self, Self::Length(Length::UNITS_PER_INCH, _))
    }
}

/// Every unit with its spelling; a longer spelling stands before one that begins it.
const UNITS: &[(&str, Unit)] = &[
    ("in", INCH),
    ("ft", Unit::Length(12 * Length::UNITS_PER_INCH, 2)),
    ("mm", Unit::Length(Length::UNITS_PER_MM, 3)),
    ("m", Unit::Length(1_000 * Length::UNITS_PER_MM, 6)),
    ("psf", Unit::Load(|value| Load::Area(AreaLoad::psf(value)))),
    ("ksf", Unit::Load(|value| Load::Area(AreaLoad::ksf(value)))),
    ("kPa", Unit::Load(|value| Load::Area(AreaLoad::kpa(value)))),
    ("plf", Unit::Load(|value| Load::Line(LineLoad::plf(value)))),
    ("klf", Unit::Load(|value| Load::Line(LineLoad::klf(value)))),
    ("kN/m", Unit::Load(|value| Load::Line(LineLoad::kn_per_m(value)))),
    ("kN", Unit::Load(|value| Load::Point(Force::kn(value)))),
    ("kips", Unit::Load(|value| Load::Point(Force::kip(value)))),
    ("kip", Unit::Load(|value| Load::Point(Force::kip(value)))),
    ("lbs", Unit::Load(|value| Load::Point(Force::lb(value)))),
    ("lb", Unit::Load(|value| Load::Point(Force::lb(value)))),
    ("pcf", Unit::Load(|value| Load::Volume(Density::pcf(value)))),
    ("kg/m3", Unit::Load(|value| Load::Volume(Density::kg_per_m3(value)))),
    ("psi", Unit::Stress(Stress::psi)),
    ("ksi", Unit::Stress(Stress::ksi)),
    ("MPa", Unit::Stress(Stress::mpa)),
    ("sq ft", Unit::Area(Area::sq_ft)),
    ("sq in", Unit::Area(Area::sq_in)),
    ("sq m", Unit::Area(Area::sq_m)),
];

/// The spellings of the units of lengths, loads, stresses and areas, in this order.
pub(super) fn unit_spellings() -> [Vec<&'static str>; 4] {
    let mut spellings = [const { Vec::new() }; 4];
    let [lengths, loads, stresses, areas] = &mut spellings;
    for (spelling, unit) in UNITS {
        match unit {
            Unit::Length(..) => lengths.push(*spelling),
            Unit::Load(_) => loads.push(*spelling),
            Unit::Stress(_) => stresses.push(*spelling),
            Unit::Area(_) => areas.push(*spelling),
        }
    }
    spellings
}

/// The inch, however it is marked.
pub(super) const INCH: Unit = Unit::Length(Length::UNITS_PER_INCH, 2);

/// The unit that stands here, after one blank at most, and its spelling.
pub(super) fn unit(rest: &mut Rest<'_>) -> Option<(&'static str, Unit)> {
    let mut behind = *rest;
    let _ = behind.take_one_of(&[" ", "\u{a0}"]);
    if !behind.next()?.is_ascii_lowercase() && !matches!(behind.next()?, 'M') {
        return None;
    }
    for (spelling, unit) in UNITS {
        let mut after = behind;
        if !after.take(spelling)
            || after.next().is_some_and(|next| next.is_alphanumeric() || "_/-".contains(next))
        {
            continue;
        }
        if matches!(unit, Unit::Length(..)) {
            after.take(".");
        }
        *rest = after;
        return Some((spelling, *unit));
    }
    None
}

/// The value of a number with its unit.
pub(super) fn with_unit(figures: Figures, spelling: &str, unit: Unit) -> Result<TokenKind, ProblemKind> {
    match unit {
        Unit::Length(per, decimals) => length(figures, spelling, per, decimals).map(TokenKind::Length),
        Unit::Load(of) => Ok(TokenKind::Load(of(figures.to_f64()))),
        Unit::Stress(of) => Ok(TokenKind::Stress(of(figures.to_f64()))),
        Unit::Area(of) => Ok(TokenKind::Area(of(figures.to_f64()))),
    }
}

fn length(figures: Figures, spelling: &str, per: i64, decimals: u32) -> Result<Length, ProblemKind> {
    let (units, is_exact) = figures.of(per);
    if is_exact {
        return checked(units);
    }
    if figures.is_fraction {
        return Err(between_sixty_fourths(units, false));
    }
    // So many decimals always make a whole number of exact units.
    let scale = 10_i128.pow(decimals);
    let below = (figures.numerator * scale).div_euclid(figures.denominator.max(1));
    let gap = if spelling == "\"" { "" } else { " " };
    let print = |count: i128| -> Box<str> {
        let fraction = format!("{:0width$}", count % scale, width = decimals as usize);
        let fraction = fraction.trim_end_matches('0');
        let point = if fraction.is_empty() { "" } else { "." };
        format!("{}{point}{fraction}{gap}{spelling}", count / scale).into()
    };
    Err(ProblemKind::NotExact(print(below), print(below + 1)))
}

/// The length of this many exact units, unless no house is that long.
pub(super) fn checked(units: i128) -> Result<Length, ProblemKind> {
    let length = i64::try_from(units).map(Length::from_units).map_err(|_| ProblemKind::NumberTooLarge)?;
    if length > Length::LONGEST_WRITTEN { Err(ProblemKind::NumberTooLarge) } else { Ok(length) }
}

/// Says that a length lies between two neighbours of 1/64 inch, which every rule shows.
pub(super) fn between_sixty_fourths(units_rounded_down: i128, in_feet: bool) -> ProblemKind {
    let step = Length::sixty_fourths(0, 1);
    let Ok(length) = checked(units_rounded_down) else { return ProblemKind::NumberTooLarge };
    let below = Length::from_units(length.to_units() - length.to_units().rem_euclid(step.to_units()));
    let print = |length: Length| -> Box<str> {
        let text = if in_feet {
            length.in_feet().to_the(64).to_string()
        } else {
            length.in_inches().to_the(64).to_string()
        };
        text.into()
    };
    ProblemKind::NotExact(print(below), print(below + step))
}

/// A day at the text's beginning, with its length in bytes; `Some(Err)` when the calendar has no such day.
pub(super) fn day(text: &str) -> Option<(usize, Result<Date, ProblemKind>)> {
    let mut rest = Rest(text);
    let year = rest.take_digits().filter(|digits| digits.len() == 4)?;
    let month = rest.take("-").then(|| rest.take_digits())?.filter(|digits| digits.len() == 2)?;
    let day = rest.take("-").then(|| rest.take_digits())?.filter(|digits| digits.len() == 2)?;
    if rest.next().is_some_and(|next| next.is_alphanumeric() || matches!(next, '-' | '/' | '\'' | '"')) {
        return None;
    }
    let (year, month, day) = (year.parse().ok()?, month.parse().ok()?, day.parse().ok()?);
    let exists = jiff::civil::Date::new(year, month, day).is_ok();
    let date = Date { year, month: month.unsigned_abs(), day: day.unsigned_abs() };
    Some((text.len() - rest.0.len(), if exists { Ok(date) } else { Err(ProblemKind::NoSuchDay) }))
}

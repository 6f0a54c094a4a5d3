//! Quantities that cannot be mixed up: exact lengths, and the loads and stresses a person writes.
//!
//! A [`Length`] is an exact integer; two elevations are equal or they are not. Everything else is an
//! `f64` behind a type that says what it measures and in which one unit it is stored.

mod quantities;

use std::cmp::Ordering;
use std::fmt;
use std::ops::{Add, AddAssign, Mul, Neg, Sub};

pub use quantities::{
    Area, AreaLoad, Density, FlexuralRigidity, Force, LineLoad, Moment, SecondMoment, SectionModulus,
    SpringRate, Stress,
};

/// A length or an elevation: an exact whole number of 1/203,200 inch, positive upwards and eastwards.
///
/// That unit makes 1/64 inch (3,175), 0.01 inch (2,032) and 1 mm (8,000) all whole.
/// Sums saturate at the ends of the range, about seven hundred million miles; the lexer refuses far smaller lengths.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Length(i64);

impl Length {
    /// No length.
    pub const ZERO: Self = Self(0);
    /// How many of the exact units make one inch.
    pub const UNITS_PER_INCH: i64 = 203_200;
    /// How many of the exact units make one millimetre.
    pub const UNITS_PER_MM: i64 = 8_000;
    /// The longest length a text may state (100 miles): far beyond any house, far below the range.
    pub const LONGEST_WRITTEN: Self = Self(100 * 5280 * 12 * Self::UNITS_PER_INCH);

    /// A length counted in 1/203,200 inch.
    pub const fn from_units(units: i64) -> Self {
        Self(units)
    }

    /// A whole number of inches.
    pub const fn inches(inches: i64) -> Self {
        Self(inches.saturating_mul(Self::UNITS_PER_INCH))
    }

    /// A whole number of feet.
    pub const fn feet(feet: i64) -> Self {
        Self::inches(feet.saturating_mul(12))
    }

    /// `whole` inches and `numerator`/64 of an inch.
    pub const fn sixty_fourths(whole: i64, numerator: i64) -> Self {
        Self(
            whole
                .saturating_mul(Self::UNITS_PER_INCH)
                .saturating_add(numerator.saturating_mul(Self::UNITS_PER_INCH / 64)),
        )
    }

    /// `whole` inches and `numerator`/16 of an inch.
    pub const fn sixteenths(whole: i64, numerator: i64) -> Self {
        Self::sixty_fourths(whole, numerator.saturating_mul(4))
    }

    /// A whole number of hundredths of an inch, as mills publish the depths of rolled shapes.
    pub const fn hundredths(hundredths: i64) -> Self {
        Self(hundredths.saturating_mul(Self::UNITS_PER_INCH / 100))
    }

    /// A decimal number of inches, to the nearest exact unit: for the published properties of sections.
    pub const fn decimal_inches(inches: f64) -> Self {
        let units = inches * Self::UNITS_PER_INCH as f64;
        Self(if units < 0.0 { units - 0.5 } else { units + 0.5 } as i64)
    }

    /// A whole number of millimetres.
    pub const fn millimetres(millimetres: i64) -> Self {
        Self(millimetres.saturating_mul(Self::UNITS_PER_MM))
    }

    /// The count of 1/203,200 inch.
    pub const fn to_units(self) -> i64 {
        self.0
    }

    /// Inches as a floating-point number: only where mechanics or drawing begins.
    pub fn to_inches(self) -> f64 {
        self.0 as f64 / Self::UNITS_PER_INCH as f64
    }

    /// The length without its sign.
    pub const fn abs(self) -> Self {
        Self(self.0.saturating_abs())
    }

    /// True below zero.
    pub const fn is_negative(self) -> bool {
        self.0 < 0
    }

    /// True above zero.
    pub const fn is_positive(self) -> bool {
        self.0 > 0
    }

    /// Half of it, rounded down to the exact unit (1/203,200 inch).
    pub const fn half(self) -> Self {
        Self(self.0.div_euclid(2))
    }

    /// This many of it.
    pub const fn times(self, count: i64) -> Self {
        Self(self.0.saturating_mul(count))
    }

    /// It times a factor, rounded to the exact unit.
    pub fn scaled(self, factor: f64) -> Self {
        Self((self.0 as f64 * factor).round() as i64)
    }

    /// It divided into `parts` equal parts, exact; `None` for no parts.
    pub fn shared_by(self, parts: u32) -> Option<Ratio> {
        Ratio::new(self.0, i64::from(parts))
    }

    /// It rounded to the nearest whole multiple of `step`, halves away from zero; itself when `step` is not positive.
    pub fn rounded_to(self, step: Self) -> Self {
        if step.0 <= 0 {
            return self;
        }
        let magnitude = i128::from(self.0.unsigned_abs());
        let step_units = i128::from(step.0);
        let count = (2 * magnitude + step_units) / (2 * step_units);
        let units = i64::try_from(count * step_units).unwrap_or(i64::MAX);
        Self(if self.0 < 0 { -units } else { units })
    }

    /// It rounded up to the next whole multiple of `step`.
    pub fn rounded_up_to(self, step: Self) -> Self {
        if step.0 <= 0 {
            return self;
        }
        let rest = self.0.rem_euclid(step.0);
        if rest == 0 { self } else { Self(self.0.saturating_add(step.0 - rest)) }
    }

    /// Printed in inches only, to 1/16 inch, with `~` when that rounds: `9-1/2"`.
    pub fn in_inches(self) -> InInches {
        InInches { length: self, denominator: 16 }
    }

    /// Printed in feet and inches, to 1/16 inch, with `~` when that rounds: `12'-6 1/2"`.
    pub fn in_feet(self) -> InFeet {
        InFeet { length: self, denominator: 16 }
    }
}

impl Add for Length {
    type Output = Self;
    fn add(self, rhs: Self) -> Self {
        Self(self.0.saturating_add(rhs.0))
    }
}

impl AddAssign for Length {
    fn add_assign(&mut self, rhs: Self) {
        *self = *self + rhs;
    }
}

impl Sub for Length {
    type Output = Self;
    fn sub(self, rhs: Self) -> Self {
        Self(self.0.saturating_sub(rhs.0))
    }
}

impl Neg for Length {
    type Output = Self;
    fn neg(self) -> Self {
        Self(self.0.saturating_neg())
    }
}

impl Mul<i64> for Length {
    type Output = Self;
    fn mul(self, rhs: i64) -> Self {
        self.times(rhs)
    }
}

impl std::iter::Sum for Length {
    fn sum<I: Iterator<Item = Self>>(iter: I) -> Self {
        iter.fold(Self::ZERO, Add::add)
    }
}

/// Feet and inches from one foot up, inches below: how a person reads a number out.
impl fmt::Display for Length {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.abs() < Self::feet(1) { self.in_inches().fmt(f) } else { self.in_feet().fmt(f) }
    }
}

/// An exact quotient of a length: a riser is the rise shared by the number of risers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Ratio {
    units: i64,
    parts: i64,
}

impl Ratio {
    fn new(units: i64, parts: i64) -> Option<Self> {
        (parts > 0).then_some(Self { units, parts })
    }

    /// A length as a quotient by one.
    pub const fn whole(length: Length) -> Self {
        Self { units: length.0, parts: 1 }
    }

    /// The length in whole exact units, rounded to the nearest: for printing and for sums of many parts.
    pub fn rounded(self) -> Length {
        let (units, parts) = (i128::from(self.units), i128::from(self.parts));
        let nearest = (2 * units + parts).div_euclid(2 * parts);
        Length(i64::try_from(nearest).unwrap_or(i64::MAX))
    }

    /// The length this many of it add up to, rounded to the nearest exact unit.
    pub fn times(self, count: i64) -> Length {
        Self { units: self.units.saturating_mul(count), parts: self.parts }.rounded()
    }

    /// True when it is exactly this length.
    pub fn is(self, length: Length) -> bool {
        self.partial_cmp(&length) == Some(Ordering::Equal)
    }
}

impl PartialEq<Length> for Ratio {
    fn eq(&self, other: &Length) -> bool {
        self.is(*other)
    }
}

impl PartialOrd<Length> for Ratio {
    fn partial_cmp(&self, other: &Length) -> Option<Ordering> {
        let left = i128::from(self.units);
        let right = i128::from(other.0) * i128::from(self.parts);
        Some(left.cmp(&right))
    }
}

impl fmt::Display for Ratio {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let rounded = self.rounded();
        rounded.fmt(f)?;
        // The print of `rounded` marks what 1/16" rounds; a remainder below the exact unit still counts.
        let exact = self.is(rounded);
        let printed_exactly = rounded.rounded_to(Length::sixteenths(0, 1)) == rounded;
        if !exact && printed_exactly { f.write_str("~") } else { Ok(()) }
    }
}

/// See [`Length::in_inches`].
#[derive(Clone, Copy, Debug)]
pub struct InInches {
    length: Length,
    denominator: i64,
}

impl InInches {
    /// To another binary fraction of an inch, 64 at the most.
    pub fn to_the(mut self, denominator: i64) -> Self {
        self.denominator = denominator.clamp(1, 64);
        self
    }
}

/// See [`Length::in_feet`].
#[derive(Clone, Copy, Debug)]
pub struct InFeet {
    length: Length,
    denominator: i64,
}

impl InFeet {
    /// To another binary fraction of an inch, 64 at the most.
    pub fn to_the(mut self, denominator: i64) -> Self {
        self.denominator = denominator.clamp(1, 64);
        self
    }
}

/// A length cut into sign, whole inches and a reduced fraction, with the word whether that rounded it.
struct Parts {
    negative: bool,
    whole: i64,
    numerator: i64,
    denominator: i64,
    rounded: bool,
}

fn parts_of(length: Length, denominator: i64) -> Parts {
    let step = Length(Length::UNITS_PER_INCH / denominator);
    let shown = length.rounded_to(step);
    let magnitude = shown.abs().0;
    let whole = magnitude / Length::UNITS_PER_INCH;
    let mut numerator = (magnitude % Length::UNITS_PER_INCH) / step.0;
    let mut reduced = denominator;
    while numerator > 0 && numerator % 2 == 0 && reduced % 2 == 0 {
        numerator /= 2;
        reduced /= 2;
    }
    Parts { negative: shown.0 < 0, whole, numerator, denominator: reduced, rounded: shown != length }
}

impl fmt::Display for InInches {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Parts { negative, whole, numerator, denominator, rounded } =
            parts_of(self.length, self.denominator);
        if negative {
            f.write_str("-")?;
        }
        match (whole, numerator) {
            (whole, 0) => write!(f, "{whole}\"")?,
            (0, numerator) => write!(f, "{numerator}/{denominator}\"")?,
            (whole, numerator) => write!(f, "{whole}-{numerator}/{denominator}\"")?,
        }
        if rounded { f.write_str("~") } else { Ok(()) }
    }
}

impl fmt::Display for InFeet {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Parts { negative, whole, numerator, denominator, rounded } =
            parts_of(self.length, self.denominator);
        if negative {
            f.write_str("-")?;
        }
        let (feet, inches) = (whole / 12, whole % 12);
        if numerator == 0 {
            write!(f, "{feet}'-{inches}\"")?;
        } else {
            write!(f, "{feet}'-{inches} {numerator}/{denominator}\"")?;
        }
        if rounded { f.write_str("~") } else { Ok(()) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_common_unit_is_whole() {
        assert_eq!(Length::inches(1).to_units() % 64, 0);
        assert_eq!(Length::inches(1).to_units() % 100, 0);
        // 25.4 mm to the inch (international inch, 1959): 254 mm are exactly 10 inches.
        assert_eq!(Length::millimetres(254), Length::inches(10));
    }

    #[test]
    fn prints_as_the_trade_writes() {
        assert_eq!(Length::sixteenths(9, 8).to_string(), "9-1/2\"");
        assert_eq!(Length::sixteenths(0, 12).to_string(), "3/4\"");
        assert_eq!(Length::ZERO.to_string(), "0\"");
        assert_eq!(Length::sixteenths(150, 8).to_string(), "12'-6 1/2\"");
        assert_eq!(Length::feet(12).to_string(), "12'-0\"");
        assert_eq!((-Length::inches(14)).to_string(), "-1'-2\"");
        assert_eq!(Length::sixteenths(98 * 12 + 10, 6).in_feet().to_string(), "98'-10 3/8\"");
    }

    #[test]
    fn marks_what_it_rounded() {
        // 7.93 inches, the depth of a rolled shape, is 7-15/16 to the nearest 1/16 (7.9375).
        assert_eq!(Length::hundredths(793).to_string(), "7-15/16\"~");
        assert_eq!(Length::inches(13).in_inches().to_string(), "13\"");
    }

    #[test]
    fn decimals_of_an_inch_round_to_the_nearest_unit() {
        assert_eq!(Length::decimal_inches(7.93), Length::hundredths(793));
        assert_eq!(Length::decimal_inches(-0.25), -Length::sixteenths(0, 4));
        // 0.174 in. is 35,356.8 units.
        assert_eq!(Length::decimal_inches(0.174).to_units(), 35_357);
    }

    #[test]
    fn a_quotient_stays_exact() {
        let riser = Length::inches(20).shared_by(3).unwrap();
        assert!(riser > Length::sixteenths(6, 10));
        assert!(riser < Length::sixteenths(6, 11));
        assert_eq!(riser.times(3), Length::inches(20));
        assert_eq!(Length::inches(1).shared_by(0), None);
        assert!(Length::inches(13).shared_by(2).unwrap().is(Length::sixteenths(6, 8)));
    }

    #[test]
    fn sums_do_not_overflow() {
        let huge = Length::from_units(i64::MAX);
        assert_eq!(huge + Length::inches(1), huge);
        assert_eq!(Length::from_units(i64::MIN).abs(), huge);
    }

    #[test]
    fn rounds_up_to_a_step() {
        let eighth = Length::sixty_fourths(0, 8);
        assert_eq!(Length::hundredths(23).rounded_up_to(eighth), Length::sixteenths(0, 4));
        assert_eq!(Length::sixteenths(0, 4).rounded_up_to(eighth), Length::sixteenths(0, 4));
    }
}

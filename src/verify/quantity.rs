//! A number with its unit, as a calculation sheet prints it.

use std::fmt;

use crate::units::{
    Area, AreaLoad, FlexuralRigidity, Force, Length, LineLoad, Moment, SecondMoment, SectionModulus, Stress,
};

/// A number with its unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Quantity {
    /// No unit: a factor, a slenderness, a count.
    Factor(f64),
    /// A length, or a deflection.
    Length(Length),
    /// An area.
    Area(Area),
    /// An elastic or plastic modulus.
    SectionModulus(SectionModulus),
    /// A second moment of area.
    SecondMoment(SecondMoment),
    /// EI.
    FlexuralRigidity(FlexuralRigidity),
    /// A force.
    Force(Force),
    /// A line load.
    LineLoad(LineLoad),
    /// A pressure on soil, or a load on an area.
    AreaLoad(AreaLoad),
    /// A moment.
    Moment(Moment),
    /// A stress or a modulus.
    Stress(Stress),
}

macro_rules! from {
    ($($type:ident),+) => { $(
        impl From<$type> for Quantity {
            fn from(value: $type) -> Self {
                Self::$type(value)
            }
        }
    )+ };
}
from!(
    Length,
    Area,
    SectionModulus,
    SecondMoment,
    FlexuralRigidity,
    Force,
    LineLoad,
    AreaLoad,
    Moment,
    Stress
);

impl From<f64> for Quantity {
    fn from(value: f64) -> Self {
        Self::Factor(value)
    }
}

impl Quantity {
    /// How many times another of the same kind goes into it; `None` for unlike kinds.
    pub fn over(self, other: Self) -> Option<f64> {
        match (self, other) {
            (Self::Factor(one), Self::Factor(other)) => Some(one / other),
            (Self::Length(one), Self::Length(other)) => Some(one / other),
            (Self::Area(one), Self::Area(other)) => Some(one / other),
            (Self::SectionModulus(one), Self::SectionModulus(other)) => Some(one / other),
            (Self::SecondMoment(one), Self::SecondMoment(other)) => Some(one / other),
            (Self::FlexuralRigidity(one), Self::FlexuralRigidity(other)) => Some(one / other),
            (Self::Force(one), Self::Force(other)) => Some(one / other),
            (Self::LineLoad(one), Self::LineLoad(other)) => Some(one / other),
            (Self::AreaLoad(one), Self::AreaLoad(other)) => Some(one / other),
            (Self::Moment(one), Self::Moment(other)) => Some(one / other),
            (Self::Stress(one), Self::Stress(other)) => Some(one / other),
            _ => None,
        }
    }
}

/// As the trade writes it: `13,136 lb`, `29.1 kip-ft`, `1,912 psf`, `0.974`.
impl fmt::Display for Quantity {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Factor(value) => f.write_str(&significant(*value, 3)),
            // A sag or a factor's length: sixteenths would hide what is compared.
            Self::Length(length) if is_between_sixteenths(*length) => {
                write!(f, "{:.3}\"", length.to_inches())
            }
            Self::Length(length) => length.fmt(f),
            Self::Area(area) if area.to_sq_ft() < 1.0 => {
                write!(f, "{} sq in", significant(area.to_sq_in(), 3))
            }
            Self::Area(area) => write!(f, "{} sq ft", significant(area.to_sq_ft(), 3)),
            Self::SectionModulus(modulus) => write!(f, "{} in3", significant(modulus.to_in3(), 3)),
            Self::SecondMoment(moment) => write!(f, "{} in4", significant(moment.to_in4(), 3)),
            Self::FlexuralRigidity(rigidity) => {
                write!(f, "{} x 10^6 lb-in2", significant(rigidity.to_lb_in2() / 1e6, 4))
            }
            Self::Force(force) => write!(f, "{} lb", grouped(force.to_lb())),
            Self::LineLoad(load) => write!(f, "{} plf", grouped(load.to_plf())),
            Self::AreaLoad(load) => write!(f, "{} psf", grouped(load.to_psf())),
            Self::Moment(moment) => write!(f, "{} lb-ft", grouped(moment.to_lb_ft())),
            Self::Stress(stress) => write!(f, "{} psi", grouped(stress.to_psi())),
        }
    }
}

/// A length below two inches that is no whole number of sixteenths.
fn is_between_sixteenths(length: Length) -> bool {
    length.abs() < Length::inches(2) && length.rounded_to(Length::sixteenths(0, 1)) != length
}

/// A number to the unit with thousands parted: `13,136`.
pub fn grouped(value: f64) -> String {
    if !value.is_finite() {
        return "not a number".to_owned();
    }
    let digits = format!("{:.0}", value.abs());
    let mut text = String::new();
    for (at, digit) in digits.chars().enumerate() {
        if at > 0 && (digits.len() - at) % 3 == 0 {
            text.push(',');
        }
        text.push(digit);
    }
    if value < 0.0 && digits.bytes().any(|digit| digit != b'0') { format!("-{text}") } else { text }
}

/// A number to some significant digits, thousands parted where it has them.
fn significant(value: f64, digits: i32) -> String {
    if value == 0.0 || !value.is_finite() {
        return if value == 0.0 { "0".to_owned() } else { "not a number".to_owned() };
    }
    let magnitude = value.abs().log10().floor() as i32;
    let decimals = (digits - 1 - magnitude).max(0);
    if decimals == 0 { grouped(value) } else { format!("{value:.*}", decimals.unsigned_abs() as usize) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn prints_as_the_trade_writes() {
        assert_eq!(Quantity::from(Force::lb(13_136.4)).to_string(), "13,136 lb");
        assert_eq!(Quantity::from(Moment::kip_ft(29.1)).to_string(), "29,100 lb-ft");
        assert_eq!(Quantity::from(0.974_2).to_string(), "0.974");
        assert_eq!(Quantity::from(Stress::psi(-0.2)).to_string(), "0 psi");
        assert_eq!(Quantity::from(SectionModulus::in3(21.39)).to_string(), "21.4 in3");
        assert_eq!(grouped(-1_234_567.0), "-1,234,567");
        assert_eq!(Quantity::from(Length::decimal_inches(0.312_4)).to_string(), "0.312\"");
        assert_eq!(Quantity::from(Length::sixteenths(0, 5)).to_string(), "5/16\"");
    }

    #[test]
    fn only_like_kinds_have_a_ratio() {
        assert_eq!(Quantity::from(Force::lb(1.0)).over(Quantity::from(Stress::psi(1.0))), None);
        assert_eq!(Quantity::from(Force::kip(1.0)).over(Quantity::from(Force::lb(500.0))), Some(2.0));
    }
}

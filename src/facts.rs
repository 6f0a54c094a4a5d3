//! The facts of a house that a person can name: `top of W2`, `drop from main to den`.
//!
//! One table (`syntax::vocabulary::FACT_NAMES`) lists the names; here each gets its value. Sheets, intents, claims and
//! hovers ask the same questions and get the same answers.

pub mod answers;
pub mod comparison;
pub mod forces;
pub mod spans;

use crate::geometry::sum::{Sum, Unknown};
use crate::units::{Area, AreaLoad, Force, Length, LineLoad};
use crate::verify::quantity::Quantity;

/// A fact's value with the arithmetic behind it.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// The value.
    pub value: FactValue,
    /// How it came about, when it is a sum.
    pub sum: Option<Sum>,
}

/// What a fact can be.
#[derive(Clone, Debug, PartialEq)]
pub enum FactValue {
    /// An elevation above the datum: printed in feet and inches.
    Elevation(Length),
    /// A length.
    Length(Length),
    /// A number of things.
    Count(u32),
    /// An area.
    Area(Area),
    /// A size, as written.
    Size(Box<str>),
    /// A force; of what lies along a line, also how much on its heaviest foot.
    Force {
        /// All of it.
        whole: Force,
        /// On the heaviest foot.
        each_foot: Option<LineLoad>,
    },
    /// A load on each foot, as stated.
    LineLoad(LineLoad),
    /// A pressure on soil.
    Pressure(AreaLoad),
    /// A number without a unit.
    Number(f64),
}

/// Why a fact has no value here.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoAnswer {
    /// Something it rests on isn't known; that is reported where it stands.
    Unknown(Unknown),
    /// The element has no such fact.
    NotAFactOfIt,
}

impl From<Unknown> for NoAnswer {
    fn from(unknown: Unknown) -> Self {
        Self::Unknown(unknown)
    }
}

impl From<Sum> for Answer {
    fn from(sum: Sum) -> Self {
        Self { value: FactValue::Elevation(sum.total()), sum: Some(sum) }
    }
}

impl Answer {
    /// A length with nothing to explain.
    pub const fn length(length: Length) -> Self {
        Self { value: FactValue::Length(length), sum: None }
    }
}

impl FactValue {
    /// The length it is, when it is one.
    pub const fn as_length(&self) -> Option<Length> {
        match self {
            Self::Elevation(length) | Self::Length(length) => Some(*length),
            Self::Count(_)
            | Self::Area(_)
            | Self::Size(_)
            | Self::Force { .. }
            | Self::LineLoad(_)
            | Self::Pressure(_)
            | Self::Number(_) => None,
        }
    }
}

impl FactValue {
    /// As a claim or a sheet states it, which the format reads back: without `~`, and no comma parts thousands. `stated`
    /// is what stands there now, `within` how far off still agrees. `None` when no such number agrees.
    pub fn written(&self, stated: &str, within: Option<Length>) -> Option<String> {
        Some(match self {
            Self::Elevation(length) | Self::Length(length) => {
                let shown = length.rounded_to(Length::sixteenths(0, 1));
                if within.is_some_and(|within| (shown - *length).abs() > within) {
                    return None;
                }
                let is_in_feet = matches!(self, Self::Elevation(_)) || stated.contains(['\'', '’', '′', 'f']);
                if is_in_feet { shown.in_feet().to_string() } else { shown.in_inches().to_string() }
            }
            Self::Count(count) => count.to_string(),
            Self::Area(area) => format!("{:.0} sq ft", area.to_sq_ft()),
            Self::Size(size) => size.to_string(),
            Self::Force { each_foot: Some(line), .. } if stated.ends_with("plf") => {
                format!("{:.0} plf", line.to_plf())
            }
            Self::Force { whole, .. } => format!("{:.0} lb", whole.to_lb()),
            Self::LineLoad(load) => format!("{:.0} plf", load.to_plf()),
            Self::Pressure(pressure) => format!("{:.0} psf", pressure.to_psf()),
            Self::Number(number) => format!("{number:.2}"),
        })
    }
}

impl std::fmt::Display for FactValue {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Elevation(elevation) => elevation.in_feet().fmt(f),
            Self::Length(length) => length.fmt(f),
            Self::Count(count) => count.fmt(f),
            Self::Area(area) => write!(f, "{:.0} sq ft", area.to_sq_ft()),
            Self::Size(size) => f.write_str(size),
            Self::Force { whole, each_foot: None } => Quantity::from(*whole).fmt(f),
            Self::Force { whole, each_foot: Some(line) } => {
                write!(f, "{}, {} at the most", Quantity::from(*whole), Quantity::from(*line))
            }
            Self::LineLoad(load) => Quantity::from(*load).fmt(f),
            Self::Pressure(pressure) => Quantity::from(*pressure).fmt(f),
            Self::Number(number) => write!(f, "{number:.2}"),
        }
    }
}

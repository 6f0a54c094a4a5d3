//! One limit: its value, where it comes from, what it means.

use std::fmt;

use crate::units::{Area, AreaLoad, Density, Force, Length, Stress};

/// A number that a rule compares with, typed or, in a profile's list, of any kind.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limit<T = LimitValue> {
    /// Its name, a descriptive slug.
    pub name: &'static str,
    /// Its value.
    pub value: T,
    /// The section it comes from; `-` where no document states it.
    pub section: &'static str,
    /// How sure we are of it.
    pub status: Status,
    /// What it limits.
    pub meaning: &'static str,
}

/// How sure we are of a limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Status {
    /// Read in the copy named, which is not the code's own print.
    Confirmed(&'static str),
    /// Read, but only in part or in a copy of low grade such as an exam text or a handout.
    LowGradeCopy(&'static str),
    /// From memory of the section.
    FromMemory,
    /// What the trade does; no code says it.
    CommonPractice,
}

/// A whole number of things.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Count(pub u32);

/// A share of a length, `OneIn(6)` for a sixth. Invariant in an override: not zero.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct OneIn(pub u32);

/// A plain factor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Factor(pub f64);

/// A share of a hundred.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Percent(pub f64);

/// Some lengths, ascending.
pub type Lengths = &'static [Length];

/// What a limit's value can be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LimitValue {
    /// A length.
    Length(Length),
    /// Some lengths; a project cannot override these.
    Lengths(Lengths),
    /// A load on an area.
    AreaLoad(AreaLoad),
    /// A force.
    Force(Force),
    /// An area.
    Area(Area),
    /// A stress.
    Stress(Stress),
    /// A weight of a volume.
    Density(Density),
    /// A whole number.
    Count(Count),
    /// A share of a length.
    OneIn(OneIn),
    /// A factor.
    Factor(Factor),
    /// A share of a hundred.
    Percent(Percent),
}

/// A kind of value that a limit can have.
pub trait Quantity: Copy {
    /// The value, when it is of this kind.
    fn of(value: LimitValue) -> Option<Self>;
}

macro_rules! kinds {
    ($($kind:ident),+ $(,)?) => {
        $(impl Quantity for $kind {
            fn of(value: LimitValue) -> Option<Self> {
                if let LimitValue::$kind(value) = value { Some(value) } else { None }
            }
        })+
    };
}

kinds!(Length, Lengths, AreaLoad, Force, Area, Stress, Density, Count, OneIn, Factor, Percent);

impl LimitValue {
    /// This value in the place of another: of its kind, or a whole number for a share or a factor.
    pub fn as_kind_of(self, other: Self) -> Option<Self> {
        match (self, other) {
            (Self::OneIn(OneIn(0)) | Self::Count(Count(0)), Self::OneIn(_)) => None,
            (Self::Count(Count(parts)), Self::OneIn(_)) => Some(Self::OneIn(OneIn(parts))),
            (Self::Count(Count(times)), Self::Factor(_)) => Some(Self::Factor(Factor(f64::from(times)))),
            _ => (std::mem::discriminant(&self) == std::mem::discriminant(&other)).then_some(self),
        }
    }
}

impl fmt::Display for LimitValue {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Length(length) => length.fmt(f),
            Self::Lengths(lengths) => {
                let printed: Vec<String> = lengths.iter().map(Length::to_string).collect();
                f.write_str(&printed.join(", "))
            }
            Self::AreaLoad(load) => write!(f, "{} psf", load.to_psf()),
            Self::Force(force) => write!(f, "{} lb", force.to_lb()),
            Self::Area(area) => write!(f, "{:.0} sq in", area.to_sq_in()),
            Self::Stress(stress) => write!(f, "{} psi", stress.to_psi()),
            Self::Density(density) => write!(f, "{} pcf", density.to_pcf()),
            Self::Count(Count(count)) => count.fmt(f),
            Self::OneIn(OneIn(parts)) => write!(f, "1/{parts}"),
            Self::Factor(Factor(factor)) => factor.fmt(f),
            Self::Percent(Percent(percent)) => write!(f, "{percent}%"),
        }
    }
}

impl fmt::Display for Status {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Confirmed(copy) => write!(f, "confirmed: {copy}"),
            Self::LowGradeCopy(copy) => write!(f, "not confirmed: {copy}"),
            Self::FromMemory => f.write_str("from memory"),
            Self::CommonPractice => f.write_str("common practice"),
        }
    }
}

/// Defines limits as typed constants, each a row `MEANING NAME: Kind = value, "slug", "section", status;`, and the slice
/// `LIMITS` of them all.
macro_rules! limits {
    ($(#[doc = $meaning:literal] $id:ident: $kind:ident = $value:expr, $name:literal, $section:literal, $status:expr;)+) => {
        $(
            #[doc = $meaning]
            pub const $id: Limit<$kind> = Limit {
                name: $name,
                value: $value,
                section: $section,
                status: $status,
                meaning: $meaning.trim_ascii(),
            };
        )+

        /// Every limit of this file.
        pub const LIMITS: &[Limit] = &[$(
            Limit {
                name: $id.name,
                value: LimitValue::$kind($id.value),
                section: $id.section,
                status: $id.status,
                meaning: $id.meaning,
            },
        )+];
    };
}

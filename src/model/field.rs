//! What the text says of one value: stated, assumed, missing, or there but unreadable.

use crate::text::Span;

/// One value of an element.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Field<T> {
    /// The author states it, here.
    Stated(T, Span),
    /// A default decided it.
    Assumed(T, Assumption),
    /// Nothing says it.
    #[default]
    Missing,
    /// A line here would say it, but can't be read: unknown, not missing.
    Broken(Span),
}

/// Why a value is what it is, when the author did not say.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Assumption {
    /// What was assumed, as a person would say it: `soil 1500 psf gross`.
    pub what: &'static str,
    /// On what ground: a clause, common practice.
    pub ground: &'static str,
}

impl<T> Field<T> {
    /// The value, stated or assumed.
    pub const fn value(&self) -> Option<&T> {
        match self {
            Self::Stated(value, _) | Self::Assumed(value, _) => Some(value),
            Self::Missing | Self::Broken(_) => None,
        }
    }

    /// The value and its place, when stated.
    pub const fn stated(&self) -> Option<(&T, Span)> {
        match self {
            Self::Stated(value, span) => Some((value, *span)),
            Self::Assumed(..) | Self::Missing | Self::Broken(_) => None,
        }
    }

    /// Where it stands, read or not.
    pub const fn span(&self) -> Option<Span> {
        match self {
            Self::Stated(_, span) | Self::Broken(span) => Some(*span),
            Self::Assumed(..) | Self::Missing => None,
        }
    }

    /// True when nothing says it.
    pub const fn is_missing(&self) -> bool {
        matches!(self, Self::Missing)
    }

    /// True when a line would say it but can't be read.
    pub const fn is_broken(&self) -> bool {
        matches!(self, Self::Broken(_))
    }
}

impl<T: Copy> Field<T> {
    /// The value, stated or assumed.
    pub fn get(&self) -> Option<T> {
        self.value().copied()
    }
}

/// A value with its place, where a fact may be repeated or always has one.
#[derive(Clone, Debug, PartialEq)]
pub struct Given<T> {
    /// The value.
    pub value: T,
    /// Where it stands.
    pub span: Span,
}

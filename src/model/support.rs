//! What carries what, as written.

use crate::model::element::{Reference, SourceNote};
use crate::model::field::Given;
use crate::text::Span;
use crate::units::{Force, Length};

/// One `bears on` or `hangs from` line.
#[derive(Clone, Debug, PartialEq)]
pub struct Support {
    /// What carries.
    pub on: Carrier,
    /// How.
    pub by: Contact,
    /// The line.
    pub span: Span,
}

/// What a member lies on, hangs from or stands on.
#[derive(Clone, Debug, PartialEq)]
pub enum Carrier {
    /// An element of the spec.
    Element(Reference),
    /// Something that stands already and isn't described: `outside "existing frame"`.
    Outside(Box<str>),
}

impl Carrier {
    /// The name as a person says it.
    pub fn name(&self) -> &str {
        match self {
            Self::Element(reference) => &reference.name,
            Self::Outside(words) => words,
        }
    }

    /// The reference, when it is an element of the spec.
    pub const fn reference(&self) -> Option<&Reference> {
        match self {
            Self::Element(reference) => Some(reference),
            Self::Outside(_) => None,
        }
    }
}

/// The two ways a beam or joist is held up.
#[derive(Clone, Debug, PartialEq)]
pub enum Contact {
    /// It lies on it over a length; `None` is all there is.
    Bears(Option<Given<Length>>),
    /// It hangs on its side.
    Hangs(Connector),
}

/// What holds a hanging member.
#[derive(Clone, Debug, PartialEq)]
pub enum Connector {
    /// A metal hanger of this capacity.
    Hanger {
        /// Capacity.
        capacity: Option<Force>,
        /// What it is.
        words: Option<Box<str>>,
        /// Where the capacity comes from.
        source: Option<SourceNote>,
    },
    /// A ledger, also an element.
    Ledger(Reference),
    /// A clip of this capacity.
    Clip {
        /// Capacity.
        capacity: Option<Force>,
        /// What it is.
        words: Option<Box<str>>,
        /// Where the capacity comes from.
        source: Option<SourceNote>,
    },
    /// The line names none.
    None,
}

/// One `stands on` line.
#[derive(Clone, Debug, PartialEq)]
pub struct Stand {
    /// What it stands on: a footing, a wall, a beam, a slab, or a floor.
    pub on: Carrier,
    /// With `FLOOR over X`: what is right below, a promise of alignment.
    pub over: Option<Reference>,
    /// The line.
    pub span: Span,
}

/// One `joint` line: the member's pieces end here.
#[derive(Clone, Debug, PartialEq)]
pub struct Joint {
    /// Over which support.
    pub over: Reference,
    /// Lapped by this much; `None` for a butt joint.
    pub lapped: Option<Given<Length>>,
    /// Spliced.
    pub is_spliced: bool,
    /// The line.
    pub span: Span,
}

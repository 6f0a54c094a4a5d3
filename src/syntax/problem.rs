//! What the reader could not make sense of: spans and numbers, no prose. A rule words each kind.

use crate::syntax::vocabulary::ElementKind;
use crate::text::LocalSpan;

/// One thing wrong with the text.
#[derive(Clone, Debug, PartialEq)]
pub struct Problem {
    /// Where, counted from the chunk's start.
    pub span: LocalSpan,
    /// What.
    pub kind: ProblemKind,
}

/// What is wrong with the text.
#[derive(Clone, Debug, PartialEq)]
pub enum ProblemKind {
    /// A character that means nothing in the format.
    StrayCharacter,
    /// The line is far longer than any fact and was not read.
    LineTooLong,
    /// Text was opened and not closed on its line.
    UnclosedText,
    /// A number or length too long for any house.
    NumberTooLarge,
    /// A comma inside a number; the number without it.
    CommaInNumber(Box<str>),
    /// The dimension can be read in several ways, or none: the readings offered.
    UnclearDimension(Vec<Box<str>>),
    /// Read, but an odd way to write it: the plain way.
    OddDimension(Box<str>),
    /// The number is no whole count of the exact unit: the nearest below and above, as text.
    NotExact(Box<str>, Box<str>),
    /// A day that does not exist.
    NoSuchDay,
    /// The line's first word opens no element; the nearest word that does.
    UnknownElement(Option<&'static str>),
    /// The element has no name, and its kind needs one.
    NameMissing(ElementKind),
    /// The name breaks the rule for names.
    NameMalformed,
    /// The name is a word that opens an element.
    NameReserved,
    /// Something stands behind the element's name that should not.
    HeadingUnclear,
    /// A fact stands before any element.
    FactBeforeElement,
    /// The element's kind has no such fact; the nearest phrase that it has.
    UnknownFact(ElementKind, Option<&'static str>),
    /// The same fact twice; where the first stands.
    FactRepeated(&'static str, LocalSpan),
    /// The value does not fit the fact's form: what was expected, in trade words, and what was found.
    NotUnderstood {
        /// The fact's phrase.
        phrase: &'static str,
        /// What could stand here.
        expected: Vec<Box<str>>,
        /// What stands here; `None` at the line's end.
        found: Option<Box<str>>,
    },
    /// An `include` line without a path in quotes.
    IncludeUnclear,
}

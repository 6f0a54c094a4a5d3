//! What the text says but a house cannot mean: places and numbers, no prose. A rule words each kind.

use crate::model::element::ElementId;
use crate::model::plan::Axis;
use crate::syntax::vocabulary::ElementKind;
use crate::text::Span;

/// One thing that could not be made sense of.
#[derive(Clone, Debug, PartialEq)]
pub struct ModelProblem {
    /// Where.
    pub span: Span,
    /// Of which element.
    pub subject: Option<ElementId>,
    /// What.
    pub kind: ModelProblemKind,
}

/// What could not be made sense of.
#[derive(Clone, Debug, PartialEq)]
pub enum ModelProblemKind {
    /// The spec has no `project`.
    NoProject,
    /// A second `project`, or a second `grid`; where the first is.
    SecondOfItsKind(ElementKind, Span),
    /// A name given twice; where first.
    NameReused(Box<str>, Span),
    /// A name that nothing has; the kinds that would fit and the nearest name of such a kind.
    UnknownName(&'static [ElementKind], Option<Box<str>>),
    /// A name of an element of another kind; the kinds that would fit and where that element is.
    WrongKind(&'static [ElementKind], ElementKind, Span),
    /// A grid line that nothing defines; the nearest.
    UnknownGridLine(Option<Box<str>>),
    /// A grid line of the other axis than the place asks for: the axis asked for.
    GridLineOfOtherAxis(Axis),
    /// A grid line named twice; where first.
    GridLineReused(Span),
    /// A grid line that does not lie beyond the one before it.
    GridNotAscending,
    /// A fact that this element needs: its phrase.
    FactMissing(&'static str),
    /// A size that no table and no product has; the nearest sizes.
    UnknownSize(Vec<Box<str>>),
    /// A word that is none of a list: the list's name (`profile`, `limit`, `use`) and the nearest.
    UnknownWord(&'static str, Option<Box<str>>),
    /// A limit is given a value of another kind than it has: what it takes.
    LimitOfOtherKind(&'static str),
    /// Two facts that both decide the same thing; the other one and its place.
    DecidedTwice(&'static str, Span),
    /// A number that must be more than nothing is nothing or less: the fact's phrase.
    NotPositive(&'static str),
    /// A number that may be nothing is less: the fact's phrase.
    Negative(&'static str),
    /// A load in another unit than the fact takes: what it takes.
    LoadOfOtherKind(&'static str),
    /// A footing's size in another form than its kind has: what it has.
    SizeOfOtherKind(&'static str),
    /// A line or rectangle without extent.
    NoExtent(&'static str),
    /// An element refers to itself.
    RefersToItself,
}

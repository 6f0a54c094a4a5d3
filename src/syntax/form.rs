//! The forms a fact's value can take: a small grammar written as constants.
//!
//! The parser reads by a form, the formal grammar and the reference print it, the random specs are drawn from it.

/// A grammar for what stands behind a fact's phrase.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Form {
    /// Nothing stands behind the phrase.
    Nothing,
    /// These words, for the reader's ear only: `for`, `each way`. They leave no part in the tree.
    Words(&'static str),
    /// These words, which mean something by being there. They leave a part labelled by the words themselves.
    Mark(&'static str),
    /// A value, kept in the tree under this label.
    Slot(&'static str, Kind),
    /// A comma.
    Comma,
    /// One after the other.
    Sequence(&'static [Form]),
    /// Once or not at all.
    Optional(&'static Form),
    /// The first that fits.
    OneOf(&'static [Form]),
    /// One or more, parted by commas.
    List(&'static Form),
}

/// What a single value is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    /// A length: `9-1/2"`.
    Length,
    /// An elevation above the datum: `98'-10 3/8"`; `EL` and a sign may stand before it.
    Elevation,
    /// A load or weight, by its unit an area load, a line load, a force or a density: `40 psf`.
    Load,
    /// A stress or modulus: `875 psi`.
    Stress,
    /// An area: `256 sq ft`.
    Area,
    /// A day: `2027-03-01`.
    Date,
    /// Words in quotes.
    Text,
    /// A whole number.
    Count,
    /// A plain number, whole or decimal.
    Number,
    /// A share of a hundred: `19%`.
    Percent,
    /// The name of an element of one of these kinds.
    Name(&'static [crate::syntax::vocabulary::ElementKind]),
    /// The name of a grid line: `A`, `3`, `3.4`.
    GridLine,
    /// A grid line with an offset: `3 less 5"`.
    GridRef,
    /// Two grid lines with their offsets, x first: `A plus 10" / 3`.
    Point,
    /// Four grid references: `A to C by 1 to 3`.
    Rect,
    /// Two points: `A/1 to C/1`.
    Line,
    /// `north`, `south`, `east`, `west`, `left` or `right`.
    Side,
    /// Lengths parted by ` x `: `9" x 9" x 1/2"`; bare numbers mean inches here. Takes at least the first and at most the second number of them.
    Dimensions(usize, usize),
    /// A member's size and stuff: `3-ply 2x10 SPF No.2`.
    Member,
    /// One of these words.
    Word(&'static [&'static str]),
    /// The slug of a rule or of a limit: `column-without-support`.
    Slug,
    /// Words of the author's own, up to a number, a comma or the end: `fir plank`.
    FreeWords,
    /// A bar size: `#5`.
    Bar,
    /// A fact of some element: `top of W2`.
    FactName,
    /// Two expressions and what holds between them: `top of T1 = top of W4`.
    Comparison,
    /// Any single value, as a claim states it: a length, a number, a load, an area.
    AnyValue,
}

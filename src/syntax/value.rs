//! The values a parsed fact holds.

use crate::text::LocalSpan;
use crate::units::{Area, AreaLoad, Density, Force, Length, LineLoad, Stress};

/// One value of a fact.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// Words that mean something by being there.
    Mark,
    /// A length or an elevation.
    Length(Length),
    /// A load, by its unit.
    Load(Load),
    /// A stress or modulus.
    Stress(Stress),
    /// An area.
    Area(Area),
    /// A day.
    Date(Date),
    /// Words in quotes, without them.
    Text(Box<str>),
    /// A whole number.
    Count(u32),
    /// A plain number.
    Number(f64),
    /// A share of a hundred.
    Percent(f64),
    /// The name of an element, or of a grid line.
    Name(Box<str>),
    /// One of a closed list of words, or words of the author's own, single blanks between them.
    Word(Box<str>),
    /// A grid line with its offset.
    GridRef(GridRef),
    /// A place in plan.
    Point(Point),
    /// An upright rectangle in plan.
    Rect(Rect),
    /// A straight line in plan.
    Line(Line),
    /// A side or a hand.
    Side(Side),
    /// Lengths parted by ` x `.
    Dimensions(Box<[Length]>),
    /// A member's size and stuff.
    Member(Box<Member>),
    /// A bar's number: 5 for `#5`.
    Bar(u32),
    /// A fact of some element.
    FactName(Box<FactName>),
    /// Two expressions and what holds between them.
    Comparison(Box<Comparison>),
}

/// A load as written; its unit says what it is a load on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Load {
    /// psf, kPa.
    Area(AreaLoad),
    /// plf, kN/m.
    Line(LineLoad),
    /// lb, kip, kN.
    Point(Force),
    /// pcf.
    Volume(Density),
}

/// A day of the civil calendar. Invariant: it exists.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Date {
    /// Year.
    pub year: i16,
    /// Month, 1 to 12.
    pub month: u8,
    /// Day of the month, from 1.
    pub day: u8,
}

impl std::fmt::Display for Date {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.year, self.month, self.day)
    }
}

/// A grid line and how far beyond it, towards larger coordinates.
#[derive(Clone, Debug, PartialEq)]
pub struct GridRef {
    /// The line's name.
    pub line: Box<str>,
    /// Where the name stands.
    pub span: LocalSpan,
    /// `plus` counts up, `less` down.
    pub offset: Length,
}

/// A place in plan: x first, then y.
#[derive(Clone, Debug, PartialEq)]
pub struct Point {
    /// East of the origin.
    pub x: GridRef,
    /// North of the origin.
    pub y: GridRef,
}

/// An upright rectangle in plan: `A to C by 1 to 3`.
#[derive(Clone, Debug, PartialEq)]
pub struct Rect {
    /// One edge in x.
    pub x_from: GridRef,
    /// The other edge in x.
    pub x_to: GridRef,
    /// One edge in y.
    pub y_from: GridRef,
    /// The other edge in y.
    pub y_to: GridRef,
}

/// A straight line in plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// Where it begins.
    pub from: Point,
    /// Where it ends.
    pub to: Point,
}

/// A side of the compass, or a hand of a line walked from its beginning.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Side {
    /// Towards larger y.
    North,
    /// Towards smaller y.
    South,
    /// Towards larger x.
    East,
    /// Towards smaller x.
    West,
    /// Left of the walk.
    Left,
    /// Right of the walk.
    Right,
}

impl Side {
    /// Every side, in the order the reference lists them.
    pub const ALL: [Self; 6] = [Self::North, Self::South, Self::East, Self::West, Self::Left, Self::Right];

    /// The word for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::North => "north",
            Self::South => "south",
            Self::East => "east",
            Self::West => "west",
            Self::Left => "left",
            Self::Right => "right",
        }
    }
}

/// A member's size and stuff, as written.
#[derive(Clone, Debug, PartialEq)]
pub struct Member {
    /// How many plies or pieces: 1 unless `3-ply`, `2 of` or `(2)` says more.
    pub plies: u32,
    /// Its section.
    pub section: Section,
    /// Where a declared product's name stands.
    pub product_span: Option<LocalSpan>,
    /// `I-joist`, `glulam`, `LVL`, `rim board`: what it is made as, when words say so.
    pub make: Option<Box<str>>,
    /// The wood's species or group: `SPF`.
    pub species: Option<Box<str>>,
    /// The grade, class or series: `No.2`, `24F`, `class 40`.
    pub grade: Option<Box<str>>,
    /// The word `treated` stands there.
    pub is_treated: bool,
}

/// The cross-section a member's text names.
#[derive(Clone, Debug, PartialEq)]
pub enum Section {
    /// A nominal lumber or timber size: `2x10` is (2, 10).
    Nominal(u32, u32),
    /// A size by its true lengths: `1-3/4 x 16`.
    Built(Length, Length),
    /// A depth alone: `11-7/8 I-joist`, `1-1/8" rim board`.
    Depth(Length),
    /// A rolled shape by its mark, in capitals: `W8X24`.
    Rolled(Box<str>),
    /// A square or rectangular tube: two sides and the nominal wall.
    Tube(Length, Length, Length),
    /// A pipe: outside diameter and wall.
    Pipe(Length, Length),
    /// A concrete-filled pipe by its nominal diameter.
    FilledPipe(Length),
    /// A declared product.
    Product(Box<str>),
}

/// A fact of some element, as sheets, intents and claims name it: `top of W2`, `drop from main to den`.
#[derive(Clone, Debug, PartialEq)]
pub struct FactName {
    /// The fact's words without those that join its elements: `top`, `clear height`, `drop`.
    pub fact: Box<str>,
    /// The elements it is about, in the order named, each with its place.
    pub of: Vec<(Box<str>, LocalSpan)>,
    /// A load case that narrows it: `dead`, `live`, `snow`, `all`.
    pub case: Option<Box<str>>,
    /// The whole text.
    pub span: LocalSpan,
}

/// What holds between two expressions.
#[derive(Clone, Debug, PartialEq)]
pub struct Comparison {
    /// Left side.
    pub left: Expression,
    /// The relation.
    pub relation: Relation,
    /// Right side.
    pub right: Expression,
    /// How far apart still counts as equal.
    pub within: Option<Within>,
}

/// How far apart two values may be and still count as equal.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Within {
    /// Of lengths and elevations.
    Length(Length),
    /// Of loads, forces and pressures.
    Load(Load),
}

impl Within {
    /// The length, when it is one.
    pub const fn length(self) -> Option<Length> {
        match self {
            Self::Length(length) => Some(length),
            Self::Load(_) => None,
        }
    }
}

/// How two values stand to each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Relation {
    /// `=`
    Equal,
    /// `<`
    Less,
    /// `<=`
    AtMost,
    /// `>`
    More,
    /// `>=`
    AtLeast,
}

impl Relation {
    /// The sign for it.
    pub const fn sign(self) -> &'static str {
        match self {
            Self::Equal => "=",
            Self::Less => "<",
            Self::AtMost => "<=",
            Self::More => ">",
            Self::AtLeast => ">=",
        }
    }
}

/// Terms added and taken away, from left to right.
#[derive(Clone, Debug, PartialEq)]
pub struct Expression {
    /// The terms with their signs. Invariant: not empty.
    pub terms: Vec<(Sign, Term)>,
    /// The whole text.
    pub span: LocalSpan,
}

impl Expression {
    /// The facts it uses, in the order written.
    pub fn facts(&self) -> impl Iterator<Item = &FactName> {
        self.terms.iter().filter_map(|(_, term)| match term.innermost() {
            Term::Fact(fact) | Term::Times(_, fact) => Some(fact),
            Term::Value(_) | Term::Half(_) => None,
        })
    }

    /// The values it states, in the order written.
    pub fn values(&self) -> impl Iterator<Item = &Value> {
        self.terms.iter().filter_map(|(_, term)| match term.innermost() {
            Term::Value(value) => Some(&**value),
            Term::Fact(_) | Term::Times(..) | Term::Half(_) => None,
        })
    }

    /// The names of the elements whose facts it uses, in the order written.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.facts().flat_map(|fact| &fact.of).map(|(name, _)| &**name)
    }
}

/// `plus` or `less`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sign {
    /// Added.
    Plus,
    /// Taken away.
    Less,
}

/// One term of an expression.
#[derive(Clone, Debug, PartialEq)]
pub enum Term {
    /// A value as written.
    Value(Box<Value>),
    /// A fact.
    Fact(FactName),
    /// `3 times` a fact.
    Times(f64, FactName),
    /// `half of` a term that is a value or a fact.
    Half(Box<Term>),
}

impl Term {
    /// What it is a half, or a half of a half, of; itself when it is none.
    pub fn innermost(&self) -> &Self {
        let mut term = self;
        while let Self::Half(inner) = term {
            term = inner;
        }
        term
    }
}

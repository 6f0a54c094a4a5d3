//! Joists, beams, columns and declared products.

use crate::model::element::{Common, Reference, SourceNote};
use crate::model::field::{Field, Given};
use crate::model::member::Member;
use crate::model::plan::{Axis, PlanLine, PlanPoint, PlanRect, Station};
use crate::model::site::DeclaredLoad;
use crate::model::support::{Joint, Stand, Support};
use crate::syntax::value::{Load as LoadValue, Section, Side, Value};
use crate::text::Span;
use crate::units::{Force, Length};

/// A declared product.
#[derive(Clone, Debug)]
pub struct Product {
    /// What every element has.
    pub common: Common,
    /// Composite lumber, glulam, I-joist, timber, filled pipe, hanger, rolled.
    pub kind: Field<Box<str>>,
    /// Its size.
    pub size: Option<Section>,
    /// What a rolled shape's size says: depth, width, web, flange, as many as stand there.
    pub outline: Option<Box<[Length]>>,
    /// Declared values by their symbol.
    pub values: Vec<(Box<str>, Given<Value>)>,
    /// Declared capacities, each up to a length when one is said.
    pub capacities: Vec<(Force, Option<Length>)>,
    /// Ply or flange width.
    pub width: Field<Length>,
    /// Weight.
    pub weight: Field<LoadValue>,
    /// `dry` or `sawn`.
    pub cross_grain: Field<Box<str>>,
}

/// A field of joists.
#[derive(Clone, Debug)]
pub struct Joists {
    /// What every element has.
    pub common: Common,
    /// Of which floor.
    pub floor: Field<Reference>,
    /// Of what.
    pub size: Field<Member>,
    /// The area they carry.
    pub fill: Vec<PlanRect>,
    /// The axis they run along.
    pub run: Field<Axis>,
    /// Their spacing, and the place of member zero.
    pub spacing: Field<Spacing>,
    /// Rim at outer bearings. Assumed a piece of the joists' own thickness.
    pub rim: Field<Rim>,
    /// What carries them, in the order of the text.
    pub supports: Vec<Support>,
    /// Where the pieces end.
    pub joints: Vec<Joint>,
    /// Take spans by the grid.
    pub is_span_by_grid: bool,
    /// Blocking.
    pub blocked: Vec<Given<Blocking>>,
    /// Walls along them with two of them underneath.
    pub doubled: Vec<Given<Reference>>,
    /// Where the deck's edge is when not at the fill's.
    pub deck_edges: Vec<Station>,
    /// Past which support, by how much.
    pub cantilevers: Vec<Given<(Reference, Length)>>,
}

/// A spacing with its origin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spacing {
    /// Centre to centre.
    pub step: Length,
    /// The centre of member zero.
    pub origin: Station,
}

/// A rim.
#[derive(Clone, Debug, PartialEq)]
pub enum Rim {
    /// None at all.
    None,
    /// Of this member.
    Member(Member),
    /// This thick.
    Thick(Length),
}

/// Blocking between joists.
#[derive(Clone, Debug, PartialEq)]
pub struct Blocking {
    /// Solid, else bridging.
    pub is_solid: bool,
    /// Over which support.
    pub over: Option<Reference>,
    /// At which station.
    pub at: Option<Station>,
    /// In the first bays beside which wall.
    pub beside: Option<Reference>,
}

/// A beam.
#[derive(Clone, Debug)]
pub struct Beam {
    /// What every element has.
    pub common: Common,
    /// Of what.
    pub size: Field<Member>,
    /// The ends of the piece on its centre line.
    pub from: Field<PlanLine>,
    /// How high it lies.
    pub set: Field<BeamSet>,
    /// Where its pieces end.
    pub joints: Vec<Joint>,
    /// Take spans by the grid.
    pub is_span_by_grid: bool,
    /// What carries it, in the order of the text.
    pub supports: Vec<Support>,
    /// A flat nailer on top.
    pub nailer: Field<Nailer>,
    /// Packing at its side.
    pub packing: Field<Packing>,
    /// Laid flat.
    pub is_laid_flat: bool,
    /// How it is braced sideways.
    pub braced: Field<Bracing>,
    /// Declared loads.
    pub loads: Vec<DeclaredLoad>,
    /// Off-line posts that it carries to a support on purpose: the post, the support.
    pub transfers: Vec<Given<(Reference, Reference)>>,
    /// Holes: diameter, where along it, height above its bottom.
    pub holes: Vec<BeamHole>,
    /// Web stiffeners.
    pub stiffeners: Vec<Station>,
    /// The author says that its web needs none: the line.
    pub no_stiffener: Option<Span>,
}

/// How high a beam lies.
#[derive(Clone, Debug, PartialEq)]
pub enum BeamSet {
    /// Its top with the top of the floor's joists, held down by this much.
    Flush(Reference, Length),
    /// Under the floor's joists, packed by this much.
    Dropped(Reference, Length),
    /// Above the floor's deck by this much.
    Upset(Reference, Length),
    /// Its top at this elevation.
    Top(Length),
}

/// A flat nailer on a beam.
#[derive(Clone, Debug, PartialEq)]
pub struct Nailer {
    /// Of what.
    pub member: Member,
    /// Bolted.
    pub is_bolted: bool,
}

/// Packing at a beam's side.
#[derive(Clone, Debug, PartialEq)]
pub struct Packing {
    /// What.
    pub words: Box<str>,
    /// Which side; both without.
    pub side: Option<Side>,
}

/// How a beam is braced sideways.
#[derive(Clone, Debug, PartialEq)]
pub enum Bracing {
    /// At this spacing.
    At(Length),
    /// By these joists.
    By(Reference),
    /// Not at all.
    None,
}

/// A hole in a beam.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BeamHole {
    /// Diameter.
    pub diameter: Length,
    /// Where along the beam.
    pub at: Option<Station>,
    /// Above its bottom.
    pub above_bottom: Option<Length>,
    /// The line.
    pub span: Span,
}

/// A column or post.
#[derive(Clone, Debug)]
pub struct Column {
    /// What every element has.
    pub common: Common,
    /// Where.
    pub at: Field<PlanPoint>,
    /// Of what.
    pub size: Field<Member>,
    /// What it stands on.
    pub stands_on: Field<Stand>,
    /// Its cap.
    pub cap: Field<Cap>,
    /// Its base.
    pub base: Field<Base>,
    /// Shims on the cap.
    pub shim: Field<Length>,
    /// Its length, where nothing above gives it.
    pub length: Field<Length>,
    /// Braced at this height; `None` inside for not at all.
    pub braced: Field<Option<Length>>,
    /// Uplift ties: at the top or bottom, what, how much.
    pub ties: Vec<Tie>,
    /// Declared loads.
    pub loads: Vec<DeclaredLoad>,
    /// Squash blocks under it, said here: how many pieces of what.
    pub squash: Field<(u32, Member)>,
}

/// The cap of a column.
#[derive(Clone, Debug, PartialEq)]
pub enum Cap {
    /// A flat plate: width, length, thickness; the element its long side lies along.
    Plate([Length; 3], Option<Reference>),
    /// A seat of this thickness.
    Seat(Length),
    /// A saddle: how long along the beam, how thick.
    Saddle(Length, Option<Length>),
    /// None.
    None,
}

impl Cap {
    /// What it adds under the beam.
    pub fn thickness(&self) -> Length {
        match self {
            Self::Plate([_, _, thickness], _) | Self::Seat(thickness) => *thickness,
            Self::Saddle(_, thickness) => thickness.unwrap_or(Length::ZERO),
            Self::None => Length::ZERO,
        }
    }
}

/// The base of a column.
#[derive(Clone, Debug, PartialEq)]
pub enum Base {
    /// A plate (width, length, thickness) on grout.
    Plate([Length; 3], Length),
    /// A standoff of this height.
    Standoff(Length),
    /// Nothing; through the deck down to what carries it.
    Bare {
        /// The deck is cut out around it.
        is_through_deck: bool,
    },
}

/// An uplift tie of a post.
#[derive(Clone, Debug, PartialEq)]
pub struct Tie {
    /// At its top, else at its foot.
    pub is_top: bool,
    /// What.
    pub words: Box<str>,
    /// Capacity.
    pub capacity: Option<Force>,
    /// Where the capacity comes from.
    pub source: Option<SourceNote>,
    /// The line.
    pub span: Span,
}

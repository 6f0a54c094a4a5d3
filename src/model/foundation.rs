//! Walls, shelves, pockets, ledgers, footings and slabs.

use crate::model::element::{Common, Reference, SourceNote};
use crate::model::field::{Field, Given};
use crate::model::member::Member;
use crate::model::plan::{PlanLine, PlanPoint, PlanRect, Station};
use crate::model::site::{DeclaredLoad, Soil};
use crate::model::support::Stand;
use crate::syntax::value::{Load as LoadValue, Side};
use crate::text::Span;
use crate::units::{Force, Length, Stress};

/// A wall.
#[derive(Clone, Debug)]
pub struct Wall {
    /// What every element has.
    pub common: Common,
    /// Concrete, masonry, framed or pony.
    pub kind: Field<WallKind>,
    /// Its line.
    pub from: Field<PlanLine>,
    /// Where that line lies in its thickness. Assumed the centre when no line says it.
    pub line: Field<LinePlace>,
    /// Thickness; a framed wall's from its studs when no line says it.
    pub thick: Field<Length>,
    /// Elevation of its top: concrete without the sill, the plate of a framed wall.
    pub top: Field<Length>,
    /// Further tops of a raked wall, each at a station.
    pub raked: Vec<(Length, Station)>,
    /// The sill on it. A framed wall has none.
    pub sill: Field<Sill>,
    /// Finished grade against it.
    pub grades: Vec<Grade>,
    /// The author says that no grade touches it.
    pub has_no_grade: bool,
    /// Anchor bolts.
    pub anchor: Field<Anchor>,
    /// Studs of a framed wall.
    pub studs: Field<Studs>,
    /// Sole plates. Assumed one.
    pub sole: Field<Plates>,
    /// Top plates. Assumed two.
    pub plates: Field<Plates>,
    /// Sole underside to plate top.
    pub height: Field<Length>,
    /// Sheathed.
    pub sheathed: Field<Box<str>>,
    /// Does it bear.
    pub bearing: Field<bool>,
    /// Its own weight.
    pub weight: Field<LoadValue>,
    /// Declared loads on its top.
    pub loads: Vec<DeclaredLoad>,
    /// What keeps it from lifting.
    pub hold_downs: Vec<HoldDown>,
    /// Bracing, as a word.
    pub brace: Field<Box<str>>,
    /// What it stands on.
    pub stands_on: Field<Stand>,
}

/// What a wall is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum WallKind {
    /// Cast concrete.
    Concrete,
    /// Masonry.
    Masonry,
    /// Studs with plates.
    Framed,
    /// A short framed wall on a foundation.
    Pony,
}

impl WallKind {
    /// True for concrete and masonry: what wood needs a sill on.
    pub const fn is_mineral(self) -> bool {
        match self {
            Self::Concrete | Self::Masonry => true,
            Self::Framed | Self::Pony => false,
        }
    }
}

/// Where a wall's line lies in its thickness.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LinePlace {
    /// In the middle.
    Centre,
    /// Its face on this side lies on the line, or this far inside of it.
    Face(Side, Length),
}

/// Sills on concrete.
#[derive(Clone, Debug, PartialEq)]
pub struct Sill {
    /// How many, one on the other.
    pub count: u32,
    /// Of what.
    pub member: Member,
    /// Where across the wall.
    pub place: SillPlace,
    /// A gasket below it.
    pub gasket: Option<Length>,
}

impl Sill {
    /// The whole height of sills and gasket; `None` for an unknown size.
    pub fn height(&self) -> Option<Length> {
        let one = self.member.thickness()?;
        Some(one.times(i64::from(self.count)) + self.gasket.unwrap_or(Length::ZERO))
    }

    /// How wide the wood is on the concrete.
    pub fn width(&self) -> Option<Length> {
        self.member.depth()
    }
}

/// Where a sill lies across its wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SillPlace {
    /// In the middle.
    Centred,
    /// This far inside of the face on this side; zero is flush.
    HeldIn(Length, Side),
}

/// Finished grade or crawl ground against a wall.
#[derive(Clone, Debug, PartialEq)]
pub struct Grade {
    /// Its elevation.
    pub elevation: Length,
    /// On which side.
    pub side: Option<Side>,
    /// At which station, where it slopes.
    pub at: Option<Station>,
    /// The line.
    pub span: Span,
}

/// Anchor bolts.
#[derive(Clone, Debug, PartialEq)]
pub struct Anchor {
    /// Diameter.
    pub diameter: Length,
    /// Length.
    pub length: Length,
    /// Spacing.
    pub spacing: Length,
}

/// What keeps a wall from lifting at one place.
#[derive(Clone, Debug, PartialEq)]
pub struct HoldDown {
    /// Where along the wall.
    pub at: Station,
    /// What.
    pub words: Box<str>,
    /// Capacity.
    pub capacity: Option<Force>,
    /// The least concrete that the capacity holds for.
    pub concrete: Length,
    /// Where the capacity comes from.
    pub source: Option<SourceNote>,
    /// The line.
    pub span: Span,
}

/// Studs of a framed wall.
#[derive(Clone, Debug, PartialEq)]
pub struct Studs {
    /// Of what.
    pub member: Member,
    /// Spacing.
    pub spacing: Length,
}

/// Plates, one on the other.
#[derive(Clone, Debug, PartialEq)]
pub struct Plates {
    /// How many.
    pub count: u32,
    /// Of what; the studs' size when no line says it.
    pub member: Option<Member>,
}

impl Plates {
    /// Their height, lying flat: 1-1/2" each of dressed 2x stock when no member is said.
    pub fn height(&self) -> Option<Length> {
        let one = match &self.member {
            Some(member) => member.thickness()?,
            None => Length::sixteenths(1, 8),
        };
        Some(one.times(i64::from(self.count)))
    }
}

/// A shelf inside the top of a concrete wall.
#[derive(Clone, Debug)]
pub struct Shelf {
    /// What every element has.
    pub common: Common,
    /// In which wall.
    pub wall: Field<Reference>,
    /// The face it is cut into.
    pub side: Option<Side>,
    /// From where to where along the wall; all of it without.
    pub reach: Option<(Station, Station)>,
    /// Elevation of its concrete.
    pub top: Field<Length>,
    /// How wide.
    pub width: Field<Length>,
    /// The sill on it.
    pub sill: Field<Sill>,
    /// The bolts that hold its sill.
    pub anchor: Field<Anchor>,
}

/// A beam pocket or a built-up seat on a wall.
#[derive(Clone, Debug)]
pub struct Pocket {
    /// What every element has.
    pub common: Common,
    /// In which wall.
    pub wall: Field<Reference>,
    /// The face it opens to.
    pub side: Option<Side>,
    /// On the beam's line.
    pub at: Field<PlanPoint>,
    /// Elevation of the concrete, under plate and grout.
    pub seat: Field<Length>,
    /// Width, across the beam.
    pub width: Field<Length>,
    /// Depth, along the beam, with the air behind it.
    pub depth: Field<Length>,
    /// Height.
    pub height: Field<Length>,
    /// Bearing plate: width, length, thickness.
    pub plate: Field<[Length; 3]>,
    /// Grout under the plate.
    pub grout: Field<Length>,
    /// Shims on the plate.
    pub shim: Field<Length>,
    /// Open at the top.
    pub is_open_at_top: bool,
    /// Open at the end of the wall on this side.
    pub open_end: Option<Side>,
}

impl Pocket {
    /// Plate, grout and shims, from the concrete up to the beam.
    pub fn build_up(&self) -> Option<Length> {
        if self.plate.is_broken() || self.grout.is_broken() || self.shim.is_broken() {
            return None;
        }
        let plate = self.plate.value().map_or(Length::ZERO, |[_, _, thickness]| *thickness);
        Some(plate + self.grout.get().unwrap_or(Length::ZERO) + self.shim.get().unwrap_or(Length::ZERO))
    }
}

/// A ledger on a wall or beam.
#[derive(Clone, Debug)]
pub struct Ledger {
    /// What every element has.
    pub common: Common,
    /// On what.
    pub on: Field<Reference>,
    /// On which face of a wall.
    pub side: Option<Side>,
    /// Its line.
    pub from: Field<PlanLine>,
    /// Of what.
    pub size: Field<Member>,
    /// Elevation of its top edge.
    pub top: Field<Length>,
    /// How it is fastened.
    pub fastened: Field<Fastening>,
}

/// How a ledger is fastened, with its declared capacity.
#[derive(Clone, Debug, PartialEq)]
pub struct Fastening {
    /// With what.
    pub words: Box<str>,
    /// Capacity.
    pub capacity: Option<LoadValue>,
    /// Where the capacity comes from.
    pub source: Option<SourceNote>,
}

/// A footing.
#[derive(Clone, Debug)]
pub struct Footing {
    /// What every element has.
    pub common: Common,
    /// Pad, strip, pier or stepped. A pad is assumed where `at` stands, a strip where `under` stands.
    pub kind: Field<FootingKind>,
    /// Where pads and piers are: one mark poured many times.
    pub at: Vec<PlanPoint>,
    /// Walls over a strip.
    pub under: Vec<Reference>,
    /// Off the walls' centre by this much to this side.
    pub offset: Field<(Length, Side)>,
    /// Its size.
    pub size: Field<FootingSize>,
    /// Elevation of its top.
    pub top: Field<TopPlace>,
    /// Steps of a stepped strip: down by how much at which station.
    pub steps: Vec<Given<(Length, Station)>>,
    /// Wider places of a strip.
    pub local_pads: Vec<LocalPad>,
    /// A pedestal on it.
    pub pedestal: Field<Pedestal>,
    /// Bars.
    pub bars: Vec<Given<Bars>>,
    /// Concrete strength. Assumed 2500 psi when no line says it.
    pub concrete: Field<Stress>,
    /// Soil, when not the project's.
    pub soil: Field<Soil>,
}

/// The kinds of footing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum FootingKind {
    /// Under a column.
    Pad,
    /// Under a wall.
    Strip,
    /// A pier in the ground.
    Pier,
    /// A strip that steps.
    Stepped,
}

/// A footing's size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FootingSize {
    /// Two sides in plan and the thickness.
    Pad(Length, Length, Length),
    /// Width and thickness.
    Strip(Length, Length),
    /// Diameter and thickness or height.
    Round(Length, Length),
}

impl FootingSize {
    /// From its top to its bottom.
    pub const fn thickness(&self) -> Length {
        match self {
            Self::Pad(_, _, thickness) | Self::Strip(_, thickness) | Self::Round(_, thickness) => *thickness,
        }
    }
}

/// An elevation, said outright or by a slab.
#[derive(Clone, Debug, PartialEq)]
pub enum TopPlace {
    /// The elevation.
    At(Length),
    /// This far below the top of a slab.
    BelowSlab(Length, Reference),
    /// This far above the top of a slab.
    AboveSlab(Length, Reference),
}

/// A wider place of a strip footing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LocalPad {
    /// Two sides in plan and the thickness.
    pub size: [Length; 3],
    /// Where.
    pub at: PlanPoint,
    /// The line.
    pub span: Span,
}

/// A pedestal on a footing.
#[derive(Clone, Debug, PartialEq)]
pub struct Pedestal {
    /// Two sides in plan.
    pub size: [Length; 2],
    /// Where its top is.
    pub top: TopPlace,
}

/// Bars of a footing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bars {
    /// How many.
    pub count: u32,
    /// Their number: 5 for `#5`.
    pub number: u32,
    /// Both ways, else along the strip.
    pub is_each_way: bool,
    /// Concrete cover.
    pub cover: Option<Length>,
}

/// A slab on ground.
#[derive(Clone, Debug)]
pub struct Slab {
    /// What every element has.
    pub common: Common,
    /// Where.
    pub fill: Vec<PlanRect>,
    /// Elevation of its top.
    pub top: Field<Length>,
    /// Thickness.
    pub thick: Field<Length>,
    /// Insulation under it.
    pub insulation: Field<Length>,
    /// What it lies on.
    pub base: Field<Box<str>>,
    /// Concrete strength.
    pub concrete: Field<Stress>,
    /// Isolation joints: around a column, along a wall.
    pub joints: Vec<Reference>,
}

//! The house itself, its grid, floors and loads.

use indexmap::IndexMap;

use crate::diagnostic::Severity;
use crate::model::element::{Common, Reference, SourceNote};
use crate::model::field::{Field, Given};
use crate::model::member::Member;
use crate::model::plan::{Axis, PlanLine, PlanPoint, PlanRect, Station};
use crate::model::support::{Carrier, Support};
use crate::profiles::levels::{MOISTURE_AT_INSTALL, MOISTURE_IN_SERVICE};
use crate::profiles::{Limits, Percent};
use crate::syntax::value::{Load as LoadValue, Side};
use crate::text::Span;
use crate::units::{AreaLoad, Length};

/// The house itself.
#[derive(Clone, Debug)]
pub struct Project {
    /// What every element has.
    pub common: Common,
    /// The named set of limits with the project's own lines over it.
    pub limits: Limits,
    /// Rules that count otherwise here than by themselves, in the order of the text.
    pub severities: Vec<OwnSeverity>,
    /// The profile's word.
    pub profile: Field<Box<str>>,
    /// The floor and surface that fixes all elevations.
    pub datum: Field<Datum>,
    /// The nail the rod list counts down from.
    pub benchmark: Field<Benchmark>,
    /// Frost depth.
    pub frost: Field<Length>,
    /// Soil pressure allowed.
    pub soil: Field<Soil>,
    /// Snow load.
    pub snow: Field<Snow>,
    /// Moisture when built and in use.
    pub moisture: Field<Moisture>,
    /// Seismic design category, as a flag only.
    pub seismic: Field<Box<str>>,
    /// Wind, as a flag only.
    pub wind: Field<AreaLoad>,
}

/// `severity flush-steel-no-gap advice because "the mill rolls it flat"`.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnSeverity {
    /// The rule's slug as written.
    pub rule: Box<str>,
    /// Where the slug stands.
    pub rule_span: Span,
    /// How much it matters here; `None` switches it off.
    pub severity: Option<Severity>,
    /// Where that stands.
    pub severity_span: Span,
    /// Why.
    pub reason: Option<Box<str>>,
    /// The line.
    pub span: Span,
}

impl OwnSeverity {
    /// True when it says why, in more than blanks.
    pub fn has_reason(&self) -> bool {
        self.reason.as_ref().is_some_and(|reason| !reason.trim().is_empty())
    }

    /// Its severity as a spec writes it: `advice`, `off`.
    pub const fn word(&self) -> &'static str {
        match self.severity {
            Some(severity) => severity.word(),
            None => "off",
        }
    }
}

/// Which surface has which elevation, to begin with.
#[derive(Clone, Debug, PartialEq)]
pub struct Datum {
    /// The floor.
    pub floor: Reference,
    /// Its subfloor, or its finish.
    pub surface: DatumSurface,
    /// The elevation.
    pub elevation: Length,
}

/// The surfaces a datum can name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DatumSurface {
    /// Top of the structural deck.
    Subfloor,
    /// Walking surface.
    Finish,
}

/// A nail with a known elevation.
#[derive(Clone, Debug, PartialEq)]
pub struct Benchmark {
    /// Where it is.
    pub words: Box<str>,
    /// Its elevation.
    pub elevation: Length,
}

/// Soil pressure allowed.
#[derive(Clone, Debug, PartialEq)]
pub struct Soil {
    /// How much.
    pub pressure: AreaLoad,
    /// With the footing's own weight left out.
    pub is_net: bool,
    /// The author says it is assumed.
    pub is_assumed: bool,
    /// The report.
    pub source: Option<SourceNote>,
}

/// Snow load.
#[derive(Clone, Debug, PartialEq)]
pub struct Snow {
    /// How much.
    pub load: AreaLoad,
    /// On the ground, not yet on the roof.
    pub is_ground: bool,
}

/// Moisture content of sawn wood.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moisture {
    /// When built.
    pub install: Percent,
    /// In use.
    pub service: Percent,
}

impl Moisture {
    /// What the limits presume.
    pub fn presumed(limits: &Limits) -> Self {
        Self {
            install: limits.of(&MOISTURE_AT_INSTALL).value,
            service: limits.of(&MOISTURE_IN_SERVICE).value,
        }
    }
}

/// The named lines in plan.
#[derive(Clone, Debug, Default)]
pub struct Grid {
    /// What every element has; `None` when the spec has no grid.
    pub common: Option<Common>,
    /// Each line by its name, in the order of the text.
    pub lines: IndexMap<Box<str>, GridLine>,
}

/// A named line in plan.
#[derive(Clone, Debug, PartialEq)]
pub struct GridLine {
    /// The axis it cuts: an x line runs north.
    pub axis: Axis,
    /// Its coordinate.
    pub at: Length,
    /// Where it is defined.
    pub span: Span,
    /// What it is.
    pub note: Option<Box<str>>,
}

/// A framed floor, or a floor on a slab.
#[derive(Clone, Debug)]
pub struct Floor {
    /// What every element has.
    pub common: Common,
    /// Elevation of the top of the deck.
    pub subfloor: Field<Length>,
    /// Elevation of the walking surface.
    pub finish_at: Field<Length>,
    /// Steps from another floor; of several lines the first.
    pub steps: Field<Steps>,
    /// Steps from further floors: promises, all of them.
    pub other_steps: Vec<Given<Steps>>,
    /// The slab it is.
    pub on: Field<Reference>,
    /// Thickness of the deck.
    pub deck: Field<Length>,
    /// All that comes on top of deck or slab. Assumed nothing when no line says it.
    pub finish: Field<Layer>,
    /// Live load.
    pub live: Field<AreaLoad>,
    /// Dead load.
    pub dead: Field<AreaLoad>,
    /// What the rooms are for.
    pub use_: Field<Box<str>>,
    /// Layers of the ceiling below its framing, downwards; empty for `none`.
    pub ceiling: Field<Vec<Layer>>,
    /// What is below.
    pub over: Field<Below>,
    /// A designed tie where the floor steps.
    pub tie: Field<SourceNote>,
    /// Guards along its open edges.
    pub guards: Vec<Given<EdgeGuard>>,
}

impl Floor {
    /// It lies in the open air: a deck, a balcony, or over nothing else.
    pub fn is_outdoors(&self) -> bool {
        let is_deck = self.use_.value().is_some_and(|word| matches!(&**word, "deck" | "balcony"));
        is_deck || matches!(self.over.value(), Some(Below::Outside))
    }

    /// How thick the finish is; nothing when no line says it.
    pub fn build_up(&self) -> Option<Length> {
        self.finish.value().map(|layer| layer.thickness)
    }
}

/// A guard along an edge of a floor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EdgeGuard {
    /// Which edge.
    pub side: Side,
    /// How high above the finish.
    pub height: Length,
    /// Its posts stand in joist bays that are blocked for them.
    pub is_backed: bool,
}

/// Words and a thickness: `cork 1/2"`.
#[derive(Clone, Debug, PartialEq)]
pub struct Layer {
    /// What it is; empty when only the thickness is said.
    pub words: Box<str>,
    /// How thick.
    pub thickness: Length,
}

/// `steps down from main by 3 risers at 6-1/2"`.
#[derive(Clone, Debug, PartialEq)]
pub struct Steps {
    /// Down, not up.
    pub is_down: bool,
    /// From which floor.
    pub from: Reference,
    /// How many risers.
    pub risers: u32,
    /// How high each.
    pub riser: Option<Given<Length>>,
}

impl Steps {
    /// How far it goes up from the other floor, finish to finish; negative for a step down. `None` without a riser height.
    pub fn rise(&self) -> Option<Length> {
        let rise = self.riser.as_ref()?.value.times(i64::from(self.risers));
        Some(if self.is_down { -rise } else { rise })
    }
}

/// What is below a floor.
#[derive(Clone, Debug, PartialEq)]
pub enum Below {
    /// A crawl space; the elevation of its ground.
    Crawl(Length),
    /// A basement: its floor.
    Basement(Reference),
    /// The open air.
    Outside,
}

/// Part of a floor with its own use, loads or finish.
#[derive(Clone, Debug)]
pub struct Area {
    /// What every element has.
    pub common: Common,
    /// Of which floor.
    pub floor: Field<Reference>,
    /// Where.
    pub fill: Vec<PlanRect>,
    /// What it is for.
    pub use_: Field<Box<str>>,
    /// Live load.
    pub live: Field<AreaLoad>,
    /// Dead load.
    pub dead: Field<AreaLoad>,
    /// Finish there.
    pub finish: Field<Layer>,
    /// No column may stand in it: the line.
    pub no_column: Option<Span>,
}

/// A roof, as a load on what is below.
#[derive(Clone, Debug)]
pub struct Roof {
    /// What every element has.
    pub common: Common,
    /// The plan area it loads.
    pub fill: Vec<PlanRect>,
    /// Dead load on plan.
    pub dead: Field<AreaLoad>,
    /// Snow load; the project's without a line.
    pub snow: Field<AreaLoad>,
    /// Roof live load.
    pub live: Field<AreaLoad>,
    /// Rafters, trusses or a beam.
    pub kind: Field<Box<str>>,
    /// Of which member.
    pub member: Option<Member>,
    /// The axis its members run along.
    pub run: Field<Axis>,
    /// Their spacing.
    pub spacing: Field<Length>,
    /// What carries it.
    pub supports: Vec<Support>,
    /// Rise in 12.
    pub pitch: Field<f64>,
    /// How far it hangs over.
    pub overhang: Field<Length>,
}

/// A load of its own.
#[derive(Clone, Debug)]
pub struct Load {
    /// What every element has.
    pub common: Common,
    /// On what.
    pub on: Field<Carrier>,
    /// Where.
    pub place: Field<LoadPlace>,
    /// How much.
    pub amount: Field<LoadValue>,
    /// Which case: `dead`, `live`, `snow`, …
    pub case: Field<Box<str>>,
}

/// Where a load acts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LoadPlace {
    /// At a point.
    Point(PlanPoint),
    /// Along a line.
    Line(PlanLine),
    /// On an area.
    Rect(PlanRect),
}

/// A declared load as a fact of a wall, beam, column or header: `435 plf live "second floor"`.
#[derive(Clone, Debug, PartialEq)]
pub struct DeclaredLoad {
    /// How much.
    pub amount: LoadValue,
    /// Which case.
    pub case: Box<str>,
    /// From where to where along the member, when not all of it.
    pub reach: Option<(Station, Station)>,
    /// At one place.
    pub at: Option<Station>,
    /// What it is.
    pub words: Option<Box<str>>,
    /// The line.
    pub span: Span,
}

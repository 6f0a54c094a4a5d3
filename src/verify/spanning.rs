//! A wooden member that spans, in beams, headers, joists and rafters alike: bending, shear, sag, uplift, reactions.

use crate::design::wood::deflection::cantilever_span_for_limit;
use crate::design::wood::repetitive::Row;
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::stuff::{Stuff, Values};
use crate::profiles::framing::{
    DEFLECTION_LIVE, DEFLECTION_OTHER, DEFLECTION_RAFTER_TOTAL, DEFLECTION_TARGET, DEFLECTION_TOTAL,
};
use crate::profiles::{Limits, OneIn};
use crate::statics::cases::ByCase;
use crate::statics::continuous::Push;
use crate::statics::member_line::MemberLine;
use crate::units::{Force, Length};
use crate::verify::check::{Check, NotVerified, Verification};
use crate::verify::demands::{self, Demand};
use crate::verify::limit_state::LimitState;
use crate::verify::{i_joist, sag, uplift, wood_bending, wood_shear};

/// A wooden member that spans: one of its pieces with all that one member has to bear.
#[derive(Clone, Debug)]
pub struct Spanning<'a> {
    /// The member.
    pub of: ElementId,
    /// The piece, when there are several.
    pub part: Option<Box<str>>,
    /// Its supports, loads and forces.
    pub line: MemberLine,
    /// What it is made of.
    pub stuff: &'a Stuff,
    /// It is laid flat.
    pub is_laid_flat: bool,
    /// The members beside it that share its load.
    pub row: Row,
    /// What holds its upper edge sideways.
    pub top: Edge,
    /// Each of its seats.
    pub seats: Vec<SeatContact>,
    /// What it is part of, for how far it may sag.
    pub role: Role,
}

/// What holds an edge of a member sideways.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Edge {
    /// A deck, plates, or members no further apart than counts as all along.
    Held,
    /// Something at every such distance.
    Every(Length),
    /// Nothing between its supports.
    Free,
}

/// How a member meets one of its seats.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct SeatContact {
    /// It lies on the seat and is loaded from above: load near the seat goes straight into it.
    pub is_loaded_opposite: bool,
    /// How long it lies on it; `None` where it hangs.
    pub bearing: Option<Length>,
}

/// What a member is part of, for how far it may sag.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Role {
    /// A floor, or a beam that carries one.
    Floor,
    /// A roof's rafters.
    Rafter,
    /// A beam or header that carries roof and walls alone.
    Other,
}

/// How far a member may sag, as shares of its span.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SagLimits {
    /// Under live load, and where it is from.
    pub live: (OneIn, &'static str),
    /// Under all load, and where it is from.
    pub total: (OneIn, &'static str),
    /// Under live load, for a floor that doesn't bounce: advice.
    pub target: OneIn,
}

impl Role {
    /// That of one piece of a beam or header: what floor live load reaches is part of a floor.
    pub fn of_beam(line: &MemberLine) -> Self {
        let is_pressed = line.direct.iter().any(|force| force.live > Force::ZERO);
        if is_pressed || !line.pushes.live.is_empty() { Self::Floor } else { Self::Other }
    }

    /// How far such a member may sag.
    pub fn limits(self, limits: &Limits) -> SagLimits {
        let live = match self {
            Self::Floor => limits.of(&DEFLECTION_LIVE),
            Self::Rafter | Self::Other => limits.of(&DEFLECTION_OTHER),
        };
        let total = match self {
            Self::Floor | Self::Other => limits.of(&DEFLECTION_TOTAL),
            Self::Rafter => limits.of(&DEFLECTION_RAFTER_TOTAL),
        };
        SagLimits {
            live: (live.value, live.section),
            total: (total.value, total.section),
            target: limits.of(&DEFLECTION_TARGET).value,
        }
    }
}

/// One stretch between supports, or past the last one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Span {
    /// Where it begins.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
    /// It begins at this seat.
    pub low_seat: Option<usize>,
    /// It ends at this seat.
    pub high_seat: Option<usize>,
}

impl Span {
    /// True of a stretch past the last support.
    pub const fn is_overhang(&self) -> bool {
        self.low_seat.is_none() || self.high_seat.is_none()
    }

    /// The length that a limit of sag is taken of: twice an overhang.
    pub fn for_limit(&self) -> Length {
        let length = self.to - self.from;
        if self.is_overhang() { cantilever_span_for_limit(length) } else { length }
    }
}

/// The spans of a piece, from its beginning.
pub fn spans(line: &MemberLine) -> Vec<Span> {
    let places: Vec<Length> = line.prepared.supports_and_ends().collect();
    let seat_at = |at: Length| line.seats.iter().position(|seat| seat.station - line.begins == at);
    let pairs = places.iter().zip(places.iter().skip(1));
    pairs
        .map(|(from, to)| Span { from: *from, to: *to, low_seat: seat_at(*from), high_seat: seat_at(*to) })
        .collect()
}

/// What a check is made from: the member and everything that may act on it.
#[derive(Clone, Copy, Debug)]
pub struct Acting<'a> {
    /// The house.
    pub model: &'a Model,
    /// The limits that hold.
    pub limits: &'a Limits,
    /// The member.
    pub spanning: &'a Spanning<'a>,
    /// Its spans.
    pub spans: &'a [Span],
    /// Every combination and arrangement.
    pub demands: &'a [Demand],
}

/// Everything that can be asked of a spanning member.
pub fn of(model: &Model, limits: &Limits, spanning: &Spanning<'_>) -> Vec<Verification> {
    let demands = match demands::of(&spanning.line) {
        Ok(demands) => demands,
        Err(_) => return Vec::new(),
    };
    let spans = spans(&spanning.line);
    let acting = Acting { model, limits, spanning, spans: &spans, demands: &demands };
    let mut outcomes = match &spanning.stuff.values {
        Values::Wood(wood) => {
            let mut outcomes = wood_bending::of(&acting, wood);
            outcomes.extend(wood_shear::of(&acting, wood));
            outcomes
        }
        Values::IJoist(joist) => i_joist::of(&acting, joist),
        Values::Rolled(_) | Values::DeclaredSteel(_) | Values::FilledPipe(_) => return Vec::new(),
    };
    outcomes.extend(sag::of(&acting));
    let mut all: Vec<Verification> = outcomes
        .into_iter()
        .map(|(limit_state, outcome)| Verification {
            of: spanning.of,
            part: spanning.part.clone(),
            against: None,
            limit_state,
            outcome,
        })
        .collect();
    all.extend(uplift::of(model, &spanning.line, &demands, spanning.part.as_deref()));
    all
}

/// The outcomes of one member.
pub type Outcomes = Vec<(LimitState, Result<Check, NotVerified>)>;

/// The check with the highest ratio; an error among them only where nothing could be checked at all, as each has the same
/// stuff.
pub fn governing(
    checks: impl Iterator<Item = Result<Check, NotVerified>>,
) -> Option<Result<Check, NotVerified>> {
    checks.reduce(worse)
}

/// The worse of two outcomes: what fails, then what could not be checked, then what is fuller.
pub fn worse(
    one: Result<Check, NotVerified>,
    other: Result<Check, NotVerified>,
) -> Result<Check, NotVerified> {
    let rank = |outcome: &Result<Check, NotVerified>| match outcome {
        Ok(check) if check.ratio() > 1.0 => (2, check.ratio()),
        Err(_) => (1, 0.0),
        Ok(check) => (0, check.ratio()),
    };
    let ((kind, ratio), (other_kind, other_ratio)) = (rank(&one), rank(&other));
    if other_kind > kind || (other_kind == kind && other_ratio > ratio) { other } else { one }
}

/// A piece under so many times its load: what one member of a strip one foot wide has to bear.
pub fn times(line: &MemberLine, share: f64) -> MemberLine {
    let mut scaled = line.clone();
    for force in &mut scaled.direct {
        *force = *force * share;
    }
    scaled.pushes = ByCase {
        dead: pushes_times(&line.pushes.dead, share),
        live: pushes_times(&line.pushes.live, share),
        roof_live: pushes_times(&line.pushes.roof_live, share),
        snow: pushes_times(&line.pushes.snow, share),
    };
    scaled.resolved().unwrap_or(scaled)
}

/// Two loads of the same piece together; `None` where the pieces differ.
pub fn together(one: &MemberLine, other: &MemberLine) -> Option<MemberLine> {
    let is_same = one.begins == other.begins
        && one.prepared.length() == other.prepared.length()
        && one.seats.len() == other.seats.len();
    if !is_same {
        return None;
    }
    let mut sum = one.clone();
    for (force, more) in sum.direct.iter_mut().zip(&other.direct) {
        *force += *more;
    }
    sum.pushes.dead.extend_from_slice(&other.pushes.dead);
    sum.pushes.live.extend_from_slice(&other.pushes.live);
    sum.pushes.roof_live.extend_from_slice(&other.pushes.roof_live);
    sum.pushes.snow.extend_from_slice(&other.pushes.snow);
    sum.resolved()
}

fn pushes_times(pushes: &[Push], share: f64) -> Vec<Push> {
    pushes
        .iter()
        .map(|push| match *push {
            Push::Spread { from, to, start, end } => {
                Push::Spread { from, to, start: start * share, end: end * share }
            }
            Push::Point { at, force } => Push::Point { at, force: force * share },
            Push::Couple { at, moment } => Push::Couple { at, moment: moment * share },
        })
        .collect()
}

//! Wooden beams and headers.

use crate::design::wood::repetitive::Row;
use crate::geometry::bearing;
use crate::geometry::carried::carrying_element;
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::framing::{Beam, BeamSet, Bracing};
use crate::model::member::Member;
use crate::model::openings::Header;
use crate::model::stuff::{NoStuff, Stuff, Values};
use crate::model::support::{Contact, Support};
use crate::profiles::framing::BRACE_SPACING;
use crate::statics::member_line::{MemberLine, Part};
use crate::units::Length;
use crate::verify::Known;
use crate::verify::check::{NotVerified, Verification};
use crate::verify::limit_state::LimitState;
use crate::verify::spanning::{self, Edge, Role, SeatContact, Spanning};

/// Verifies every wooden beam and header.
pub fn of(known: &Known<'_>) -> Vec<Verification> {
    let mut found = Vec::new();
    for beam in &known.model.beams {
        let Some(member) = beam.size.value() else { continue };
        let lines = known.forces.lines_of(beam.common.id);
        match wooden(known.model, member) {
            Some(Ok(stuff)) => found.extend(of_beam(known, beam, &stuff, lines)),
            Some(Err(why)) => found.push(unknown(beam.common.id, why.into())),
            None => {}
        }
    }
    for header in &known.model.headers {
        let Some(member) = header.size.value() else { continue };
        let lines = known.forces.lines_of(header.common.id);
        match wooden(known.model, member) {
            Some(Ok(stuff)) => found.extend(of_header(known, header, &stuff, lines)),
            Some(Err(why)) => found.push(unknown(header.common.id, why.into())),
            None => {}
        }
    }
    found
}

/// The stuff of a wooden member, or why it isn't known; `None` of steel.
pub fn wooden(model: &Model, member: &Member) -> Option<Result<Stuff, NoStuff>> {
    match model.stuff_of(member) {
        Ok(stuff) => matches!(stuff.values, Values::Wood(_) | Values::IJoist(_)).then_some(Ok(stuff)),
        Err(why) => (member.is_steel() == Some(false)).then_some(Err(why)),
    }
}

/// That a member's bending could not be checked, and why.
pub fn unknown(of: ElementId, why: NotVerified) -> Verification {
    Verification { of, part: None, against: None, limit_state: LimitState::Bending, outcome: Err(why) }
}

/// Verifies one beam as if it were of this stuff, its pieces with these forces: its own, or those of a size that is tried
/// in its place.
pub fn of_beam(known: &Known<'_>, beam: &Beam, stuff: &Stuff, lines: &[MemberLine]) -> Vec<Verification> {
    let id = beam.common.id;
    if beam.braced.is_broken() {
        return vec![unknown(id, NotVerified::Missing(id, "braced"))];
    }
    if lines.is_empty() {
        return vec![unknown(id, NotVerified::NoForces("no load could be followed to it".into()))];
    }
    let top = top_edge(known, beam);
    let is_loaded_on_top = !matches!(beam.set.value(), Some(BeamSet::Flush(..)) | None);
    let mut found = Vec::new();
    for line in lines {
        let part = match line.part {
            Part::Piece(at) if lines.len() > 1 => Some(format!("piece {}", at + 1).into()),
            Part::Piece(_) | Part::Strip(..) | Part::Lane(_) => None,
        };
        let seats = line
            .seats
            .iter()
            .map(|seat| {
                let support = beam.supports.get(seat.support);
                let bears = support.is_some_and(|support| matches!(support.by, Contact::Bears(_)));
                let bearing = support.and_then(|support| bearing::of_beam(known.model, beam, support).ok());
                SeatContact {
                    is_loaded_opposite: bears && is_loaded_on_top,
                    bearing: bearing.map(|bearing| bearing.of_each),
                }
            })
            .collect();
        let spanning = Spanning {
            of: id,
            part,
            line: line.clone(),
            stuff,
            is_laid_flat: beam.is_laid_flat,
            row: ALONE,
            top,
            seats,
            role: Role::of_beam(line),
        };
        found.extend(spanning::of(known.model, known.limits, &spanning));
    }
    found
}

/// Plies of one beam do not count as a row of members that share: they carry the same load.
const ALONE: Row = Row { members: 1, spacing: Length::ZERO, is_joined: false };

/// What holds a beam's upper edge: as stated, else joists that lie on it or hang from it close together.
fn top_edge(known: &Known<'_>, beam: &Beam) -> Edge {
    let close = known.limits.of(&BRACE_SPACING).value;
    let every = |spacing: Length| if spacing <= close { Edge::Held } else { Edge::Every(spacing) };
    let spacing_of = |on: Option<ElementId>| on.and_then(|on| known.model.joists_of(on)?.spacing.get());
    match beam.braced.value() {
        Some(Bracing::At(spacing)) => every(*spacing),
        Some(Bracing::By(joists)) => spacing_of(joists.target).map_or(Edge::Free, |it| every(it.step)),
        Some(Bracing::None) => Edge::Free,
        None => {
            let id = beam.common.id;
            let on_it = |supports: &[Support]| supports.iter().any(|it| carrying_element(it) == Some(id));
            let joists = known.model.joists.iter().filter(|joists| on_it(&joists.supports));
            let rafters = known.model.roofs.iter().filter(|roof| on_it(&roof.supports));
            let spacings = joists
                .filter_map(|joists| joists.spacing.get())
                .map(|spacing| spacing.step)
                .chain(rafters.filter_map(|roof| roof.spacing.get()));
            spacings.min().map_or(Edge::Free, every)
        }
    }
}

/// Verifies one header: the plates on it hold its upper edge.
pub fn of_header(
    known: &Known<'_>,
    header: &Header,
    stuff: &Stuff,
    lines: &[MemberLine],
) -> Vec<Verification> {
    let id = header.common.id;
    if lines.is_empty() {
        return vec![unknown(id, NotVerified::NoForces("no load could be followed to it".into()))];
    }
    let mut found = Vec::new();
    for line in lines {
        let on_jacks = SeatContact { is_loaded_opposite: true, bearing: None };
        let spanning = Spanning {
            of: id,
            part: None,
            line: line.clone(),
            stuff,
            is_laid_flat: false,
            row: ALONE,
            top: Edge::Held,
            seats: vec![on_jacks; line.seats.len()],
            role: Role::of_beam(line),
        };
        found.extend(spanning::of(known.model, known.limits, &spanning));
    }
    found
}

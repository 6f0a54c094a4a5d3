//! Joists and rafters of a stated size: each strip of a field at the members' spacing, and each member that carries more.

use std::collections::BTreeMap;

use crate::design::wood::repetitive::Row;
use crate::geometry::bearing;
use crate::model::element::ElementId;
use crate::model::framing::Joists;
use crate::model::plan::{Axis, PlanRect};
use crate::model::site::Roof;
use crate::model::stuff::Stuff;
use crate::model::support::{Contact, Support};
use crate::statics::member_line::{MemberLine, Part, STRIP};
use crate::units::Length;
use crate::verify::Known;
use crate::verify::check::{NotVerified, Verification};
use crate::verify::limit_state::LimitState;
use crate::verify::second_opinion;
use crate::verify::spanning::{self, Edge, Role, SeatContact, Spanning, times, together, worse};
use crate::verify::wood_beams::{unknown, wooden};

/// Verifies every field of joists, and every roof whose rafters are stated.
pub fn of(known: &Known<'_>) -> Vec<Verification> {
    let mut found = Vec::new();
    for joists in &known.model.joists {
        let Some(member) = joists.size.value() else { continue };
        let lines = known.forces.lines_of(joists.common.id);
        match wooden(known.model, member) {
            Some(Ok(stuff)) => {
                let mut checks = of_joists(known, joists, &stuff, lines);
                second_opinion::add(known, joists, &stuff, &mut checks);
                found.extend(checks);
            }
            Some(Err(why)) => found.push(unknown(joists.common.id, why.into())),
            None => {}
        }
    }
    for roof in &known.model.roofs {
        let Some(member) = roof.member.as_ref() else { continue };
        let lines = known.forces.lines_of(roof.common.id);
        match wooden(known.model, member) {
            Some(Ok(stuff)) => found.extend(of_rafters(known, roof, &stuff, lines)),
            Some(Err(why)) => found.push(unknown(roof.common.id, why.into())),
            None => {}
        }
    }
    found
}

/// Verifies a field as if its joists were of this stuff, with these forces: its own, or those of a size that is tried.
pub fn of_joists(
    known: &Known<'_>,
    joists: &Joists,
    stuff: &Stuff,
    lines: &[MemberLine],
) -> Vec<Verification> {
    let id = joists.common.id;
    let Some(spacing) = joists.spacing.get() else {
        return vec![unknown(id, NotVerified::Missing(id, "spacing"))];
    };
    let floor = joists.floor.value().and_then(|floor| known.model.floor(floor.target?));
    let has_deck = floor.is_some_and(|floor| floor.deck.value().is_some());
    let contact = |support: &Support| SeatContact {
        is_loaded_opposite: matches!(support.by, Contact::Bears(_)),
        bearing: bearing::of_joists(known.model, joists, support).ok().map(|bearing| bearing.of_each),
    };
    let field = Field {
        of: id,
        spacing: spacing.step,
        fill: &joists.fill,
        run: joists.run.get(),
        has_deck,
        supports: &joists.supports,
        doubled_at: doubled_at(known, joists),
        role: Role::Floor,
    };
    of_field(known, &field, stuff, lines, &contact)
}

/// Verifies the rafters of a roof as if they were of this stuff. Its sheathing holds their upper edge.
pub fn of_rafters(known: &Known<'_>, roof: &Roof, stuff: &Stuff, lines: &[MemberLine]) -> Vec<Verification> {
    let id = roof.common.id;
    let Some(spacing) = roof.spacing.get() else {
        return vec![unknown(id, NotVerified::Missing(id, "spacing"))];
    };
    let contact = |support: &Support| SeatContact {
        is_loaded_opposite: matches!(support.by, Contact::Bears(_)),
        bearing: None,
    };
    let field = Field {
        of: id,
        spacing,
        fill: &roof.fill,
        run: roof.run.get(),
        has_deck: true,
        supports: &roof.supports,
        doubled_at: Vec::new(),
        role: Role::Rafter,
    };
    of_field(known, &field, stuff, lines, &contact)
}

/// A pair of joists stands under a wall whose line is this near. Common practice.
const BESIDE: Length = Length::inches(6);

/// Members side by side.
struct Field<'a> {
    of: ElementId,
    spacing: Length,
    fill: &'a [PlanRect],
    run: Option<Axis>,
    has_deck: bool,
    supports: &'a [Support],
    /// Where two members lie side by side, across.
    doubled_at: Vec<Length>,
    role: Role,
}

/// The lines of the walls under which the joists of a field are doubled.
fn doubled_at(known: &Known<'_>, joists: &Joists) -> Vec<Length> {
    let across = joists.run.get().map(Axis::across);
    let walls = joists.doubled.iter().filter_map(|wall| known.model.wall(wall.value.target?));
    walls.filter_map(|wall| Some(wall.from.value()?.from.on(across?))).collect()
}

impl Field<'_> {
    /// The members that share: a deck joins them.
    fn row(&self) -> Row {
        let across = self.run.map(Axis::across);
        let widths = self.fill.iter().filter_map(|rect| Some(rect.on(across?))).map(|(low, high)| high - low);
        let steps = widths.max().unwrap_or_default() / self.spacing;
        // Three or more is all that counts.
        let members = if steps >= 2.0 { 3 } else { 1 };
        Row { members, spacing: self.spacing, is_joined: self.has_deck }
    }
}

/// One verification for each limit state of a field: the worst of its members.
fn of_field(
    known: &Known<'_>,
    field: &Field<'_>,
    stuff: &Stuff,
    lines: &[MemberLine],
    contact: &dyn Fn(&Support) -> SeatContact,
) -> Vec<Verification> {
    if lines.is_empty() {
        let why = NotVerified::NoForces("no load could be followed to them".into());
        return vec![unknown(field.of, why)];
    }
    let share = field.spacing / STRIP;
    let strips: Vec<(&MemberLine, MemberLine)> = lines
        .iter()
        .filter(|line| matches!(line.part, Part::Strip(..)))
        .map(|line| (line, times(line, share)))
        .collect();
    let mut worst: BTreeMap<LimitState, Verification> = BTreeMap::new();
    let mut add = |line: MemberLine| {
        let seats = line
            .seats
            .iter()
            .map(|seat| field.supports.get(seat.support).map(contact).unwrap_or_default())
            .collect();
        let spanning = Spanning {
            of: field.of,
            part: None,
            line,
            stuff,
            is_laid_flat: false,
            row: field.row(),
            top: if field.has_deck { Edge::Held } else { Edge::Free },
            seats,
            role: field.role,
        };
        for found in spanning::of(known.model, known.limits, &spanning) {
            match worst.remove(&found.limit_state) {
                Some(before) => {
                    let kept = worse(before.outcome.clone(), found.outcome.clone());
                    let is_before = kept == before.outcome;
                    worst.insert(found.limit_state, if is_before { before } else { found });
                }
                None => {
                    worst.insert(found.limit_state, found);
                }
            }
        }
    };
    for line in lines.iter().filter(|line| matches!(line.part, Part::Lane(_))) {
        let below = strips.iter().filter(|(strip, _)| match (strip.part, line.part) {
            (Part::Strip(low, high), Part::Lane(at)) => low <= at && at <= high,
            _ => false,
        });
        // The member that carries more carries its part of the area, too.
        let sums: Vec<MemberLine> = below.filter_map(|(_, area)| together(line, area)).collect();
        if sums.is_empty() {
            add(line.clone());
        }
        let is_doubled = match line.part {
            Part::Lane(at) => field.doubled_at.iter().any(|wall| (*wall - at).abs() <= BESIDE),
            Part::Piece(_) | Part::Strip(..) => false,
        };
        // Each of two has half of it.
        let of_each = if is_doubled { 0.5 } else { 1.0 };
        sums.into_iter().map(|line| times(&line, of_each)).for_each(&mut add);
    }
    strips.into_iter().for_each(|(_, line)| add(line));
    worst.into_values().collect()
}

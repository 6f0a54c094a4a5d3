//! What lies: joists, beams and headers on what carries them.

use crate::geometry::bearing::{self, BearingOn};
use crate::model::element::ElementId;
use crate::model::framing::{Beam, Joists};
use crate::model::member::Member;
use crate::model::openings::Header;
use crate::statics::member_line::{MemberLine, Part, STRIP};
use crate::statics::wall::HeaderSpan;
use crate::units::{Force, Length};
use crate::verify::Known;
use crate::verify::bearings::layer::{self, Pressed};
use crate::verify::bearings::{Pressing, heaviest};
use crate::verify::check::{NotVerified, Verification};
use crate::verify::demands;
use crate::verify::footings::Worst;
use crate::verify::limit_state::LimitState;

/// Verifies every joist, beam and header where it lies.
pub fn of(known: &Known<'_>) -> Vec<Verification> {
    let mut all = Vec::new();
    for joists in &known.model.joists {
        all.extend(of_joists(known, joists));
    }
    for beam in &known.model.beams {
        all.extend(of_beam(known, beam));
    }
    for span in &known.forces.headers {
        let header = known.model.headers.get(span.header.index as usize);
        all.extend(header.and_then(|header| of_header(known, header, span)));
    }
    all
}

/// The most that a piece or strip presses on one of its seats, for one joist or beam.
pub fn most_on(line: &MemberLine, seat: usize, share: f64) -> Result<Option<Pressing>, NotVerified> {
    let demands = demands::of(line).map_err(|_| NotVerified::NoForces("it can't stand".into()))?;
    let pressed = demands.iter().map(|demand| Pressing {
        force: demand.reaction(line, seat) * share,
        combination: demand.combination.name,
        pattern: demand.pattern.clone(),
    });
    let most = pressed.max_by(|one, other| one.force.to_lb().total_cmp(&other.force.to_lb()));
    Ok(most.filter(|pressing| pressing.force > Force::ZERO))
}

/// How many strips one joist carries; a line of one joist by itself carries what it has.
pub fn strips_of_joist(joists: &Joists, line: &MemberLine) -> Result<f64, NotVerified> {
    match line.part {
        Part::Strip(..) => {
            let spacing = joists.spacing.value().ok_or(NotVerified::Missing(joists.common.id, "spacing"))?;
            Ok(spacing.step / STRIP)
        }
        Part::Lane(_) | Part::Piece(_) => Ok(1.0),
    }
}

fn of_joists(known: &Known<'_>, joists: &Joists) -> Vec<Verification> {
    let Some(member) = joists.size.value() else { return Vec::new() };
    let lines = known.forces.lines_of(joists.common.id);
    let supports = joists.supports.iter().enumerate();
    let crossed = supports.filter_map(|(at, support)| {
        let contact = bearing::of_joists(known.model, joists, support).ok()?;
        let seats = seats_of(lines, at);
        let lying = Lying {
            member,
            what: format!("joists {}", joists.common.name),
            breadth: member.width(),
            length: contact.of_each,
            on: contact.on,
        };
        let share = |line: &MemberLine| strips_of_joist(joists, line);
        lies(known, joists.common.id, &lying, &seats, share)
    });
    crossed.collect()
}

fn of_beam(known: &Known<'_>, beam: &Beam) -> Vec<Verification> {
    let Some(member) = beam.size.value() else { return Vec::new() };
    let lines = known.forces.lines_of(beam.common.id);
    let supports = beam.supports.iter().enumerate();
    let crossed = supports.filter_map(|(at, support)| {
        let contact = bearing::of_beam(known.model, beam, support).ok()?;
        let lying = Lying {
            member,
            what: format!("beam {}", beam.common.name),
            breadth: if beam.is_laid_flat { member.depth() } else { member.width() },
            length: contact.of_each,
            on: contact.on,
        };
        lies(known, beam.common.id, &lying, &seats_of(lines, at), |_| Ok(1.0))
    });
    crossed.collect()
}

/// A member on what it lies on.
struct Lying<'a> {
    member: &'a Member,
    what: String,
    breadth: Option<Length>,
    length: Length,
    on: Option<BearingOn>,
}

/// Every seat that one support line gives to the lines of a member.
pub fn seats_of(lines: &[MemberLine], support: usize) -> Vec<(&MemberLine, usize)> {
    let of_line = |line| {
        let seats = |line: &MemberLine| line.seats.clone();
        let seats = seats(line).into_iter().enumerate().filter(move |(_, seat)| seat.support == support);
        seats.map(move |(at, _)| (line, at))
    };
    lines.iter().flat_map(of_line).collect()
}

/// The worst of the seats on one support.
fn lies(
    known: &Known<'_>,
    of: ElementId,
    lying: &Lying<'_>,
    seats: &[(&MemberLine, usize)],
    share: impl Fn(&MemberLine) -> Result<f64, NotVerified>,
) -> Option<Verification> {
    let mut worst = Worst::default();
    for (line, seat) in seats {
        let on = line.seats.get(*seat).and_then(|seat| seat.on.element())?;
        let crushed = share(line).and_then(|share| most_on(line, *seat, share)).and_then(|pressing| {
            let Some(pressing) = pressing else { return Ok(None) };
            layer::weakest(&pressing, &layers(known, lying, line, *seat, on)?)
        });
        match crushed {
            Ok(None) => {}
            Ok(Some((check, what))) => worst.take_at(Ok(check), Some(what), Some(on)),
            Err(why) => worst.take_at(Err(why), None, Some(on)),
        }
    }
    worst.verification(of, LimitState::WoodBearing)
}

fn layers(
    known: &Known<'_>,
    lying: &Lying<'_>,
    line: &MemberLine,
    seat: usize,
    on: ElementId,
) -> Result<Vec<Pressed>, NotVerified> {
    let breadth = lying.breadth.ok_or(NotVerified::Missing(line.of, "size"))?;
    let sides = [breadth, lying.length];
    let mut layers = Vec::new();
    if let Some(own) = layer::of_member(known, lying.member, lying.what.clone(), None)? {
        let place = line.seats.get(seat).map(|seat| seat.station - line.begins);
        let from_end = place.map(|place| {
            let nearest = place.min(line.prepared.length() - place) - lying.length.half();
            (lying.length, nearest.max(Length::ZERO))
        });
        layers.push(Pressed { layer: own, sides, from_end });
    }
    if lying.on != Some(BearingOn::Mineral)
        && let Some(under) = layer::on_top_of(known, on)?
    {
        layers.push(Pressed { layer: under, sides, from_end: None });
    }
    Ok(layers)
}

/// A header on its jacks: they take it on the end of their grain, it takes them across its own.
fn of_header(known: &Known<'_>, header: &Header, span: &HeaderSpan) -> Option<Verification> {
    let id = header.common.id;
    let member = header.size.value()?;
    let line = known.forces.lines_of(id).first()?;
    let mut worst = Worst::default();
    let packs = [(0, span.jacks.0, span.half_packs.0), (1, span.jacks.1, span.half_packs.1)];
    for (seat, jacks, half_pack) in packs {
        let depth = known.model.jacks_of(jacks).and_then(|jacks| jacks.size.value()?.1.depth());
        let breadth = member.width().zip(depth).map(|(width, depth)| width.min(depth));
        let crushed = breadth.ok_or(NotVerified::Missing(id, "size")).and_then(|breadth| {
            let pressing = heaviest(&line.reaction(seat));
            let layer = layer::of_member(known, member, format!("header {}", header.common.name), None)?;
            let Some((pressing, layer)) = pressing.zip(layer) else { return Ok(None) };
            let pressed = Pressed { layer, sides: [breadth, half_pack.times(2)], from_end: None };
            layer::weakest(&pressing, &[pressed])
        });
        match crushed {
            Ok(None) => {}
            Ok(Some((check, what))) => worst.take_at(Ok(check), Some(what), Some(jacks)),
            Err(why) => worst.take_at(Err(why), None, Some(jacks)),
        }
    }
    worst.verification(id, LimitState::WoodBearing)
}

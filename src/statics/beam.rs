//! Beams: their pieces, what holds each, and what pushes it.

use crate::geometry::Geometry;
use crate::geometry::bearing;
use crate::geometry::carried::carrying_element;
use crate::geometry::plan_contacts::{BESIDE, BeamContact};
use crate::model::Model;
use crate::model::framing::Beam;
use crate::model::plan::Axis;
use crate::model::support::{Carrier, Contact};
use crate::statics::action::{Acting, Handed, Lost, Receiver, Spot};
use crate::statics::field::{END_REACH, Outcome};
use crate::statics::member_line::{self, Part, Piece, Seat, Stiffness};
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

/// A support of a beam.
struct Held {
    below: Seat,
    above: Seat,
    is_joint: bool,
}

/// Follows loads through a beam.
pub fn follow(
    model: &Model,
    geometry: &Geometry,
    beam: &Beam,
    stiffness: Stiffness,
    actings: &[Acting],
) -> Outcome {
    let Some((axis, across, reach)) = line_of(beam) else { return Outcome::lost(actings, Lost::Skew) };
    let held = match held_by(model, geometry, beam, axis, reach) {
        Ok(held) => held,
        Err(why) => return Outcome::lost(actings, why),
    };
    let mut outcome = Outcome::default();
    let mut own: Vec<Acting> = Vec::new();
    for acting in actings {
        own.extend(onto(acting, axis, across, reach, &mut outcome.handed));
    }
    let mut begins = reach.0;
    let mut seats: Vec<Seat> = Vec::new();
    let mut pieces: Vec<(Vec<Seat>, Length)> = Vec::new();
    let last = held.len().saturating_sub(1);
    for (at, support) in held.iter().enumerate() {
        seats.push(if at == 0 { support.above } else { support.below });
        // A piece that ends here and one that begins: the beam goes on to both sides, held there or not.
        let strip = support.below.strip;
        let goes_on_below = at > 0 || reach.0 + END_REACH < strip.0;
        let goes_on_above = at < last || strip.1 + END_REACH < reach.1;
        if support.is_joint && goes_on_below && goes_on_above {
            pieces.push((std::mem::take(&mut seats), support.below.handed_at));
            seats.push(support.above);
        }
    }
    pieces.push((seats, reach.1));
    let n_pieces = pieces.len();
    for (at, (seats, ends)) in pieces.into_iter().enumerate() {
        let is_last = at + 1 == n_pieces;
        let part_of = |acting: &Acting| match is_last {
            true => acting.up_to(axis, (begins, ends)),
            false => acting.between(axis, (begins, ends)),
        };
        let here: Vec<Acting> = own.iter().filter_map(part_of).collect();
        let piece = Piece {
            of: beam.common.id,
            part: Part::Piece(at),
            axis,
            across,
            reach: (begins, ends),
            seats: &seats,
            stiffness,
        };
        outcome.add(member_line::solve(&piece, &here));
        begins = ends;
    }
    outcome
}

/// The axis of a beam, its coordinate across, and its ends.
pub fn line_of(beam: &Beam) -> Option<(Axis, Length, (Length, Length))> {
    let line = beam.from.value()?;
    let axis = line.axis()?;
    Some((axis, line.from.on(axis.across()), line.on(axis)))
}

/// A load moved onto the line of a member. What lies a little past its end is taken by the end; what lies farther is lost.
pub fn onto(
    acting: &Acting,
    axis: Axis,
    across: Length,
    (low, high): (Length, Length),
    lost: &mut Vec<Handed>,
) -> Vec<Acting> {
    let mut taken = Vec::new();
    let past = [
        (acting.below(axis, low), low, (low - END_REACH, low)),
        (acting.above(axis, high), high, (high, high + END_REACH)),
    ];
    for (part, end, near) in past {
        let Some(part) = part else { continue };
        let reach = part.reach(axis);
        if near.0 <= reach.0 && reach.1 <= near.1 {
            taken.push(Acting::Point { at: Spot::at(axis, end, across), force: part.total() });
        } else {
            lost.push(Handed { to: Receiver::Nothing(Lost::NotReached), acting: part });
        }
    }
    if let Some(part) = acting.up_to(axis, (low, high)) {
        taken.push(match part {
            Acting::Spread { axis: own, from, to, load, .. } if own == axis => {
                Acting::Spread { axis, across, from, to, load }
            }
            Acting::Point { at, force } => Acting::Point { at: Spot::at(axis, at.on(axis), across), force },
            Acting::Spread { .. } | Acting::Area { .. } => {
                let (from, to) = part.reach(axis);
                Acting::Point { at: Spot::at(axis, (from + to).half(), across), force: part.total() }
            }
        });
    }
    taken
}

fn held_by(
    model: &Model,
    geometry: &Geometry,
    beam: &Beam,
    axis: Axis,
    (low, high): (Length, Length),
) -> Result<Vec<Held>, Lost> {
    // A support that can't be read, or whose place is not known, may hold any of it.
    if ["bears on", "hangs from", "joint"].into_iter().any(|fact| beam.common.may_say(fact)) {
        return Err(Lost::Unreadable);
    }
    let contacts = geometry.contacts.beams.get(beam.common.id.index as usize).ok_or(Lost::Unreadable)?;
    let begins_low = beam.from.value().is_some_and(|line| line.from.on(axis) == low);
    let from_start = |at: Length| if begins_low { low + at } else { high - at };
    let mut held = Vec::new();
    let mut outside = Vec::new();
    for (index, (support, contact)) in beam.supports.iter().zip(&contacts.supports).enumerate() {
        let on = match (&support.on, carrying_element(support)) {
            (Carrier::Outside(_), _) => Receiver::Outside,
            (Carrier::Element(_), Some(element)) => Receiver::Element(element),
            (Carrier::Element(_), None) => return Err(Lost::Unreadable),
        };
        if on == Receiver::Outside {
            outside.push(index);
            continue;
        }
        let contact = contact.as_ref().map_err(|_| Lost::Unreadable)?;
        let BeamContact::Meets { station, strip, off_line } = contact else { continue };
        // A column that stands aside holds nothing, whatever the line says: that is a finding of the plan.
        if off_line.abs() > BESIDE {
            continue;
        }
        let ends = (from_start(strip.0), from_start(strip.1));
        let strip = (ends.0.min(ends.1), ends.0.max(ends.1));
        let centre = from_start(*station);
        let is_joint = beam.joints.iter().any(|joint| joint.over.target == on.element());
        let is_low = low >= strip.0 - END_REACH && !is_joint;
        let is_high = high <= strip.1 + END_REACH && !is_joint;
        let seat = |station: Length| Seat { on, support: index, station, strip, handed_at: centre };
        let whole = |station: Length| Held { below: seat(station), above: seat(station), is_joint };
        held.push(if beam.is_span_by_grid {
            whole(if is_low {
                low
            } else if is_high {
                high
            } else {
                centre
            })
        } else {
            match (&support.by, bearing::of_beam(model, beam, support)) {
                (Contact::Hangs(_), _) if is_low => whole(strip.1.max(low)),
                (Contact::Hangs(_), _) if is_high => whole(strip.0.min(high)),
                (Contact::Bears(_), Ok(contact)) if is_joint => {
                    let half = contact.of_each.half();
                    Held { below: seat(centre - half), above: seat(centre + half), is_joint }
                }
                (Contact::Bears(_), Ok(contact)) if is_low && !is_point(on) => {
                    whole(strip.1.min(low + contact.length) - contact.length.half())
                }
                (Contact::Bears(_), Ok(contact)) if is_high && !is_point(on) => {
                    whole(strip.0.max(high - contact.length) + contact.length.half())
                }
                (Contact::Hangs(_) | Contact::Bears(_), _) => whole(centre),
            }
        });
    }
    for index in outside {
        held.push(outside_spec(&held, index, (low, high)));
    }
    held.sort_by_key(|support| support.below.handed_at);
    if held.is_empty() {
        return Err(if beam.supports.is_empty() { Lost::NoSupport } else { Lost::NotReached });
    }
    Ok(held)
}

/// A column or a pad: the beam's seat is its middle, wherever the beam ends.
fn is_point(on: Receiver) -> bool {
    on.element().is_some_and(|element| matches!(element.kind, ElementKind::Column | ElementKind::Footing))
}

/// A support outside of the spec has no place: it is taken at the end that nothing else holds, the lower one first.
fn outside_spec(held: &[Held], index: usize, (low, high): (Length, Length)) -> Held {
    let is_low_held = held.iter().any(|support| support.below.strip.0 - END_REACH <= low);
    let station = if is_low_held { high } else { low };
    let seat = Seat {
        on: Receiver::Outside,
        support: index,
        station,
        strip: (station, station),
        handed_at: station,
    };
    Held { below: seat, above: seat, is_joint: false }
}

//! The web of a steel beam over each seat it lies on, and under each post or beam that stands on it.

use crate::design::NotCovered;
use crate::design::steel::concentrated::{self, LoadedWeb};
use crate::geometry::bearing;
use crate::model::element::ElementId;
use crate::model::framing::{Base, Beam};
use crate::model::support::Contact;
use crate::statics::action::{Acting, Source};
use crate::statics::cases::ByCase;
use crate::statics::member_line::{MemberLine, Seat};
use crate::syntax::vocabulary::ElementKind;
use crate::units::{Force, Length};
use crate::verify::Known;
use crate::verify::check::{Check, NotVerified, Verification};
use crate::verify::demands::{self, Demand};
use crate::verify::limit_state::LimitState;
use crate::verify::steel::{Shape, Steel, read, worked};
use crate::verify::steel_beams::hardest;

/// The web at each force across it.
pub fn of(
    known: &Known<'_>,
    beam: &Beam,
    steel: &Steel,
    line: &MemberLine,
    demands: &[Demand],
    piece: Option<&str>,
) -> Vec<Verification> {
    if beam.is_laid_flat {
        return Vec::new();
    }
    let mut forces = at_seats(known, beam, line, demands);
    forces.extend(under_posts(known, beam, line));
    forces
        .into_iter()
        .map(|force| {
            let name = known.model.common(force.with).map_or("", |common| &common.name);
            let place = format!("{} {name}", force.side);
            Verification {
                of: beam.common.id,
                part: Some(piece.map_or(place.clone(), |piece| format!("{piece}, {place}")).into()),
                against: Some(force.with),
                limit_state: LimitState::Web,
                outcome: checked(beam, steel, line, &force),
            }
        })
        .collect()
}

/// A force across a web.
struct Across {
    /// What it comes from.
    with: ElementId,
    /// `over` a seat, `under` a post.
    side: &'static str,
    force: Force,
    combination: &'static str,
    pattern: Option<Box<str>>,
    /// Its place, from the beginning of the piece.
    at: Length,
    /// lb.
    bearing: Result<Length, NotVerified>,
    /// From the middle of the bearing to the end of the piece.
    from_end: Length,
}

fn at_seats(known: &Known<'_>, beam: &Beam, line: &MemberLine, demands: &[Demand]) -> Vec<Across> {
    let length = line.prepared.length();
    let mut found = Vec::new();
    for (index, seat) in line.seats.iter().enumerate() {
        let Some((with, support)) = seat.on.element().zip(beam.supports.get(seat.support)) else { continue };
        if !matches!(support.by, Contact::Bears(_)) {
            continue;
        }
        let presses = demands.iter().map(|demand| (demand, demand.reaction(line, index)));
        let Some((demand, force)) = hardest(presses).filter(|(_, force)| *force > Force::ZERO) else {
            continue;
        };
        let bearing = bearing::of_beam(known.model, beam, support)
            .map(|bearing| bearing.of_each.min(overlap(beam, line, seat)))
            .map_err(|unknown| NotVerified::Missing(unknown.of.unwrap_or(beam.common.id), unknown.fact));
        let at = seat.station - line.begins;
        let reaches_out = at.min(length - at);
        let half = bearing.as_ref().map_or(Length::ZERO, |length| length.half());
        found.push(Across {
            with,
            side: "over",
            force,
            combination: demand.combination.name,
            pattern: demand.pattern.clone(),
            at,
            from_end: if reaches_out == Length::ZERO { half } else { reaches_out },
            bearing,
        });
    }
    found
}

/// How much of a seat's strip the beam covers.
fn overlap(beam: &Beam, line: &MemberLine, seat: &Seat) -> Length {
    let (low, high) = beam.from.value().map_or(seat.strip, |from| from.on(line.axis));
    seat.strip.1.min(high) - seat.strip.0.max(low)
}

/// Posts and beams that stand on this piece, each with all that it brings to one place.
fn under_posts(known: &Known<'_>, beam: &Beam, line: &MemberLine) -> Vec<Across> {
    let length = line.prepared.length();
    let mut posts: Vec<(ElementId, Length, ByCase<Force>)> = Vec::new();
    for action in known.forces.on(beam.common.id) {
        let (Source::From(with), Acting::Point { at, force }) = (action.source, action.acting) else {
            continue;
        };
        let at = at.on(line.axis) - line.begins;
        match posts.iter_mut().find(|post| (post.0, post.1) == (with, at)) {
            Some(post) => post.2 += force,
            None => posts.push((with, at, force)),
        }
    }
    let mut found = Vec::new();
    for (with, at, force) in posts {
        if !(Length::ZERO <= at && at <= length) {
            continue;
        }
        let Some(bearing) = foot_of(known, with, beam) else { continue };
        let combinations = demands::combinations(demands::acting(&force));
        let pressing = combinations.map(|combination| (combination, demands::combined(combination, &force)));
        let Some((combination, force)) =
            pressing.reduce(|most, other| if other.1 > most.1 { other } else { most })
        else {
            continue;
        };
        found.push(Across {
            with,
            side: "under",
            force,
            combination: combination.name,
            pattern: None,
            at,
            bearing: bearing.ok_or(NotVerified::Missing(with, "size")),
            from_end: at.min(length - at),
        });
    }
    found
}

/// How long something stands on a beam, across whichever way it is shorter; `None` for what does not stand on it.
fn foot_of(known: &Known<'_>, with: ElementId, on: &Beam) -> Option<Option<Length>> {
    match with.kind {
        ElementKind::Column => {
            let column = known.model.column(with)?;
            let post = column.size.value().and_then(|size| Some(size.width()?.min(size.depth()?)));
            Some(match column.base.value() {
                Some(Base::Plate([width, length, _], _)) => Some((*width).min(*length)),
                Some(Base::Standoff(_) | Base::Bare { .. }) | None => post,
            })
        }
        ElementKind::Beam => {
            let above = known.model.beam(with)?;
            let lies = above.supports.iter().any(|support| {
                let names = support.on.reference().and_then(|reference| reference.target);
                names == Some(on.common.id) && matches!(support.by, Contact::Bears(_))
            });
            lies.then(|| above.size.value()?.width())
        }
        _ => None,
    }
}

fn checked(beam: &Beam, steel: &Steel, line: &MemberLine, across: &Across) -> Result<Check, NotVerified> {
    let Shape::WideFlange(shape) = &steel.shape else {
        let what = "the walls of a tube or pipe under a force across it";
        return Err(NotCovered::NoRule { what, clause: "AISC 360 K: not here" }.into());
    };
    let bearing = across.bearing.clone()?;
    let strength = concentrated::web(LoadedWeb::from(shape), steel.yield_strength, bearing, across.from_end)?;
    let capacity = strength.allowable() * steel.pieces;
    let is_stiffened = beam.stiffeners.iter().any(|stiffener| {
        (stiffener.at - line.begins - across.at).abs() <= bearing.half().max(shape.depth.half())
    });
    if (is_stiffened || beam.common.may_say("stiffener")) && across.force > capacity {
        return Err(NotCovered::NoRule {
            what: "the stiffener there, whose size is not stated",
            clause: "AISC 360 J10.8",
        }
        .into());
    }
    let is_yielding = strength.yielding.allowable() <= strength.crippling.allowable();
    let clause = if is_yielding { "AISC 360 J10.2" } else { "AISC 360 J10.3" };
    Ok(Check {
        demand: across.force.into(),
        capacity: capacity.into(),
        combination: across.combination,
        pattern: across.pattern.clone(),
        at: Some(across.at),
        clause,
        steps: vec![
            read("lb", bearing, "length of the contact"),
            read("x", across.from_end, "from the end of the beam"),
            read("Fy", steel.yield_strength, steel.grade_source()),
            worked(
                "Ry",
                "Rn / Ω",
                [("Rn", strength.yielding.nominal.into()), ("Ω", strength.yielding.safety_factor.into())],
                strength.yielding.allowable(),
                "AISC 360 J10.2",
            ),
            worked(
                "Rc",
                "Rn / Ω",
                [("Rn", strength.crippling.nominal.into()), ("Ω", strength.crippling.safety_factor.into())],
                strength.crippling.allowable(),
                "AISC 360 J10.3",
            ),
        ],
        assumed: steel.assumptions(),
    })
}

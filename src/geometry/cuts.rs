//! Where along a joist or beam a hole or a notch is, and what the member is there.

use crate::geometry::plan_contacts::{BeamContact, Contacts, FieldContact};
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::member::Member;
use crate::model::plan::Station;
use crate::products::i_joist::FLANGE_DEPTH;
use crate::products::section::Make;
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

/// The size of the joist or beam a cut is in.
pub fn member_of(model: &Model, cut_in: ElementId) -> Option<&Member> {
    match cut_in.kind {
        ElementKind::Joists => model.joists_of(cut_in)?.size.value(),
        ElementKind::Beam => model.beam(cut_in)?.size.value(),
        _ => None,
    }
}

/// What the rules for cuts distinguish.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cuttable {
    /// Sawn lumber: the same shares of the depth everywhere.
    Sawn,
    /// Engineered wood: as its maker says.
    Engineered,
    /// Steel.
    Steel,
}

/// What kind of member a cut is in; `None` when its size isn't known.
pub fn cuttable(member: &Member) -> Option<Cuttable> {
    Some(match member.section.as_ref()?.make {
        Make::Sawn { .. } => Cuttable::Sawn,
        Make::Glulam | Make::Composite | Make::IJoist(_) | Make::RimBoard => Cuttable::Engineered,
        Make::Rolled(_) | Make::DeclaredSteel | Make::FilledPipe => Cuttable::Steel,
    })
}

/// How deep a flange of an I-joist is; `None` for a member without flanges of wood.
pub fn flange_of(model: &Model, cut_in: ElementId) -> Option<Length> {
    match member_of(model, cut_in)?.section.as_ref()?.make {
        Make::IJoist(_) => Some(FLANGE_DEPTH),
        _ => None,
    }
}

/// Where along its member a cut is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CutPlace {
    /// Over the support at an end of the member.
    End,
    /// Between two supports, or over one that the member runs across.
    Span {
        /// The middle of the support before it, along the member's axis.
        from: Length,
        /// The middle of the support behind it.
        to: Length,
    },
    /// Past the last support, in an overhang or where nothing carries.
    Overhang,
}

/// Where a station is between the supports of a member. `None` when the member doesn't run along the station's axis,
/// or its supports aren't known in plan.
pub fn place_of(
    model: &Model,
    contacts: &Contacts,
    cut_in: ElementId,
    station: &Station,
) -> Option<CutPlace> {
    let strips = match cut_in.kind {
        ElementKind::Joists => strips_of_joists(model, contacts, cut_in, station)?,
        ElementKind::Beam => strips_of_beam(model, contacts, cut_in, station)?,
        _ => return None,
    };
    let (first, last) = (strips.first()?, strips.last()?);
    let is_over = |strip: &Strip| strip.low <= station.at && station.at <= strip.high;
    if is_over(first) || is_over(last) {
        return Some(CutPlace::End);
    }
    let from = strips.iter().rev().find(|strip| strip.middle <= station.at);
    let to = strips.iter().find(|strip| strip.middle > station.at);
    Some(match from.zip(to) {
        Some((from, to)) => CutPlace::Span { from: from.middle, to: to.middle },
        None => CutPlace::Overhang,
    })
}

/// The middle part of a span that is one in `parts` of it.
pub fn middle_part(from: Length, to: Length, parts: u32) -> Option<(Length, Length)> {
    let part = (to - from).shared_by(parts)?.rounded();
    let before = (to - from - part).half();
    Some((from + before, to - before))
}

/// A support along a member.
struct Strip {
    middle: Length,
    low: Length,
    high: Length,
}

fn strips_of_joists(
    model: &Model,
    contacts: &Contacts,
    of: ElementId,
    station: &Station,
) -> Option<Vec<Strip>> {
    let joists = model.joists_of(of)?;
    if joists.run.get()? != station.axis {
        return None;
    }
    let of_contact = |contact: &Result<FieldContact, _>| match contact {
        Ok(FieldContact::Crosses { station, strip, .. }) => {
            Some(Strip { middle: *station, low: strip.0, high: strip.1 })
        }
        Ok(FieldContact::RunsAlong | FieldContact::Misses { .. }) | Err(_) => None,
    };
    let contacts = contacts.joists.get(of.index as usize)?;
    Some(sorted(contacts.supports.iter().filter_map(of_contact).collect()))
}

fn strips_of_beam(
    model: &Model,
    contacts: &Contacts,
    of: ElementId,
    station: &Station,
) -> Option<Vec<Strip>> {
    let line = model.beam(of)?.from.value()?;
    if line.axis()? != station.axis {
        return None;
    }
    let (start, end) = (line.from.on(station.axis), line.to.on(station.axis));
    let place = |from_start: Length| if end >= start { start + from_start } else { start - from_start };
    let of_contact = |contact: &Result<BeamContact, _>| match contact {
        Ok(BeamContact::Meets { station, strip, .. }) => {
            let (a, b) = (place(strip.0), place(strip.1));
            Some(Strip { middle: place(*station), low: a.min(b), high: a.max(b) })
        }
        Ok(BeamContact::FallsShort(_) | BeamContact::PassesBeside(_) | BeamContact::RunsAlong) | Err(_) => {
            None
        }
    };
    let contacts = contacts.beams.get(of.index as usize)?;
    Some(sorted(contacts.supports.iter().filter_map(of_contact).collect()))
}

fn sorted(mut strips: Vec<Strip>) -> Vec<Strip> {
    strips.sort_by_key(|strip| strip.middle);
    strips
}

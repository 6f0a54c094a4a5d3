//! Where each joist of a field lies, and how two layouts meet.

use crate::geometry::carried::{Carried, carrying_element};
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::framing::Joists;
use crate::model::plan::PlanRect;
use crate::units::Length;

/// The joist nearest to a coordinate across the field: its centre. `None` without a spacing.
pub fn nearest_joist(joists: &Joists, at: Length) -> Option<Length> {
    let spacing = joists.spacing.get().filter(|spacing| spacing.step.is_positive())?;
    let from_origin = at - spacing.origin.at;
    Some(spacing.origin.at + from_origin.rounded_to(spacing.step))
}

/// Half the thickness of one joist of the field.
pub fn half_thickness(joists: &Joists) -> Option<Length> {
    joists.size.value()?.thickness().map(Length::half)
}

/// The first and the last joist strictly between two coordinates across the field; `None` when there is none, or no
/// spacing.
pub fn joists_between(joists: &Joists, (from, to): (Length, Length)) -> Option<(Length, Length)> {
    let step = joists.spacing.get()?.step;
    let (low, high) = (nearest_joist(joists, from)?, nearest_joist(joists, to)?);
    let first = if low > from { low } else { low + step };
    let last = if high < to { high } else { high - step };
    (first <= last).then_some((first, last))
}

/// Two fields that lie end to end over one support.
#[derive(Clone, Copy, Debug)]
pub struct MeetingLayouts<'a> {
    /// The field that is written first.
    pub one: &'a Joists,
    /// The other one.
    pub other: &'a Joists,
    /// What they meet over.
    pub over: ElementId,
    /// How far the nearest joists of the two are off each other's line.
    pub off: Length,
    /// How far they are off when they lap, side by side.
    pub lap: Length,
}

/// Every two fields of one spacing, or of one that goes into the other, that lie end to end over one support.
pub fn meeting_layouts<'a>(model: &'a Model, carried: &Carried<'a>) -> Vec<MeetingLayouts<'a>> {
    let mut found = Vec::new();
    for one in &model.joists {
        for support in &one.supports {
            let Some(over) = carrying_element(support) else { continue };
            for (other, _) in
                carried.joists_on(over).iter().filter(|(other, _)| other.common.id > one.common.id)
            {
                let Some((off, lap)) = off_register(one, other).filter(|_| is_end_to_end(one, other)) else {
                    continue;
                };
                found.push(MeetingLayouts { one, other, over, off, lap });
            }
        }
    }
    found
}

/// How far two layouts are off each other, and the thickness at which they lap.
fn off_register(one: &Joists, other: &Joists) -> Option<(Length, Length)> {
    if one.run.get()? != other.run.get()? {
        return None;
    }
    let (a, b) = (one.spacing.get()?, other.spacing.get()?);
    let (wide, narrow) = (a.step.max(b.step).to_units(), a.step.min(b.step).to_units());
    if narrow <= 0 || wide % narrow != 0 {
        return None;
    }
    let rest = (a.origin.at - b.origin.at).to_units().rem_euclid(narrow);
    let off = Length::from_units(rest.min(narrow - rest));
    Some((off, half_thickness(one)? + half_thickness(other)?))
}

/// One ends where the other begins, and both are there across.
fn is_end_to_end(one: &Joists, other: &Joists) -> bool {
    let Some(run) = one.run.get() else { return false };
    let meet = |a: &PlanRect, b: &PlanRect| {
        let ((low, high), (from, to)) = (a.on(run), b.on(run));
        let (across, beyond) = (a.on(run.across()), b.on(run.across()));
        (high <= from || to <= low) && across.0.max(beyond.0) < across.1.min(beyond.1)
    };
    one.fill.iter().any(|a| other.fill.iter().any(|b| meet(a, b)))
}

//! How deep a stepped strip footing lies along its walls.
//!
//! Its `top` is the top where its first wall begins; each `step down` lowers everything on the far side of its grid line.

use crate::model::Model;
use crate::model::foundation::{Footing, Wall};
use crate::model::plan::{Axis, PlanLine};
use crate::units::Length;

/// How far a strip has stepped down at a coordinate of an axis; `None` where a step or where it begins is not known.
pub fn drop_at(model: &Model, footing: &Footing, axis: Axis, at: Length) -> Option<Length> {
    if footing.common.may_say("step") {
        return None;
    }
    if footing.steps.is_empty() {
        return Some(Length::ZERO);
    }
    let first =
        footing.under.first().and_then(|wall| model.wall(wall.target?)).and_then(|wall| wall.from.value());
    let start = first?.from;
    let passed = footing.steps.iter().filter(|step| {
        let (_, station) = &step.value;
        let from = start.on(station.axis);
        station.axis == axis && (from < station.at) == (at > station.at) && at != station.at
    });
    Some(passed.map(|step| step.value.0).sum())
}

/// The least and the most that a strip has stepped down along one wall; `None` where that is not known.
pub fn drops_along(model: &Model, footing: &Footing, wall: &Wall) -> Option<(Length, Length)> {
    if footing.steps.is_empty() {
        return drop_at(model, footing, Axis::X, Length::ZERO).map(|drop| (drop, drop));
    }
    let line = wall.from.value()?;
    let ends = |line: &PlanLine, axis| {
        let (low, high) = line.on(axis);
        // Just inside of the ends, so that a step right at a corner counts for the wall beyond it.
        let inch = Length::inches(1);
        [low + inch, high - inch]
    };
    let mut drops = Vec::new();
    for side in 0..2 {
        let total = [Axis::X, Axis::Y].into_iter().map(|axis| {
            let at = ends(line, axis).get(side).copied().unwrap_or_default();
            drop_at(model, footing, axis, at)
        });
        drops.push(total.sum::<Option<Length>>()?);
    }
    let least = drops.iter().min().copied().unwrap_or_default();
    let most = drops.iter().max().copied().unwrap_or_default();
    Some((least, most))
}

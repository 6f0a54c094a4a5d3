//! Shear along the grain of wood that spans.

use crate::design::NotCovered;
use crate::design::wood::shear::shear_stress;
use crate::model::stuff::Wood;
use crate::statics::cases::Case;
use crate::statics::continuous::Push;
use crate::units::{Force, Length};
use crate::verify::check::{Check, NotVerified, Step};
use crate::verify::demands::Demand;
use crate::verify::limit_state::LimitState;
use crate::verify::spanning::{Acting, Outcomes, Span, governing};
use crate::verify::wood_values::{Adjusting, read};

/// Shear, with the load within a depth of a support left out where the standard lets it.
pub fn of(acting: &Acting<'_>, wood: &Wood) -> Outcomes {
    let outcome = match Adjusting::of(acting.model, acting.spanning.stuff, wood) {
        Ok(adjusting) => governing(acting.demands.iter().map(|demand| checked(acting, &adjusting, demand))),
        Err(why) => Some(Err(why)),
    };
    outcome.map(|outcome| (LimitState::Shear, outcome)).into_iter().collect()
}

fn checked(acting: &Acting<'_>, adjusting: &Adjusting<'_>, demand: &Demand) -> Result<Check, NotVerified> {
    if is_notched_below(acting) {
        return Err(NotCovered::NoRule {
            what: "shear with a notch in the tension face",
            clause: "NDS 2018 3.4.3.2: not followed here",
        }
        .into());
    }
    let spanning = acting.spanning;
    let section = &spanning.stuff.section;
    let (breadth, depth) = match spanning.is_laid_flat {
        true => (section.depth, section.piece_width * i64::from(section.pieces)),
        false => (section.width(), section.depth),
    };
    let (force, at, is_reduced) = governing_shear(acting, demand, section.depth);
    let stress = shear_stress(force, breadth, depth);
    let allowable = adjusting.shear(demand.duration)?;
    let why = if is_reduced {
        "NDS 2018 3.4.3.1: a depth from the support, loads nearer left out"
    } else {
        "statics: continuous member"
    };
    let steps = vec![
        read("V", force, why),
        Step {
            symbol: "fv",
            formula: "3 V / ( 2 b d )",
            values: vec![("V", force.into()), ("b", breadth.into()), ("d", depth.into())],
            result: stress.into(),
            source: "NDS 2018 Eq. 3.4-2",
        },
        allowable.step,
    ];
    Ok(Check {
        demand: stress.into(),
        capacity: allowable.value.into(),
        combination: demand.combination.name,
        pattern: demand.pattern.clone(),
        at: Some(at),
        clause: "NDS 2018 3.4.2",
        steps,
        assumed: adjusting.assumed.clone(),
    })
}

fn is_notched_below(acting: &Acting<'_>) -> bool {
    acting.model.notches.iter().any(|notch| {
        let in_this = notch.member.value().and_then(|member| member.target) == Some(acting.spanning.of);
        in_this && notch.is_in_top.get() != Some(true)
    })
}

/// The largest shear that counts, its place, and whether a load near a support was left out of it.
fn governing_shear(acting: &Acting<'_>, demand: &Demand, depth: Length) -> (Force, Length, bool) {
    let mut worst = (Force::ZERO, Length::ZERO, false);
    for span in acting.spans {
        let (from, to) = counted(acting, span, depth);
        let (shear, at) = demand.response.extremes_between(from, to).shear;
        if shear.abs() > worst.0 {
            worst = (shear.abs(), at, (from, to) != (span.from, span.to));
        }
    }
    worst
}

/// The part of a span whose shear counts: from a depth past the face of a support that takes the load nearby straight.
fn counted(acting: &Acting<'_>, span: &Span, depth: Length) -> (Length, Length) {
    let line = &acting.spanning.line;
    let face = |seat: Option<usize>, is_low: bool| {
        let seat = seat.filter(|seat| {
            acting.spanning.seats.get(*seat).is_some_and(|contact| contact.is_loaded_opposite)
        })?;
        let strip = line.seats.get(seat)?.strip;
        Some(if is_low { strip.1 - line.begins } else { strip.0 - line.begins })
    };
    let from = face(span.low_seat, true).map_or(span.from, |face| face.max(span.from) + depth);
    let to = face(span.high_seat, false).map_or(span.to, |face| face.min(span.to) - depth);
    let from = if has_point(acting, (span.from, from)) { span.from } else { from };
    let to = if has_point(acting, (to, span.to)) { span.to } else { to };
    if from < to { (from, to) } else { (span.from, span.to) }
}

/// True where a point load stands in a stretch: near a support it counts in part, here as a whole.
fn has_point(acting: &Acting<'_>, (low, high): (Length, Length)) -> bool {
    let pushes = &acting.spanning.line.pushes;
    Case::ALL.iter().flat_map(|case| pushes.of(*case)).any(|push| match push {
        Push::Point { at, .. } | Push::Couple { at, .. } => low < *at && *at < high,
        Push::Spread { .. } => false,
    })
}

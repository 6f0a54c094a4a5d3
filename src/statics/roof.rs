//! Roofs: what each of their supports takes.
//!
//! Rafters of a stated size are a field like joists. A roof whose members are not designed here gives all to one support,
//! halves to two, and to more what lies nearest to each; columns alone share alike.

use crate::geometry::band;
use crate::geometry::carried::carrying_element;
use crate::model::Model;
use crate::model::plan::Axis;
use crate::model::site::Roof;
use crate::model::support::Carrier;
use crate::statics::action::{Acting, Handed, Lost, Receiver, Spot};
use crate::statics::cases::ByCase;
use crate::statics::field::{self, END_REACH, Field, FieldSupport, Outcome};
use crate::statics::member_line::{self, Stiffness};
use crate::syntax::vocabulary::ElementKind;
use crate::units::{Force, Length};

/// Follows loads through a roof.
pub fn follow(model: &Model, roof: &Roof, stiffness: Option<Stiffness>, actings: &[Acting]) -> Outcome {
    let (lines, points) = match supports_of(model, roof) {
        Ok(supports) => supports,
        Err(why) => return Outcome::lost(actings, why),
    };
    let run = roof.run.get().or_else(|| lines.first().map(|(axis, _)| axis.across())).unwrap_or(Axis::Y);
    let crossing: Vec<FieldSupport> =
        lines.iter().filter(|(axis, _)| *axis == run.across()).map(|(_, support)| *support).collect();
    if crossing.is_empty() {
        // Beams or walls along the roof's own run carry it from below as one: all of it, shared alike.
        let along = lines.iter().map(|(_, support)| (support.on, None));
        let all: Vec<(Receiver, Option<Spot>)> =
            points.iter().map(|(on, spot)| (*on, Some(*spot))).chain(along).collect();
        return shared_alike(&all, &lines, run, actings);
    }
    let field = Field {
        of: roof.common.id,
        run,
        fill: &roof.fill,
        supports: past_gables(roof, run, &crossing),
        is_span_by_grid: false,
        stiffness: stiffness.unwrap_or(member_line::REFERENCE),
    };
    let mut outcome = match stiffness.is_some() && points.is_empty() {
        true => field::follow(&field, actings),
        false => by_share(&field, &points, actings),
    };
    outcome.handed =
        outcome.handed.into_iter().flat_map(|handed| at_its_end(handed, run, &crossing)).collect();
    outcome
}

/// How far a roof may hang over the end of what carries it. Common practice.
const GABLE_OVERHANG: Length = Length::feet(4);

/// The supports, each running on to the edge of the roof where that is a gable's overhang past its end and no other
/// support in its line reaches farther.
fn past_gables(roof: &Roof, run: Axis, supports: &[FieldSupport]) -> Vec<FieldSupport> {
    let across = run.across();
    let low = roof.fill.iter().map(|rect| rect.on(across).0).min().unwrap_or_default();
    let high = roof.fill.iter().map(|rect| rect.on(across).1).max().unwrap_or_default();
    let middle = |support: &FieldSupport| (support.strip.0 + support.strip.1).half();
    let running_on = |support: &FieldSupport| {
        let in_line = || supports.iter().filter(|other| (middle(other) - middle(support)).abs() <= END_REACH);
        let is_lowest = in_line().all(|other| support.reach.0 <= other.reach.0);
        let is_highest = in_line().all(|other| other.reach.1 <= support.reach.1);
        let (mut from, mut to) = support.reach;
        if is_lowest && low < from && from - low <= GABLE_OVERHANG {
            from = low;
        }
        if is_highest && to < high && high - to <= GABLE_OVERHANG {
            to = high;
        }
        FieldSupport { reach: (from, to), ..*support }
    };
    supports.iter().map(running_on).collect()
}

/// What a support takes past its end, taken at its end.
fn at_its_end(handed: Handed, run: Axis, supports: &[FieldSupport]) -> Vec<Handed> {
    let across = run.across();
    let own = |support: &&FieldSupport| {
        let station = handed.acting.reach(run).0;
        support.on == handed.to && support.strip.0 <= station && station <= support.strip.1
    };
    let Some((low, high)) = supports.iter().find(own).map(|support| support.reach) else {
        return vec![handed];
    };
    let Handed { to, acting } = handed;
    let parts = [acting.below(across, low), acting.above(across, high)];
    let past = parts.into_iter().zip([low, high]).filter_map(|(part, end)| {
        let part = part?;
        let at = Spot::at(run, part.reach(run).0, end);
        Some(Handed { to, acting: Acting::Point { at, force: part.total() } })
    });
    let on_it = acting.up_to(across, (low, high)).map(|acting| Handed { to, acting });
    on_it.into_iter().chain(past).collect()
}

type LineSupports = Vec<(Axis, FieldSupport)>;
type PointSupports = Vec<(Receiver, Spot)>;

fn supports_of(model: &Model, roof: &Roof) -> Result<(LineSupports, PointSupports), Lost> {
    if roof.supports.is_empty() {
        return Err(if roof.common.may_say("bears on") { Lost::Unreadable } else { Lost::NoSupport });
    }
    let (mut lines, mut points) = (Vec::new(), Vec::new());
    for (index, support) in roof.supports.iter().enumerate() {
        let on = match (&support.on, carrying_element(support)) {
            (Carrier::Outside(_), _) => {
                let rect = roof.fill.first().ok_or(Lost::Unreadable)?;
                points.push((Receiver::Outside, Spot { x: rect.x.0, y: rect.y.0 }));
                continue;
            }
            (Carrier::Element(_), Some(element)) => element,
            (Carrier::Element(_), None) => return Err(Lost::Unreadable),
        };
        if on.kind == ElementKind::Column {
            let column = model.column(on).and_then(|column| column.at.value()).ok_or(Lost::Unreadable)?;
            points.push((Receiver::Element(on), Spot::from(column)));
            continue;
        }
        let band = band::bearing_surface(model, on).ok_or(Lost::Unreadable)?;
        let support = FieldSupport {
            on: Receiver::Element(on),
            support: index,
            strip: band.across,
            reach: band.along,
            contact: None,
            parts_at: None,
        };
        lines.push((band.axis, support));
    }
    Ok((lines, points))
}

/// All supports take alike: columns at their place, a beam or wall along its stretch below the roof.
fn shared_alike(
    all: &[(Receiver, Option<Spot>)],
    lines: &LineSupports,
    run: Axis,
    actings: &[Acting],
) -> Outcome {
    let mut outcome = Outcome::default();
    let share = 1.0 / all.len().max(1) as f64;
    for acting in actings {
        for (on, spot) in all {
            let total = acting.total() * share;
            let acting = match spot {
                Some(at) => Acting::Point { at: *at, force: total },
                None => along_support(*on, lines, run, acting, share),
            };
            outcome.handed.push(Handed { to: *on, acting });
        }
    }
    outcome
}

fn along_support(on: Receiver, lines: &LineSupports, run: Axis, acting: &Acting, share: f64) -> Acting {
    let reach = acting.reach(run);
    let support = lines.iter().find(|(_, support)| support.on == on).map(|(_, support)| support);
    let across = support.map_or(Length::ZERO, |support| (support.strip.0 + support.strip.1).half());
    let (from, to) =
        support.map_or(reach, |support| (reach.0.max(support.reach.0), reach.1.min(support.reach.1)));
    if from < to {
        let load = (acting.total() * share).map(|force| force / (to - from));
        Acting::Spread { axis: run, across, from, to, load }
    } else {
        Acting::Point { at: Spot::at(run, reach.0, across), force: acting.total() * share }
    }
}

/// Each strip gives all to one support, halves to two, and to more what lies nearest to each.
fn by_share(field: &Field<'_>, points: &PointSupports, actings: &[Acting]) -> Outcome {
    let mut outcome = Outcome::default();
    let across = field.run.across();
    for (low, high) in field::strips(field, actings) {
        let at = (low + high).half();
        let mut takers = takers(field, points, at);
        takers.sort_by_key(|(_, station, _)| *station);
        let here: Vec<Acting> =
            actings.iter().filter_map(|acting| acting.between(across, (low, high))).collect();
        if takers.is_empty() {
            let to = Receiver::Nothing(Lost::NotReached);
            outcome.handed.extend(here.iter().map(|acting| Handed { to, acting: *acting }));
            continue;
        }
        for (index, (on, station, spot)) in takers.iter().enumerate() {
            let force = share_of(&takers, index, field.run, &here);
            if force.total() == Force::ZERO {
                continue;
            }
            let acting = match spot {
                Some(at) => Acting::Point { at: *at, force },
                None => Acting::Spread {
                    axis: across,
                    across: *station,
                    from: low,
                    to: high,
                    load: force.map(|force| force / (high - low)),
                },
            };
            outcome.handed.push(Handed { to: *on, acting });
        }
    }
    outcome
}

/// What takes a strip at one place across, each with its place along the roof's run.
fn takers(field: &Field<'_>, points: &PointSupports, at: Length) -> Vec<(Receiver, Length, Option<Spot>)> {
    let near = field.supports.iter().filter(|support| support.reach.0 <= at && at <= support.reach.1);
    near.map(|support| (support.on, (support.strip.0 + support.strip.1).half(), None))
        .chain(points.iter().map(|(on, spot)| (*on, spot.on(field.run), Some(*spot))))
        .collect()
}

fn share_of(
    takers: &[(Receiver, Length, Option<Spot>)],
    index: usize,
    run: Axis,
    actings: &[Acting],
) -> ByCase<Force> {
    let whole = actings.iter().fold(ByCase::default(), |sum, acting| sum + acting.total());
    if takers.len() <= 2 {
        return whole * (1.0 / takers.len() as f64);
    }
    let station = |at: usize| takers.get(at).map(|(_, station, _)| *station);
    let here = station(index).unwrap_or_default();
    let low = index
        .checked_sub(1)
        .and_then(station)
        .map_or(Length::from_units(i64::MIN), |below| (below + here).half());
    let high = station(index + 1).map_or(Length::from_units(i64::MAX), |above| (above + here).half());
    let near = actings.iter().filter_map(|acting| acting.between(run, (low, high)));
    near.fold(ByCase::default(), |sum, acting| sum + acting.total())
}

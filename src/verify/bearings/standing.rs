//! What stands: jacks and posts on plates, sills, nailers and beams.

use crate::design::NotCovered;
use crate::geometry::carried::Carried;
use crate::geometry::joist_space;
use crate::model::element::ElementId;
use crate::model::field::Field;
use crate::model::framing::{Base, Column};
use crate::model::member::Member;
use crate::model::openings::Jacks;
use crate::model::support::Stand;
use crate::statics::action::{Source, Spot};
use crate::statics::cases::{ByCase, Case};
use crate::statics::wall::{hole_in_wall, pack_width};
use crate::syntax::vocabulary::ElementKind;
use crate::units::{Force, Length};
use crate::verify::Known;
use crate::verify::bearings::layer::{self, Layer, Pressed};
use crate::verify::bearings::{Pressing, heaviest};
use crate::verify::check::{Check, NotVerified, Step, Verification};
use crate::verify::footings::Worst;
use crate::verify::limit_state::LimitState;

/// Verifies what every pack of jacks and every column stands on.
pub fn of(known: &Known<'_>) -> Vec<Verification> {
    let carried = Carried::of(known.model);
    let jacks = known.model.jacks.iter().filter_map(|jacks| of_jacks(known, &carried, jacks));
    let columns = known.model.columns.iter().filter_map(|column| of_column(known, &carried, column));
    jacks.chain(columns).collect()
}

/// What a pack or a column hands down at one place.
fn places(known: &Known<'_>, element: ElementId) -> Vec<(Spot, ByCase<Force>)> {
    let mut places: Vec<(Spot, ByCase<Force>)> = Vec::new();
    for action in known.forces.on(element) {
        let at = action.acting.middle();
        let mut force = action.acting.total();
        if let Source::From(from) = action.source {
            let n_from = known
                .forces
                .on(element)
                .iter()
                .filter(|action| action.source == Source::From(from))
                .count()
                .max(1);
            let beyond = known.forces.partial.from_to(from, element);
            force += ByCase::only(Case::Live, beyond / n_from as f64);
        }
        match places.iter_mut().find(|(spot, _)| spot.distance(at) < SAME_PLACE) {
            Some((_, sum)) => *sum += force,
            None => places.push((at, force)),
        }
    }
    places
}

/// Loads nearer to each other, in inches, come down on one pack.
const SAME_PLACE: f64 = 12.0;

/// The heaviest of the places where a column or a pack of jacks stands.
pub fn heaviest_place(known: &Known<'_>, element: ElementId) -> Option<Pressing> {
    let all = places(known, element).into_iter().filter_map(|(_, force)| heaviest(&force));
    all.max_by(|one, other| one.force.to_lb().total_cmp(&other.force.to_lb()))
}

fn of_jacks(known: &Known<'_>, carried: &Carried<'_>, jacks: &Jacks) -> Option<Verification> {
    let id = jacks.common.id;
    let pressing = heaviest_place(known, id)?;
    let mut worst = Worst::default();
    match layers_under_jacks(known, carried, jacks)
        .and_then(|layers| Ok((layer::weakest(&pressing, &layers)?, layers)))
    {
        Ok((None, _)) => return None,
        Ok((Some((mut check, what)), _)) => {
            check.steps.extend(one_more_jack(jacks, &pressing, &check));
            worst.take_at(Ok(check), Some(what), target(&jacks.stands_on));
        }
        Err(why) => worst.take_at(Err(why), None, target(&jacks.stands_on)),
    }
    worst.verification(id, LimitState::WoodBearing)
}

/// What one jack more makes of it, the header's span left as it is.
fn one_more_jack(jacks: &Jacks, pressing: &Pressing, check: &Check) -> Option<Step> {
    let (count, _) = jacks.size.value()?;
    let crate::verify::quantity::Quantity::Stress(stress) = check.demand else { return None };
    let (now, more) = (f64::from(*count), f64::from(count.saturating_add(1)));
    let with = stress * (now / more);
    let values = vec![("R", pressing.force.into()), ("n", now.into())];
    Some(Step::worked("fc-perp with one jack more", "R n / ( n + 1 ) / A", values, with, "statics"))
}

fn layers_under_jacks(
    known: &Known<'_>,
    carried: &Carried<'_>,
    jacks: &Jacks,
) -> Result<Vec<Pressed>, NotVerified> {
    let missing = NotVerified::Missing(jacks.common.id, "size");
    let (_, member) = jacks.size.value().ok_or(missing.clone())?;
    let pack = pack_width(jacks).ok_or(missing.clone())?;
    let depth = member.depth().ok_or(missing)?;
    let along_wall = |layer: Layer, sides: [Length; 2]| {
        let [along, across] = sides;
        let across = layer.width.map_or(across, |width| across.min(width));
        Pressed { layer, sides: [along, across], from_end: None }
    };
    let mut layers = Vec::new();
    let hole = jacks.at.value().and_then(|at| at.target);
    let wall = hole.and_then(|hole| hole_in_wall(known.model, hole)).map(|(wall, ..)| wall);
    if let Some(wall) = wall.and_then(|wall| known.model.wall(wall)) {
        let is_framed = wall.kind.get().is_some_and(|kind| !kind.is_mineral());
        let sole = if is_framed { layer::sole_of(known, wall)? } else { None };
        layers.extend(sole.map(|sole| along_wall(sole, [pack, depth])));
    }
    let stand = stand_of(&jacks.stands_on, jacks.common.id)?;
    let mut sides = [pack, depth];
    if joist_space::under(carried, stand).is_some()
        && let Some((count, member)) = blocks_under(known, jacks.common.id, &jacks.squash)?
    {
        let missing = NotVerified::Missing(jacks.common.id, "squash");
        let thickness = member.thickness().ok_or(missing.clone())?.times(i64::from(count));
        sides = [pack.min(thickness), depth.min(member.depth().ok_or(missing)?)];
    }
    if let Some(on) = target(&jacks.stands_on)
        && let Some(under) = layer::on_top_of(known, on)?
    {
        layers.push(along_wall(under, sides));
    }
    Ok(layers)
}

/// The blocks below something that stands on a floor: how many pieces of what.
fn blocks_under(
    known: &Known<'_>,
    element: ElementId,
    said: &Field<(u32, Member)>,
) -> Result<Option<(u32, Member)>, NotVerified> {
    if said.is_broken() {
        return Err(NotVerified::Missing(element, "squash"));
    }
    let of_block = known
        .model
        .squashes
        .iter()
        .find(|squash| squash.under.value().and_then(|under| under.target) == Some(element));
    let block = said.value().or(of_block.and_then(|squash| squash.size.value()));
    Ok(block.cloned())
}

fn stand_of(stands_on: &Field<Stand>, id: ElementId) -> Result<&Stand, NotVerified> {
    stands_on.value().ok_or(NotVerified::Missing(id, "stands on"))
}

/// What is right below.
pub fn target(stands_on: &Field<Stand>) -> Option<ElementId> {
    let stand = stands_on.value()?;
    match &stand.over {
        Some(over) => over.target,
        None => stand.on.reference()?.target,
    }
}

fn of_column(known: &Known<'_>, carried: &Carried<'_>, column: &Column) -> Option<Verification> {
    let id = column.common.id;
    let pressing = heaviest_place(known, id)?;
    let on = target(&column.stands_on)?;
    let goes_through = matches!(column.base.value(), Some(Base::Bare { is_through_deck: true }));
    let is_flat_plate = on.kind != ElementKind::Beam
        || known.model.beam(on).is_some_and(|beam| beam.nailer.value().is_some());
    if goes_through && on.kind == ElementKind::Beam && is_flat_plate {
        // On the flange: nothing of wood lies between.
        return None;
    }
    let limit_state = if is_flat_plate { LimitState::PlateBearing } else { LimitState::WoodBearing };
    let outcome = pressed_by_column(known, carried, column, on)
        .and_then(|pressed| pressed.map_or(Ok(None), |pressed| layer::weakest(&pressing, &[pressed])));
    let (outcome, part) = match outcome {
        Ok(None) => return None,
        Ok(Some((check, what))) => (Ok(check), Some(what)),
        Err(why) => (Err(why), None),
    };
    Some(Verification { of: id, part, against: Some(on), limit_state, outcome })
}

fn pressed_by_column(
    known: &Known<'_>,
    carried: &Carried<'_>,
    column: &Column,
    on: ElementId,
) -> Result<Option<Pressed>, NotVerified> {
    let id = column.common.id;
    let Some(layer) = layer::on_top_of(known, on)? else { return Ok(None) };
    let member = column.size.value().ok_or(NotVerified::Missing(id, "size"))?;
    let sides = match column.base.value() {
        Some(Base::Plate([one, other, _], _)) => Some([*one, *other]),
        Some(Base::Standoff(_) | Base::Bare { .. }) => {
            member.width().zip(member.depth()).map(<[Length; 2]>::from)
        }
        None if column.base.is_broken() => return Err(NotVerified::Missing(id, "base")),
        None => member.width().zip(member.depth()).map(<[Length; 2]>::from),
    };
    let mut sides = sides.ok_or(NotVerified::Missing(id, "size"))?;
    let stand = stand_of(&column.stands_on, id)?;
    if let Some(space) = joist_space::under(carried, stand) {
        match blocks_under(known, id, &column.squash)? {
            Some((count, block)) => {
                let missing = NotVerified::Missing(id, "squash");
                let thickness = block.thickness().ok_or(missing.clone())?.times(i64::from(count));
                let depth = block.depth().ok_or(missing)?;
                let ([one, other], blocks) = (sides, [thickness.min(depth), thickness.max(depth)]);
                sides = [one.min(other).min(blocks[0]), one.max(other).min(blocks[1])];
            }
            None if space.is_blocked_solid() => {
                let what = "blocking on edge under a post";
                return Err(NotCovered::NoRule { what, clause: "the maker's values" }.into());
            }
            None => {}
        }
    }
    Ok(Some(Pressed { sides: layer::contact(sides, layer.width), layer, from_end: None }))
}

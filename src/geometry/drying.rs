//! The wood between concrete and deck that dries: only what lies across the grain counts.

use crate::geometry::Geometry;
use crate::geometry::band::{self, Band};
use crate::geometry::carried::{Carried, carrying_element};
use crate::geometry::surfaces::{Surface, joist_bottom};
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::framing::{Beam, Joists};
use crate::model::member::Member;
use crate::model::plan::Axis;
use crate::model::support::{Contact, Support};
use crate::products::section::CrossGrain;
use crate::profiles::{Factor, Percent};
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

/// What dries under a floor's deck at one of its supports.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drying {
    /// The joists there.
    pub joists: ElementId,
    /// What carries them.
    pub carrier: ElementId,
    /// Wood across the grain, from the concrete to the deck.
    pub thickness: Length,
}

/// By how much wood of this thickness shrinks: a share of it for each percent of moisture lost, nothing for what it gains.
pub fn shrunk(thickness: Length, share: Factor, lost: Percent) -> Length {
    thickness.scaled(share.0 * lost.0.max(0.0))
}

/// What dries on both sides of a step, at the two supports that lie nearest to each other.
pub fn at_step(
    model: &Model,
    geometry: &Geometry,
    carried: &Carried<'_>,
    (upper, lower): (ElementId, ElementId),
) -> Option<(Drying, Drying)> {
    let (one, other) = nearest_supports(model, carried, (upper, lower))?;
    Some((drying_at(model, geometry, one.0, one.1)?, drying_at(model, geometry, other.0, other.1)?))
}

/// A field of joists with one of its support lines.
pub type Held<'a> = (&'a Joists, &'a Support);

/// What carries two floors where those supports lie nearest to each other; `None` while one of them isn't known in plan.
pub fn nearest_supports<'a>(
    model: &Model,
    carried: &Carried<'a>,
    (upper, lower): (ElementId, ElementId),
) -> Option<(Held<'a>, Held<'a>)> {
    let (above, below) = (supports_of(model, carried, upper)?, supports_of(model, carried, lower)?);
    let pairs = above.iter().flat_map(|one| below.iter().map(move |other| (one, other)));
    let (one, other) = pairs.min_by_key(|(one, other)| distance(&one.2, &other.2))?;
    Some(((one.0, one.1), (other.0, other.1)))
}

/// What carries a floor; `None` while the place of one of them is not known: it might be the nearest to the step.
fn supports_of<'a>(
    model: &Model,
    carried: &Carried<'a>,
    floor: ElementId,
) -> Option<Vec<(&'a Joists, &'a Support, Band)>> {
    let fields = carried.fields_of(floor).iter();
    let supports = fields.flat_map(|joists| joists.supports.iter().map(move |support| (*joists, support)));
    supports
        .map(|(joists, support)| Some((joists, support, band::of(model, carrying_element(support)?)?)))
        .collect()
}

/// How far apart two strips lie; nothing when they touch.
fn distance(one: &Band, other: &Band) -> Length {
    let apart = |axis: Axis| {
        let (a, b) = (one.on(axis), other.on(axis));
        (a.0 - b.1).max(b.0 - a.1).max(Length::ZERO)
    };
    apart(Axis::X) + apart(Axis::Y)
}

fn drying_at(model: &Model, geometry: &Geometry, joists: &Joists, support: &Support) -> Option<Drying> {
    let carrier = carrying_element(support)?;
    let size = joists.size.value()?;
    let own = across_grain(size, size.depth()?);
    let below = match carrier.kind {
        ElementKind::Beam => {
            let beam = model.beam(carrier)?;
            match support.by {
                Contact::Bears(_) => under_bearing(model, beam)?,
                Contact::Hangs(_) => under_hanger(geometry, joists, beam)?,
            }
        }
        _ => under_top(model, carrier)?,
    };
    Some(Drying { joists: joists.common.id, carrier, thickness: own + below })
}

/// A beam with its nailer, and the sill or plates it lies on.
fn under_bearing(model: &Model, beam: &Beam) -> Option<Length> {
    let size = beam.size.value()?;
    let depth = if beam.is_laid_flat { size.thickness()? } else { size.depth()? };
    let nailer = match beam.nailer.value() {
        Some(nailer) => across_grain(&nailer.member, nailer.member.thickness()?),
        None => Length::ZERO,
    };
    let on = beam.supports.first().and_then(carrying_element);
    Some(across_grain(size, depth) + nailer + on.map_or(Some(Length::ZERO), |on| under_top(model, on))?)
}

/// The part of a beam below the seat of a hanger.
fn under_hanger(geometry: &Geometry, joists: &Joists, beam: &Beam) -> Option<Length> {
    let bottom = geometry.surfaces.of(beam.common.id, Surface::Bottom).ok()?.total();
    let seat = joist_bottom(&geometry.floors, joists).ok()?.total();
    Some(across_grain(beam.size.value()?, (seat - bottom).max(Length::ZERO)))
}

/// The flat wood of what a member lies on. Studs and posts stand along the grain; a ledger is held by its bolts.
fn under_top(model: &Model, on: ElementId) -> Option<Length> {
    match on.kind {
        ElementKind::Wall => {
            let wall = model.wall(on)?;
            if wall.kind.get()?.is_mineral() {
                return wall.sill.value().map_or(Some(Length::ZERO), |sill| sill.height());
            }
            let plates = wall.sole.value()?.height()? + wall.plates.value()?.height()?;
            let stands_on = wall.stands_on.value()?.on.reference()?.target?;
            match stands_on.kind {
                ElementKind::Footing | ElementKind::Slab => Some(plates),
                ElementKind::Wall => {
                    let under = model.wall(stands_on)?;
                    let sill = under.sill.value().map_or(Some(Length::ZERO), |sill| sill.height());
                    under.kind.get()?.is_mineral().then_some(plates + sill?)
                }
                // A wall on a framed floor moves with that floor: nothing tells by how much here.
                _ => None,
            }
        }
        ElementKind::Shelf => model.shelf(on)?.sill.value().map_or(Some(Length::ZERO), |sill| sill.height()),
        ElementKind::Ledger | ElementKind::Column | ElementKind::Pocket | ElementKind::Footing => {
            Some(Length::ZERO)
        }
        _ => None,
    }
}

/// A member's extent across the grain, when it dries at all.
fn across_grain(member: &Member, extent: Length) -> Length {
    let dries = member.section.as_ref().is_some_and(|section| section.cross_grain() == CrossGrain::Shrinks);
    if dries { extent } else { Length::ZERO }
}

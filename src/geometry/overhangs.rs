//! Walls that stand on joists past their last support.

use crate::geometry::band;
use crate::geometry::plan_contacts::Contacts;
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::foundation::Wall;
use crate::model::framing::Joists;
use crate::model::plan::PlanRect;
use crate::units::Length;

/// A wall on the overhang of a joist field.
#[derive(Clone, Copy, Debug)]
pub struct LoadedOverhang<'a> {
    /// The joists.
    pub joists: &'a Joists,
    /// Their last support.
    pub support: ElementId,
    /// How far they reach past it: as stated, else from its outer edge to the edge of the field.
    pub length: Length,
    /// The wall.
    pub wall: &'a Wall,
}

/// Every bearing wall on an overhang.
pub fn loaded_overhangs<'a>(model: &'a Model, contacts: &Contacts) -> Vec<LoadedOverhang<'a>> {
    let mut found = Vec::new();
    let walls: Vec<&Wall> = model.walls.iter().filter(|wall| carries(model, wall)).collect();
    for (joists, contact) in model.joists.iter().zip(&contacts.joists) {
        let may_have_more = joists.common.may_say("bears on") || joists.common.may_say("hangs from");
        if walls.is_empty() || may_have_more || contact.supports.iter().any(Result::is_err) {
            continue;
        }
        for bay in &contact.bays {
            for (support, is_high) in [(bay.stations.first(), false), (bay.stations.last(), true)] {
                let Some((_, support)) = support else { continue };
                let on_it = walls.iter().filter_map(|wall| {
                    let (from, to) = overhang_of(model, joists, &bay.rect, *support, is_high)?;
                    stands_there(joists, wall, (from, to), &bay.rect).then(|| LoadedOverhang {
                        joists,
                        support: *support,
                        length: stated(joists, *support).unwrap_or(to - from),
                        wall,
                    })
                });
                found.extend(on_it);
            }
        }
    }
    found
}

/// It bears, or a roof or joists lie on it.
fn carries(model: &Model, wall: &Wall) -> bool {
    let is_framed = wall.kind.get().is_some_and(|kind| !kind.is_mineral());
    let has_roof = || {
        let supports = model.roofs.iter().flat_map(|roof| &roof.supports);
        supports.filter_map(|support| support.on.reference()?.target).any(|on| on == wall.common.id)
    };
    is_framed && (wall.bearing.get() == Some(true) || has_roof())
}

/// The stretch along the joists past the outer edge of their last support, as low and high coordinate.
fn overhang_of(
    model: &Model,
    joists: &Joists,
    rect: &PlanRect,
    support: ElementId,
    is_high: bool,
) -> Option<(Length, Length)> {
    let (low, high) = rect.on(joists.run.get()?);
    let strip = band::of(model, support)?.on(joists.run.get()?);
    let stretch = if is_high { (strip.1, high) } else { (low, strip.0) };
    (stretch.0 < stretch.1).then_some(stretch)
}

fn stated(joists: &Joists, support: ElementId) -> Option<Length> {
    let of_it = joists.cantilevers.iter().filter(|cantilever| cantilever.value.0.target == Some(support));
    of_it.map(|cantilever| cantilever.value.1).next()
}

/// It stands on the joists or their floor, across them, with its middle over this stretch of the field.
fn stands_there(joists: &Joists, wall: &Wall, (from, to): (Length, Length), rect: &PlanRect) -> bool {
    let stand = wall.stands_on.value().and_then(|stand| stand.on.reference()?.target);
    let floor = joists.floor.value().and_then(|floor| floor.target);
    let (Some(run), Some(band)) = (joists.run.get(), band::of_wall(wall)) else { return false };
    let (low, high) = rect.on(run.across());
    stand.is_some()
        && (stand == floor || stand == Some(joists.common.id))
        && band.axis == run.across()
        && from <= band.centre()
        && band.centre() <= to
        && band.along.0.max(low) < band.along.1.min(high)
}

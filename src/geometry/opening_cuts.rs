//! What a floor opening takes away from under something that bears, or from what bears it.

use crate::geometry::band::{self, Band};
use crate::geometry::carried::Carried;
use crate::geometry::plan_contacts::Contacts;
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::framing::{BeamSet, Joists};
use crate::model::openings::Opening;
use crate::model::plan::{Axis, PlanPoint, PlanRect};
use crate::model::support::Stand;
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

/// Something that only just reaches into an opening is not cut: an edge drawn to a face. Common practice.
const SLACK: Length = Length::inches(1);

/// How an opening takes something away.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Loss {
    /// This beam of the floor runs through it.
    Beam(ElementId),
    /// This post or bearing wall stands on the floor in it.
    Ground(ElementId),
    /// It cuts these joists between their supports, and this post or bearing wall stands on them there.
    Joists(ElementId, ElementId),
}

/// What an opening in a floor takes away.
pub fn losses(model: &Model, contacts: &Contacts, carried: &Carried<'_>, opening: &Opening) -> Vec<Loss> {
    let Some(floor) = opening.floor.value().and_then(|floor| floor.target) else { return Vec::new() };
    let mut losses = Vec::new();
    for rect in &opening.fill {
        for beam in &model.beams {
            let is_of_floor = match beam.set.value() {
                Some(BeamSet::Flush(of, _) | BeamSet::Dropped(of, _)) => of.target == Some(floor),
                Some(BeamSet::Upset(..) | BeamSet::Top(_)) | None => false,
            };
            let band = band::of(model, beam.common.id).filter(|_| is_of_floor);
            if band.is_some_and(|band| runs_through(&band, rect)) {
                losses.push(Loss::Beam(beam.common.id));
            }
        }
        for load in standing(model, floor) {
            let cut = carried.fields_of(floor).iter().find(|joists| {
                load.on == Some(joists.common.id) && is_over_cut(contacts, joists, rect, &load.place)
            });
            if load.place.is_inside(rect) {
                losses.push(Loss::Ground(load.id));
            } else if let Some(joists) = cut {
                losses.push(Loss::Joists(joists.common.id, load.id));
            }
        }
    }
    losses
}

/// A post or a bearing wall on a floor.
struct Standing {
    id: ElementId,
    place: Place,
    /// What it stands over, or on.
    on: Option<ElementId>,
}

enum Place {
    At(PlanPoint),
    Along(Band),
}

impl Place {
    fn is_inside(&self, rect: &PlanRect) -> bool {
        match self {
            Self::At(point) => [Axis::X, Axis::Y].into_iter().all(|axis| {
                let (low, high) = rect.on(axis);
                low < point.on(axis) && point.on(axis) < high
            }),
            Self::Along(band) => runs_through(band, rect),
        }
    }

    /// From where to where it reaches on an axis.
    fn on(&self, axis: Axis) -> (Length, Length) {
        match self {
            Self::At(point) => (point.on(axis), point.on(axis)),
            Self::Along(band) => band.on(axis),
        }
    }
}

fn standing(model: &Model, floor: ElementId) -> Vec<Standing> {
    let on_floor = |stand: &Stand| {
        let on = stand.on.reference().and_then(|on| on.target)?;
        match on.kind {
            ElementKind::Floor if on == floor => Some(stand.over.as_ref().and_then(|over| over.target)),
            ElementKind::Joists => {
                let of = model.joists_of(on)?.floor.value()?.target?;
                (of == floor).then_some(Some(on))
            }
            _ => None,
        }
    };
    let posts = model.columns.iter().filter_map(|column| {
        let on = on_floor(column.stands_on.value()?)?;
        Some(Standing { id: column.common.id, place: Place::At(column.at.get()?), on })
    });
    let walls = model.walls.iter().filter(|wall| wall.bearing.get() == Some(true)).filter_map(|wall| {
        let on = on_floor(wall.stands_on.value()?)?;
        Some(Standing { id: wall.common.id, place: Place::Along(band::of_wall(wall)?), on })
    });
    posts.chain(walls).collect()
}

/// The middle of a strip lies in a rectangle, for more than a slip of the pencil.
fn runs_through(band: &Band, rect: &PlanRect) -> bool {
    let (low, high) = rect.on(band.axis.across());
    let (from, to) = rect.on(band.axis);
    let inside = band.along.1.min(to) - band.along.0.max(from);
    low < band.centre() && band.centre() < high && inside > SLACK
}

/// Something lies on the joists that an opening cuts, between the supports before and behind it.
fn is_over_cut(contacts: &Contacts, joists: &Joists, opening: &PlanRect, place: &Place) -> bool {
    let Some(run) = joists.run.get() else { return false };
    let Some(of_field) = contacts.joists.get(joists.common.id.index as usize) else { return false };
    let (from, to) = opening.on(run);
    let (low, high) = opening.on(run.across());
    let (near, far) = place.on(run.across());
    let (begins, ends) = place.on(run);
    let middle = (begins + ends).half();
    let is_in_strip = near < high && low < far || near == far && low < near && near < high;
    is_in_strip
        && of_field.bays.iter().any(|bay| {
            let stations = bay.stations.iter().map(|(station, _)| *station);
            let before = stations.clone().filter(|station| *station <= from).max();
            let behind = stations.filter(|station| *station >= to).min();
            before.zip(behind).is_some_and(|(before, behind)| before < middle && middle < behind)
        })
}

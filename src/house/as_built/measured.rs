//! The last measurement of each thing.

use crate::geometry::surfaces::Surface;
use crate::house::House;
use crate::model::element::{Common, ElementId, Shot};
use crate::syntax::value::Date;
use crate::syntax::vocabulary::ElementKind;
use crate::text::Span;
use crate::units::Length;

/// The last measurement of one thing.
#[derive(Clone, Debug)]
pub struct Measured {
    /// Of this element.
    pub of: ElementId,
    /// What: `top`, as the line says it.
    pub fact: Box<str>,
    /// What was measured.
    pub value: Length,
    /// What is drawn there; `None` when that isn't known, or is another at each place.
    pub drawn: Option<Length>,
    /// Where along it, when the line says so.
    pub at: Option<Span>,
    /// When.
    pub on: Option<Date>,
    /// The line.
    pub span: Span,
    /// Why the house as built does not know of it, when it does not.
    pub not_followed: Option<&'static str>,
}

impl Measured {
    /// How far it lies above what is drawn, or is longer.
    pub fn by(&self) -> Option<Length> {
        Some(self.value - self.drawn?)
    }
}

/// The last measurement of each fact of each element, and at each place along it, in the order of the model.
pub fn of(house: &House) -> Vec<Measured> {
    let mut all: Vec<Measured> = Vec::new();
    for common in house.model.commons().filter(|common| !common.shots.is_empty()) {
        let mut last: Vec<&Shot> = Vec::new();
        for shot in &common.shots {
            let same = |other: &&mut &Shot| {
                surface(common.id.kind, &other.fact) == surface(common.id.kind, &shot.fact)
                    && place(house, other) == place(house, shot)
            };
            match last.iter_mut().find(same) {
                Some(other) if other.on > shot.on => {}
                Some(other) => *other = shot,
                None => last.push(shot),
            }
        }
        all.extend(last.into_iter().map(|shot| Measured {
            of: common.id,
            fact: shot.fact.clone(),
            value: shot.value,
            drawn: drawn(house, common, shot),
            at: shot.at,
            on: shot.on,
            span: shot.span,
            not_followed: None,
        }));
    }
    all
}

fn place<'h>(house: &'h House, shot: &Shot) -> &'h str {
    shot.at.map_or("", |at| house.text_at(at))
}

/// What a word measures of such an element: several can name one surface.
pub fn surface(kind: ElementKind, fact: &str) -> &str {
    match (kind, fact) {
        (ElementKind::Shelf, "seat") => "top",
        (ElementKind::Pocket, "top") => "seat",
        (ElementKind::Slab | ElementKind::Stoop | ElementKind::Landing, "finish") => "top",
        _ => fact,
    }
}

/// The measured length of an element.
pub fn length_of(measured: &[Measured], of: ElementId) -> Option<Length> {
    measured.iter().find(|shot| shot.of == of && &*shot.fact == "length").map(|shot| shot.value)
}

/// What is drawn where a shot was taken.
fn drawn(house: &House, common: &Common, shot: &Shot) -> Option<Length> {
    let (model, geometry, id) = (&house.model, &house.geometry, common.id);
    let at = id.index as usize;
    let surface_of = |surface| geometry.surfaces.of(id, surface).ok().map(|sum| sum.total());
    let fact = surface(id.kind, &shot.fact);
    let is_level = match id.kind {
        ElementKind::Wall => model.wall(id).is_some_and(|wall| wall.raked.is_empty()),
        ElementKind::Footing => {
            model.footing(id).is_some_and(|footing| footing.steps.is_empty() || shot.at.is_none())
        }
        _ => true,
    };
    if !is_level {
        return None;
    }
    match (id.kind, fact) {
        (ElementKind::Floor, "subfloor") => Some(geometry.floors.get(at)?.subfloor.as_ref().ok()?.total()),
        (ElementKind::Floor, "finish") => Some(geometry.floors.get(at)?.finish.as_ref().ok()?.total()),
        (ElementKind::Stoop, "top") => model.stoops.get(at)?.body.top.get(),
        (ElementKind::Landing, "top") => model.landings.get(at)?.body.top.get(),
        (ElementKind::Header, "top") => model.headers.get(at)?.top.get(),
        (ElementKind::Squash, "length") => model.squashes.get(at)?.length.get(),
        (ElementKind::Column, "length") => Some(geometry.columns.get(at)?.cut.as_ref().ok()?.total()),
        (ElementKind::Column, "top") => Some(geometry.columns.get(at)?.head.as_ref().ok()?.total()),
        (ElementKind::Column, "bottom") => Some(geometry.columns.get(at)?.foot.as_ref().ok()?.total()),
        (_, "top") => surface_of(Surface::Top),
        (_, "bottom") => surface_of(Surface::Bottom),
        (_, "seat") => surface_of(Surface::Seat),
        _ => None,
    }
}

//! How long a contact is, and how long the surface lets it be.

use crate::geometry::band;
use crate::geometry::carried::carrying_element;
use crate::geometry::plan_contacts::cap_length;
use crate::geometry::sum::Unknown;
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::framing::{Beam, Joists, Rim};
use crate::model::support::{Contact, Support};
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

/// A contact between a member and what it lies on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bearing {
    /// What the author states; without, all the surface gives.
    pub length: Length,
    /// What the surface gives, less the rim.
    pub available: Option<Length>,
    /// What the surface is made of.
    pub on: BearingOn,
    /// The member's pieces meet here and share the contact.
    pub is_shared: bool,
    /// It lies between the ends of the member, which runs through.
    pub is_inner: bool,
}

/// What a member lies on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum BearingOn {
    /// Wood: a sill, plates, a beam.
    Wood,
    /// Steel: a flange, a cap plate.
    Metal,
    /// Concrete or masonry, or a plate on it.
    Mineral,
}

/// The contact at one `bears on` line of a joist field. `stations` are where supports cross the field, in order: at
/// its ends the rim takes its thickness off the surface.
pub fn of_joists(model: &Model, joists: &Joists, support: &Support) -> Result<Bearing, Unknown> {
    let id = joists.common.id;
    let Contact::Bears(stated) = &support.by else { return Err(Unknown { of: Some(id), fact: "bears on" }) };
    let on = carrying_element(support).ok_or(Unknown { of: Some(id), fact: "bears on" })?;
    let surface = band::bearing_surface(model, on);
    let whole = surface.map(|surface| surface.width());
    let is_shared = joists.joints.iter().any(|joint| joint.over.target == Some(on));
    let runs_past = joists.cantilevers.iter().any(|cantilever| cantilever.value.0.target == Some(on));
    let is_outer = !runs_past && surface.is_some_and(|surface| is_at_end(joists, surface.centre()));
    let available =
        whole.and_then(|whole| if is_outer { Some(whole - rim_thickness(joists)?) } else { Some(whole) });
    let length = stated.as_ref().map(|given| given.value).or(available);
    let length = length.ok_or(Unknown { of: Some(on), fact: "thick" })?;
    Ok(Bearing {
        length,
        available,
        on: material_of(model, on),
        is_shared,
        is_inner: !is_outer && !is_shared,
    })
}

/// The contact at one `bears on` line of a beam.
pub fn of_beam(model: &Model, beam: &Beam, support: &Support) -> Result<Bearing, Unknown> {
    let id = beam.common.id;
    let Contact::Bears(stated) = &support.by else { return Err(Unknown { of: Some(id), fact: "bears on" }) };
    let on = carrying_element(support).ok_or(Unknown { of: Some(id), fact: "bears on" })?;
    let axis = beam.from.value().and_then(|line| line.axis());
    let available = match on.kind {
        ElementKind::Pocket => model.pocket(on).and_then(|pocket| pocket.depth.get()),
        ElementKind::Column => {
            axis.zip(model.column(on)).and_then(|(axis, column)| cap_length(column, axis, model))
        }
        _ => band::bearing_surface(model, on).map(|surface| surface.width()),
    };
    let is_shared = beam.joints.iter().any(|joint| joint.over.target == Some(on));
    let length = stated.as_ref().map(|given| given.value).or(available);
    let length = length.ok_or(Unknown { of: Some(on), fact: "size" })?;
    Ok(Bearing { length, available, on: material_of(model, on), is_shared, is_inner: false })
}

/// How thick the rim is at outer bearings; nothing when the field has none. `None` when its size isn't known.
pub fn rim_thickness(joists: &Joists) -> Option<Length> {
    match joists.rim.value() {
        Some(Rim::None) => Some(Length::ZERO),
        Some(Rim::Thick(thickness)) => Some(*thickness),
        Some(Rim::Member(member)) => member.thickness(),
        None if joists.rim.is_broken() => None,
        None => joists.size.value()?.thickness(),
    }
}

/// True when a station lies at an end of the field along its joists, not between two bays.
pub fn is_at_end(joists: &Joists, station: Length) -> bool {
    let Some(run) = joists.run.get() else { return false };
    let low = joists.fill.iter().map(|rect| rect.on(run).0).min();
    let high = joists.fill.iter().map(|rect| rect.on(run).1).max();
    let near = |end: Option<Length>| end.is_some_and(|end| (end - station).abs() <= Length::inches(14));
    near(low) || near(high)
}

fn material_of(model: &Model, on: ElementId) -> BearingOn {
    match on.kind {
        ElementKind::Wall => match model.wall(on) {
            Some(wall)
                if wall.kind.get().is_some_and(|kind| kind.is_mineral()) && wall.sill.value().is_none() =>
            {
                BearingOn::Mineral
            }
            _ => BearingOn::Wood,
        },
        ElementKind::Shelf => match model.shelf(on) {
            Some(shelf) if shelf.sill.value().is_none() => BearingOn::Mineral,
            _ => BearingOn::Wood,
        },
        ElementKind::Pocket | ElementKind::Footing | ElementKind::Slab => BearingOn::Mineral,
        ElementKind::Beam => {
            let beam = model.beam(on);
            let is_steel = beam.and_then(|beam| beam.size.value()).and_then(|size| size.is_steel());
            let has_nailer = beam.is_some_and(|beam| beam.nailer.value().is_some());
            if is_steel == Some(true) && !has_nailer { BearingOn::Metal } else { BearingOn::Wood }
        }
        ElementKind::Column => BearingOn::Metal,
        _ => BearingOn::Wood,
    }
}

//! How long a contact is, and how long the surface lets it be.

use crate::geometry::band;
use crate::geometry::carried::carrying_element;
use crate::geometry::plan_contacts::cap_length;
use crate::geometry::sum::Unknown;
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::field::Field;
use crate::model::foundation::Sill;
use crate::model::framing::{Beam, Joists, Rim};
use crate::model::support::{Contact, Joint, Support};
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

/// How far the middle of a support may lie from the edge of the field that ends on it: a thick wall and its facing.
/// Common practice.
const END_REACH: Length = Length::inches(14);

/// A contact between a member and what it lies on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bearing {
    /// What the author states; without, all the surface gives.
    pub length: Length,
    /// What the surface gives, less the rim.
    pub available: Option<Length>,
    /// What the surface is made of; `None` while that isn't known.
    pub on: Option<BearingOn>,
    /// What one piece has of the length: all of it, or where pieces end here half, and half of their lap.
    pub of_each: Length,
    /// The member's pieces end here.
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

/// The contact at one `bears on` line of a joist field. At the field's ends the rim takes its thickness off the surface.
///
/// # Errors
/// [`Unknown`] when the line hangs instead, names nothing, or neither states nor gives a length.
pub fn of_joists(model: &Model, joists: &Joists, support: &Support) -> Result<Bearing, Unknown> {
    let id = joists.common.id;
    let Contact::Bears(stated) = &support.by else { return Err(Unknown { of: Some(id), fact: "bears on" }) };
    let on = carrying_element(support).ok_or(Unknown { of: Some(id), fact: "bears on" })?;
    let surface = band::bearing_surface(model, on);
    let whole = surface.map(|surface| surface.width());
    let joint = joists.joints.iter().find(|joint| joint.over.target == Some(on));
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
        of_each: share_of_each(length, joint),
        is_shared: joint.is_some(),
        is_inner: !is_outer && joint.is_none(),
    })
}

/// The contact at one `bears on` line of a beam.
///
/// # Errors
/// [`Unknown`] when the line hangs instead, names nothing, or neither states nor gives a length.
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
    let joint = beam.joints.iter().find(|joint| joint.over.target == Some(on));
    let length = stated.as_ref().map(|given| given.value).or(available);
    let length = length.ok_or(Unknown { of: Some(on), fact: "size" })?;
    Ok(Bearing {
        length,
        available,
        on: material_of(model, on),
        of_each: share_of_each(length, joint),
        is_shared: joint.is_some(),
        is_inner: false,
    })
}

/// What one piece has of a contact. Pieces that butt have half of it each; pieces that lap lie side by side, and each
/// runs on past the middle by half of the lap.
fn share_of_each(length: Length, joint: Option<&Joint>) -> Length {
    let Some(joint) = joint else { return length };
    let lap = joint.lapped.as_ref().map_or(Length::ZERO, |lap| lap.value);
    (length.half() + lap.half()).min(length)
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
    let near = |end: Option<Length>| end.is_some_and(|end| (end - station).abs() <= END_REACH);
    near(low) || near(high)
}

fn material_of(model: &Model, on: ElementId) -> Option<BearingOn> {
    let under = |sill: &Field<Sill>| match sill {
        Field::Stated(..) | Field::Assumed(..) => Some(BearingOn::Wood),
        Field::Missing => Some(BearingOn::Mineral),
        Field::Broken(_) => None,
    };
    match on.kind {
        ElementKind::Wall => {
            let wall = model.wall(on)?;
            if wall.kind.get()?.is_mineral() { under(&wall.sill) } else { Some(BearingOn::Wood) }
        }
        ElementKind::Shelf => under(&model.shelf(on)?.sill),
        ElementKind::Pocket | ElementKind::Footing | ElementKind::Slab => Some(BearingOn::Mineral),
        ElementKind::Beam => {
            let beam = model.beam(on)?;
            let is_bare_steel = beam.size.value()?.is_steel()? && beam.nailer.value().is_none();
            Some(if is_bare_steel { BearingOn::Metal } else { BearingOn::Wood })
        }
        ElementKind::Column => Some(BearingOn::Metal),
        ElementKind::Ledger
        | ElementKind::Header
        | ElementKind::Jacks
        | ElementKind::Squash
        | ElementKind::Joists => Some(BearingOn::Wood),
        // Nothing else can be named as a support.
        _ => None,
    }
}

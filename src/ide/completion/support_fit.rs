//! How well a support's height fits what would lie on it.

use crate::geometry::surfaces::{Surface, joist_bottom, standing_surface};
use crate::house::House;
use crate::model::element::ElementId;
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

/// The height of a support.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Fit {
    /// What of it: its top, its seat.
    pub surface: &'static str,
    /// The elevation at which things lie on it.
    pub elevation: Length,
    /// How far that is too high for what would lie there; negative when it is too low.
    pub off: Option<Length>,
}

/// What nobody can shim: less than this is nothing.
const LEAST: Length = Length::sixteenths(0, 1);

/// The height of a support, and how far off it is for a member, when that has a height yet.
pub(super) fn of(house: &House, on: ElementId, member: Option<ElementId>) -> Option<Fit> {
    let (surface, elevation) = surface_of(house, on)?;
    let off = member.and_then(|member| underside_of(house, member)).map(|bottom| elevation - bottom);
    Some(Fit { surface, elevation, off })
}

/// `top 99'-0 1/2", 0" off`
pub(super) fn told(fit: &Fit) -> String {
    let at = format!("{} {}", fit.surface, fit.elevation.in_feet());
    match fit.off {
        None => at,
        Some(off) if off.abs() < LEAST => format!("{at}, 0\" off"),
        Some(off) if off.is_negative() => format!("{at}, {} too low", off.abs()),
        Some(off) => format!("{at}, {off} too high"),
    }
}

/// The underside of a member that lies on things.
fn underside_of(house: &House, member: ElementId) -> Option<Length> {
    let bottom = match member.kind {
        ElementKind::Joists => joist_bottom(&house.geometry.floors, house.model.joists_of(member)?),
        ElementKind::Beam => house.geometry.surfaces.of(member, Surface::Bottom),
        _ => return None,
    };
    Some(bottom.ok()?.total())
}

/// Where things lie on a support: over its sill or nailer, on the plate in a pocket, on a column's cap.
fn surface_of(house: &House, on: ElementId) -> Option<(&'static str, Length)> {
    let (model, geometry) = (&house.model, &house.geometry);
    let elevation = match on.kind {
        ElementKind::Pocket => {
            let seat = geometry.surfaces.of(on, Surface::Seat).ok()?.total();
            return Some(("seat", seat + model.pocket(on)?.build_up()?));
        }
        ElementKind::Column => {
            let column = model.column(on)?;
            let head = geometry.columns.get(on.index as usize)?.head.as_ref().ok()?.total();
            let cap = column.cap.value().map_or(Length::ZERO, |cap| cap.thickness());
            return Some(("cap", head + cap + column.shim.get().unwrap_or_default()));
        }
        ElementKind::Beam => {
            let nailer = model.beam(on)?.nailer.value().and_then(|nailer| nailer.member.thickness());
            geometry.surfaces.of(on, Surface::Top).ok()?.total() + nailer.unwrap_or_default()
        }
        ElementKind::Ledger => geometry.surfaces.of(on, Surface::Top).ok()?.total(),
        _ => standing_surface(model, &geometry.floors, &geometry.surfaces, on).ok()?.total(),
    };
    Some(("top", elevation))
}

//! How much of a hung joist has something beside it to be nailed to.

use crate::geometry::levels::FloorLevels;
use crate::geometry::sum::{Sum, Unknown};
use crate::geometry::surfaces::{Surface, Surfaces, joist_bottom, joist_top};
use crate::model::element::ElementId;
use crate::model::framing::Joists;
use crate::units::Length;

/// A hung joist beside its carrier.
#[derive(Clone, Debug)]
pub struct Hung {
    /// Top of the joist.
    pub joist_top: Sum,
    /// Its underside.
    pub joist_bottom: Sum,
    /// Top of the carrier.
    pub carrier_top: Sum,
    /// Its underside.
    pub carrier_bottom: Sum,
}

impl Hung {
    /// How deep the joist is.
    pub fn depth(&self) -> Length {
        self.joist_top.total() - self.joist_bottom.total()
    }

    /// How much of that depth lies beside the carrier; nothing when they pass each other.
    pub fn beside(&self) -> Length {
        let top = self.joist_top.total().min(self.carrier_top.total());
        let bottom = self.joist_bottom.total().max(self.carrier_bottom.total());
        (top - bottom).max(Length::ZERO)
    }

    /// At least half of the joist's depth lies beside the carrier: it can't lie on it.
    pub fn is_side_by_side(&self) -> bool {
        self.depth().is_positive() && self.beside() >= self.depth().half()
    }
}

/// A joist field beside a beam or ledger.
///
/// # Errors
/// [`Unknown`] when one of the four levels isn't known.
pub fn beside(
    floors: &[FloorLevels],
    surfaces: &Surfaces,
    joists: &Joists,
    carrier: ElementId,
) -> Result<Hung, Unknown> {
    Ok(Hung {
        joist_top: joist_top(floors, joists)?,
        joist_bottom: joist_bottom(floors, joists)?,
        carrier_top: surfaces.of(carrier, Surface::Top)?,
        carrier_bottom: surfaces.of(carrier, Surface::Bottom)?,
    })
}

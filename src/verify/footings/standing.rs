//! What stands on a footing or a slab, and where the concrete is cut to look at it.

use crate::design::NotCovered;
use crate::design::concrete::critical_sections::{Support, critical_width};
use crate::design::soil::pressure::square_of_equal_area;
use crate::model::element::ElementId;
use crate::model::foundation::{Footing, Pedestal};
use crate::model::framing::{Base, Column};
use crate::products::rolled::Outline;
use crate::products::section::{Make, Section};
use crate::statics::wall::pack_width;
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;
use crate::verify::Known;
use crate::verify::check::NotVerified;

/// What stands on concrete, along x and along y.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Standing {
    /// Between the cuts on its two sides.
    pub critical: [Length; 2],
    /// Between its own faces: of the plate, the post, the pedestal.
    pub faces: [Length; 2],
}

/// What stands on a footing: its pedestal, else the column or the jacks.
///
/// No line says how an oblong plate or post is turned: its shorter side counts both ways, on the safe side.
pub fn on_footing(
    known: &Known<'_>,
    footing: &Footing,
    stands: &[ElementId],
) -> Result<Standing, NotVerified> {
    if footing.pedestal.is_broken() {
        return Err(NotVerified::Missing(footing.common.id, "pedestal"));
    }
    if let Some(Pedestal { size: [one, other], .. }) = footing.pedestal.value() {
        let across = |width: Length| critical_width(Support::Concrete { width });
        return Ok(Standing { critical: [across(*one)?, across(*other)?], faces: [*one, *other] });
    }
    match stands {
        [only] => alone(known, *only),
        _ => Err(NotVerified::NotCovered(NotCovered::NoRule {
            what: "a pad under more than one column",
            clause: "designed as a combined footing",
        })),
    }
}

/// A column or a pack of jacks by itself.
pub fn alone(known: &Known<'_>, element: ElementId) -> Result<Standing, NotVerified> {
    match element.kind {
        ElementKind::Column => {
            let column = known.model.column(element).ok_or(NotVerified::Missing(element, "size"))?;
            under_column(column)
        }
        ElementKind::Jacks => {
            let jacks = known.model.jacks_of(element).ok_or(NotVerified::Missing(element, "size"))?;
            let depth = jacks.size.value().and_then(|(_, member)| member.depth());
            let sides = pack_width(jacks).zip(depth).ok_or(NotVerified::Missing(element, "size"))?;
            concrete_like(sides.0.min(sides.1))
        }
        _ => Err(NotVerified::NotCovered(NotCovered::NoRule {
            what: "a pad under a wall or a beam",
            clause: "designed by itself",
        })),
    }
}

fn under_column(column: &Column) -> Result<Standing, NotVerified> {
    let id = column.common.id;
    let section = column.size.value().and_then(|size| size.section.as_ref());
    let side = side_of(section.ok_or(NotVerified::Missing(id, "size"))?);
    if column.base.is_broken() {
        return Err(NotVerified::Missing(id, "base"));
    }
    match column.base.value() {
        Some(Base::Plate([one, other, _], _)) => {
            let plate = (*one).min(*other);
            let critical = critical_width(Support::BasePlate { column: side, plate })?;
            Ok(Standing { critical: [critical; 2], faces: [plate; 2] })
        }
        Some(Base::Standoff(_) | Base::Bare { .. }) | None => concrete_like(side),
    }
}

/// Cut at its own face.
fn concrete_like(side: Length) -> Result<Standing, NotVerified> {
    let critical = critical_width(Support::Concrete { width: side })?;
    Ok(Standing { critical: [critical; 2], faces: [side; 2] })
}

/// The shorter side; of a round one that of the square of its area (ACI 318 13.2.7.3, from memory).
fn side_of(section: &Section) -> Length {
    let is_round = match section.make {
        Make::Rolled(rolled) => matches!(rolled.outline, Outline::Pipe { .. }),
        Make::FilledPipe => true,
        Make::Sawn { .. }
        | Make::Glulam
        | Make::Composite
        | Make::IJoist(_)
        | Make::RimBoard
        | Make::DeclaredSteel => false,
    };
    if is_round { square_of_equal_area(section.depth) } else { section.width().min(section.depth) }
}

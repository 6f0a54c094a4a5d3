//! Each column's cap, foot and cut length.

use crate::geometry::carried::Carried;
use crate::geometry::levels::FloorLevels;
use crate::geometry::sum::{Derived, Sum, Unknown};
use crate::geometry::surfaces::{Surface, Surfaces, standing_surface};
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::framing::{Base, Column};
use crate::syntax::vocabulary::ElementKind;

/// A column from its foot to its cap.
#[derive(Clone, Debug)]
pub struct ColumnStack {
    /// What it stands on: footing, pedestal, beam, deck.
    pub bearing: Derived,
    /// Its foot: on plate and grout, on its standoff.
    pub foot: Derived,
    /// Its upper end: under cap and shims.
    pub head: Derived,
    /// The column alone, without plates: from foot to head.
    pub cut: Derived,
    /// The underside of every beam that bears on it.
    pub beams: Vec<(ElementId, Derived)>,
}

/// The stack of every column, in the model's order.
pub fn of(
    model: &Model,
    floors: &[FloorLevels],
    surfaces: &Surfaces,
    carried: &Carried<'_>,
) -> Vec<ColumnStack> {
    let stack = |column| stack_of(model, floors, surfaces, carried, column);
    model.columns.iter().map(stack).collect()
}

fn stack_of(
    model: &Model,
    floors: &[FloorLevels],
    surfaces: &Surfaces,
    carried: &Carried<'_>,
    column: &Column,
) -> ColumnStack {
    let id = column.common.id;
    let unknown = |fact| Unknown { of: Some(id), fact };
    let beams: Vec<(ElementId, Derived)> = carried
        .beams_on(id)
        .iter()
        .map(|(beam, _)| (beam.common.id, surfaces.of(beam.common.id, Surface::Bottom)))
        .collect();
    let bearing = bearing_of(model, floors, surfaces, column);
    let foot = bearing.clone().and_then(|bearing| {
        let base = column.base.value().ok_or(unknown("base"))?;
        let sum = match base {
            Base::Plate([_, _, thickness], grout) => {
                let span = column.base.span();
                bearing.plus(*grout, "grout", id, span).plus(*thickness, "base plate", id, span)
            }
            Base::Standoff(height) => bearing.plus(*height, "standoff", id, column.base.span()),
            Base::Bare { .. } => bearing,
        };
        Ok(sum)
    });
    let head = match lowest(&beams) {
        Some(bottom) => bottom.and_then(|bottom| under_cap(bottom, column)),
        None => foot.clone().and_then(|foot| {
            let length = column.length.get().ok_or(unknown("length"))?;
            Ok(foot.plus(length, format!("length of {}", column.common.name), id, column.length.span()))
        }),
    };
    let cut = head.clone().and_then(|head| {
        let foot = foot.clone()?;
        Ok(between(head, foot, id))
    });
    ColumnStack { bearing, foot, head, cut, beams }
}

/// The length from one sum up to another: the terms of both, so that a message can name every step.
fn between(head: Sum, foot: Sum, id: ElementId) -> Sum {
    let total = foot.total();
    let what = match foot.terms() {
        [only] => only.what.clone(),
        [first, ..] => format!("foot ({} + {})", first.what, total - first.amount),
        [] => "foot".to_owned(),
    };
    let of = foot.terms().first().map_or(id, |term| term.of);
    head.less(total, what, of, foot.terms().first().and_then(|term| term.span))
}

fn lowest(beams: &[(ElementId, Derived)]) -> Option<Derived> {
    let known = beams.iter().filter_map(|(_, bottom)| bottom.as_ref().ok());
    let least = known.min_by_key(|bottom| bottom.total()).cloned().map(Ok);
    least.or_else(|| beams.first().map(|(_, bottom)| bottom.clone()))
}

fn under_cap(bottom: Sum, column: &Column) -> Derived {
    let id = column.common.id;
    if column.shim.is_broken() {
        return Err(Unknown { of: Some(id), fact: "shim" });
    }
    let cap = column.cap.value().ok_or(Unknown { of: Some(id), fact: "cap" })?;
    let shim = column.shim.get().unwrap_or_default();
    Ok(bottom.less(shim, "shims", id, column.shim.span()).less(
        cap.thickness(),
        format!("cap of {}", column.common.name),
        id,
        column.cap.span(),
    ))
}

fn bearing_of(model: &Model, floors: &[FloorLevels], surfaces: &Surfaces, column: &Column) -> Derived {
    let unknown = Unknown { of: Some(column.common.id), fact: "stands on" };
    let stand = column.stands_on.value().ok_or(unknown)?;
    let on = stand.on.reference().and_then(|reference| reference.target).ok_or(unknown)?;
    let surface = standing_surface(model, floors, surfaces, on)?;
    // A post bare on a beam's flange goes through the nailer too; any other stands on the nailer.
    if on.kind == ElementKind::Beam
        && !matches!(column.base.value(), Some(Base::Bare { .. }))
        && let Some(beam) = model.beam(on)
        && let Some(nailer) = beam.nailer.value()
    {
        let thickness = nailer.member.thickness().ok_or(Unknown { of: Some(on), fact: "nailer" })?;
        return Ok(surface.plus(
            thickness,
            format!("nailer on {}", beam.common.name),
            on,
            beam.nailer.span(),
        ));
    }
    Ok(surface)
}

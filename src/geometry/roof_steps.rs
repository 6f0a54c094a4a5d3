//! Roofs that lie beside higher ones.

use crate::geometry::Geometry;
use crate::geometry::surfaces::Surface;
use crate::model::Model;
use crate::model::plan::{Axis, PlanRect};
use crate::model::site::Roof;
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

/// A roof beside a higher one.
#[derive(Clone, Copy, Debug)]
pub struct RoofStep<'a> {
    /// The lower roof.
    pub lower: &'a Roof,
    /// The higher roof.
    pub upper: &'a Roof,
    /// From what the lower one bears on at its highest up to what the higher one bears on at its lowest.
    pub by: Length,
    /// How far they lie apart in plan; nothing where they meet or overlap.
    pub apart: Length,
}

/// Each roof that lies beside a higher one, with the highest of those no further off than `reach`. A roof is as high as
/// what it bears on; one that bears on something outside the spec is left out.
pub fn roof_steps<'a>(model: &'a Model, geometry: &Geometry, reach: Length) -> Vec<RoofStep<'a>> {
    let levels: Vec<(&Roof, Length, Length)> = model
        .roofs
        .iter()
        .filter_map(|roof| level_of(geometry, roof).map(|(low, high)| (roof, low, high)))
        .collect();
    let beside = |lower: &'a Roof, high: Length| {
        let steps = levels.iter().filter_map(|(upper, low, _)| {
            let apart = distance(lower, upper)?;
            let by = *low - high;
            (by.is_positive() && apart <= reach).then_some(RoofStep { lower, upper, by, apart })
        });
        steps.max_by_key(|step| step.by)
    };
    levels.iter().filter_map(|(lower, _, high)| beside(lower, *high)).collect()
}

/// The lowest and the highest of what a roof bears on.
fn level_of(geometry: &Geometry, roof: &Roof) -> Option<(Length, Length)> {
    let mut levels = Vec::new();
    for support in &roof.supports {
        let on = support.on.reference()?.target?;
        let top = match on.kind {
            ElementKind::Column => geometry.columns.get(on.index as usize)?.head.clone(),
            _ => geometry.surfaces.of(on, Surface::Top),
        };
        levels.push(top.ok()?.total());
    }
    Some((*levels.iter().min()?, *levels.iter().max()?))
}

fn distance(one: &Roof, other: &Roof) -> Option<Length> {
    let gap = |a: &PlanRect, b: &PlanRect, axis: Axis| {
        let ((low, high), (from, to)) = (a.on(axis), b.on(axis));
        (from - high).max(low - to).max(Length::ZERO)
    };
    let pairs = one.fill.iter().flat_map(|a| other.fill.iter().map(move |b| (a, b)));
    pairs.map(|(a, b)| gap(a, b, Axis::X).max(gap(a, b, Axis::Y))).min()
}

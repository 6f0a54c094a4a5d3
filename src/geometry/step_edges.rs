//! Edges of a floor that run along its joists where a lower floor begins.

use crate::geometry::band::{self, Band};
use crate::geometry::carried::Carried;
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::framing::Joists;
use crate::units::Length;

/// How far the two floors and what carries the edge may lie apart in plan: a wall's thickness. Common practice.
const REACH: Length = Length::inches(14);

/// An edge of a floor beside a lower one, along the upper floor's joists.
#[derive(Clone, Debug, PartialEq)]
pub struct StepEdge {
    /// The joists of the upper floor.
    pub joists: ElementId,
    /// The lower floor.
    pub lower: ElementId,
    /// How much of the edge has no beam or wall under it.
    pub bare: Length,
    /// How long the edge is.
    pub length: Length,
}

/// The strips of every wall and beam, gathered once for all the edges of a house.
pub fn carrying_bands(model: &Model) -> Vec<Band> {
    let walls = model.walls.iter().filter_map(band::of_wall);
    walls.chain(model.beams.iter().filter_map(|beam| band::of(model, beam.common.id))).collect()
}

/// The edges of an upper floor along its joists where a lower floor begins; `bands` as [`carrying_bands`] gathers them.
pub fn step_edges(
    bands: &[Band],
    carried: &Carried<'_>,
    upper: ElementId,
    lower: ElementId,
) -> Vec<StepEdge> {
    let mut edges = Vec::new();
    for joists in carried.fields_of(upper) {
        let Some(run) = joists.run.get() else { continue };
        for rect in &joists.fill {
            let (low, high) = rect.on(run.across());
            for (at, is_high) in [(low, false), (high, true)] {
                for other in carried.fields_of(lower).iter().flat_map(|lower| &lower.fill) {
                    let (near, far) = other.on(run.across());
                    let gap = if is_high { near - at } else { at - far };
                    let (from, to) =
                        (rect.on(run).0.max(other.on(run).0), rect.on(run).1.min(other.on(run).1));
                    if gap.abs() <= REACH && from < to {
                        let covered = covered_at(bands, joists, at, (from, to));
                        let length = to - from;
                        edges.push(StepEdge {
                            joists: joists.common.id,
                            lower,
                            bare: length - covered,
                            length,
                        });
                    }
                }
            }
        }
    }
    edges
}

/// How much of a stretch along the joists lies over walls and beams that run along it at this coordinate.
fn covered_at(bands: &[Band], joists: &Joists, at: Length, stretch: (Length, Length)) -> Length {
    let mut covered: Vec<(Length, Length)> = bands
        .iter()
        .filter(|band| Some(band.axis) == joists.run.get())
        .filter(|band| band.across.0 - REACH <= at && at <= band.across.1 + REACH)
        .map(|band| (band.along.0.max(stretch.0), band.along.1.min(stretch.1)))
        .filter(|(from, to)| from < to)
        .collect();
    covered.sort();
    let mut total = Length::ZERO;
    let mut reached = stretch.0;
    for (from, to) in covered {
        let from = from.max(reached);
        if to > from {
            total += to - from;
            reached = to;
        }
    }
    total
}

//! Concrete walls in one line with different tops.

use std::collections::BTreeMap;

use crate::geometry::band;
use crate::geometry::surfaces::{Surface, Surfaces};
use crate::model::Model;
use crate::model::foundation::Wall;
use crate::model::plan::Axis;
use crate::units::Length;

/// How far apart two walls in a line may end and still be one wall that steps.
const GAP: Length = Length::feet(2);

/// A place where a line of walls steps.
#[derive(Clone, Copy, Debug)]
pub struct LineStep<'a> {
    /// The axis the walls run along.
    pub axis: Axis,
    /// The higher wall.
    pub high: &'a Wall,
    /// Its top.
    pub high_top: Length,
    /// Where it begins.
    pub high_end: Length,
    /// The lower wall.
    pub low: &'a Wall,
    /// Where it ends.
    pub low_end: Length,
    /// The higher wall lies towards larger coordinates.
    pub rises: bool,
}

/// A wall with the two ends of its line, the smaller first. The strip is longer: at corners it runs on.
struct Stretch<'a> {
    ends: (Length, Length),
    wall: &'a Wall,
}

/// Where concrete walls step along their lines.
pub fn steps_in_line<'a>(model: &'a Model, surfaces: &Surfaces) -> Vec<LineStep<'a>> {
    let mut lines: BTreeMap<(Axis, Length), Vec<Stretch<'_>>> = BTreeMap::new();
    for wall in model.walls.iter().filter(|wall| wall.kind.get().is_some_and(|kind| kind.is_mineral())) {
        let (Some(band), Some(line)) = (band::of_wall(wall), wall.from.value()) else { continue };
        let stretch = Stretch { ends: line.on(band.axis), wall };
        lines.entry((band.axis, band.centre())).or_default().push(stretch);
    }
    let mut steps = Vec::new();
    for ((axis, _), mut walls) in lines {
        walls.sort_by_key(|stretch| stretch.ends);
        for (first, next) in walls.iter().zip(walls.iter().skip(1)) {
            let (one, other) = (first.wall, next.wall);
            let (end, begin) = (first.ends.1, next.ends.0);
            let tops = (surfaces.of(one.common.id, Surface::Top), surfaces.of(other.common.id, Surface::Top));
            let (Ok(one_top), Ok(other_top)) = tops else { continue };
            let (one_top, other_top) = (one_top.total(), other_top.total());
            if (begin - end).abs() > GAP || one_top == other_top {
                continue;
            }
            steps.push(if one_top < other_top {
                LineStep {
                    axis,
                    high: other,
                    high_top: other_top,
                    high_end: begin,
                    low: one,
                    low_end: end,
                    rises: true,
                }
            } else {
                LineStep {
                    axis,
                    high: one,
                    high_top: one_top,
                    high_end: end,
                    low: other,
                    low_end: begin,
                    rises: false,
                }
            });
        }
    }
    steps
}

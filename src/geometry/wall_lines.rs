//! Walls in one line: concrete with different tops, framed with different feet.

use std::collections::BTreeMap;

use crate::geometry::band;
use crate::geometry::surfaces::{Surface, Surfaces};
use crate::model::Model;
use crate::model::foundation::{Wall, WallKind};
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
#[derive(Clone, Copy)]
struct Stretch<'a> {
    ends: (Length, Length),
    wall: &'a Wall,
}

/// Where concrete walls step along their lines.
pub fn steps_in_line<'a>(model: &'a Model, surfaces: &Surfaces) -> Vec<LineStep<'a>> {
    let is_concrete = |wall: &&Wall| wall.kind.get().is_some_and(|kind| kind.is_mineral());
    let mut steps = Vec::new();
    for (axis, first, next) in neighbours(model.walls.iter().filter(is_concrete)) {
        let (one, other) = (first.wall, next.wall);
        let (end, begin) = (first.ends.1, next.ends.0);
        let tops = (surfaces.of(one.common.id, Surface::Top), surfaces.of(other.common.id, Surface::Top));
        let (Ok(one_top), Ok(other_top)) = tops else { continue };
        let (one_top, other_top) = (one_top.total(), other_top.total());
        if one_top == other_top {
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
    steps
}

/// A place where a line of framed walls goes on at another level.
#[derive(Clone, Copy, Debug)]
pub struct FootStep<'a> {
    /// The wall whose foot is higher.
    pub high: &'a Wall,
    /// The wall whose foot is lower.
    pub low: &'a Wall,
    /// By how much.
    pub by: Length,
}

/// Where framed walls go on in one line from another level.
pub fn foot_steps<'a>(model: &'a Model, surfaces: &Surfaces) -> Vec<FootStep<'a>> {
    let is_framed = |wall: &&Wall| wall.kind.get() == Some(WallKind::Framed);
    let step = |one: &'a Wall, other: &'a Wall| {
        let foot = |wall: &Wall| Some(surfaces.of(wall.common.id, Surface::Bottom).ok()?.total());
        let by = foot(other)? - foot(one)?;
        let (high, low) = if by.is_negative() { (one, other) } else { (other, one) };
        (by != Length::ZERO).then_some(FootStep { high, low, by: by.abs() })
    };
    let pairs = neighbours(model.walls.iter().filter(is_framed));
    pairs.into_iter().filter_map(|(_, one, other)| step(one.wall, other.wall)).collect()
}

/// Walls that go on from one another in one line, by the axis they run along.
fn neighbours<'a>(walls: impl Iterator<Item = &'a Wall>) -> Vec<(Axis, Stretch<'a>, Stretch<'a>)> {
    let mut lines: BTreeMap<(Axis, Length), Vec<Stretch<'a>>> = BTreeMap::new();
    for wall in walls {
        let (Some(band), Some(line)) = (band::of_wall(wall), wall.from.value()) else { continue };
        let stretch = Stretch { ends: line.on(band.axis), wall };
        lines.entry((band.axis, band.centre())).or_default().push(stretch);
    }
    let mut pairs = Vec::new();
    for ((axis, _), mut walls) in lines {
        walls.sort_by_key(|stretch| stretch.ends);
        let next = walls.iter().skip(1);
        let both = walls.iter().zip(next).filter(|(one, other)| (other.ends.0 - one.ends.1).abs() <= GAP);
        pairs.extend(both.map(|(one, other)| (axis, *one, *other)));
    }
    pairs
}

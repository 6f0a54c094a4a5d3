//! Framed walls in one line that begin at different levels.

use std::collections::BTreeMap;

use crate::geometry::band;
use crate::geometry::surfaces::{Surface, Surfaces};
use crate::model::Model;
use crate::model::foundation::{Wall, WallKind};
use crate::model::plan::Axis;
use crate::units::Length;

/// Two walls whose ends are further apart are not one line of plates: a corner, a thick wall between. Common practice.
const GAP: Length = Length::feet(2);

/// Two framed walls, one after the other in one line.
#[derive(Clone, Copy, Debug)]
pub struct PlateLine<'a> {
    /// The wall that begins lower.
    pub lower: &'a Wall,
    /// The other one.
    pub upper: &'a Wall,
    /// How much lower.
    pub bases_apart: Length,
}

/// A wall with the ends of its line.
type Stretch<'a> = ((Length, Length), &'a Wall);

/// Every two framed walls that follow each other in one line on different levels.
pub fn on_two_bases<'a>(model: &'a Model, surfaces: &Surfaces) -> Vec<PlateLine<'a>> {
    let mut lines: BTreeMap<(Axis, Length), Vec<Stretch<'_>>> = BTreeMap::new();
    for wall in model.walls.iter().filter(|wall| wall.kind.get() == Some(WallKind::Framed)) {
        let (Some(band), Some(line)) = (band::of_wall(wall), wall.from.value()) else { continue };
        lines.entry((band.axis, band.centre())).or_default().push((line.on(band.axis), wall));
    }
    let mut found = Vec::new();
    for mut walls in lines.into_values() {
        walls.sort_by_key(|(ends, wall)| (*ends, wall.common.id));
        for ((before, one), (after, other)) in walls.iter().zip(walls.iter().skip(1)) {
            let base = |wall: &Wall| surfaces.of(wall.common.id, Surface::Bottom).ok().map(|sum| sum.total());
            let (Some(low), Some(high)) = (base(one), base(other)) else { continue };
            if (after.0 - before.1).abs() > GAP || low == high {
                continue;
            }
            let (lower, upper) = if low < high { (*one, *other) } else { (*other, *one) };
            found.push(PlateLine { lower, upper, bases_apart: (high - low).abs() });
        }
    }
    found
}

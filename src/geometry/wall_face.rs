//! One face of a wall, followed over the walls that carry it on.

use crate::geometry::band;
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::foundation::{LinePlace, Wall};
use crate::model::plan::PlanLine;
use crate::units::Length;

/// What breaks a straight face.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Break {
    /// This wall's face lies this far off the line, outward when positive.
    Off(ElementId, Length),
    /// No wall stands along this stretch.
    Gap(Length, Length),
}

/// The breaks of a wall's face along a line: the face on which its own line lies. Walls of the same kind that lie along
/// the line and reach within their thickness of it carry the face on. `None` when wall or line are skew or not known, or
/// another wall, which may carry it on, is not.
pub fn breaks(model: &Model, wall: &Wall, line: &PlanLine) -> Option<Vec<Break>> {
    let axis = line.axis()?;
    let at = line.from.on(axis.across());
    let LinePlace::Face(side, _) = wall.line.get()? else { return None };
    let side = band::hand_to_side(side, wall.from.value()?)?;
    let is_high = band::is_high_side(side, axis)?;
    let kind = wall.kind.get()?;
    let (from, to) = line.on(axis);
    let is_place_known = |wall: &Wall| {
        !["from", "line", "thick", "kind"].into_iter().any(|phrase| wall.common.may_say(phrase))
    };
    if !model.walls.iter().all(is_place_known) {
        return None;
    }
    let mut found = Vec::new();
    let mut covered: Vec<(Length, Length)> = Vec::new();
    for other in model.walls.iter().filter(|other| other.kind.get() == Some(kind)) {
        let Some(band) = band::of_wall(other).filter(|band| band.axis == axis) else { continue };
        let Some((low, high)) = other.from.value().map(|line| line.on(axis)) else { continue };
        let face = if is_high { band.across.1 } else { band.across.0 };
        let off = if is_high { face - at } else { at - face };
        if off.abs() > band.width() || low.max(from) >= high.min(to) {
            continue;
        }
        covered.push((low, high));
        if off != Length::ZERO {
            found.push(Break::Off(other.common.id, off));
        }
    }
    covered.sort();
    let mut reached = from;
    for (low, high) in covered {
        if low > reached {
            found.push(Break::Gap(reached, low));
        }
        reached = reached.max(high);
    }
    if reached < to {
        found.push(Break::Gap(reached, to));
    }
    Some(found)
}

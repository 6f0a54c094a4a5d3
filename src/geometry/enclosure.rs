//! Which side of a wall is indoors.

use crate::geometry::band::{self, Band};
use crate::model::Model;
use crate::model::foundation::{Grade, Wall};
use crate::model::plan::PlanRect;
use crate::syntax::value::Side;
use crate::units::Length;

/// How far a floor's edge may stop short of a wall and still be the floor inside of it: furring, a board.
const REACH: Length = Length::inches(2);

/// The grades that lie outdoors. A wall with ground on both faces has indoors on the side where joists or a slab are:
/// the ground there is that of a crawl space, which does not freeze as the ground outside does. None where a line that
/// can't be read leaves open which side that is.
pub fn outdoor_grades<'a>(model: &Model, wall: &'a Wall) -> Vec<&'a Grade> {
    let sides: Vec<Side> = wall.grades.iter().filter_map(|grade| grade.side).collect();
    let has_two_sides = sides.iter().any(|side| Some(side) != sides.first());
    let is_place_known =
        wall.from.value().is_some() && wall.line.value().is_some() && wall.thick.value().is_some();
    let are_fills_known = model.joists.iter().all(|joists| !joists.common.may_say("fill"))
        && model.slabs.iter().all(|slab| !slab.common.may_say("fill"));
    if wall.common.may_say("grade") || has_two_sides && !(is_place_known && are_fills_known) {
        return Vec::new();
    }
    let band = band::of_wall(wall).filter(|_| has_two_sides);
    let is_outdoors = |grade: &&Grade| match (band, grade.side) {
        (Some(band), Some(side)) => !is_indoors(model, &band, side),
        (None, _) | (_, None) => true,
    };
    let outdoors: Vec<&Grade> = wall.grades.iter().filter(is_outdoors).collect();
    // A wall between two rooms has no outdoors; then all ground counts, which is the safe side.
    if outdoors.is_empty() { wall.grades.iter().collect() } else { outdoors }
}

fn is_indoors(model: &Model, band: &Band, side: Side) -> bool {
    let Some(is_high) = band::is_high_side(side, band.axis) else { return false };
    let joists = model.joists.iter().flat_map(|joists| &joists.fill);
    let slabs = model.slabs.iter().flat_map(|slab| &slab.fill);
    joists.chain(slabs).any(|rect| lies_on(rect, band, is_high))
}

/// True when a rectangle lies beside the middle of the wall on that side and reaches it. At its corners a wall touches
/// floors that lie past it.
pub fn lies_on(rect: &PlanRect, band: &Band, is_high: bool) -> bool {
    let (from, to) = rect.on(band.axis);
    let middle = (band.along.0 + band.along.1).half();
    let runs_along = from <= middle && middle <= to;
    let (low, high) = rect.on(band.axis.across());
    let reaches = if is_high {
        high > band.across.1 && low <= band.across.1 + REACH
    } else {
        low < band.across.0 && high >= band.across.0 - REACH
    };
    runs_along && reaches
}

#[cfg(test)]
mod tests {
    use super::outdoor_grades;
    use crate::testing::rule_check::house;

    #[test]
    fn ground_under_the_floor_is_indoors() {
        let house = house(
            "
grid
  x           A 0', B 12'
  y           1 0', 2 10'
wall W1
  kind        concrete
  from        A/1 to B/1
  line        south face
  thick       8\"
  grade       98'-0\" on south
  grade       96'-0\" on north
joists J1
  size        2x10 SPF No.2
  fill        A to B by 1 to 2
  run         along y
  bears on    W1
",
        );
        let grades = outdoor_grades(&house.model, house.model.walls.first().unwrap());
        let elevations: Vec<String> =
            grades.iter().map(|grade| grade.elevation.in_feet().to_string()).collect();
        assert_eq!(elevations, ["98'-0\""]);
    }
}

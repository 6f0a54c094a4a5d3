//! Earth against one face of a wall, and the room or crawl space behind the other.

use crate::geometry::Geometry;
use crate::geometry::band;
use crate::geometry::carried::Carried;
use crate::geometry::enclosure::{lies_on, outdoor_grades};
use crate::geometry::surfaces::{Surface, Surfaces};
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::foundation::{Grade, Wall};
use crate::model::openings::Opening;
use crate::model::site::Below;
use crate::syntax::value::Side;
use crate::text::Span;
use crate::units::Length;

/// Earth that stands higher against one face of a wall than against the other.
#[derive(Clone, Debug, PartialEq)]
pub struct Backfill<'a> {
    /// The highest ground outside.
    pub outside: &'a Grade,
    /// The side the earth lies on.
    pub side: Side,
    /// What is behind the wall at its foot: a slab, the ground of a crawl space.
    pub inside: Length,
    /// What says so.
    pub inside_of: ElementId,
    /// Where.
    pub inside_span: Span,
}

impl Backfill<'_> {
    /// How much higher the earth stands outside.
    pub fn unbalanced(&self) -> Length {
        self.outside.elevation - self.inside
    }
}

/// The earth against a wall. `None` where no ground outside is said, or nothing says what is behind the wall.
pub fn of_wall<'a>(model: &'a Model, wall: &'a Wall) -> Option<Backfill<'a>> {
    let outside = outdoor_grades(model, wall).into_iter().max_by_key(|grade| grade.elevation)?;
    let side = band::hand_to_side(outside.side?, wall.from.value()?)?;
    let (inside, inside_of, inside_span) = ground_behind(model, wall, side)?;
    Some(Backfill { outside, side, inside, inside_of, inside_span })
}

/// The slab on the other side of a wall; else the ground that a line of the wall says is there; else that of the crawl
/// space under the joists there.
fn ground_behind(model: &Model, wall: &Wall, earth: Side) -> Option<(Length, ElementId, Span)> {
    let band = band::of_wall(wall)?;
    let is_high = !band::is_high_side(earth, band.axis)?;
    for slab in &model.slabs {
        if slab.fill.iter().any(|rect| lies_on(rect, &band, is_high)) {
            return Some((slab.top.get()?, slab.common.id, slab.top.span()?));
        }
    }
    let lines = wall.grades.iter().filter(|grade| {
        let side = grade.side.and_then(|side| band::hand_to_side(side, wall.from.value()?));
        side.and_then(|side| band::is_high_side(side, band.axis)) == Some(is_high)
    });
    if let Some(grade) = lines.min_by_key(|grade| grade.elevation) {
        return Some((grade.elevation, wall.common.id, grade.span));
    }
    let beside =
        model.joists.iter().filter(|joists| joists.fill.iter().any(|rect| lies_on(rect, &band, is_high)));
    beside.filter_map(|joists| model.floor(joists.floor.value()?.target?)).find_map(|floor| {
        match floor.over.stated()? {
            (Below::Crawl(ground), span) => Some((*ground, floor.common.id, span)),
            (Below::Basement(_) | Below::Outside, _) => None,
        }
    })
}

/// A floor opening along a wall.
#[derive(Clone, Copy, Debug)]
pub struct OpeningBeside<'a> {
    /// The opening.
    pub opening: &'a Opening,
    /// How much of the wall it runs along.
    pub length: Length,
    /// How long the wall is, from end to end of its line.
    pub wall_length: Length,
}

/// How far a wall's top may lie from the underside of the joists it props itself against: sills, a built-up seat.
const TOP_REACH: Length = Length::inches(12);

/// The floor openings that come nearer than `reach` to the face of a wall away from the earth, in the floor at its top.
pub fn beside_openings<'a>(
    model: &'a Model,
    geometry: &Geometry,
    wall: &Wall,
    earth: Side,
    reach: Length,
) -> Vec<OpeningBeside<'a>> {
    let place = || {
        let band = band::of_wall(wall)?;
        let face = if band::is_high_side(earth, band.axis)? { band.across.0 } else { band.across.1 };
        let top = geometry.surfaces.of(wall.common.id, Surface::Top).ok()?.total();
        Some((band, face, top, wall.from.value()?.on(band.axis)))
    };
    let Some((band, face, top, line)) = place() else { return Vec::new() };
    let is_at_top = |opening: &Opening| {
        let floor = opening.floor.value().and_then(|floor| floor.target);
        let levels = floor.and_then(|floor| geometry.floors.get(floor.index as usize));
        levels.is_some_and(|levels| {
            let bottom = levels.joist_bottom.as_ref().or(levels.subfloor.as_ref());
            bottom.is_ok_and(|bottom| (bottom.total() - top).abs() <= TOP_REACH)
        })
    };
    let mut beside = Vec::new();
    for opening in model.openings.iter().filter(|opening| is_at_top(opening)) {
        for rect in &opening.fill {
            let (low, high) = rect.on(band.axis.across());
            let (from, to) = rect.on(band.axis);
            let away = if face == band.across.1 { low - face } else { face - high };
            let length = to.min(line.1) - from.max(line.0);
            if away <= reach && away > low - high && length.is_positive() {
                beside.push(OpeningBeside { opening, length, wall_length: line.1 - line.0 });
            }
        }
    }
    beside
}

/// Earth beyond a wall that stands higher than where a lower floor lies in it or hangs on it.
#[derive(Clone, Copy, Debug)]
pub struct EarthAboveSeat<'a> {
    /// The wall.
    pub wall: &'a Wall,
    /// The shelf or ledger of the floor.
    pub seat: ElementId,
    /// How high it lies.
    pub level: Length,
    /// The ground.
    pub ground: &'a Grade,
}

/// Every shelf and ledger with higher earth behind its wall, where nothing holds the wall's top: no floor lies on a sill
/// that is bolted down.
pub fn above_seats<'a>(
    model: &'a Model,
    surfaces: &Surfaces,
    carried: &Carried<'_>,
) -> Vec<EarthAboveSeat<'a>> {
    let shelves = model.shelves.iter().map(|shelf| (&shelf.common, shelf.wall.value(), shelf.side));
    let ledgers = model.ledgers.iter().map(|ledger| (&ledger.common, ledger.on.value(), ledger.side));
    let may_lie_on_it = model.joists.iter().any(|joists| joists.common.may_say("bears on"));
    let seats = shelves.chain(ledgers).filter_map(|(common, wall, side)| {
        let wall = model.wall(wall?.target?)?;
        let is_held =
            wall.anchor.value().is_some() && carried.joists_bearing_on(wall.common.id).next().is_some();
        if is_held || may_lie_on_it || wall.common.may_say("anchor") {
            return None;
        }
        let line = wall.from.value()?;
        let open = band::hand_to_side(side?, line)?;
        let level = surfaces.of(common.id, Surface::Top).ok()?.total();
        let beyond = wall.grades.iter().filter(|grade| {
            grade.side.and_then(|side| band::hand_to_side(side, line)).is_some_and(|side| side != open)
        });
        let ground = beyond.max_by_key(|grade| grade.elevation).filter(|grade| grade.elevation > level)?;
        Some(EarthAboveSeat { wall, seat: common.id, level, ground })
    });
    seats.collect()
}

#[cfg(test)]
mod tests {
    use super::of_wall;
    use crate::testing::rule_check::house;

    /// By hand: ground at 97'-4" outside; the slab inside is at 91'-4".
    #[test]
    fn a_slab_is_behind_a_basement_wall() {
        let house = house(
            "
grid
  x           A 0', B 20'
  y           1 0', 2 24'
slab SL1
  fill        A to B by 1 plus 8\" to 2
  top         91'-4\"
wall W1
  kind        concrete
  from        A/1 to B/1
  line        south face
  thick       8\"
  grade       97'-4\" on south
",
        );
        let backfill = of_wall(&house.model, house.model.walls.first().unwrap()).unwrap();
        assert_eq!(backfill.unbalanced().to_string(), "6'-0\"");
    }
}

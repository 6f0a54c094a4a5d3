//! The concrete left outside a beam pocket.

use std::collections::HashMap;

use crate::geometry::band;
use crate::geometry::surfaces::Surface;
use crate::house::House;
use crate::model::element::ElementId;
use crate::model::foundation::{Pocket, Shelf, Wall};
use crate::profiles::foundations::UPSTAND_THICKNESS;
use crate::rules::{Findings, rule};
use crate::units::Length;

rule! {
    /// Too little concrete is left behind a beam pocket.
    ///
    /// The wall less the pocket's depth; above a shelf only the upstand is there to be cut. A seat on the wall's very top
    /// takes nothing away.
    ///
    /// ## Why
    /// A thin skin of concrete cracks when the forms are stripped, and water finds the beam end.
    ///
    /// ## Source
    /// Common practice, by analogy with the upstand beside a shelf (a building code of Ontario, 9.15.4.7).
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W1
    ///   kind        concrete
    ///   thick       8"
    ///   top         99'-0"
    /// pocket PK1
    ///   in          W1 from east face
    ///   seat        98'-0"
    ///   depth       5"
    /// ```
    /// ```framing,passes
    /// wall W1
    ///   kind        concrete
    ///   thick       8"
    ///   top         99'-0"
    /// pocket PK1
    ///   in          W1 from east face
    ///   seat        98'-0"
    ///   depth       4-1/2"
    /// ```
    "wall-thin-behind-pocket", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let least = house.limits.of(&UPSTAND_THICKNESS);
    let mut shelves: HashMap<ElementId, Vec<&Shelf>> = HashMap::new();
    for shelf in &house.model.shelves {
        if let Some(wall) = shelf.wall.value().and_then(|wall| wall.target) {
            shelves.entry(wall).or_default().push(shelf);
        }
    }
    for pocket in &house.model.pockets {
        let Some((depth, span)) = pocket.depth.stated() else { continue };
        let Some(wall) = pocket.wall.value().and_then(|wall| house.model.wall(wall.target?)) else {
            continue;
        };
        let (Some(thick), Ok(seat)) =
            (wall.thick.get(), house.geometry.surfaces.of(pocket.common.id, Surface::Seat))
        else {
            continue;
        };
        // Without a top that can be read, it is not known whether there is concrete behind the beam at all.
        if wall.top.is_broken() {
            continue;
        }
        let top = house.geometry.surfaces.of(wall.common.id, Surface::Top);
        if top.is_ok_and(|top| seat.total() >= top.total()) {
            continue;
        }
        let in_wall = shelves.get(&wall.common.id).map(Vec::as_slice).unwrap_or_default();
        let shelf = shelf_below(in_wall, pocket, wall, seat.total());
        let there = thick - shelf.and_then(|shelf| shelf.width.get()).unwrap_or(Length::ZERO);
        let left = there - *depth;
        if left >= least.value {
            continue;
        }
        let above = shelf.map(|shelf| format!(", {there} thick above {}", shelf.common.label()));
        let finding = findings.about(
            pocket.common.id,
            span,
            format!(
                "{} goes {depth} into {}{}: {left} of concrete left behind it, {} at the least",
                pocket.common.label(),
                wall.common.label(),
                above.unwrap_or_default(),
                least.value
            ),
        );
        finding.related(wall.thick.span().unwrap_or(wall.common.name_span), format!("{thick} of wall"));
        if let Some(shelf) = shelf {
            finding
                .related(shelf.common.name_span, "the shelf")
                .help("seat the beam at the level of the shelf");
        }
        finding.help("make the pocket shallower or the wall thicker").basis(least.basis());
    }
}

/// The shelf of the pocket's wall that lies lower than the seat, where the pocket is.
fn shelf_below<'a>(in_wall: &[&'a Shelf], pocket: &Pocket, wall: &Wall, seat: Length) -> Option<&'a Shelf> {
    let axis = band::of_wall(wall)?.axis;
    let at = pocket.at.value()?.on(axis);
    let mut lower = in_wall.iter().filter(|shelf| shelf.top.get().is_some_and(|top| top < seat));
    lower
        .find(|shelf| {
            shelf.reach.is_none_or(|(from, to)| from.at.min(to.at) <= at && at <= from.at.max(to.at))
        })
        .copied()
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// 8" less 4-9/16" is 3-7/16": 3-1/2" are wanted (common practice).
    #[test]
    fn says_what_is_left() {
        check_rule(
            &RULE,
            "
wall W1
  kind        concrete
  thick       8\"
  top         99'-0\"
pocket PK1
  in          W1 from east face
  seat        98'-0\"
  depth       4-9/16\"
--            ^^^^^^^ pocket PK1 goes 4-9/16\" into wall W1: 3-7/16\" of concrete left behind it, 3-1/2\" at the least
",
        );
    }

    /// Above a shelf of 6" a wall of 10" is 4" thick: a pocket of 3" leaves 1".
    #[test]
    fn knows_that_the_upstand_is_thin() {
        check_rule(
            &RULE,
            "
grid
  x           A 0', B 12'
  y           1 0'
wall W1
  kind        concrete
  from        A/1 to B/1
  thick       10\"
  top         99'-0\"
shelf SH1
  in          W1 from south face
  top         97'-10\"
  width       6\"
pocket PK1
  in          W1 from north face
  at          A plus 6' / 1
  seat        98'-6\"
  depth       3\"
--            ^^ pocket PK1 goes 3\" into wall W1, 4\" thick above shelf SH1: 1\" of concrete left behind it, 3-1/2\" at the least
",
        );
    }

    #[test]
    fn a_seat_on_the_wall_takes_nothing_away() {
        check_rule(
            &RULE,
            "
wall W1
  kind        concrete
  thick       10\"
  top         99'-0\"
pocket PK1
  in          W1 from east face
  seat        99'-0\"
  depth       7\"
",
        );
    }
}

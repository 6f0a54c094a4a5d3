//! Floor openings along walls that hold earth.

use crate::geometry::backfill::{beside_openings, of_wall};
use crate::house::House;
use crate::profiles::foundations::{
    OPENING_BESIDE_WALL, UNBALANCED_FILL, UNSUPPORTED_WALL_SHARE, UNSUPPORTED_WALL_TOP,
};
use crate::rules::{Findings, rule};

rule! {
    /// A floor opening runs along a wall that holds earth, and leaves its top without a floor to lean on.
    ///
    /// Looked at where the earth stands higher outside than inside by more than the limit `unbalanced-fill`. An opening
    /// counts that comes nearer to the wall than `opening-beside-wall`: the strip of floor between them holds little.
    ///
    /// ## Why
    /// The floor is the prop of a basement wall. Along a stairwell the wall has to span sideways, or up and down alone.
    ///
    /// ## Source
    /// Residential code R404.1 for walls that need support at the top; how long an opening may be is taken by analogy
    /// from a foreign code's rule for openings in such walls. The limits `unbalanced-fill`, `unsupported-wall-top` and
    /// `unsupported-wall-share`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 30'
    ///   y           1 0', 2 24'
    /// floor main
    ///   subfloor    100'-0"
    /// opening O1
    ///   floor       main
    ///   fill        A plus 6' to A plus 16' by 1 plus 10" to 1 plus 4'
    /// slab SL1
    ///   fill        A to B by 1 plus 8" to 2
    ///   top         91'-0"
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   line        south face
    ///   thick       8"
    ///   top         99'-0"
    ///   grade       97'-6" on south
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 30'
    ///   y           1 0', 2 24'
    /// floor main
    ///   subfloor    100'-0"
    /// opening O1
    ///   floor       main
    ///   fill        A plus 6' to A plus 16' by 1 plus 4' to 1 plus 7'
    /// slab SL1
    ///   fill        A to B by 1 plus 8" to 2
    ///   top         91'-0"
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   line        south face
    ///   thick       8"
    ///   top         99'-0"
    ///   grade       97'-6" on south
    /// ```
    "wall-top-unsupported", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let fill = house.limits.of(&UNBALANCED_FILL);
    let (longest, share) = (house.limits.of(&UNSUPPORTED_WALL_TOP), house.limits.of(&UNSUPPORTED_WALL_SHARE));
    let reach = house.limits.of(&OPENING_BESIDE_WALL);
    let is_mineral =
        |kind: Option<crate::model::foundation::WallKind>| kind.is_some_and(|kind| kind.is_mineral());
    for wall in house.model.walls.iter().filter(|wall| is_mineral(wall.kind.get())) {
        let Some(backfill) = of_wall(&house.model, wall).filter(|earth| earth.unbalanced() > fill.value)
        else {
            continue;
        };
        for beside in beside_openings(&house.model, &house.geometry, wall, backfill.side, reach.value) {
            let part = beside.wall_length.shared_by(share.value.0).map(|part| part.rounded());
            if beside.length <= longest.value && part.is_none_or(|part| beside.length <= part) {
                continue;
            }
            let opening = &beside.opening.common;
            let place = beside.opening.fill.first().map_or(opening.name_span, |rect| rect.span);
            findings
                .about(
                    opening.id,
                    place,
                    format!(
                        "{} takes the floor from {} of {}, which holds {} of earth",
                        opening.label(),
                        beside.length,
                        wall.common.label(),
                        backfill.unbalanced()
                    ),
                )
                .related(backfill.outside.span, "the ground outside")
                .related(backfill.inside_span, "the ground inside")
                .note(format!(
                    "allowed are {}, and one part in {} of the wall's {}",
                    longest.value, share.value.0, beside.wall_length
                ))
                .help("move the opening off the wall, turn it, or have the wall designed to span past it")
                .follows(wall.common.id)
                .basis(longest.basis());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(length: &str, grade: &str, mark: &str) -> String {
        format!(
            "
grid
  x           A 0', B 30'
  y           1 0', 2 24'
floor main
  subfloor    100'-0\"
opening O1
  floor       main
  fill        A plus 6' to A plus {length} by 1 plus 10\" to 1 plus 4'
{mark}slab SL1
  fill        A to B by 1 plus 8\" to 2
  top         91'-0\"
wall W1
  kind        concrete
  from        A/1 to B/1
  line        south face
  thick       8\"
  top         99'-0\"
  grade       {grade} on south
"
        )
    }

    /// Four feet along the wall pass, and four feet of earth (both by analogy or from copies of low grade).
    #[test]
    fn at_the_limits() {
        check_rule(&RULE, &house("10'", "97'-6\"", ""));
        check_rule(&RULE, &house("10'-1\"", "95'-0\"", ""));
        check_rule(
            &RULE,
            &house(
                "10'-1\"",
                "95'-0 1/4\"",
                "--            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ opening O1 takes the floor from 4'-1\" of wall W1, which holds 4'-0 1/4\" of earth\n",
            ),
        );
    }
}

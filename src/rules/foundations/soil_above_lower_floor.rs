//! The ground outside, against the shelf or ledger of a lower floor.

use crate::geometry::backfill::above_seats;
use crate::geometry::carried::Carried;
use crate::house::House;
use crate::profiles::levels::CLOSURE_TOLERANCE;
use crate::rules::{Findings, rule};

rule! {
    /// Earth stands higher outside than the shelf or ledger of the floor that the wall leans on.
    ///
    /// A floor on a shelf holds the wall at the shelf. What stands above it is a cantilever against the earth, unless
    /// another floor lies on the wall's top, on a sill that is bolted down (`anchor`).
    ///
    /// ## Why
    /// A lowered floor takes the wall's support down with it. The upstand is thin and was made to keep the weather out,
    /// not to hold a bank of earth.
    ///
    /// ## Source
    /// Residential code R404.1 (from memory): a wall that holds earth is supported at its top, or designed.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0'
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   line        south face
    ///   thick       10"
    ///   top         99'-0"
    ///   grade       98'-9" on south
    /// shelf SH1
    ///   in          W1 from north face
    ///   top         98'-0"
    ///   width       6"
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0'
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   line        south face
    ///   thick       10"
    ///   top         99'-0"
    ///   grade       97'-9" on south
    /// shelf SH1
    ///   in          W1 from north face
    ///   top         98'-0"
    ///   width       6"
    /// ```
    "soil-above-lower-floor", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let tolerance = house.limits.of(&CLOSURE_TOLERANCE);
    let carried = Carried::of(&house.model);
    for earth in above_seats(&house.model, &house.geometry.surfaces, &carried) {
        let above = earth.ground.elevation - earth.level;
        if above < tolerance.value {
            continue;
        }
        let Some(seat) = house.model.common(earth.seat) else { continue };
        let wall = &earth.wall.common;
        findings
            .about(
                wall.id,
                earth.ground.span,
                format!("the ground behind {} stands {above} above {}: no floor holds that much of it", wall.label(), seat.label()),
            )
            .related(seat.name_span, format!("its floor holds the wall at {}", earth.level.in_feet()))
            .note("this says nothing of how strong the wall is: that takes a design")
            .help(format!("lower the ground by {above}, have the wall designed as a cantilever there, or hold its top by a floor on a bolted sill"))
            .follows(earth.seat)
            .basis("R404.1 (from memory)");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(anchor: &str, mark: &str) -> String {
        format!(
            "
grid
  x           A 0', B 20'
  y           1 0', 2 12'
floor main
  subfloor    100'-0\"
joists J1
  floor       main
  fill        A to B by 1 to 2
  run         along y
  bears on    W1
wall W1
  kind        concrete
  from        A/1 to B/1
  line        north face
  thick       10\"
  top         99'-0\"
{anchor}  grade       98'-4 1/2\" on north
{mark}shelf SH1
  in          W1 from south face
  top         98'-0\"
  width       6\"
"
        )
    }

    /// A floor on the top holds the wall only where its sill is bolted down.
    #[test]
    fn a_bolted_sill_holds_the_top() {
        check_rule(
            &RULE,
            &house(
                "",
                "--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the ground behind wall W1 stands 4-1/2\" above shelf SH1: no floor holds that much of it\n",
            ),
        );
        check_rule(&RULE, &house("  anchor      5/8\" x 12\" at 6'-0\"\n", ""));
    }
}

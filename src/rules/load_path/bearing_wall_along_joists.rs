//! Bearing walls along joists.

use crate::geometry::carried::Carried;
use crate::geometry::partitions::along_joists;
use crate::house::House;
use crate::profiles::framing::SPLIT_JOIST_BLOCKS;
use crate::rules::{Findings, rule};

rule! {
    /// A bearing wall runs along joists that are not doubled under it.
    ///
    /// A wall across joists stands on all of them, a wall along them on one. Say `doubled under WALL` where two are nailed
    /// together, or stand the wall over a beam.
    ///
    /// ## Why
    /// The joist under it was sized for a strip of floor as wide as the spacing.
    ///
    /// ## Source
    /// Residential code R502.4, of which the distance of blocks was read in a secondary copy and the rest is from memory.
    /// Two joists are the least: whether they are enough is a matter of the load.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 12'
    /// floor main
    ///   subfloor    100'-0"
    /// joists J1
    ///   floor       main
    ///   fill        A to B by 1 to 2
    ///   run         along y
    /// wall W7
    ///   kind        framed
    ///   from        A plus 8' / 1 to A plus 8' / 2
    ///   line        centre
    ///   studs       2x4 SPF No.2 at 16"
    ///   bearing     yes
    ///   stands on   main over J1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 12'
    /// floor main
    ///   subfloor    100'-0"
    /// joists J1
    ///   floor       main
    ///   fill        A to B by 1 to 2
    ///   run         along y
    ///   doubled     under W7
    /// wall W7
    ///   kind        framed
    ///   from        A plus 8' / 1 to A plus 8' / 2
    ///   line        centre
    ///   studs       2x4 SPF No.2 at 16"
    ///   bearing     yes
    ///   stands on   main over J1
    /// ```
    "bearing-wall-along-joists", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let apart = house.limits.of(&SPLIT_JOIST_BLOCKS);
    let carried = Carried::of(&house.model);
    for along in along_joists(&house.model, &carried) {
        let (wall, joists) = (&along.wall.common, along.joists);
        let is_doubled = joists.doubled.iter().any(|under| under.value.target == Some(wall.id));
        if is_doubled || joists.common.may_say("doubled") {
            continue;
        }
        findings
            .about(
                wall.id,
                along.wall.stands_on.span().unwrap_or(wall.name_span),
                format!("{} bears and runs along {}, which are not doubled under it", wall.label(), joists.common.label()),
            )
            .related(joists.common.name_span, joists.common.label())
            .help(format!(
                "write `doubled under {}` in {} (held apart for pipes, with blocks every {}), or put a beam under the wall",
                wall.name,
                joists.common.name,
                apart.value
            ))
            .basis("R502.4 (from memory)");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(line: &str, over: &str, mark: &str) -> String {
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
beam B1
  size        3-ply 2x10 SPF No.2
  from        A/1 to B/1
beam B2
  size        3-ply 2x10 SPF No.2
  from        A plus 8' / 1 to A plus 8' / 2
wall W7
  kind        framed
  from        {line}
  line        centre
  studs       2x4 SPF No.2 at 16\"
  bearing     yes
  stands on   {over}
{mark}"
        )
    }

    /// A beam across the wall carries it at one place; a beam along it carries it (R502.4, from memory).
    #[test]
    fn what_runs_along_carries() {
        let along = "A plus 8' / 1 to A plus 8' / 2";
        check_rule(&RULE, &house(along, "main over B2", ""));
        check_rule(&RULE, &house("A / 1 plus 6' to B / 1 plus 6'", "main over J1", ""));
        check_rule(
            &RULE,
            &house(
                along,
                "main over B1",
                "--            ^^^^^^^^^^^^ wall W7 bears and runs along joists J1, which are not doubled under it\n",
            ),
        );
        check_rule(
            &RULE,
            &house(
                along,
                "J1",
                "--            ^^ wall W7 bears and runs along joists J1, which are not doubled under it\n",
            ),
        );
    }
}

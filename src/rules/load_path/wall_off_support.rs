//! Bearing walls against what they stand over.

use crate::geometry::alignment::wall_offset;
use crate::geometry::carried::Carried;
use crate::geometry::joist_space;
use crate::house::House;
use crate::rules::{Findings, rule};

rule! {
    /// A bearing wall stands further off the wall or beam below than its joists are deep.
    ///
    /// `stands on main over W1` promises that the wall's load goes straight down into W1. Offset by no more than the
    /// depth of the joists it still does, near enough; further off, the joists carry it in bending.
    ///
    /// ## Why
    /// The joists were sized for the floor alone.
    ///
    /// ## Source
    /// Residential code R502.4 (from memory).
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 10', 3 12'
    /// floor main
    ///   subfloor    100'-0"
    /// beam B1
    ///   size        3-ply 2x12 SPF No.2
    ///   from        A/2 to B/2
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   bears on    B1
    /// wall W2
    ///   kind        framed
    ///   from        A/3 to B/3
    ///   line        centre
    ///   studs       2x4 SPF No.2 at 16"
    ///   bearing     yes
    ///   stands on   main over B1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 10', 3 12'
    /// floor main
    ///   subfloor    100'-0"
    /// beam B1
    ///   size        3-ply 2x12 SPF No.2
    ///   from        A/2 to B/2
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   bears on    B1
    /// wall W2
    ///   kind        framed
    ///   from        A / 3 less 1'-4" to B / 3 less 1'-4"
    ///   line        centre
    ///   studs       2x4 SPF No.2 at 16"
    ///   bearing     yes
    ///   stands on   main over B1
    /// ```
    "wall-off-support", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let carried = Carried::of(&house.model);
    for wall in house.model.walls.iter().filter(|wall| wall.bearing.get() == Some(true)) {
        let Some((stand, span)) = wall.stands_on.stated() else { continue };
        let Some(space) = joist_space::under(&carried, stand) else { continue };
        let Some(offset) = wall_offset(&house.model, wall, space.over).filter(|offset| *offset > space.depth)
        else {
            continue;
        };
        let below = house.model.common(space.over).map(|common| common.label()).unwrap_or_default();
        findings
            .about(
                wall.common.id,
                span,
                format!(
                    "{} stands {offset} off {below}, middle to middle, on joists {} deep",
                    wall.common.label(),
                    space.depth
                ),
            )
            .related(space.joists.common.name_span, space.joists.common.label())
            .help("move one of the two, put a beam under the wall, or have the joists sized for it")
            .follows(space.over)
            .basis("R502.4 (from memory)");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(wall: &str, mark: &str) -> String {
        format!(
            "
grid
  x           A 0', B 20'
  y           1 0', 2 10', 3 12'
floor main
  subfloor    100'-0\"
beam B1
  size        3-ply 2x12 SPF No.2
  from        A/2 to B/2
joists J1
  floor       main
  size        2x10 SPF No.2
  bears on    B1
wall W2
  kind        framed
  from        A / {wall} to B / {wall}
  line        centre
  studs       2x4 SPF No.2 at 16\"
  bearing     yes
  stands on   main over B1
{mark}"
        )
    }

    /// R502.4 (from memory): no further off than the joists are deep, here 9-1/4\".
    #[test]
    fn at_the_limit() {
        check_rule(&RULE, &house("2 plus 9-1/4\"", ""));
        check_rule(
            &RULE,
            &house(
                "2 plus 9-1/2\"",
                "--            ^^^^^^^^^^^^ wall W2 stands 9-1/2\" off beam B1, middle to middle, on joists 9-1/4\" deep\n",
            ),
        );
    }
}

//! Basement walls whose top leans on joists that run along it.

use crate::geometry::carried::Carried;
use crate::geometry::thrust::leaning_walls;
use crate::house::House;
use crate::profiles::foundations::FILL_WITHOUT_TOP_SUPPORT;
use crate::rules::{Findings, rule};

rule! {
    /// A wall holds back ground, and the joists at its top run along it with no blocking beside it.
    ///
    /// Joists that end on a wall hold its top. Joists that run along it give way sideways, unless solid blocking in the
    /// first bays hands the push on to the deck: `blocked solid beside W3`. Walls with less ground on them than the limit
    /// need no floor to lean on.
    ///
    /// ## Why
    /// The wall is designed to span from slab to floor. Without the floor it is a cantilever, which it was not
    /// reinforced for.
    ///
    /// ## Source
    /// Residential code R404.1 (from memory), the limit `fill-without-top-support`; blocking in the first bays is common
    /// practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 14'
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    /// slab SL1
    ///   fill        A plus 8" to B by 1 to 2
    ///   top         91'-0"
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to A/2
    ///   line        west face
    ///   thick       8"
    ///   top         99'-0 1/2"
    ///   grade       97'-0" on west
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 14'
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    ///   blocked     solid beside W1
    /// slab SL1
    ///   fill        A plus 8" to B by 1 to 2
    ///   top         91'-0"
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to A/2
    ///   line        west face
    ///   thick       8"
    ///   top         99'-0 1/2"
    ///   grade       97'-0" on west
    /// ```
    "thrust-without-floor", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let most = house.limits.of(&FILL_WITHOUT_TOP_SUPPORT);
    let carried = Carried::of(&house.model);
    for leaning in leaning_walls(&house.model, &house.geometry, &carried) {
        let (wall, joists) = (&leaning.wall.common, &leaning.joists.common);
        if leaning.fill <= most.value || leaning.is_blocked || joists.may_say("blocked") {
            continue;
        }
        findings
            .about(
                wall.id,
                wall.name_span,
                format!(
                    "{} holds back {} of ground, and {} run along its top with no blocking beside it",
                    wall.label(),
                    leaning.fill.in_feet(),
                    joists.label()
                ),
            )
            .related(leaning.joists.run.span().unwrap_or(joists.name_span), joists.label())
            .note(format!("up to {} a wall may stand without a floor at its top", most.value.in_feet()))
            .help(format!(
                "block the first bays and write `blocked solid beside {}` in {}, or have the wall designed to stand alone",
                wall.name,
                joists.label()
            ))
            .follows(joists.id)
            .basis(most.basis());
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(grade: &str, more: &str, mark: &str) -> String {
        format!(
            "
grid
  x           A 0', B 20'
  y           1 0', 2 14'
floor main
  subfloor    100'-0\"
  deck        3/4\"
  over        crawl, ground 92'-0\"
joists J1
  floor       main
  size        2x10 SPF No.2
  fill        A to B by 1 to 2
  run         along y
  bears on    W2
{more}wall W1
{mark}  kind        concrete
  from        A/1 to A/2
  line        west face
  thick       8\"
  top         99'-0 1/2\"
  grade       {grade} on west
wall W2
  kind        concrete
  from        A/1 to B/1
  line        south face
  thick       8\"
  top         99'-0 1/2\"
  grade       98'-0\" on south
"
        )
    }

    /// R404.1 (from memory): 48\" of ground need no floor. W2 carries the joists and is held by them.
    #[test]
    fn from_memory_at_four_feet_of_ground() {
        check_rule(&RULE, &house("96'-0\"", "", ""));
        check_rule(
            &RULE,
            &house(
                "96'-1\"",
                "",
                "--   ^^ wall W1 holds back 4'-1\" of ground, and joists J1 run along its top with no blocking beside it\n",
            ),
        );
        check_rule(&RULE, &house("96'-1\"", "  blocked     solid beside W1\n", ""));
    }
}

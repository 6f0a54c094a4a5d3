//! Edges of a floor at a step that only the deck holds.

use crate::geometry::carried::Carried;
use crate::geometry::drops::stepping_floors;
use crate::geometry::step_edges::{carrying_bands, step_edges};
use crate::house::House;
use crate::profiles::levels::CLOSURE_TOLERANCE;
use crate::rules::{Findings, rule};

rule! {
    /// A floor ends at a step along its joists, and no beam or wall runs under that edge.
    ///
    /// Where the joists run to the step their ends are carried or not, which other rules say. Where they run along it,
    /// the edge of the deck and the wall or rail on it lie on one joist.
    ///
    /// ## Why
    /// Feet, rails and flights all come to the edge of a step.
    ///
    /// ## Source
    /// Common practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x             A 0', B 12', C 20'
    ///   y             1 0', 2 14'
    /// floor main
    ///   subfloor      100'-0"
    /// floor den
    ///   steps down    from main by 2 risers at 7"
    /// joists J1
    ///   floor         main
    ///   fill          A to B by 1 to 2
    ///   run           along y
    /// joists J2
    ///   floor         den
    ///   fill          B to C by 1 to 2
    ///   run           along y
    /// ```
    /// ```framing,passes
    /// grid
    ///   x             A 0', B 12', C 20'
    ///   y             1 0', 2 14'
    /// floor main
    ///   subfloor      100'-0"
    /// floor den
    ///   steps down    from main by 2 risers at 7"
    /// joists J1
    ///   floor         main
    ///   fill          A to B by 1 to 2
    ///   run           along y
    /// joists J2
    ///   floor         den
    ///   fill          B to C by 1 to 2
    ///   run           along y
    /// beam B1
    ///   size          3-ply 2x10 SPF No.2
    ///   from          B/1 to B/2
    /// ```
    "step-edge-unframed", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let tolerance = house.limits.of(&CLOSURE_TOLERANCE);
    let carried = Carried::of(&house.model);
    let bands = carrying_bands(&house.model);
    for (upper, lower) in stepping_floors(&house.model, &house.geometry) {
        for edge in step_edges(&bands, &carried, upper, lower) {
            let Some(joists) = house.model.joists_of(edge.joists).filter(|_| edge.bare >= tolerance.value)
            else {
                continue;
            };
            let Some(floor) = house.model.common(edge.lower) else { continue };
            findings
                .about(
                    joists.common.id,
                    joists.run.span().unwrap_or(joists.common.name_span),
                    format!(
                        "{} run along the step down to {}, and {} of its {} have no beam or wall below",
                        joists.common.label(),
                        floor.label(),
                        edge.bare,
                        edge.length
                    ),
                )
                .related(floor.name_span, "the lower floor")
                .help("put a beam, a wall or a doubled joist named as a beam under the edge")
                .basis("common practice");
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// The beam stops 4' short of a 14' edge.
    #[test]
    fn says_how_much_of_the_edge_is_bare() {
        check_rule(
            &RULE,
            "
grid
  x             A 0', B 12', C 20'
  y             1 0', 2 14'
floor main
  subfloor      100'-0\"
floor den
  steps down    from main by 2 risers at 7\"
joists J1
  floor         main
  fill          A to B by 1 to 2
  run           along y
--                    ^ joists J1 run along the step down to floor den, and 4'-0\" of its 14'-0\" have no beam or wall below
joists J2
  floor         den
  fill          B to C by 1 to 2
  run           along y
beam B1
  size          3-ply 2x10 SPF No.2
  from          B/1 to B/2 less 4'
",
        );
    }
}

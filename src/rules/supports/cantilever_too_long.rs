//! Joists that carry walls past their last support.

use crate::geometry::overhangs::loaded_overhangs;
use crate::house::House;
use crate::profiles::framing::CANTILEVER_PER_DEPTH;
use crate::rules::{Findings, rule};

rule! {
    /// Joists carry a wall further out past their support than they are deep.
    ///
    /// A bearing wall, or one with a roof on it, that stands on the overhang. The depth is the one they are named by: 10"
    /// of a 2x10. Beyond it the code has tables by spacing, roof width and snow, which are not held here.
    ///
    /// ## Why
    /// The wall and the roof on it hang on the joists' ends. They bend them, and lift their other ends.
    ///
    /// ## Source
    /// Residential code R502.3.3, an older text read in a copy of low grade; the limit `cantilever-per-depth`.
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
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 less 1'-6" to 2
    ///   run         along y
    ///   bears on    B1
    ///   bears on    B2
    ///   cantilever  past B1 by 1'-6"
    /// beam B1
    ///   size        3-ply 2x10 SPF No.2
    ///   from        A/1 to B/1
    /// beam B2
    ///   size        3-ply 2x10 SPF No.2
    ///   from        A/2 to B/2
    /// wall W1
    ///   kind        framed
    ///   from        A / 1 less 1'-6" to B / 1 less 1'-6"
    ///   line        south face
    ///   studs       2x6 SPF No.2 at 16"
    ///   bearing     yes
    ///   stands on   J1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 12'
    /// floor main
    ///   subfloor    100'-0"
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 less 10" to 2
    ///   run         along y
    ///   bears on    B1
    ///   bears on    B2
    ///   cantilever  past B1 by 10"
    /// beam B1
    ///   size        3-ply 2x10 SPF No.2
    ///   from        A/1 to B/1
    /// beam B2
    ///   size        3-ply 2x10 SPF No.2
    ///   from        A/2 to B/2
    /// wall W1
    ///   kind        framed
    ///   from        A / 1 less 10" to B / 1 less 10"
    ///   line        south face
    ///   studs       2x6 SPF No.2 at 16"
    ///   bearing     yes
    ///   stands on   J1
    /// ```
    "cantilever-too-long", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let times = house.limits.of(&CANTILEVER_PER_DEPTH);
    for overhang in loaded_overhangs(&house.model, &house.geometry.contacts) {
        let joists = overhang.joists;
        let depth = joists.size.value().and_then(|size| size.nominal_depth());
        let Some(most) = depth.map(|depth| depth.scaled(times.value.0)) else { continue };
        if overhang.length <= most {
            continue;
        }
        let support = house.model.common(overhang.support).map(|common| common.label()).unwrap_or_default();
        let cantilever =
            joists.cantilevers.iter().find(|cantilever| cantilever.value.0.target == Some(overhang.support));
        let place = cantilever.map_or(joists.common.name_span, |cantilever| cantilever.span);
        findings
            .about(
                joists.common.id,
                place,
                format!(
                    "{} carry {} {} past {support}: {most} at the most",
                    joists.common.label(),
                    overhang.wall.common.label(),
                    overhang.length
                ),
            )
            .related(overhang.wall.common.name_span, "the wall on them")
            .note("the code's tables allow more under light roofs with long spans behind: they are not held here")
            .help("shorten the overhang, put a beam under the wall, or have the joists and their far ends designed")
            .basis(times.basis());
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(by: &str, bearing: &str, mark: &str) -> String {
        format!(
            "
grid
  x           A 0', B 20'
  y           1 0', 2 12'
floor main
  subfloor    100'-0\"
joists J1
  floor       main
  size        2x8 SPF No.2
  fill        A to B by 1 to 2 plus {by}
  run         along y
  bears on    B1
  bears on    B2
  cantilever  past B2 by {by}
{mark}beam B1
  size        3-ply 2x10 SPF No.2
  from        A/1 to B/1
beam B2
  size        3-ply 2x10 SPF No.2
  from        A/2 to B/2
wall W1
  kind        framed
  from        A / 2 plus {by} to B / 2 plus {by}
  line        north face
  studs       2x4 SPF No.2 at 16\"
  bearing     {bearing}
  stands on   J1
"
        )
    }

    /// R502.3.3, read in a copy of low grade: no further than the nominal depth, 8" of a 2x8. A wall that carries nothing is
    /// no such wall.
    #[test]
    fn at_the_limit() {
        check_rule(&RULE, &house("8\"", "yes", ""));
        check_rule(&RULE, &house("9\"", "no", ""));
        check_rule(
            &RULE,
            &house(
                "9\"",
                "yes",
                "--^^^^^^^^^^^^^^^^^^^^^^^^^ joists J1 carry wall W1 9\" past beam B2: 8\" at the most\n",
            ),
        );
    }
}

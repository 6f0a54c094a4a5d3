//! Lines of framed walls that go on at another level.

use crate::geometry::wall_lines::foot_steps;
use crate::house::House;
use crate::profiles::levels::CLOSURE_TOLERANCE;
use crate::rules::{Findings, rule};

rule! {
    /// A line of framed walls crosses a change of level, and nothing says how its foot goes on.
    ///
    /// Two framed walls in one line that stand at different levels. `brace` in one of them says what ties the two: a
    /// strap, a collector, a stepped sole.
    ///
    /// ## Why
    /// A braced line hands its push along its foot to the foundation. At a step in the floor the sole ends.
    ///
    /// ## Source
    /// Residential code R602.10 (from memory).
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0'
    ///   y           1 0', 2 10', 3 20'
    /// floor main
    ///   subfloor    100'-0"
    /// floor den
    ///   subfloor    98'-10"
    /// joists J1
    /// joists J2
    /// wall W1
    ///   kind        framed
    ///   from        A/1 to A/2
    ///   line        centre
    ///   studs       2x6 SPF No.2 at 16"
    ///   stands on   den over J2
    /// wall W2
    ///   kind        framed
    ///   from        A/2 to A/3
    ///   line        centre
    ///   studs       2x6 SPF No.2 at 16"
    ///   stands on   main over J1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0'
    ///   y           1 0', 2 10', 3 20'
    /// floor main
    ///   subfloor    100'-0"
    /// floor den
    ///   subfloor    98'-10"
    /// joists J1
    /// joists J2
    /// wall W1
    ///   kind        framed
    ///   from        A/1 to A/2
    ///   line        centre
    ///   studs       2x6 SPF No.2 at 16"
    ///   stands on   den over J2
    /// wall W2
    ///   kind        framed
    ///   from        A/2 to A/3
    ///   line        centre
    ///   studs       2x6 SPF No.2 at 16"
    ///   brace       strap from sole to sole
    ///   stands on   main over J1
    /// ```
    "braced-line-breaks-at-step", Advice
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let tolerance = house.limits.of(&CLOSURE_TOLERANCE);
    for step in foot_steps(&house.model, &house.geometry.surfaces) {
        let is_said = [step.high, step.low]
            .into_iter()
            .any(|wall| wall.brace.value().is_some() || wall.common.may_say("brace"));
        if step.by < tolerance.value || is_said {
            continue;
        }
        findings
            .about(
                step.high.common.id,
                step.high.stands_on.span().unwrap_or(step.high.common.name_span),
                format!(
                    "{} stands {} higher than {}, with which it is in line, and nothing ties the two at their feet",
                    step.high.common.label(),
                    step.by,
                    step.low.common.label()
                ),
            )
            .related(step.low.common.name_span, step.low.common.label())
            .help("if the line braces the house, say what carries it over the step: `brace collector strap`")
            .basis("R602.10 (from memory)");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn walls_in_line_at_one_level_go_on() {
        let house = |den: &str, mark: &str| {
            format!(
                "
grid
  x           A 0'
  y           1 0', 2 10', 3 20'
floor main
  subfloor    100'-0\"
floor den
  subfloor    {den}
joists J1
joists J2
wall W1
  kind        framed
  from        A/2 to A/3
  line        centre
  studs       2x6 SPF No.2 at 16\"
  stands on   main over J1
{mark}wall W2
  kind        framed
  from        A/1 to A/2
  line        centre
  studs       2x6 SPF No.2 at 16\"
  stands on   den over J2
wall W3
  kind        framed
  from        A plus 6' / 1 to A plus 6' / 2
  line        centre
  studs       2x6 SPF No.2 at 16\"
  stands on   den over J2
"
            )
        };
        check_rule(&RULE, &house("100'-0\"", ""));
        check_rule(
            &RULE,
            &house(
                "99'-6\"",
                "--            ^^^^^^^^^^^^ wall W1 stands 6\" higher than wall W2, with which it is in line, and nothing ties the two at their feet\n",
            ),
        );
    }
}

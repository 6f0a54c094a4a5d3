//! The height of walls in one line that stand on different floors.

use crate::geometry::plate_lines::on_two_bases;
use crate::house::House;
use crate::profiles::levels::CLOSURE_TOLERANCE;
use crate::rules::{Findings, rule};

rule! {
    /// Two walls in one line are equally tall, but stand on different levels.
    ///
    /// A wall that stands on concrete or on a lowered floor needs longer studs than its neighbour on the deck, where one
    /// line of plates goes over both. Where a lower plate is meant, say so: `top` states where it lies.
    ///
    /// ## Why
    /// Studs come precut in one length. The plate steps by as much as the floor, and the roof does not.
    ///
    /// ## Source
    /// Common practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0'
    ///   y           1 0', 2 12', 3 24'
    /// floor main
    ///   subfloor    100'-0"
    /// floor hall
    ///   subfloor    99'-0"
    /// beam B1
    ///   from        A/1 to A/2
    /// beam B2
    ///   from        A/2 to A/3
    /// wall W1
    ///   kind        framed
    ///   from        A/1 to A/2
    ///   line        west face
    ///   studs       2x6 SPF No.2 at 16"
    ///   height      8'-1"
    ///   stands on   hall over B1
    /// wall W2
    ///   kind        framed
    ///   from        A/2 to A/3
    ///   line        west face
    ///   studs       2x6 SPF No.2 at 16"
    ///   height      8'-1"
    ///   stands on   main over B2
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0'
    ///   y           1 0', 2 12', 3 24'
    /// floor main
    ///   subfloor    100'-0"
    /// floor hall
    ///   subfloor    99'-0"
    /// beam B1
    ///   from        A/1 to A/2
    /// beam B2
    ///   from        A/2 to A/3
    /// wall W1
    ///   kind        framed
    ///   from        A/1 to A/2
    ///   line        west face
    ///   studs       2x6 SPF No.2 at 16"
    ///   height      9'-1"
    ///   stands on   hall over B1
    /// wall W2
    ///   kind        framed
    ///   from        A/2 to A/3
    ///   line        west face
    ///   studs       2x6 SPF No.2 at 16"
    ///   height      8'-1"
    ///   stands on   main over B2
    /// ```
    "stud-length-by-base", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let tolerance = house.limits.of(&CLOSURE_TOLERANCE);
    for line in on_two_bases(&house.model, &house.geometry.surfaces) {
        let Some((height, span)) = line.lower.height.stated() else { continue };
        let Some(other) = line.upper.height.get() else { continue };
        let is_meant = line.lower.common.may_say("top") || line.lower.top.stated().is_some();
        if (*height - other).abs() >= tolerance.value || line.bases_apart < tolerance.value || is_meant {
            continue;
        }
        let needed = other + line.bases_apart;
        findings
            .about(
                line.lower.common.id,
                span,
                format!(
                    "{} is {height} tall like {} in the same line, but stands {} lower",
                    line.lower.common.label(),
                    line.upper.common.label(),
                    line.bases_apart
                ),
            )
            .related(line.upper.common.name_span, "its neighbour")
            .help(format!(
                "write `height {needed}` for one line of plates, or state its `top` where a lower plate is meant"
            ))
            .write(span, needed.to_string());
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(line: &str, height: &str, mark: &str) -> String {
        format!(
            "
grid
  x           A 0', B 20'
  y           1 0', 2 12', 3 24'
floor main
  subfloor    100'-0\"
wall F1
  kind        concrete
  from        {line}/1 to {line}/2
  line        west face
  thick       8\"
  top         97'-5\"
  sill        1 of 2x6 treated
wall F2
  kind        concrete
wall W1
  kind        framed
  from        {line}/1 to {line}/2
  line        west face
  studs       2x6 SPF No.2 at 16\"
  height      {height}
{mark}  stands on   F1
wall W2
  kind        framed
  from        A/2 to A/3
  line        west face
  studs       2x6 SPF No.2 at 16\"
  height      8'-1\"
  stands on   main over F2
"
        )
    }

    /// By hand: 97'-5" and a sill of 1-1/2" are 97'-6 1/2", 29-1/2" below the deck at 100'-0".
    #[test]
    fn a_wall_on_concrete_needs_longer_studs() {
        check_rule(&RULE, &house("A", "10'-6 1/2\"", ""));
        check_rule(&RULE, &house("B", "8'-1\"", ""));
        check_rule(&RULE, &house("A", "8'-1\"\n  top         105'-7 1/2\"", ""));
        check_rule(
            &RULE,
            &house(
                "A",
                "8'-1\"",
                "--            ^^^^^ wall W1 is 8'-1\" tall like wall W2 in the same line, but stands 2'-5 1/2\" lower
-- | write `height 10'-6 1/2\"`
",
            ),
        );
    }
}

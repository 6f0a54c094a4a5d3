//! Joist layouts that meet over one support.

use crate::geometry::carried::Carried;
use crate::geometry::layout::meeting_layouts;
use crate::house::House;
use crate::model::framing::Joists;
use crate::rules::{Findings, rule};
use crate::text::Span;

rule! {
    /// Two fields of joists meet over one support, and their joists do not line up.
    ///
    /// Fields of one spacing, or of spacings that go into each other, that lie end to end over a beam or wall. Lapped
    /// joists lie beside each other: one thickness off is in register.
    ///
    /// ## Why
    /// Joists that line up are nailed to each other and blocked once; their deck's sheets share one set of lines. Off by a
    /// few inches the layout was pulled from two ends.
    ///
    /// ## Source
    /// Common practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 12', 3 24'
    /// joists J1
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    ///   spacing     16" from A
    ///   bears on    B1
    /// joists J2
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 2 to 3
    ///   run         along y
    ///   spacing     16" from A plus 5"
    ///   bears on    B1
    /// beam B1
    ///   size        3-ply 2x10 SPF No.2
    ///   from        A/2 to B/2
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 12', 3 24'
    /// joists J1
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    ///   spacing     16" from A
    ///   bears on    B1
    /// joists J2
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 2 to 3
    ///   run         along y
    ///   spacing     16" from A plus 1-1/2"
    ///   bears on    B1
    /// beam B1
    ///   size        3-ply 2x10 SPF No.2
    ///   from        A/2 to B/2
    /// ```
    "layouts-out-of-register", Advice
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let carried = Carried::of(&house.model);
    for meeting in meeting_layouts(&house.model, &carried) {
        let Some(support) = house.model.common(meeting.over) else { continue };
        if meeting.off <= meeting.lap {
            continue;
        }
        let (one, other) = (&meeting.one.common, &meeting.other.common);
        findings
            .about(
                other.id,
                origin(meeting.other),
                format!(
                    "{} lie {} out of register with {} over {}",
                    other.label(),
                    meeting.off,
                    one.label(),
                    support.label()
                ),
            )
            .related(origin(meeting.one), one.label())
            .help("start both layouts from one line, or one joist's thickness apart where they lap");
    }
}

/// Where the line stands from which a layout starts.
fn origin(joists: &Joists) -> Span {
    joists.spacing.get().map_or(joists.common.name_span, |spacing| spacing.origin.span)
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(spacing: &str, from: &str, mark: &str) -> String {
        format!(
            "
grid
  x           A 0', B 20'
  y           1 0', 2 12', 3 24'
joists J1
  size        2x10 SPF No.2
  fill        A to B by 1 to 2
  run         along y
  spacing     16\" from A
  bears on    B1
joists J2
  size        2x10 SPF No.2
  fill        A to B by 2 to 3
  run         along y
  spacing     {spacing} from {from}
{mark}  bears on    B1
beam B1
  size        3-ply 2x10 SPF No.2
  from        A/2 to B/2
"
        )
    }

    /// By hand: 20' from B backwards is 240", fifteen spaces of 16" from A; 3' are two and 4" more. 12" and 16" have no
    /// common layout.
    #[test]
    fn counts_from_either_end() {
        check_rule(&RULE, &house("16\"", "B", ""));
        check_rule(&RULE, &house("12\"", "A plus 5\"", ""));
        check_rule(&RULE, &house("8\"", "A plus 8\"", ""));
        check_rule(
            &RULE,
            &house(
                "16\"",
                "B plus 3'-0\"",
                "--                     ^^^^^^^^^^^^ joists J2 lie 4\" out of register with joists J1 over beam B1\n",
            ),
        );
    }
}

//! Decks at different levels that nothing ties.

use crate::geometry::level_steps::meeting_floors;
use crate::house::House;
use crate::model::element::ElementId;
use crate::rules::{Findings, rule};
use crate::units::Length;

rule! {
    /// Two floors meet at a step so high that their joists pass each other, and no tie is named.
    ///
    /// Where the joists of both lie side by side over some of their height, they lap and are nailed. Where they share no
    /// height, `tie at step by engineer` in one of the floors says that somebody has designed what ties the decks. A
    /// floor in the open air is no part of it.
    ///
    /// ## Why
    /// A floor's deck holds the walls against wind, earth and earthquake. At the step it is cut in two, and each half
    /// pushes where the other was to hold.
    ///
    /// ## Source
    /// Residential code R301.2.2.6 (from memory: floors that are offset in height are an irregular house), and common
    /// practice for when joists can be lapped.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x         A 0', B 12'
    ///   y         1 0', 2 10', 3 20'
    /// floor main
    ///   subfloor  100'-0"
    ///   deck      3/4"
    /// floor den
    ///   subfloor  98'-10"
    ///   deck      3/4"
    /// joists J1
    ///   floor     main
    ///   size      2x10 SPF No.2
    ///   fill      A to B by 1 to 2
    /// joists J2
    ///   floor     den
    ///   size      2x10 SPF No.2
    ///   fill      A to B by 2 to 3
    /// ```
    /// ```framing,passes
    /// grid
    ///   x         A 0', B 12'
    ///   y         1 0', 2 10', 3 20'
    /// floor main
    ///   subfloor  100'-0"
    ///   deck      3/4"
    /// floor den
    ///   subfloor  98'-10"
    ///   deck      3/4"
    ///   tie       at step by engineer source "letter, invented"
    /// joists J1
    ///   floor     main
    ///   size      2x10 SPF No.2
    ///   fill      A to B by 1 to 2
    /// joists J2
    ///   floor     den
    ///   size      2x10 SPF No.2
    ///   fill      A to B by 2 to 3
    /// ```
    "floors-untied-at-step", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (one, other) in meeting_floors(&house.model) {
        let space = |floor: ElementId| house.geometry.floors.get(floor.index as usize)?.joist_space();
        let (Some(here), Some(there)) = (space(one), space(other)) else { continue };
        let ((upper, above), (lower, below)) =
            if here.1 >= there.1 { ((one, here), (other, there)) } else { ((other, there), (one, here)) };
        let apart = above.0 - below.1;
        let (Some(upper), Some(lower)) = (house.model.floor(upper), house.model.floor(lower)) else {
            continue;
        };
        let is_settled = [upper, lower].into_iter().any(|floor| {
            floor.is_outdoors()
                || !floor.tie.is_missing()
                || ["tie", "use", "over"].into_iter().any(|phrase| floor.common.may_say(phrase))
        });
        if apart.is_negative() || is_settled {
            continue;
        }
        findings
            .about(
                lower.common.id,
                lower.common.name_span,
                format!(
                    "the joists of {} lie {} below those of {}, and nothing ties the two decks",
                    lower.common.label(),
                    if apart == Length::ZERO { "right".to_owned() } else { apart.to_string() },
                    upper.common.name
                ),
            )
            .related(upper.common.name_span, upper.common.label())
            .note(format!(
                "undersides of the upper ones {}, tops of the lower ones {}",
                above.0.in_feet(),
                below.1.in_feet()
            ))
            .help(
                "have the tie designed, then write `tie at step by engineer source \"…\"` in the lower floor",
            )
            .follows(upper.common.id)
            .basis("R301.2.2.6 (from memory)");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(den: &str, more: &str, mark: &str) -> String {
        format!(
            "
grid
  x         A 0', B 12'
  y         1 0', 2 10', 3 20'
floor main
  subfloor  100'-0\"
  deck      3/4\"
floor den
{mark}  subfloor  {den}
  deck      3/4\"
{more}joists J1
  floor     main
  size      2x10 SPF No.2
  fill      A to B by 1 to 2
joists J2
  floor     den
  size      2x8 SPF No.2
  fill      A to B by 2 to 3
"
        )
    }

    /// The undersides of the upper joists lie at 100'-0" − 3/4" − 9-1/4" = 99'-2", the tops of the lower ones 3/4" under
    /// their deck.
    #[test]
    fn joists_that_lap_are_tied() {
        check_rule(&RULE, &house("99'-3\"", "", ""));
        check_rule(
            &RULE,
            &house(
                "99'-2 3/4\"",
                "",
                "--    ^^^ the joists of floor den lie right below those of main, and nothing ties the two decks\n",
            ),
        );
        check_rule(
            &RULE,
            &house(
                "98'-10 3/8\"",
                "",
                "--    ^^^ the joists of floor den lie 4-3/8\" below those of main, and nothing ties the two decks\n",
            ),
        );
    }

    #[test]
    fn a_terrace_ties_nothing() {
        check_rule(&RULE, &house("98'-10\"", "  over      outside\n", ""));
    }
}

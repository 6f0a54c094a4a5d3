//! Floors that were promised to meet in height.

use crate::geometry::extents::extent_of;
use crate::house::House;
use crate::model::element::Reference;
use crate::model::promises::Promise;
use crate::profiles::levels::CLOSURE_TOLERANCE;
use crate::rules::{Findings, rule};

rule! {
    /// Two things that were promised to meet do not.
    ///
    /// `keep X meeting Y`: the top of the lower one against the underside of the upper one. A floor is its joists.
    ///
    /// ## Why
    /// Where lower joists end under upper ones, one wall or ledger ties both decks. A gap leaves nothing between them; an
    /// overlap cannot be built.
    ///
    /// ## Source
    /// Common practice: the levels themselves.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    /// floor den
    ///   subfloor    98'-10"
    ///   deck        3/4"
    /// joists J2
    ///   floor       den
    ///   size        2x8 SPF No.2
    /// intent "The den's joists end under the main ones"
    ///   keep        main meeting den
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    /// floor den
    ///   subfloor    99'-2 3/4"
    ///   deck        3/4"
    /// joists J2
    ///   floor       den
    ///   size        2x8 SPF No.2
    /// intent "The den's joists end under the main ones"
    ///   keep        main meeting den
    /// ```
    "joists-do-not-meet", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let tolerance = house.limits.of(&CLOSURE_TOLERANCE);
    for intent in &house.model.intents {
        for promise in &intent.promises {
            let Promise::Meeting(one, other, span) = promise else { continue };
            let extent = |of: &Reference| extent_of(&house.model, &house.geometry, of.target?);
            let Some((first, second)) = extent(one).zip(extent(other)) else { continue };
            let ((upper, above), (lower, below)) = if first.top.total() >= second.top.total() {
                ((one, first), (other, second))
            } else {
                ((other, second), (one, first))
            };
            let gap = above.bottom.total() - below.top.total();
            if gap.abs() < tolerance.value {
                continue;
            }
            let message = if gap.is_positive() {
                format!("{} ends {gap} below {}: nothing ties the two", lower.name, upper.name)
            } else {
                format!("{} reaches {} up into {}", lower.name, gap.abs(), upper.name)
            };
            let finding = findings.about(intent.common.id, *span, message);
            finding
                .note(format!("underside of {}: {}", upper.name, above.bottom))
                .note(format!("top of {}: {}", lower.name, below.top))
                .help(format!("move one floor by {}, change a depth, or name what fills the gap", gap.abs()))
                .basis(tolerance.basis());
            for id in [lower.target, upper.target].into_iter().flatten() {
                finding.follows(id);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// Underside of the upper joists 100'-0" − 3/4" − 9-1/4" = 99'-2"; tops of the lower ones are 3/4" under their deck.
    #[test]
    fn says_gap_and_overlap() {
        let house = |den: &str, mark: &str| {
            format!(
                "
floor main
  subfloor    100'-0\"
  deck        3/4\"
joists J1
  floor       main
  size        2x10 SPF No.2
floor den
  subfloor    {den}
  deck        3/4\"
joists J2
  floor       den
  size        2x8 SPF No.2
intent \"One line of joists on the other\"
  keep        den meeting main
{mark}"
            )
        };
        check_rule(&RULE, &house("99'-2 3/4\"", ""));
        check_rule(
            &RULE,
            &house(
                "98'-10 3/8\"",
                "--^^^^^^^^^^^^^^^^^^^^^^^^^^^^ den ends 4-3/8\" below main: nothing ties the two\n",
            ),
        );
        check_rule(
            &RULE,
            &house("99'-3\"", "--^^^^^^^^^^^^^^^^^^^^^^^^^^^^ den reaches 1/4\" up into main\n"),
        );
    }
}

//! Waivers with nothing to silence.

use crate::house::House;
use crate::rules::silence::idle_waivers;
use crate::rules::{Findings, rule};

rule! {
    /// A waiver silences nothing.
    ///
    /// ## Why
    /// What it was written for is mended; left there it would silence the same fault when it comes back.
    ///
    /// ## Source
    /// The format's own rule: a waiver silences one rule in the element it stands in. What is wrong with the text itself
    /// can't be waived.
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W1
    ///   waive  risers-not-even because "an old stair"
    /// ```
    /// ```framing,passes
    /// wall W1
    ///   kind   concrete
    /// ```
    "waiver-silences-nothing", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    // With a line unread, what a waiver is for may only wait for that line.
    if house.has_unread_names() {
        return;
    }
    for (common, waiver) in idle_waivers(house, RULE.slug) {
        findings
            .about(
                common.id,
                waiver.span,
                format!("the waiver of `{}` silences nothing on {}", waiver.rule, common.label()),
            )
            .help("take the line out")
            .take_out(house, waiver.span);
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn one_that_works_is_left_alone() {
        check_rule(
            &RULE,
            "
floor main
  subfloor  100'-0\"
floor den
  subfloor  98'-10\"
stair S1
  from      den to main
  risers    1
  waive     riser-too-tall because \"an old stair\"
  waive     risers-not-even because \"an old stair\"
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the waiver of `risers-not-even` silences nothing on stair S1
",
        );
    }

    #[test]
    fn one_of_itself_asks_for_no_end() {
        check_rule(
            &RULE,
            "
wall W1
  waive     waiver-silences-nothing because \"for later\"
  waive     unknown-name because \"the text can't be waived\"
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the waiver of `unknown-name` silences nothing on wall W1
  waive     stack-does-not-close because \"\"
",
        );
    }
}

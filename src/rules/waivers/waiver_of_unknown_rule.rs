//! Waivers of rules that don't exist.

use crate::house::House;
use crate::rules::waivers::waivers;
use crate::rules::{Findings, rule, rule_named};

rule! {
    /// A waiver names no rule.
    ///
    /// ## Why
    /// It silences nothing, and who wrote it thinks that it does.
    ///
    /// ## Source
    /// The format's own rule: a waiver names a rule of `grammar/rules.md`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// beam B1
    ///   waive  bearing-shrot because "seat widened on site"
    /// ```
    /// ```framing,passes
    /// beam B1
    ///   waive  bearing-short because "seat widened on site"
    /// ```
    "waiver-of-unknown-rule", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (_, waiver) in waivers(house).filter(|(_, waiver)| rule_named(&waiver.rule).is_none()) {
        findings.no_such_rule(waiver.rule_span, &waiver.rule);
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn offers_the_nearest_rule() {
        check_rule(
            &RULE,
            "
beam B1
  waive     bearing-shrot because \"seat widened\"
--          ^^^^^^^^^^^^^ there is no rule `bearing-shrot`
-- | did you mean `bearing-short`?
  waive     risers-not-even because \"an old stair\"
",
        );
    }
}

//! Severities of rules that don't exist.

use crate::house::House;
use crate::rules::weighing::own_severities;
use crate::rules::{Findings, rule, rule_named};

rule! {
    /// A severity names no rule.
    ///
    /// ## Why
    /// It changes nothing, and who wrote it thinks that it does.
    ///
    /// ## Source
    /// The format's own rule: a severity names a rule of `grammar/rules.md`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// project "Loon Cove"
    ///   severity  bearing-shrot error
    /// ```
    /// ```framing,passes
    /// project "Loon Cove"
    ///   severity  bearing-short error
    /// ```
    "severity-of-unknown-rule", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for own in own_severities(house).iter().filter(|own| rule_named(&own.rule).is_none()) {
        findings.no_such_rule(own.rule_span, &own.rule);
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
project \"Loon Cove\"
  severity  bearing-shrot error
--          ^^^^^^^^^^^^^ there is no rule `bearing-shrot`
-- | did you mean `bearing-short`?
  severity  risers-not-even error
",
        );
    }
}

//! Severities that are lowered and don't say why.

use crate::house::House;
use crate::rules::severities::lowered;
use crate::rules::weighing::is_fixed;
use crate::rules::{Findings, rule};

rule! {
    /// A severity is lowered, or a rule switched off, without a reason.
    ///
    /// ## Why
    /// Whoever reads it next year can't know whether it still holds. Without a reason it changes nothing.
    ///
    /// ## Source
    /// The format's own rule: `severity RULE advice because "reason"`. Raising one needs no reason.
    ///
    /// ## Examples
    /// ```framing,fires
    /// project "Loon Cove"
    ///   severity  flush-steel-no-gap off
    /// ```
    /// ```framing,passes
    /// project "Loon Cove"
    ///   severity  flush-steel-no-gap off because "the joists are dry when they come"
    /// ```
    "severity-without-reason", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (own, rule) in lowered(house).filter(|(own, rule)| !own.has_reason() && !is_fixed(rule)) {
        let message = format!(
            "the severity {} of `{}` gives no reason, so it stays {}",
            own.word(),
            own.rule,
            rule.severity.with_article()
        );
        findings.in_text(own.span, message).help(format!(
            "severity {} {} because \"…\"",
            own.rule,
            own.word()
        ));
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn a_reason_is_a_word_at_least_and_only_for_less() {
        check_rule(
            &RULE,
            "
project \"Loon Cove\"
  severity  risers-not-even off
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the severity off of `risers-not-even` gives no reason, so it stays an error
-- | severity risers-not-even off because \"…\"
  severity  handrail-missing advice because \"\"
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the severity advice of `handrail-missing` gives no reason, so it stays a warning
  severity  bearing-short warning because \"x\"
  severity  element-unreferenced error
  severity  circular-support off
",
        );
    }
}

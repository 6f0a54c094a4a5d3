//! Waivers that don't say why.

use crate::house::House;
use crate::rules::waivers::waivers;
use crate::rules::{Findings, rule};

rule! {
    /// A waiver gives no reason.
    ///
    /// ## Why
    /// Whoever reads it next year can't know whether it still holds. Without a reason it silences nothing.
    ///
    /// ## Source
    /// The format's own rule: `waive RULE because "reason"`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// beam B1
    ///   waive  bearing-short because ""
    /// ```
    /// ```framing,passes
    /// beam B1
    ///   waive  bearing-short because "seat widened on site, letter of 3 May"
    /// ```
    "waiver-without-reason", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (common, waiver) in waivers(house).filter(|(_, waiver)| !waiver.has_reason()) {
        let message = format!(
            "the waiver of `{}` on {} gives no reason, so it silences nothing",
            waiver.rule,
            common.label()
        );
        findings.in_text(waiver.span, message);
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn a_reason_is_a_word_at_least() {
        check_rule(
            &RULE,
            "
beam B1
  waive     bearing-short because \"\"
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the waiver of `bearing-short` on beam B1 gives no reason, so it silences nothing
  waive     circular-support because \"x\"
",
        );
    }
}

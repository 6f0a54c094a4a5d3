//! Severities that no project may lower.

use crate::house::House;
use crate::rules::severities::lowered;
use crate::rules::weighing::is_fixed;
use crate::rules::{Findings, rule};

rule! {
    /// A severity is lowered, or a rule switched off, that must stay as it is.
    ///
    /// A rule that means danger can't matter less than by itself, nor can one that finds what is wrong with the text itself.
    ///
    /// ## Why
    /// One line would hide every such fault in the house, and those that nobody has made yet; a waiver hides one that somebody
    /// has looked at. Of a text that can't be read nobody knows what it hides.
    ///
    /// ## Source
    /// The format's own rule: `grammar/rules.md` says which rules mean danger.
    ///
    /// ## Examples
    /// ```framing,fires
    /// project "Loon Cove"
    ///   severity  circular-support advice because "looks like one"
    /// ```
    /// ```framing,passes
    /// project "Loon Cove"
    ///   severity  flush-steel-no-gap advice because "the joists are dry when they come"
    /// ```
    "severity-must-stay", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (own, rule) in lowered(house).filter(|(_, rule)| is_fixed(rule)) {
        let stays = rule.severity.with_article();
        let (why, cure) = if rule.is_danger {
            ("means danger", "take the line out; waive the rule in one element, with the reason")
        } else {
            ("finds what is wrong with the text itself", "take the line out, and mend the text")
        };
        findings
            .in_text(own.severity_span, format!("`{}` {why} and stays {stays}", rule.slug))
            .help(cure)
            .take_out(house, own.span);
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn says_why_it_stays() {
        check_rule(
            &RULE,
            "
project \"Loon Cove\"
  severity  circular-support advice
--                           ^^^^^^ `circular-support` means danger and stays an error
-- | waive the rule in one element
  severity  odd-dimension off because \"an old drawing\"
--                        ^^^ `odd-dimension` finds what is wrong with the text itself and stays a warning
  severity  odd-dimension error
  severity  flush-steel-no-gap off because \"x\"
",
        );
    }
}

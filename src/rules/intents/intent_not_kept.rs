//! Promises in numbers that the house does not keep.

use crate::facts::comparison::{Outcome, outcome_of};
use crate::house::House;
use crate::model::promises::Promise;
use crate::rules::assertions::{explain, sentence};
use crate::rules::{Findings, rule};

rule! {
    /// A promise of the design is not kept.
    ///
    /// An intent's `keep` lines compare facts of the house; each must hold.
    ///
    /// ## Why
    /// The promise was written down because a later change might break it. This is that change.
    ///
    /// ## Source
    /// The design's own words. Without `within`, numbers agree when they differ by less than the limit
    /// `closure-tolerance`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor  100'-0"
    ///   finish    oak 3/4"
    /// floor den
    ///   subfloor  100'-0"
    ///   finish    tile 1-1/4"
    /// intent "Level from den to main"
    ///   keep      finish of den = finish of main within 1/8"
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor  100'-0"
    ///   finish    oak 3/4"
    /// floor den
    ///   subfloor  99'-11 1/2"
    ///   finish    tile 1-1/4"
    /// intent "Level from den to main"
    ///   keep      finish of den = finish of main within 1/8"
    /// ```
    "intent-not-kept", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for intent in &house.model.intents {
        for promise in &intent.promises {
            let Promise::Holds(assertion) = promise else { continue };
            let Outcome::Fails(failure) = outcome_of(house, assertion) else { continue };
            let message =
                format!("\"{}\" is not kept: {}", intent.common.name, sentence(house, assertion, &failure));
            explain(findings.about(intent.common.id, assertion.span, message), &failure);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    const FLOORS: &str = "
floor main
  subfloor  100'-0\"
floor den
  subfloor  99'-0\"
  finish    tile 1/4\"
intent \"I\"
";

    /// 1/4" is within 1/4"; 3/16" is more than the 1/8" allowed. 100'-0" less 99'-0 1/4" is 11-3/4".
    #[test]
    fn at_the_tolerance() {
        check_rule(&RULE, &format!("{FLOORS}  keep  finish of den = subfloor of den within 1/4\"\n"));
        check_rule(
            &RULE,
            &format!(
                "{FLOORS}  keep  finish of den = subfloor of den within 3/16\"
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ \"I\" is not kept: finish of den is 99'-0 1/4\", subfloor of den is 99'-0\": 1/4\" apart, 3/16\" allowed
-- | 99'-0\" subfloor of den + 1/4\" finish of den = 99'-0 1/4\"
  keep  drop from main to den >= 1'
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ \"I\" is not kept: drop from main to den is 11-3/4\"; it should be at least 1'-0\"
  keep  drop from main to den = 8\"
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ \"I\" is not kept: drop from main to den is 11-3/4\", not 8\": 3-3/4\" apart
"
            ),
        );
    }
}

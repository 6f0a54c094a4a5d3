//! Lines that name a fact which is not worked out.

use crate::facts::NoAnswer;
use crate::facts::comparison::{Outcome, outcome_of};
use crate::house::House;
use crate::model::element::Common;
use crate::model::promises::Promise;
use crate::rules::claims::{both_sides, claims};
use crate::rules::{Findings, rule};
use crate::text::Span;

rule! {
    /// A line compares a fact that is not worked out for such an element.
    ///
    /// ## Why
    /// The line looks like a check and checks nothing.
    ///
    /// ## Source
    /// The format's own rule: a check that did not run is never one that passed.
    ///
    /// ## Examples
    /// ```framing,fires
    /// beam B1
    ///   clear span  should be 12'
    /// ```
    /// ```framing,passes
    /// stair S1
    ///   risers      3
    ///   risers      should be 3
    /// ```
    "fact-not-derived", Advice
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (common, claim) in claims(house) {
        if let Err(NoAnswer::NotAFactOfIt) = both_sides(house, common, claim) {
            report(common, claim.span, &format!("`{}`", claim.fact), findings);
        }
    }
    for intent in &house.model.intents {
        for promise in &intent.promises {
            let Promise::Holds(assertion) = promise else { continue };
            if outcome_of(house, assertion) == Outcome::NotKnown(NoAnswer::NotAFactOfIt) {
                report(&intent.common, assertion.span, "one side of it", findings);
            }
        }
    }
    for sheet in &house.model.sheets {
        for assertion in &sheet.shows {
            if outcome_of(house, assertion) == Outcome::NotKnown(NoAnswer::NotAFactOfIt) {
                report(&sheet.common, assertion.span, "one side of it", findings);
            }
        }
    }
}

fn report(common: &Common, span: Span, what: &str, findings: &mut Findings<'_>) {
    findings.about(
        common.id,
        span,
        format!("this line of {} is not checked: {what} is not worked out", common.label()),
    );
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn says_that_the_line_is_not_checked() {
        check_rule(
            &RULE,
            "
beam B1
  clear span should be 12'
--^^^^^^^^^^^^^^^^^^^^^^^^ this line of beam B1 is not checked: `clear span` is not worked out
sheet A-1
  shows     clear span of B1 = 12'
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ this line of sheet A-1 is not checked: one side of it is not worked out
",
        );
    }
}

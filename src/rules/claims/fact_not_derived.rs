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
        // A line that can't be read may be the one that gives it the fact.
        if common.is_read_whole()
            && let Err(why) = both_sides(house, common, claim)
        {
            report(common, claim.span, why, &format!("`{}`", claim.fact), findings);
        }
    }
    for intent in &house.model.intents {
        for promise in &intent.promises {
            let Promise::Holds(assertion) = promise else { continue };
            if let Outcome::NotKnown(why) = outcome_of(house, assertion) {
                report(&intent.common, assertion.span, why, "one side of it", findings);
            }
        }
    }
    for sheet in &house.model.sheets {
        for assertion in &sheet.shows {
            if let Outcome::NotKnown(why) = outcome_of(house, assertion) {
                report(&sheet.common, assertion.span, why, "one side of it", findings);
            }
        }
    }
}

fn report(common: &Common, span: Span, why: NoAnswer, what: &str, findings: &mut Findings<'_>) {
    let why = match why {
        // What it rests on is missing or can't be read: that is said where it stands.
        NoAnswer::Unknown(_) => return,
        NoAnswer::NotAFactOfIt => format!("{what} is not worked out"),
    };
    findings.about(common.id, span, format!("this line of {} is not checked: {why}", common.label()));
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

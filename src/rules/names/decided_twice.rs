//! Two facts that decide the same thing.

use crate::house::House;
use crate::model::problem::ModelProblemKind;
use crate::rules::names::{report, told};
use crate::rules::wording::quoted;
use crate::rules::{Findings, rule};

rule! {
    /// Two facts of one element both decide the same thing.
    ///
    /// ## Why
    /// When one of them changes, the other quietly says something else.
    ///
    /// ## Source
    /// The format's own rule: exactly one fact places a floor, and a floor that is a slab has no deck.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor   100'-0"
    ///   finish at  100'-0 3/4"
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor   100'-0"
    ///   finish     oak 3/4"
    /// ```
    "decided-twice", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ModelProblemKind::DecidedTwice(other, place) = &problem.kind else { continue };
        let text = quoted(house.text_at(problem.span));
        report(findings, problem, format!("{text} decides what `{other}` decides already"))
            .related(*place, "decided here")
            .keep_one(house, (&format!("`{other}`"), *place), (&text, problem.span));
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn names_both() {
        check_rule(
            &RULE,
            "
floor main
  subfloor  100'-0\"
  finish at 100'-1\"
--^^^^^^^^^^^^^^^^^ `finish at 100'-1\"` decides what `subfloor` decides already
-- | decided here
floor den
  subfloor  98'-0\"
  steps down from main by 3 risers at 8\"
",
        );
    }
}

//! Limits with values that are not theirs.

use crate::house::House;
use crate::model::problem::ModelProblemKind;
use crate::rules::names::{report, told};
use crate::rules::wording::quoted;
use crate::rules::{Findings, rule};

rule! {
    /// A limit is given a value of another kind than its own.
    ///
    /// ## Why
    /// The limit of the profile still holds; who wrote the line thinks that it does not.
    ///
    /// ## Source
    /// The format's own rule: `grammar/limits.md` shows each limit with its value.
    ///
    /// ## Examples
    /// ```framing,fires
    /// project "Loon Cove"
    ///   limit  riser-height 40 psf
    /// ```
    /// ```framing,passes
    /// project "Loon Cove"
    ///   limit  riser-height 7-1/2"
    /// ```
    "limit-of-other-kind", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ModelProblemKind::LimitOfOtherKind(takes) = problem.kind else { continue };
        let text = quoted(house.text_at(problem.span));
        report(findings, problem, format!("{text} does not fit the limit: it takes {takes}"));
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn says_what_the_limit_takes() {
        check_rule(
            &RULE,
            "
project \"Loon Cove\"
  limit     riser-difference 3
--                           ^ `3` does not fit the limit: it takes a length
  limit     riser-height 7-1/2\"
",
        );
    }
}

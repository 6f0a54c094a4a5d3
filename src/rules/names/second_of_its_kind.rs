//! A second project or grid.

use crate::house::House;
use crate::model::problem::ModelProblemKind;
use crate::rules::names::{report, told};
use crate::rules::{Findings, rule};

rule! {
    /// A spec has a second project, or a second grid.
    ///
    /// ## Why
    /// A house has one datum, one soil and one set of lines; the second is not read.
    ///
    /// ## Source
    /// The format's own rule: one `project` and one `grid` in a spec, its included files among them.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x  A 0', B 16'
    /// grid
    ///   y  1 0', 2 12'
    /// ```
    /// ```framing,passes
    /// grid
    ///   x  A 0', B 16'
    ///   y  1 0', 2 12'
    /// ```
    "second-of-its-kind", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ModelProblemKind::SecondOfItsKind(kind, first) = &problem.kind else { continue };
        let word = kind.word();
        report(findings, problem, format!("a second `{word}`; a spec has one, and the first counts"))
            .related(*first, "the first");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn names_the_first() {
        check_rule(
            &RULE,
            "
project \"Loon Cove\"
  profile   irc-2021
project \"Hop Barn\"
--<^^^^ a second `project`; a spec has one, and the first counts
-- | the first
",
        );
    }
}

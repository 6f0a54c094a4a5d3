//! Elements that name themselves.

use crate::house::House;
use crate::model::problem::ModelProblemKind;
use crate::rules::names::{report, told};
use crate::rules::{Findings, rule};

rule! {
    /// An element refers to itself.
    ///
    /// ## Why
    /// A floor can't be placed by its own level, and a joint over the beam itself is none.
    ///
    /// ## Source
    /// Plain sense.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   steps down  from main by 3 risers at 6-1/2"
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor    100'-0"
    /// floor den
    ///   steps down  from main by 3 risers at 6-1/2"
    /// ```
    "refers-to-itself", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ModelProblemKind::RefersToItself = problem.kind else { continue };
        let common = problem.subject.and_then(|subject| house.model.common(subject));
        let label = common.map(|common| common.label()).unwrap_or_default();
        report(findings, problem, format!("{label} refers to itself"));
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn a_floor_does_not_step_from_itself() {
        check_rule(
            &RULE,
            "
floor den
  steps down from den by 3 risers at 8\"
--                ^^^ floor den refers to itself
",
        );
    }
}

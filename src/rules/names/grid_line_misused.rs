//! Grid lines on the wrong axis, or named twice.

use crate::house::House;
use crate::model::plan::Axis;
use crate::model::problem::ModelProblemKind;
use crate::rules::names::{report, told};
use crate::rules::wording::quoted;
use crate::rules::{Findings, rule};

rule! {
    /// A grid line stands where one of the other axis belongs, or is named twice.
    ///
    /// ## Why
    /// A place in plan is one line of each axis; two of the same axis never cross.
    ///
    /// ## Source
    /// The format's own rule: the names of the two axes differ, and x comes first: `B/3`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x   A 0', B 16'
    ///   y   1 0', 2 12'
    /// column C1
    ///   at  B/A
    /// ```
    /// ```framing,passes
    /// grid
    ///   x   A 0', B 16'
    ///   y   1 0', 2 12'
    /// column C1
    ///   at  B/1
    /// ```
    "grid-line-misused", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let line = quoted(house.text_at(problem.span));
        match &problem.kind {
            ModelProblemKind::GridLineOfOtherAxis(wanted) => {
                let (own, wanted) = match wanted {
                    Axis::X => ("y", "x"),
                    Axis::Y => ("x", "y"),
                };
                report(findings, problem, format!("{line} is a line of {own}; one of {wanted} belongs here"))
                    .help("the line of x comes first: `B/3`");
            }
            ModelProblemKind::GridLineReused(first) => {
                report(findings, problem, format!("the grid has two lines {line}; the first counts"))
                    .related(*first, "the first");
            }
            _ => {}
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn each_axis_has_its_own_names() {
        check_rule(
            &RULE,
            "
grid
  x         A 0', B 16', A 20'
--                       ^ the grid has two lines `A`; the first counts
-- | the first
  y         1 0', 2 12'
column C1
  at        1/B
--          ^ `1` is a line of y; one of x belongs here
--            ^ `B` is a line of x; one of y belongs here
",
        );
    }
}

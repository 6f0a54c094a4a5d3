//! Lines and rectangles that cover nothing.

use crate::house::House;
use crate::model::problem::ModelProblemKind;
use crate::rules::names::{report, told};
use crate::rules::wording::quoted;
use crate::rules::{Findings, rule};

rule! {
    /// A line begins where it ends, or a rectangle has no area.
    ///
    /// ## Why
    /// A wall of no length carries nothing, and joists in no area are none.
    ///
    /// ## Source
    /// Plain geometry.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x     A 0', B 16'
    ///   y     1 0', 2 12'
    /// beam B1
    ///   from  A/1 to A/1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x     A 0', B 16'
    ///   y     1 0', 2 12'
    /// beam B1
    ///   from  A/1 to B/1
    /// ```
    "without-extent", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ModelProblemKind::NoExtent(phrase) = problem.kind else { continue };
        let text = quoted(house.text_at(problem.span));
        let lacks = if phrase == "fill" { "covers no area" } else { "ends where it begins" };
        report(findings, problem, format!("{text} {lacks}"));
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn lines_and_areas() {
        check_rule(
            &RULE,
            "
grid
  x         A 0', B 16'
  y         1 0', 2 12'
beam B1
  from      A/1 to B less 16' / 1
--          ^^^^^^^^^^^^^^^^^^^^^ `A/1 to B less 16' / 1` ends where it begins
slab SL1
  fill      A to B by 1 to 1
--          ^^^^^^^^^^^^^^^^ `A to B by 1 to 1` covers no area
slab SL2
  fill      B to A by 2 to 1
",
        );
    }
}

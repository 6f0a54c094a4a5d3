//! Grid lines that nothing defines.

use crate::house::House;
use crate::model::problem::ModelProblemKind;
use crate::rules::names::{at_every_place, by_word, report};
use crate::rules::wording::quoted;
use crate::rules::{Findings, rule};

rule! {
    /// A grid line is used that the grid does not have.
    ///
    /// ## Why
    /// The element has no place in plan, so nothing can be found above or below it.
    ///
    /// ## Source
    /// The format's own rule: `grid` names each line once and says where it is.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x   A 0', B 16'
    ///   y   1 0', 2 12'
    /// column C1
    ///   at  C/1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x   A 0', B 16'
    ///   y   1 0', 2 12'
    /// column C1
    ///   at  B/1
    /// ```
    "unknown-grid-line", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (name, problems) in by_word(house, |kind| matches!(kind, ModelProblemKind::UnknownGridLine(_))) {
        let Some((first, others)) = problems.split_first() else { continue };
        let ModelProblemKind::UnknownGridLine(nearest) = &first.kind else { continue };
        if house.model.grid.common.is_none() {
            report(findings, first, format!("the spec has no grid, so {} is no place", quoted(name)))
                .help("write one: `grid`, then `x  A 0', B 16'` and `y  1 0', 2 12'`");
            continue;
        }
        let finding = report(findings, first, format!("the grid has no line {}", quoted(name)));
        // With names of one letter every line is near; only a longer one can be a slip.
        let meant = nearest.as_deref().filter(|_| name.chars().count() > 1);
        at_every_place(finding, others, meant);
        let lines: Vec<&str> = house.model.grid.lines.keys().map(|name| &**name).take(40).collect();
        finding.note(format!("its lines are {}", lines.join(", ")));
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn names_the_lines_there_are() {
        check_rule(
            &RULE,
            "
grid
  x         A 0', B 16'
  y         1 0', 2 12'
column C1
  at        C/1
--          ^ the grid has no line `C`
-- | its lines are A, B, 1, 2
beam B1
  from      C/1 to C/2
",
        );
    }

    #[test]
    fn a_spec_without_a_grid_says_so_once() {
        check_rule(
            &RULE,
            "
column C1
  at        A/1
--          ^ the spec has no grid, so `A` is no place
column C2
  at        B/1
",
        );
    }
}

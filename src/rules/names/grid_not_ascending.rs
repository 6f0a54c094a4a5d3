//! Grid lines out of order.

use crate::house::House;
use crate::model::problem::ModelProblemKind;
use crate::rules::names::{report, told};
use crate::rules::wording::quoted;
use crate::rules::{Findings, rule};

rule! {
    /// A grid line does not lie beyond the one before it.
    ///
    /// ## Why
    /// The numbers of a grid are distances from its origin. One that falls back is a spacing, or a slip.
    ///
    /// ## Source
    /// The format's own rule: each axis lists its lines in ascending order, from west to east and from south to north.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x  A 0', B 16', C 12'
    ///   y  1 0', 2 12'
    /// ```
    /// ```framing,passes
    /// grid
    ///   x  A 0', B 16', C 28'
    ///   y  1 0', 2 12'
    /// ```
    "grid-not-ascending", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let lines = &house.model.grid.lines;
    for problem in told(house) {
        let ModelProblemKind::GridNotAscending = problem.kind else { continue };
        let name = house.text_at(problem.span);
        let Some((at, _, line)) = lines.get_full(name) else { continue };
        let before = lines.iter().take(at).rfind(|(_, before)| before.axis == line.axis);
        let Some((before_name, before)) = before else { continue };
        report(
            findings,
            problem,
            format!(
                "grid line {} at {} does not lie beyond {} at {}",
                quoted(name),
                line.at.in_feet(),
                quoted(before_name),
                before.at.in_feet()
            ),
        )
        .related(before.span, "the line before it")
        .help(format!(
            "lines are counted from the origin; as a spacing it would be at {}",
            (before.at + line.at).in_feet()
        ));
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// 16' and a spacing of 12' are 28'.
    #[test]
    fn a_spacing_falls_back() {
        check_rule(
            &RULE,
            "
grid
  x         A -2', B 16', C 12'
--                        ^ grid line `C` at 12'-0\" does not lie beyond `B` at 16'-0\"
-- | as a spacing it would be at 28'-0\"
  y         1 0', 2 0'
--                ^ grid line `2` at 0'-0\" does not lie beyond `1` at 0'-0\"
",
        );
    }
}

//! A lone step.

use crate::house::House;
use crate::rules::{Findings, rule};

rule! {
    /// One single step lies in the way from one floor to another.
    ///
    /// ## Why
    /// Nobody expects a single step; people stumble over one far more often than over three. Contrast, light, or two
    /// lower risers make it safer.
    ///
    /// ## Source
    /// Common practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor      100'-0"
    /// floor den
    ///   subfloor      99'-5"
    ///   steps down    from main by 1 risers
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor      100'-0"
    /// floor den
    ///   subfloor      98'-11"
    ///   steps down    from main by 2 risers
    /// ```
    "single-riser", Advice
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for floor in &house.model.floors {
        let Some((steps, span)) = floor.steps.stated().filter(|(steps, _)| steps.risers == 1) else {
            continue;
        };
        findings
            .about(
                floor.common.id,
                span,
                format!("{} is a single step from {}", floor.common.label(), steps.from.name),
            )
            .help("two lower risers, or contrast and light on the nosing, make it safer")
            .basis("common practice");
    }
    for stair in &house.model.stairs {
        let Some((_, span)) = stair.risers.stated().filter(|(risers, _)| **risers == 1) else { continue };
        findings
            .about(stair.common.id, span, format!("{} is a single step", stair.common.label()))
            .help("two lower risers, or contrast and light on the nosing, make it safer")
            .follows(stair.common.id)
            .basis("common practice");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn tells_floors_and_stairs() {
        check_rule(
            &RULE,
            "
floor main
  subfloor      100'-0\"
floor den
  subfloor      99'-6\"
  steps down    from main by 1 risers
--              ^^^^^^^^^^^^^^^^^^^^^ floor den is a single step from main
stair S1
  risers        1
--              ^ stair S1 is a single step
stair S2
  risers        2
",
        );
    }
}

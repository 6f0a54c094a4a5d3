//! The steps of strip footings.

use crate::house::House;
use crate::model::foundation::Footing;
use crate::model::plan::Axis;
use crate::rules::{Findings, rule};
use crate::units::Length;

rule! {
    /// Two steps of a strip footing follow each other faster than they go down.
    ///
    /// Along each axis the run between one `step down` and the next is compared with the deeper of the two.
    ///
    /// ## Why
    /// A step taller than its run loads the soil of the step below from the side, and the concrete of one pour hangs over
    /// the next.
    ///
    /// ## Source
    /// Residential code R403.1.5 asks for steps on a slope, from memory; that none is taller than its run is common practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   y           1 0', 2 20'
    /// footing F1
    ///   kind        stepped
    ///   top         95'-0"
    ///   step        down 18" at 2 less 6'-0"
    ///   step        down 18" at 2 less 7'-0"
    /// ```
    /// ```framing,passes
    /// grid
    ///   y           1 0', 2 20'
    /// footing F1
    ///   kind        stepped
    ///   top         95'-0"
    ///   step        down 18" at 2 less 6'-0"
    ///   step        down 18" at 2 less 7'-6"
    /// ```
    "footing-step-steep", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for footing in &house.model.footings {
        for axis in [Axis::X, Axis::Y] {
            check_along(footing, axis, findings);
        }
    }
}

fn check_along(footing: &Footing, axis: Axis, findings: &mut Findings<'_>) {
    let mut steps: Vec<_> = footing.steps.iter().filter(|step| step.value.1.axis == axis).collect();
    steps.sort_by_key(|step| step.value.1.at);
    for (one, next) in steps.iter().zip(steps.iter().skip(1)) {
        let run: Length = next.value.1.at - one.value.1.at;
        let rise = one.value.0.max(next.value.0);
        if rise <= run {
            continue;
        }
        findings
            .about(
                footing.common.id,
                next.span,
                format!(
                    "{} goes down {rise} with only {run} to the next step: no step taller than its run",
                    footing.common.label()
                ),
            )
            .related(one.span, "the other step")
            .help(format!("part the two by {rise} or more, or make more and lower steps"))
            .basis("R403.1.5 (from memory); common practice");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// 10'-0" less 8'-7" is 1'-5".
    #[test]
    fn compares_with_the_deeper_step() {
        check_rule(
            &RULE,
            "
grid
  x           A 0', B 20'
footing F1
  kind        stepped
  top         95'-0\"
  step        down 12\" at A plus 8'-7\"
  step        down 18\" at A plus 10'
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ footing F1 goes down 1'-6\" with only 1'-5\" to the next step: no step taller than its run
",
        );
    }
}

//! Promises that nothing checks.

use crate::house::House;
use crate::model::promises::Promise;
use crate::rules::{Findings, rule};

rule! {
    /// A promise of the design is written down, and no rule checks it.
    ///
    /// What may not come below a ceiling, what stands over or meets what, and where a wall's face goes straight on.
    ///
    /// ## Why
    /// The line looks like a check. Until a rule reads it, somebody must look.
    ///
    /// ## Source
    /// The format's own rule: a check that did not run is never one that passed.
    ///
    /// ## Examples
    /// ```framing,fires
    /// joists J1
    /// joists J2
    /// intent "One plane of joists"
    ///   keep  J1 meeting J2
    /// ```
    /// ```framing,passes
    /// floor main
    /// floor den
    /// intent "One level"
    ///   keep  den level with main
    /// ```
    "promise-not-checked", Advice
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for intent in &house.model.intents {
        for promise in &intent.promises {
            let span = match promise {
                Promise::NothingBelowCeiling(_, _, span)
                | Promise::Over(_, _, _, span)
                | Promise::Meeting(_, _, span)
                | Promise::StraightFace(_, _, span) => *span,
                Promise::Holds(_) | Promise::NoColumn(..) | Promise::StepFree(..) | Promise::Level(..) => {
                    continue;
                }
            };
            findings.about(
                intent.common.id,
                span,
                format!("no rule checks this promise of \"{}\"; look at it yourself", intent.common.name),
            );
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn each_line_is_said() {
        check_rule(
            &RULE,
            "
wall W1
beam B1
intent \"Line up\"
  keep      W1 over B1 within 1\"
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ no rule checks this promise of \"Line up\"; look at it yourself
  keep      W1 level with B1
",
        );
    }
}

//! Drops between floors that nobody speaks of.

use std::collections::HashSet;

use crate::geometry::level_steps::meeting_floors;
use crate::house::House;
use crate::model::element::ElementId;
use crate::model::promises::Promise;
use crate::model::stairs::Foot;
use crate::profiles::stairs::STEP_FREE_EDGE;
use crate::rules::{Findings, rule};
use crate::syntax::vocabulary::ElementKind;

rule! {
    /// Two floors that meet lie at different levels, and nothing says why.
    ///
    /// A promise of steps, a stair between them, or an intent that names both says it. Where a floor belongs to another
    /// house or to the outside, an intent is the place to say so.
    ///
    /// ## Why
    /// Who reviews the plan can't tell a design from a slip; of a few inches, too low for a step and too high to walk
    /// over, the slip is the likelier.
    ///
    /// ## Source
    /// Common practice; what counts as no step is the limit `step-free-edge`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x         A 0', B 12'
    ///   y         1 0', 2 10', 3 20'
    /// floor main
    ///   subfloor  100'-0"
    /// floor den
    ///   subfloor  99'-10"
    /// joists J1
    ///   floor     main
    ///   fill      A to B by 1 to 2
    /// joists J2
    ///   floor     den
    ///   fill      A to B by 2 to 3
    /// ```
    /// ```framing,passes
    /// grid
    ///   x         A 0', B 12'
    ///   y         1 0', 2 10', 3 20'
    /// floor main
    ///   subfloor  100'-0"
    /// floor den
    ///   subfloor  99'-10"
    /// joists J1
    ///   floor     main
    ///   fill      A to B by 1 to 2
    /// joists J2
    ///   floor     den
    ///   fill      A to B by 2 to 3
    /// intent "The den is a wet room"
    ///   keep      drop from main to den = 2"
    /// ```
    "drop-unexplained", Advice
}

fn check(house: &House, findings: &mut Findings<'_>) {
    // A promise or steps that can't be read may be what explains a drop.
    let mut intents = house.model.intents.iter();
    if intents.any(|intent| intent.common.may_say("keep")) {
        return;
    }
    let none = house.limits.of(&STEP_FREE_EDGE);
    let explained = explained(house);
    for (one, other) in meeting_floors(&house.model) {
        let finish = |floor: ElementId| house.geometry.floors.get(floor.index as usize)?.finish.as_ref().ok();
        let (Some(here), Some(there)) = (finish(one), finish(other)) else { continue };
        let drop = here.total() - there.total();
        if drop.abs() <= none.value || explained.contains(&(one, other)) {
            continue;
        }
        let (upper, lower) = if drop.is_positive() { (one, other) } else { (other, one) };
        let (Some(upper), Some(lower)) = (house.model.floor(upper), house.model.floor(lower)) else {
            continue;
        };
        findings
            .about(
                lower.common.id,
                lower.common.name_span,
                format!(
                    "{} meets {} {} lower, finish to finish, and nothing says why",
                    lower.common.label(),
                    upper.common.name,
                    drop.abs()
                ),
            )
            .related(upper.common.name_span, upper.common.label())
            .help(format!(
                "say how one gets over it, `steps down from {} by N risers`, or why it is so in an `intent`",
                upper.common.name
            ))
            .basis("common practice");
    }
}

/// Pairs of floors between which something speaks of the drop, each in the model's order.
fn explained(house: &House) -> HashSet<(ElementId, ElementId)> {
    let model = &house.model;
    let mut pairs = HashSet::new();
    let mut add = |one: Option<ElementId>, other: Option<ElementId>| {
        if let (Some(one), Some(other)) = (one, other) {
            pairs.insert((one.min(other), one.max(other)));
        }
    };
    for floor in &model.floors {
        if let Some(steps) = floor.steps.value() {
            add(Some(floor.common.id), steps.from.target);
        }
    }
    for stair in &model.stairs {
        if let Some(Foot::Floor(from)) = stair.from.value() {
            add(from.target, stair.to.value().and_then(|to| to.target));
        }
    }
    for intent in &model.intents {
        for promise in &intent.promises {
            match promise {
                Promise::Holds(assertion) => {
                    let sides = [&assertion.comparison.left, &assertion.comparison.right];
                    let named =
                        sides.into_iter().flat_map(|side| side.names()).filter_map(|name| model.named(name));
                    let floors: Vec<ElementId> =
                        named.filter(|named| named.kind == ElementKind::Floor).collect();
                    for (one, other) in floors.iter().zip(floors.iter().skip(1)) {
                        add(Some(*one), Some(*other));
                    }
                }
                Promise::StepFree(one, other, _)
                | Promise::Level(one, other, ..)
                | Promise::Meeting(one, other, _) => add(one.target, other.target),
                Promise::NothingBelowCeiling(..)
                | Promise::NoColumn(..)
                | Promise::Over(..)
                | Promise::StraightFace(..) => {}
            }
        }
    }
    pairs
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(den: &str, more: &str, mark: &str) -> String {
        format!(
            "
grid
  x         A 0', B 12'
  y         1 0', 2 10', 3 20'
floor main
  subfloor  100'-0\"
floor den
{mark}  subfloor  {den}
{more}joists J1
  floor     main
  fill      A to B by 1 to 2 less 3\"
joists J2
  floor     den
  fill      A to B by 2 plus 3\" to 3
"
        )
    }

    #[test]
    fn wants_a_word_for_every_drop() {
        check_rule(&RULE, &house("99'-11 1/2\"", "", ""));
        check_rule(
            &RULE,
            &house(
                "99'-11\"",
                "",
                "--    ^^^ floor den meets main 1\" lower, finish to finish, and nothing says why\n",
            ),
        );
        check_rule(&RULE, &house("98'-11\"", "  steps down  from main by 2 risers\n", ""));
    }
}

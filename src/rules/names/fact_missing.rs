//! Facts that an element can't do without.

use std::collections::HashMap;

use crate::house::House;
use crate::model::element::ElementId;
use crate::model::problem::ModelProblemKind;
use crate::rules::names::{report, told};
use crate::rules::wording::all_of;
use crate::rules::{Findings, rule};
use crate::syntax::vocabulary::spec_of;

rule! {
    /// An element lacks a fact that it needs.
    ///
    /// A fact whose line can't be read counts as unknown, not as missing.
    ///
    /// ## Why
    /// Without it the element can't be placed, sized or loaded, and the checks that rest on it are left out.
    ///
    /// ## Source
    /// The format's own rule: `grammar/reference.md` says which facts each element needs.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x  A 0', B 16'
    /// ```
    /// ```framing,passes
    /// grid
    ///   x  A 0', B 16'
    ///   y  1 0', 2 12'
    /// ```
    "fact-missing", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let mut missing: HashMap<ElementId, Vec<&'static str>> = HashMap::new();
    for problem in &house.model.problems {
        if let (ModelProblemKind::FactMissing(phrase), Some(subject)) = (&problem.kind, problem.subject) {
            missing.entry(subject).or_default().push(phrase);
        }
    }
    for problem in told(house) {
        let (ModelProblemKind::FactMissing(_), Some(subject)) = (&problem.kind, problem.subject) else {
            continue;
        };
        let Some(phrases) = missing.remove(&subject) else { continue };
        let label = house.model.common(subject).map(|common| common.label()).unwrap_or_default();
        let quoted: Vec<String> = phrases.iter().map(|phrase| format!("`{phrase}`")).collect();
        let finding = report(findings, problem, format!("{label} does not say its {}", all_of(&quoted)));
        for phrase in phrases {
            let fact = spec_of(subject.kind).all_facts().find(|fact| fact.phrase == phrase);
            if let Some(fact) = fact {
                finding.help(format!("write a line as `{}`", fact.example));
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn an_element_is_told_once_and_a_broken_line_is_not_missed() {
        check_rule(
            &RULE,
            "
grid
--<^ grid does not say its `x` and `y`
-- | write a line as `x
floor main
  subfloor  100'-0\"
  deck      3/4\"
  live      40
  dead      12 psf
floor den
--    ^^^ floor den does not say its `dead`
  subfloor  98'-0\"
  deck      3/4\"
  live      40 psf
",
        );
    }
}

//! One name for several elements.

use std::collections::HashMap;

use crate::house::House;
use crate::model::problem::ModelProblemKind;
use crate::rules::names::{report, told};
use crate::rules::wording::quoted;
use crate::rules::{Findings, rule};

rule! {
    /// Several elements have one name.
    ///
    /// The first of them counts wherever the name is used. A name that comes again and again is reported once.
    ///
    /// ## Why
    /// "Stands on F1" must mean one footing, on the drawing and on site.
    ///
    /// ## Source
    /// The format's own rule: names are global to a spec, its included files among them.
    ///
    /// ## Examples
    /// ```framing,fires
    /// footing F1
    ///   at  A/1
    /// footing F1
    ///   at  B/1
    /// ```
    /// ```framing,passes
    /// footing F1
    ///   at  A/1
    ///   at  B/1
    /// ```
    "name-reused", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let mut counts: HashMap<&str, usize> = HashMap::new();
    for problem in &house.model.problems {
        if let ModelProblemKind::NameReused(name, _) = &problem.kind {
            *counts.entry(name).or_insert(1) += 1;
        }
    }
    for problem in told(house) {
        let ModelProblemKind::NameReused(name, first) = &problem.kind else { continue };
        let count = counts.get(&**name).copied().unwrap_or(2);
        let message = format!("{count} elements are named {}; the first counts", quoted(name));
        report(findings, problem, message).related(*first, "the first");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::{check_rule, found};

    #[test]
    fn each_name_once_whatever_its_kinds() {
        check_rule(
            &RULE,
            "
beam B1
wall B1
--   ^^ 3 elements are named `B1`; the first counts
-- | the first
column B1
wall b1
",
        );
    }

    #[test]
    fn a_hundred_thousand_are_one_finding() {
        let text = "beam B1\n".repeat(100_000);
        let found = found(&RULE, &text);
        assert_eq!(found.len(), 1);
        assert_eq!(found[0].message, "100000 elements are named `B1`; the first counts");
    }
}

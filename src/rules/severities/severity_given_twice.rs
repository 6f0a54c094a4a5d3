//! Rules with two severities.

use std::collections::HashMap;

use crate::house::House;
use crate::rules::weighing::own_severities;
use crate::rules::wording::quoted;
use crate::rules::{Findings, rule};

rule! {
    /// A rule is given a severity twice.
    ///
    /// ## Why
    /// One of the two lines changes nothing, and who reads only that one goes by it.
    ///
    /// ## Source
    /// The format's own rule: the first one counts.
    ///
    /// ## Examples
    /// ```framing,fires
    /// project "Loon Cove"
    ///   severity  element-unreferenced warning
    ///   severity  element-unreferenced error
    /// ```
    /// ```framing,passes
    /// project "Loon Cove"
    ///   severity  element-unreferenced warning
    ///   severity  waiver-out-of-date error
    /// ```
    "severity-given-twice", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let mut firsts = HashMap::new();
    for own in own_severities(house) {
        let first = *firsts.entry(&*own.rule).or_insert(own.span);
        if first == own.span {
            continue;
        }
        findings
            .in_text(own.span, format!("`{}` is given a severity a second time; the first counts", own.rule))
            .related(first, format!("the first is {}", quoted(house.text_at(first))))
            .keep_one(house, ("the first", first), ("the second", own.span));
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn names_both() {
        check_rule(
            &RULE,
            "
project \"Loon Cove\"
  severity  element-unreferenced warning
  severity  element-unreferenced error
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ `element-unreferenced` is given a severity a second time; the first counts
-- | the first is `severity  element-unreferenced warning`
  severity  waiver-out-of-date error
",
        );
    }
}

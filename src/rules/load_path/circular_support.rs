//! Elements that carry one another in a circle.

use crate::house::House;
use crate::rules::{Findings, rule};

rule! {
    /// Elements carry one another in a circle.
    ///
    /// Follows `bears on`, `hangs from` and `stands on` from each element downwards; a way that comes back to where it
    /// began reaches no soil.
    ///
    /// ## Why
    /// Nothing in the circle carries anything.
    ///
    /// ## Source
    /// Common practice: equilibrium.
    ///
    /// ## Examples
    /// ```framing,fires
    /// beam B1
    ///   bears on    B2
    /// beam B2
    ///   bears on    B1
    /// ```
    /// ```framing,passes
    /// beam B1
    ///   bears on    B2
    /// beam B2
    ///   bears on    outside "existing wall"
    /// ```
    "circular-support", Error, danger
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for cycle in &house.geometry.load_path.cycles {
        let commons: Vec<_> = cycle.iter().filter_map(|element| house.model.common(*element)).collect();
        let Some((first, others)) = commons.split_first() else { continue };
        let mut way: Vec<String> = commons.iter().map(|common| common.label()).collect();
        way.push(first.label());
        let message = format!("nothing carries {}: {}", first.label(), way.join(" on "));
        let finding = findings.about(first.id, first.name_span, message);
        for common in others {
            finding.related(common.name_span, "part of the circle");
        }
        finding.help("let one of them stand on something that reaches a footing").basis("common practice");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn prints_the_way_round() {
        check_rule(
            &RULE,
            "
beam B1
--   ^^ nothing carries beam B1: beam B1 on column C1 on beam B2 on beam B1
  bears on    C1
column C1
  stands on   B2
beam B2
  bears on    B1
",
        );
    }
}

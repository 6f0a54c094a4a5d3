//! Waivers whose day has passed.

use crate::house::House;
use crate::house::lines;
use crate::rules::waivers::waivers;
use crate::rules::{Findings, rule};

rule! {
    /// A waiver has run out.
    ///
    /// The day behind `until` is the last on which it counts.
    ///
    /// ## Why
    /// What was put off until that day is due: either it is done, or the reason still holds and the day moves.
    ///
    /// ## Source
    /// The format's own rule.
    ///
    /// ## Examples
    /// ```framing,fires
    /// beam B1
    ///   waive  bearing-short because "seat widened on site" until 2024-05-03
    /// ```
    /// ```framing,passes
    /// beam B1
    ///   waive  bearing-short because "seat widened on site" until 2099-05-03
    /// ```
    "waiver-out-of-date", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (common, waiver) in waivers(house) {
        let Some(until) = waiver.until.filter(|until| house.today > *until) else { continue };
        findings
            .about(
                common.id,
                waiver.span,
                format!("the waiver of `{}` on {} ran out on {until}", waiver.rule, common.label()),
            )
            .help("take the line out, or give it a later day")
            .choice("take the line out", lines::removed(house, waiver.span));
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// Tests happen on 2027-06-01.
    #[test]
    fn counts_on_its_last_day() {
        check_rule(
            &RULE,
            "
beam B1
  waive     bearing-short because \"seat widened\" until 2027-06-01
beam B2
  waive     bearing-short because \"seat widened\" until 2027-05-31
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the waiver of `bearing-short` on beam B2 ran out on 2027-05-31
",
        );
    }
}

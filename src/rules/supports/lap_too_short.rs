//! How far two joists pass each other over a support.

use crate::house::House;
use crate::profiles::framing::JOIST_LAP;
use crate::rules::{Findings, rule};

rule! {
    /// Joists lap too little over a support.
    ///
    /// Looks at `joint lapped LEN over X`. Joists that butt there instead leave the length out.
    ///
    /// ## Why
    /// The nails that tie the two ends together have no room, and one of them may slip off.
    ///
    /// ## Source
    /// Residential code R502.6.1; the limit `joist-lap`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// beam B1
    ///   size        W8x18
    /// joists J1
    ///   size        2x10 SPF No.2
    ///   joint       lapped 2" over B1
    /// ```
    /// ```framing,passes
    /// beam B1
    ///   size        W8x18
    /// joists J1
    ///   size        2x10 SPF No.2
    ///   joint       lapped 3" over B1
    /// ```
    "lap-too-short", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let least = house.limits.of(&JOIST_LAP);
    for joists in &house.model.joists {
        for joint in &joists.joints {
            let Some(lap) = joint.lapped.as_ref().filter(|lap| lap.value < least.value) else { continue };
            findings
                .about(
                    joists.common.id,
                    lap.span,
                    format!(
                        "{} lap {} over {}: {} at the least",
                        joists.common.label(),
                        lap.value,
                        joint.over.name,
                        least.value
                    ),
                )
                .help(format!("lap them {} or more, or butt them with a splice plate", least.value))
                .basis(least.basis());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// R502.6.1 (read in a secondary copy): 3" is enough.
    #[test]
    fn names_both_lengths() {
        check_rule(
            &RULE,
            "
beam B1
  size        W8x18
joists J1
  size        2x10 SPF No.2
  joint       lapped 2-15/16\" over B1
--                   ^^^^^^^^ joists J1 lap 2-15/16\" over B1: 3\" at the least
",
        );
    }
}

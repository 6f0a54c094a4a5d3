//! Handrails of flights.

use crate::house::House;
use crate::house::lines::part_at;
use crate::profiles::stairs::{HANDRAIL_HIGHEST, HANDRAIL_LOWEST, HANDRAIL_RISERS};
use crate::rules::{Findings, rule};

rule! {
    /// A flight has no handrail, or one at the wrong height.
    ///
    /// Heights are measured upright from the line of the nosings. Guards at open edges are not looked at: the spec does
    /// not say which sides of a stair are open.
    ///
    /// ## Why
    /// A rail to catch hold of turns a fall into a stumble. Its backing has to be in the wall before the board goes on.
    ///
    /// ## Source
    /// Residential code R311.7.8; the limits `handrail-risers`, `handrail-lowest` and `handrail-highest`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// stair S1
    ///   risers        4
    /// ```
    /// ```framing,passes
    /// stair S1
    ///   risers        4
    ///   handrail      east 36" high
    /// ```
    "handrail-missing", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let from = house.limits.of(&HANDRAIL_RISERS);
    let (lowest, highest) = (house.limits.of(&HANDRAIL_LOWEST), house.limits.of(&HANDRAIL_HIGHEST));
    for stair in &house.model.stairs {
        let id = stair.common.id;
        let name = stair.common.label();
        if let Some((risers, span)) = stair.risers.stated()
            && *risers >= from.value.0
            && stair.handrails.is_empty()
            && !stair.common.may_say("handrail")
        {
            findings
                .about(
                    id,
                    span,
                    format!(
                        "{name} has {risers} risers and no handrail: from {} on it has one",
                        from.value.0
                    ),
                )
                .help(format!("add one: `handrail SIDE {} high`", lowest.value.in_inches()))
                .basis(from.basis());
        }
        for rail in &stair.handrails {
            let (_, height) = rail.value;
            if lowest.value <= height && height <= highest.value {
                continue;
            }
            let finding = findings.about(
                id,
                rail.span,
                format!(
                    "a handrail of {name} is {} high: between {} and {}",
                    height.in_inches(),
                    lowest.value.in_inches(),
                    highest.value.in_inches()
                ),
            );
            if let Some(place) = part_at(house, rail.span, "high") {
                let nearest = height.clamp(lowest.value, highest.value);
                finding.write(place, nearest.in_inches().to_string());
            }
            finding.basis(if height < lowest.value { lowest.basis() } else { highest.basis() });
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// R311.7.8 (from memory): four risers, 34\" to 38\".
    #[test]
    fn at_the_limits() {
        check_rule(&RULE, "\nstair S1\n  risers    3\n");
        check_rule(
            &RULE,
            "
stair S1
  risers    4
--          ^ stair S1 has 4 risers and no handrail: from 4 on it has one
stair S2
  risers    4
  handrail  east 34\" high
  handrail  west 38\" high
stair S3
  risers    4
  handrail  east 33-7/8\" high
--^^^^^^^^^^^^^^^^^^^^^^^^^^^ a handrail of stair S3 is 33-7/8\" high: between 34\" and 38\"
",
        );
    }
}

//! The tread of a flight.

use crate::house::House;
use crate::profiles::stairs::{NOSING_LEAST, NOSING_MOST, NOSING_TREAD, TREAD_DEPTH};
use crate::rules::{Findings, rule};

rule! {
    /// A tread is too short for a foot.
    ///
    /// Measured from nosing to nosing. A tread that is short but allowed has a nosing, so that the foot gets more than
    /// the tread; a nosing that stands out too far catches the toe.
    ///
    /// ## Why
    /// On a short tread one comes down on the ball of the foot and slips off.
    ///
    /// ## Source
    /// Residential code R311.7.5.2 and R311.7.5.3; the limits `tread-depth`, `nosing-tread`, `nosing-least` and
    /// `nosing-most`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// stair S1
    ///   tread         9-1/2"
    ///   nosing        1"
    /// ```
    /// ```framing,passes
    /// stair S1
    ///   tread         10"
    ///   nosing        1"
    /// ```
    "tread-too-short", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let least = house.limits.of(&TREAD_DEPTH);
    let (without_nosing, nosing_least, nosing_most) =
        (house.limits.of(&NOSING_TREAD), house.limits.of(&NOSING_LEAST), house.limits.of(&NOSING_MOST));
    for stair in &house.model.stairs {
        let id = stair.common.id;
        let name = stair.common.label();
        let Some((tread, span)) = stair.tread.stated() else { continue };
        // A flight of one riser has no tread.
        if stair.risers.get() == Some(1) {
            continue;
        }
        if *tread < least.value {
            findings
                .about(id, span, format!("a tread of {name} is {tread}: {} at the least", least.value))
                .help("lengthen the run, or take a riser out where the risers allow it")
                .basis(least.basis());
            continue;
        }
        if stair.nosing.is_broken() || stair.common.has_unread_lines {
            continue;
        }
        let nosing = stair.nosing.get().unwrap_or_default();
        let nosing_span = stair.nosing.span().unwrap_or(span);
        if *tread < without_nosing.value && nosing < nosing_least.value {
            findings
                .about(
                    id,
                    nosing_span,
                    format!(
                        "treads of {tread} of {name} have a nosing of {nosing}: {} at the least under {}",
                        nosing_least.value, without_nosing.value
                    ),
                )
                .help(format!("add a nosing, or make the treads {} or longer", without_nosing.value))
                .basis(nosing_least.basis());
        } else if nosing > nosing_most.value {
            findings
                .about(
                    id,
                    nosing_span,
                    format!("a nosing of {name} stands out {nosing}: {} at the most", nosing_most.value),
                )
                .basis(nosing_most.basis());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// R311.7.5.2 and R311.7.5.3, read in a secondary copy: 10\" passes and 9-7/8\" fails; below 11\" a nosing of 3/4\"
    /// passes and one of 1/2\" fails.
    #[test]
    fn agrees_with_the_published_cases() {
        check_rule(&RULE, "\nstair S1\n  tread   10\"\n  nosing  3/4\"\n");
        check_rule(&RULE, "\nstair S1\n  tread   11\"\n");
        check_rule(
            &RULE,
            "
stair S1
  tread   9-7/8\"
--        ^^^^^^ a tread of stair S1 is 9-7/8\": 10\" at the least
  nosing  3/4\"
stair S2
  tread   10\"
  nosing  1/2\"
--        ^^^^ treads of 10\" of stair S2 have a nosing of 1/2\": 3/4\" at the least under 11\"
stair S3
  tread   12\"
  nosing  1-3/8\"
--        ^^^^^^ a nosing of stair S3 stands out 1-3/8\": 1-1/4\" at the most
",
        );
    }
}

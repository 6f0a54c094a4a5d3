//! The difference between the tallest and the lowest riser of a flight.

use crate::geometry::flights::Risers;
use crate::house::House;
use crate::model::stairs::Stair;
use crate::profiles::stairs::RISER_DIFFERENCE;
use crate::rules::{Findings, rule};

rule! {
    /// The risers of a flight differ by more than feet forgive.
    ///
    /// Stringers are cut for certain finishes (`laid out`). A finish that changes later makes the first or the last
    /// riser taller or lower; the others stay.
    ///
    /// ## Why
    /// People climb without looking. A riser that is not like the one before is where they fall.
    ///
    /// ## Source
    /// Residential code R311.7.5.1; the limit `riser-difference`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor    100'-0"
    ///   finish      tile 1"
    /// floor den
    ///   subfloor    98'-10"
    /// stair S1
    ///   from        den to main
    ///   risers      2
    ///   laid out    98'-10" to 100'-0"
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor    100'-0"
    ///   finish      cork 3/8"
    /// floor den
    ///   subfloor    98'-10"
    /// stair S1
    ///   from        den to main
    ///   risers      2
    ///   laid out    98'-10" to 100'-0"
    /// ```
    "risers-not-even", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let limit = house.limits.of(&RISER_DIFFERENCE);
    for (stair, flight) in house.model.stairs.iter().zip(&house.geometry.flights) {
        let Ok(risers) = &flight.risers else { continue };
        if risers.spread() <= limit.value {
            continue;
        }
        let span = stair.laid_out.span().unwrap_or(stair.common.name_span);
        let finding = findings.about(
            stair.common.id,
            span,
            format!(
                "the risers of {} go from {} to {}: {} apart, {} at the most",
                stair.common.label(),
                risers.lowest(),
                risers.tallest(),
                risers.spread(),
                limit.value
            ),
        );
        explain(stair, risers, finding);
        if let (Ok(lower), Ok(upper)) = (&flight.lower, &flight.upper) {
            finding.note(format!("lower finish: {lower}")).note(format!("upper finish: {upper}"));
            for sum in [lower, upper] {
                if let Some(term) = sum.terms().last()
                    && let Some(span) = term.span
                {
                    finding.related(span, format!("{} {}", term.amount.abs(), term.what));
                }
            }
            let even = (upper.total() - lower.total()).shared_by(risers.count);
            if let Some(even) = even {
                finding.help(format!(
                    "lay it out from {} to {}: {} risers of {even}",
                    lower.total().in_feet(),
                    upper.total().in_feet(),
                    risers.count
                ));
            }
        }
        finding.suspects(stair.common.id, "rise").basis(limit.basis());
    }
}

/// Says which riser is off, when the stringers were laid out for other finishes.
fn explain(stair: &Stair, risers: &Risers, finding: &mut crate::rules::Finding) {
    let Some((lower, upper)) = stair.laid_out.get() else { return };
    finding.note(format!(
        "laid out from {} to {}: {} each; the first is {}, the last {}",
        lower.in_feet(),
        upper.in_feet(),
        risers.between,
        risers.bottom,
        risers.top
    ));
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// Exactly 3/8" apart passes (R311.7.5.1 allows 3/8"); 7/16" does not.
    #[test]
    fn at_the_limit() {
        let stair = |finish: &str, mark: &str| {
            format!(
                "
floor main
  subfloor    100'-0\"
floor den
  subfloor    98'-10\"
  finish      tile {finish}
stair S1
  from        den to main
  risers      2
  laid out    98'-10\" to 100'-0\"
{mark}"
            )
        };
        check_rule(&RULE, &stair("3/8\"", ""));
        check_rule(
            &RULE,
            &stair(
                "7/16\"",
                "--            ^^^^^^^^^^^^^^^^^^ the risers of stair S1 go from 6-9/16\" to 7\": 7/16\" apart, 3/8\" at the most\n",
            ),
        );
    }
}

//! How high a flight goes without a landing.

use crate::house::House;
use crate::profiles::stairs::FLIGHT_HEIGHT;
use crate::rules::{Findings, rule};

rule! {
    /// A flight goes up too far without a landing.
    ///
    /// Looks at the whole rise of a stair; one with a `landing mid` is left out, for its two parts are counted each by
    /// itself.
    ///
    /// ## Why
    /// A landing is where one rests, and where a fall ends.
    ///
    /// ## Source
    /// Residential code R311.7.3; the limit `flight-height`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor      100'-0"
    /// floor loft
    ///   subfloor      113'-0"
    /// stair S1
    ///   from          main to loft
    ///   risers        21
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor      100'-0"
    /// floor loft
    ///   subfloor      112'-6"
    /// stair S1
    ///   from          main to loft
    ///   risers        20
    /// ```
    "flight-too-tall", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let limit = house.limits.of(&FLIGHT_HEIGHT);
    for (stair, flight) in house.model.stairs.iter().zip(&house.geometry.flights) {
        let Ok(rise) = flight.rise else { continue };
        let has_landing = stair.landings.iter().any(|landing| &*landing.place == "mid");
        if rise <= limit.value || has_landing || stair.common.may_say("landing") {
            continue;
        }
        let finding = findings.about(
            stair.common.id,
            stair.risers.span().unwrap_or(stair.common.name_span),
            format!("{} goes up {rise} without a landing: {} at the most", stair.common.label(), limit.value),
        );
        finding
            .help("put a landing in the middle: `landing mid 3'-0\" deep`")
            .suspects(stair.common.id, "rise")
            .basis(limit.basis());
        for end in [&flight.lower, &flight.upper].into_iter().flatten() {
            for element in end.elements() {
                finding.follows(element);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// R311.7.3 (inferred from a secondary copy): 12'-7\" or 151\".
    #[test]
    fn at_the_limit() {
        let house = |loft: &str, more: &str| {
            format!(
                "
floor main
  subfloor      100'-0\"
floor loft
  subfloor      {loft}
stair S1
  from          main to loft
  risers        21
{more}"
            )
        };
        let mark = "--              ^^ stair S1 goes up 12'-7 1/4\" without a landing: 12'-7\" at the most\n";
        check_rule(&RULE, &house("112'-7\"", ""));
        check_rule(&RULE, &house("112'-7 1/4\"", mark));
        check_rule(&RULE, &house("112'-7 1/4\"", "  landing       mid 3'-0\" deep at 106'-0\"\n"));
    }
}

//! The room that a flight comes down into.

use crate::diagnostic::Severity;
use crate::geometry::carried::Carried;
use crate::geometry::rooms::depth_along;
use crate::house::House;
use crate::profiles::stairs::LANDING_DEPTH;
use crate::rules::{Findings, rule};

rule! {
    /// A flight and the landing at its foot take most of the room they come down into.
    ///
    /// Measured from the top nosing along the flight to the far edge of the lower floor's joists or slab. It is a warning
    /// where the landing does not fit at all, and advice where more than half of the room goes for steps that pass no
    /// opening.
    ///
    /// ## Why
    /// Two steps on the floor plan look small; with a place to stand before them they are a fifth of a bedroom.
    ///
    /// ## Source
    /// Common practice; the landing is that of residential code R311.7.6 (the limit `landing-depth`).
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x             A 0', B 12'
    ///   y             1 0', 2 5'
    /// floor main
    ///   subfloor      100'-0"
    /// floor den
    ///   subfloor      98'-10"
    /// joists J1
    ///   floor         den
    ///   fill          A to B by 1 to 2
    /// stair S1
    ///   from          den to main
    ///   risers        2
    ///   tread         11"
    ///   top           at A plus 6' / 2
    ///   climbs        north
    /// ```
    /// ```framing,passes
    /// grid
    ///   x             A 0', B 12'
    ///   y             1 0', 2 14'
    /// floor main
    ///   subfloor      100'-0"
    /// floor den
    ///   subfloor      98'-10"
    /// joists J1
    ///   floor         den
    ///   fill          A to B by 1 to 2
    /// stair S1
    ///   from          den to main
    ///   risers        2
    ///   tread         11"
    ///   top           at A plus 6' / 2
    ///   climbs        north
    /// ```
    "steps-eat-room", Advice
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let landing = house.limits.of(&LANDING_DEPTH);
    let carried = Carried::of(&house.model);
    for (stair, flight) in house.model.stairs.iter().zip(&house.geometry.flights) {
        let (Ok(run), Some(depth)) = (flight.run, depth_along(&house.model, &carried, stair)) else {
            continue;
        };
        let taken = run + landing.value;
        let is_too_much = taken > depth;
        // A stair from another storey is a room's main thing; a few steps inside of it are not.
        let may_take_half = !stair.opening.is_missing();
        if !is_too_much && (may_take_half || taken.times(2) <= depth) {
            continue;
        }
        let message = format!(
            "{} and a landing of {} take {taken} of a room that is {depth} deep there",
            stair.common.label(),
            landing.value
        );
        let finding =
            findings.about(stair.common.id, stair.top.span().unwrap_or(stair.common.name_span), message);
        if is_too_much {
            finding.severity(Severity::Warning);
        }
        finding
            .note(format!("{run} of treads, {} to stand on", landing.value))
            .help("turn the flight, take fewer risers, or let it cut back into the upper floor")
            .basis(landing.basis());
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// Two treads of 11" and a landing of 36" (R311.7.6, from memory) are 4'-10"; half of 9'-8" is just that.
    #[test]
    fn half_of_the_room_is_enough() {
        let house = |depth: &str, mark: &str| {
            format!(
                "
grid
  x             A 0', B 12'
  y             1 0', 2 {depth}
floor main
  subfloor      100'-0\"
floor den
  subfloor      98'-3\"
joists J1
  floor         den
  fill          A to B by 1 to 2
stair S1
  from          den to main
  risers        3
  tread         11\"
  top           at A plus 6' / 2
{mark}  climbs        north
"
            )
        };
        check_rule(&RULE, &house("9'-8\"", ""));
        check_rule(
            &RULE,
            &house(
                "9'-7\"",
                "--                 ^^^^^^^^^^^^^ stair S1 and a landing of 3'-0\" take 4'-10\" of a room that is 9'-7\" deep there\n",
            ),
        );
    }
}

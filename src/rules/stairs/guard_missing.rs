//! Guards beside flights that nothing else encloses.

use crate::house::House;
use crate::house::lines::part_at;
use crate::model::stairs::Stair;
use crate::profiles::stairs::{GUARD_DROP, GUARD_HEIGHT};
use crate::rules::{Findings, rule};

rule! {
    /// A high flight has no guard, or one that is too low.
    ///
    /// Looks at flights that pass no opening, where the edge of the upper floor lies open beside them. A flight in an
    /// opening most often runs between walls, which the spec need not describe; there only a stated guard is measured,
    /// as is one along the edge of a floor.
    ///
    /// ## Why
    /// A sunk room more than a step or four deep has an edge to fall from, and the edge is where the furniture ends.
    ///
    /// ## Source
    /// Residential code R312.1; the limits `guard-drop` and `guard-height`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor      100'-0"
    /// floor den
    ///   subfloor      97'-4"
    /// stair S1
    ///   from          den to main
    ///   risers        5
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor      100'-0"
    /// floor den
    ///   subfloor      97'-4"
    /// stair S1
    ///   from          den to main
    ///   risers        5
    ///   guard         east 36" high
    /// ```
    "guard-missing", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let (drop, least) = (house.limits.of(&GUARD_DROP), house.limits.of(&GUARD_HEIGHT));
    let of_stairs = house.model.stairs.iter().map(|stair| {
        (&stair.common, stair.guards.iter().map(|guard| (guard.value.1, guard.span)).collect::<Vec<_>>())
    });
    let of_floors = house.model.floors.iter().map(|floor| {
        (&floor.common, floor.guards.iter().map(|guard| (guard.value.height, guard.span)).collect())
    });
    for (common, guards) in of_stairs.chain(of_floors) {
        for (height, span) in guards.into_iter().filter(|(height, _)| *height < least.value) {
            let message =
                format!("the guard of {} is {height} high: {} at the least", common.label(), least.value);
            let finding = findings.about(common.id, span, message);
            if let Some(place) = part_at(house, span, "high") {
                finding.write(place, least.value.in_inches().to_string());
            }
            finding.help(format!("make it {} high", least.value)).basis(least.basis());
        }
    }
    for (stair, flight) in house.model.stairs.iter().zip(&house.geometry.flights) {
        let Ok(rise) = flight.rise else { continue };
        if rise <= drop.value || !stair.guards.is_empty() || may_be_enclosed(stair) {
            continue;
        }
        let message = format!(
            "{} climbs {rise} beside an open edge and has no guard: from {} on it needs one",
            stair.common.label(),
            drop.value
        );
        findings
            .about(stair.common.id, stair.common.name_span, message)
            .help(format!(
                "write `guard SIDE {} high` for each open side, and one along the edge of the upper floor",
                least.value
            ))
            .basis(drop.basis());
    }
}

fn may_be_enclosed(stair: &Stair) -> bool {
    !stair.opening.is_missing() || stair.common.may_say("guard")
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// R312.1.1 (from memory): a drop of more than 30"; exactly 30" needs none.
    #[test]
    fn at_the_limit() {
        let house = |level: &str, mark: &str| {
            format!(
                "
floor main
  subfloor      100'-0\"
floor den
  subfloor      {level}
stair S1
{mark}  from          den to main
  risers        5
"
            )
        };
        check_rule(&RULE, &house("97'-6\"", ""));
        check_rule(
            &RULE,
            &house(
                "97'-5 3/4\"",
                "--    ^^ stair S1 climbs 2'-6 1/4\" beside an open edge and has no guard: from 2'-6\" on it needs one\n",
            ),
        );
    }

    /// R312.1.2 (from memory): 36".
    #[test]
    fn a_low_guard_is_none() {
        check_rule(
            &RULE,
            "
stair S1
  guard         east 35\" high
--^^^^^^^^^^^^^^^^^^^^^^^^^^^ the guard of stair S1 is 2'-11\" high: 3'-0\" at the least
floor terrace
  guard         east 36\" high
  guard         west 35\" high, posts blocked
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the guard of floor terrace is 2'-11\" high: 3'-0\" at the least
",
        );
    }
}

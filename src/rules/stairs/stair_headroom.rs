//! Headroom where a flight passes under the edge of its opening.

use crate::geometry::flights::opening_for;
use crate::house::House;
use crate::profiles::stairs::STAIR_HEADROOM;
use crate::rules::{Findings, rule};
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

rule! {
    /// The opening above a stair is too short: heads meet its edge.
    ///
    /// Measured upright from the line of the nosings to the ceiling at the far edge of the opening.
    ///
    /// ## Why
    /// The opening is framed long before the stair. Making it longer afterwards means cutting joists that carry.
    ///
    /// ## Source
    /// Residential code R311.7.2; the limit `stair-headroom`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor      100'-0"
    ///   deck          3/4"
    /// joists J1
    ///   floor         main
    ///   size          2x10 SPF No.2
    /// floor cellar
    ///   subfloor      91'-3"
    /// stair S1
    ///   from          cellar to main
    ///   risers        14
    ///   tread         10"
    ///   opening       9'-0"
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor      100'-0"
    ///   deck          3/4"
    /// joists J1
    ///   floor         main
    ///   size          2x10 SPF No.2
    /// floor cellar
    ///   subfloor      91'-3"
    /// stair S1
    ///   from          cellar to main
    ///   risers        14
    ///   tread         10"
    ///   opening       10'-2"
    /// ```
    "stair-headroom", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let limit = house.limits.of(&STAIR_HEADROOM);
    for (stair, flight) in house.model.stairs.iter().zip(&house.geometry.flights) {
        let (Ok(headroom), Ok(edge), Ok(length)) = (flight.headroom, &flight.edge, flight.opening_length)
        else {
            continue;
        };
        if headroom >= limit.value {
            continue;
        }
        let finding = findings
            .about(
                stair.common.id,
                stair.opening.span().unwrap_or(stair.common.name_span),
                format!(
                    "an opening of {length} leaves {} of headroom over {}: {} at the least",
                    headroom.in_inches(),
                    stair.common.label(),
                    limit.value.in_inches()
                ),
            )
            .note(format!(
                "from the top nosing {length} along, {} risers of {} down; the edge is {} below the upper finish",
                edge.risers,
                edge.rise.shared_by(edge.risers).map(|riser| riser.to_string()).unwrap_or_default(),
                edge.below_finish
            ))
            .help(format!("an opening of {} does", opening_for(edge, limit.value).rounded_up_to(Length::sixteenths(0, 2))))
            .suspects(stair.common.id, "opening")
            .basis(limit.basis());
        // Deeper joists under the floor bring its ceiling down on the stair.
        let floor = stair.to.value().and_then(|floor| floor.target);
        let levels = floor.and_then(|floor| house.geometry.floors.get(floor.index as usize));
        if let Some(Ok(ceiling)) = levels.map(|levels| &levels.ceiling) {
            for element in ceiling.elements() {
                if element.kind == ElementKind::Joists {
                    finding.follows(element);
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// By hand: rise 105" in 14 risers of 7-1/2", treads 10"; the joists' underside is 3/4" + 9-1/4" = 10" below the
    /// upper finish. At 9'-0" the nosing line is 108 × 0.75 = 81" down: 71" of headroom. 80" need 90/0.75 = 120".
    #[test]
    fn adds_up_pitch_and_edge() {
        check_rule(
            &RULE,
            "
floor main
  subfloor      100'-0\"
  deck          3/4\"
joists J1
  floor         main
  size          2x10 SPF No.2
floor cellar
  subfloor      91'-3\"
stair S1
  from          cellar to main
  risers        14
  tread         10\"
  opening       9'-0\"
--              ^^^^^ an opening of 9'-0\" leaves 71\" of headroom over stair S1: 80\" at the least
-- | an opening of 10'-0\" does
",
        );
    }
}

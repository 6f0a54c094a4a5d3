//! The room that a flight comes down into.

use crate::diagnostic::Severity;
use crate::geometry::flights::direction_of;
use crate::house::House;
use crate::model::element::ElementId;
use crate::model::plan::{Axis, PlanPoint, PlanRect};
use crate::model::stairs::{Foot, Stair};
use crate::profiles::stairs::LANDING_DEPTH;
use crate::rules::{Findings, rule};
use crate::units::Length;

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
    for (stair, flight) in house.model.stairs.iter().zip(&house.geometry.flights) {
        let (Ok(run), Some(depth)) = (flight.run, room_depth(house, stair)) else { continue };
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

/// From the top nosing to the far edge of the lower floor, along the flight; `None` when the flight does not lie on it.
fn room_depth(house: &House, stair: &Stair) -> Option<Length> {
    let Foot::Floor(floor) = stair.from.value()? else { return None };
    let top = stair.top.value()?;
    let (axis, climbs_up) = direction_of(stair.climbs.get()?)?;
    let room = extents_of(house, floor.target?).into_iter().filter(|rect| lies_beside(rect, top, axis));
    let far = room.map(|rect| {
        let (low, high) = rect.on(axis);
        if climbs_up { top.on(axis) - low } else { high - top.on(axis) }
    });
    far.max().filter(|depth| depth.is_positive())
}

fn extents_of(house: &House, floor: ElementId) -> Vec<PlanRect> {
    let joists = house
        .model
        .joists
        .iter()
        .filter(|joists| joists.floor.value().and_then(|reference| reference.target) == Some(floor));
    let slab = house.model.floor(floor).and_then(|floor| house.model.slab(floor.on.value()?.target?));
    joists
        .flat_map(|joists| joists.fill.clone())
        .chain(slab.into_iter().flat_map(|slab| slab.fill.clone()))
        .collect()
}

/// True when the flight's line crosses the rectangle.
fn lies_beside(rect: &PlanRect, top: &PlanPoint, axis: Axis) -> bool {
    let across = axis.across();
    let (low, high) = rect.on(across);
    low <= top.on(across) && top.on(across) <= high
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

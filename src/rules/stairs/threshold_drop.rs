//! How far one steps down from a door to its landing outside.

use crate::geometry::carried::Carried;
use crate::geometry::doorways;
use crate::house::House;
use crate::model::element::ElementId;
use crate::model::openings::{Door, Swing};
use crate::model::stairs::LandingBody;
use crate::profiles::stairs::{THRESHOLD_DROP, THRESHOLD_DROP_EGRESS};
use crate::rules::{Findings, rule};
use crate::syntax::vocabulary::ElementKind;

rule! {
    /// The landing at a door lies too far below the threshold, or above it.
    ///
    /// The threshold is the finish of the door's floor and what the door's `threshold` adds. A door that swings over
    /// its landing leaves one standing on it while it opens: then the landing may hardly be lower.
    ///
    /// ## Why
    /// One steps out without looking, in the dark and with full hands. A landing above the threshold lets rain in.
    ///
    /// ## Source
    /// Residential code R311.3.1; the limits `threshold-drop` and `threshold-drop-egress`. That a landing lies not above
    /// the threshold: common practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor      100'-0"
    /// wall WS
    ///   kind          framed
    ///   stands on     main over W9
    /// wall W9
    ///   kind          concrete
    /// door D1
    ///   in            WS
    ///   swings        into main
    ///   landing       SP1
    /// stoop SP1
    ///   at            D1
    ///   top           99'-4"
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor      100'-0"
    /// wall WS
    ///   kind          framed
    ///   stands on     main over W9
    /// wall W9
    ///   kind          concrete
    /// door D1
    ///   in            WS
    ///   swings        into main
    ///   landing       SP1
    /// stoop SP1
    ///   at            D1
    ///   top           99'-4 1/4"
    /// ```
    "threshold-drop", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let carried = Carried::of(&house.model);
    for door in &house.model.doors {
        let Some(landing) = door.landing.value().and_then(|landing| landing.target) else { continue };
        let (Some(body), Some(common)) = (body_of(house, landing), house.model.common(landing)) else {
            continue;
        };
        let (Some((top, span)), Ok(threshold)) =
            (body.top.stated(), doorways::threshold(&house.model, &house.geometry.floors, door))
        else {
            continue;
        };
        let over = swings_over_landing(house, &carried, door);
        let limit = house.limits.of(if over { &THRESHOLD_DROP_EGRESS } else { &THRESHOLD_DROP });
        let drop = threshold.total() - *top;
        let message = if drop.is_negative() {
            format!("{} lies {} above the threshold of {}", common.label(), drop.abs(), door.common.label())
        } else if drop > limit.value {
            let swings = if over { ", which swings over it" } else { "" };
            format!(
                "{} lies {drop} below the threshold of {}{swings}: {} at the most",
                common.label(),
                door.common.label(),
                limit.value
            )
        } else {
            continue;
        };
        let finding = findings
            .about(landing, span, message)
            .related(door.common.name_span, format!("threshold at {}", threshold.total().in_feet()))
            .note(format!("the threshold: {threshold}"))
            .help(format!(
                "put the top of the landing between {} and {}",
                (threshold.total() - limit.value).in_feet(),
                threshold.total().in_feet()
            ))
            .basis(limit.basis());
        for element in threshold.elements() {
            finding.follows(element);
        }
    }
}

fn body_of(house: &House, landing: ElementId) -> Option<&LandingBody> {
    let at = landing.index as usize;
    match landing.kind {
        ElementKind::Stoop => house.model.stoops.get(at).map(|stoop| &stoop.body),
        ElementKind::Landing => house.model.landings.get(at).map(|landing| &landing.body),
        _ => None,
    }
}

/// True when the leaf opens to the side where the door's own floor is not; false as well when that isn't known.
fn swings_over_landing(house: &House, carried: &Carried<'_>, door: &Door) -> bool {
    let Some(Swing::Side(side)) = door.swings.value() else { return false };
    let inside = doorways::floor_of(&house.model, door)
        .and_then(|floor| doorways::side_of(&house.model, carried, door, floor));
    inside.is_some_and(|inside| inside != *side)
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(swings: &str, top: &str, mark: &str) -> String {
        format!(
            "
grid
  x             A 0', B 12'
  y             1 0', 2 10'
floor main
  subfloor      100'-0\"
  deck          3/4\"
  finish        tile 3/4\"
joists J1
  floor         main
  size          2x10 SPF No.2
  fill          A to B by 1 to 2
  run           along y
wall WS
  kind          framed
  from          A/1 to B/1
  line          south face
  thick         6\"
  stands on     main over W9
wall W9
  kind          concrete
door D1
  in            WS
  at            A plus 6' / 1
  size          3'-0\" x 6'-8\"
  swings        {swings}
  landing       SP1
stoop SP1
  at            D1
  top           {top}
{mark}"
        )
    }

    /// R311.3.1 (read in a secondary copy): 7-3/4\" below the threshold passes where the door does not swing over it.
    /// Finish at 100'-0 3/4\"; 7-3/4\" below is 99'-5\".
    #[test]
    fn allows_one_riser_outside() {
        check_rule(&RULE, &house("into main", "99'-5\"", ""));
        check_rule(
            &RULE,
            &house(
                "into main",
                "99'-4 15/16\"",
                "--              ^^^^^^^^^^^^ stoop SP1 lies 7-13/16\" below the threshold of door D1: 7-3/4\" at the most\n",
            ),
        );
    }

    /// The same section: 1-1/2\" otherwise. 100'-0 3/4\" less 1-1/2\" is 99'-11 1/4\".
    #[test]
    fn allows_less_under_the_leaf() {
        check_rule(&RULE, &house("south", "99'-11 1/4\"", ""));
        check_rule(
            &RULE,
            &house(
                "south",
                "99'-11\"",
                "--              ^^^^^^^ stoop SP1 lies 1-3/4\" below the threshold of door D1, which swings over it: 1-1/2\" at the most\n",
            ),
        );
        check_rule(&RULE, &house("north", "99'-11\"", ""));
    }

    #[test]
    fn tells_a_landing_above_the_floor() {
        check_rule(
            &RULE,
            &house(
                "into main",
                "100'-1\"",
                "--              ^^^^^^^ stoop SP1 lies 1/4\" above the threshold of door D1\n",
            ),
        );
    }
}

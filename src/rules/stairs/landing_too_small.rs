//! The size of landings.

use crate::house::House;
use crate::model::element::Common;
use crate::model::stairs::LandingBody;
use crate::profiles::stairs::{DOOR_LANDING_DEPTH, LANDING_DEPTH};
use crate::rules::{Findings, rule};

rule! {
    /// A landing is too small to stand on.
    ///
    /// Landings of stairs and landings at doors are measured in the direction of travel; one at a door is as wide as the
    /// door as well.
    ///
    /// ## Why
    /// One has to stand clear of the door while it opens, with a foot to spare from the first step.
    ///
    /// ## Source
    /// Residential code R311.3 and R311.7.6; the limits `door-landing-depth` and `landing-depth`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// stoop SP1
    ///   size          4'-0" x 2'-6"
    /// ```
    /// ```framing,passes
    /// stoop SP1
    ///   size          4'-0" x 3'-0"
    /// ```
    "landing-too-small", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for stoop in &house.model.stoops {
        judge(house, &stoop.common, &stoop.body, findings);
    }
    for landing in &house.model.landings {
        judge(house, &landing.common, &landing.body, findings);
    }
    let least = house.limits.of(&LANDING_DEPTH);
    for stair in &house.model.stairs {
        for landing in stair.landings.iter().filter(|landing| landing.depth < least.value) {
            findings
                .about(
                    stair.common.id,
                    landing.span,
                    format!(
                        "the {} landing of {} is {} deep: {} at the least",
                        landing.place,
                        stair.common.label(),
                        landing.depth,
                        least.value
                    ),
                )
                .basis(least.basis());
        }
    }
}

fn judge(house: &House, common: &Common, body: &LandingBody, findings: &mut Findings<'_>) {
    let Some(([width, depth], span)) = body.size.stated() else { return };
    let least = house.limits.of(&DOOR_LANDING_DEPTH);
    if *depth < least.value {
        findings
            .about(
                common.id,
                span,
                format!("{} is {depth} deep: {} at the least", common.label(), least.value),
            )
            .help("the second length is the depth, in the direction of travel")
            .basis(least.basis());
        return;
    }
    let door = body.door.value().and_then(|door| house.model.door(door.target?));
    let Some((door, [door_width, _])) = door.and_then(|door| Some((door, door.size.value()?))) else {
        return;
    };
    if width < door_width {
        findings
            .about(
                common.id,
                span,
                format!("{} is {width} wide, {} is {door_width}", common.label(), door.common.label()),
            )
            .help("make it as wide as the door or wider")
            .basis(least.basis());
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// R311.3 (read in a copy of low grade): 36\" in the direction of travel, as wide as the door.
    #[test]
    fn at_the_limits() {
        check_rule(
            &RULE,
            "
door D1
  size      3'-0\" x 6'-8\"
stoop SP1
  at        D1
  size      3'-0\" x 3'-0\"
stoop SP2
  at        D1
  size      2'-11\" x 3'-0\"
--          ^^^^^^^^^^^^^^ stoop SP2 is 2'-11\" wide, door D1 is 3'-0\"
landing LD1
  size      4'-0\" x 2'-11\"
--          ^^^^^^^^^^^^^^ landing LD1 is 2'-11\" deep: 3'-0\" at the least
",
        );
    }
}

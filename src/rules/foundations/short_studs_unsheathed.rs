//! The studs of pony walls on a foundation.

use crate::diagnostic::Severity;
use crate::geometry::surfaces::Surface;
use crate::house::House;
use crate::house::lines;
use crate::model::foundation::{Wall, WallKind};
use crate::model::plan::Axis;
use crate::profiles::foundations::{CRIPPLE_AS_STOREY, CRIPPLE_HEIGHT};
use crate::rules::{Findings, rule};
use crate::units::Length;

rule! {
    /// A pony wall's studs are too short to stand without sheathing, or so long that they make a storey.
    ///
    /// Its height less sole and plates is the length of its studs. Below the limit `cripple-height` they need sheathing
    /// from plate to plate, or solid blocks in their place; beyond `cripple-as-storey` they are sized as a storey.
    ///
    /// ## Why
    /// Short studs are held by nails close to their ends that split them: without sheathing the wall folds sideways, and
    /// the house comes down on its foundation.
    ///
    /// ## Source
    /// Residential code R602.9, from memory.
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall PW1
    ///   kind        pony
    ///   studs       2x6 SPF No.2 at 16"
    ///   height      16"
    /// ```
    /// ```framing,passes
    /// wall PW1
    ///   kind        pony
    ///   studs       2x6 SPF No.2 at 16"
    ///   sheathed    south side
    ///   height      16"
    /// ```
    "short-studs-unsheathed", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let (short, long) = (house.limits.of(&CRIPPLE_HEIGHT), house.limits.of(&CRIPPLE_AS_STOREY));
    for wall in house.model.walls.iter().filter(|wall| wall.kind.get() == Some(WallKind::Pony)) {
        let Some(studs) = stud_length(house, wall) else { continue };
        let span = wall.height.span().unwrap_or(wall.common.name_span);
        if studs > long.value {
            findings
                .about(
                    wall.common.id,
                    span,
                    format!(
                        "the studs of {} are {studs} long: beyond {} they are sized as another storey",
                        wall.common.label(),
                        long.value
                    ),
                )
                .severity(Severity::Warning)
                .help("size its studs and bracing as those of the storey above with one more on top")
                .basis(long.basis());
        } else if studs < short.value && wall.sheathed.is_missing() && !wall.common.has_unread_lines {
            let finding = findings.about(
                wall.common.id,
                span,
                format!(
                    "the studs of {} are {studs} long and not sheathed: below {} they must be",
                    wall.common.label(),
                    short.value
                ),
            );
            for sides in sides_of(wall) {
                let fact = format!("sheathed {sides}");
                if let Some(edit) = lines::added(house, &wall.common, &fact) {
                    finding.choice(format!("add `{fact}`"), edit);
                }
            }
            finding
                .help("say `sheathed` and the side, plate to plate, or build it of solid blocks")
                .basis(short.basis());
        }
    }
}

/// The sides of a wall as `sheathed` names them.
fn sides_of(wall: &Wall) -> Vec<&'static str> {
    let axis = wall.from.value().and_then(|line| line.axis());
    let faces = match axis {
        Some(Axis::X) => ["north side", "south side"],
        Some(Axis::Y) => ["east side", "west side"],
        None => ["left side", "right side"],
    };
    faces.into_iter().chain(["both sides"]).collect()
}

/// From sole to plates; `None` where the height isn't known.
fn stud_length(house: &House, wall: &Wall) -> Option<Length> {
    let surfaces = &house.geometry.surfaces;
    let height =
        match (surfaces.of(wall.common.id, Surface::Top), surfaces.of(wall.common.id, Surface::Bottom)) {
            (Ok(top), Ok(bottom)) => top.total() - bottom.total(),
            _ => wall.height.get()?,
        };
    Some(height - wall.sole.value()?.height()? - wall.plates.value()?.height()?)
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// 18-1/2" less a sole and two plates of 1-1/2" is 14", which passes (from memory); 1/16" less does not.
    #[test]
    fn fourteen_inches_pass() {
        check_rule(&RULE, "\nwall PW1\n  kind        pony\n  height      18-1/2\"\n");
        check_rule(
            &RULE,
            "
wall PW1
  kind        pony
  height      18-7/16\"
--            ^^^^^^^^ the studs of wall PW1 are 1'-1 15/16\" long and not sheathed: below 1'-2\" they must be
",
        );
    }

    /// 52-1/2" less 4-1/2" is 4'-0", which passes; 1/16" more is a storey, sheathed or not (from memory).
    #[test]
    fn beyond_four_feet_it_is_a_storey() {
        check_rule(&RULE, "\nwall PW1\n  kind        pony\n  height      52-1/2\"\n");
        check_rule(
            &RULE,
            "
wall PW1
  kind        pony
  sheathed    both sides
  height      52-9/16\"
--            ^^^^^^^^ the studs of wall PW1 are 4'-0 1/16\" long: beyond 4'-0\" they are sized as another storey
",
        );
    }
}

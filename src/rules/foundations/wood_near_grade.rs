//! The ground outside, against the wood on foundation walls.

use crate::geometry::surfaces::Surface;
use crate::geometry::wood::walls_under_wood;
use crate::house::House;
use crate::profiles::foundations::SILL_ABOVE_GRADE;
use crate::rules::{Findings, rule};

rule! {
    /// Ground reaches too near the wood on a foundation wall.
    ///
    /// Each `grade` line of a concrete or masonry wall is compared with the wall's top, where its sill, its joists or a
    /// framed wall begin.
    ///
    /// ## Why
    /// Rain splashes, snow lies and termites climb: wood close to the ground rots where nobody looks. Treating the sill
    /// alone does not save the rim above it.
    ///
    /// ## Source
    /// Residential code R317.1, read in a secondary copy; the limit `sill-above-grade`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W1
    ///   kind        concrete
    ///   top         99'-0"
    ///   sill        1 of 2x6 treated
    ///   grade       98'-6" on south
    /// ```
    /// ```framing,passes
    /// wall W1
    ///   kind        concrete
    ///   top         99'-0"
    ///   sill        1 of 2x6 treated
    ///   grade       98'-4" on south
    /// ```
    "wood-near-grade", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let least = house.limits.of(&SILL_ABOVE_GRADE);
    let wooden = walls_under_wood(&house.model);
    for wall in house.model.walls.iter().filter(|wall| wooden.contains(&wall.common.id)) {
        let Ok(top) = house.geometry.surfaces.of(wall.common.id, Surface::Top) else { continue };
        // A raked wall is lower somewhere else: its own line says where, and no grade line tells which end is meant.
        if !wall.raked.is_empty() {
            continue;
        }
        let highest = wall.grades.iter().max_by_key(|grade| grade.elevation);
        let Some(grade) = highest.filter(|grade| top.total() - grade.elevation < least.value) else {
            continue;
        };
        let clear = top.total() - grade.elevation;
        let message = if clear.is_negative() {
            format!("the ground stands {} above the wood on {}", clear.abs(), wall.common.label())
        } else {
            format!(
                "the wood on {} begins {clear} above the ground: {} at the least",
                wall.common.label(),
                least.value
            )
        };
        findings
            .about(wall.common.id, grade.span, message)
            .related(
                wall.top.span().unwrap_or(wall.common.name_span),
                format!("its top at {}", top.total().in_feet()),
            )
            .note(format!(
                "{} top of the wall − {} grade = {clear}",
                top.total().in_feet(),
                grade.elevation.in_feet()
            ))
            .help(format!("lower the ground by {}, or raise the wall", least.value - clear))
            .basis(least.basis());
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// 98'-6" less 97'-10 1/16" is 7-15/16"; 8" passes (R317.1, read in a secondary copy).
    #[test]
    fn measures_from_the_highest_ground() {
        check_rule(
            &RULE,
            "
wall W1
  kind        concrete
  top         98'-6\"
  sill        1 of 2x6 treated
  grade       97'-0\" on north
  grade       97'-10 1/16\" on south
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the wood on wall W1 begins 7-15/16\" above the ground: 8\" at the least
-- | lower the ground by 1/16\"
",
        );
        check_rule(
            &RULE,
            "
wall W1
  kind        concrete
  top         98'-6\"
  sill        1 of 2x6 treated
  grade       97'-10\" on south
",
        );
    }

    #[test]
    fn sees_a_pony_wall_on_bare_concrete() {
        check_rule(
            &RULE,
            "
wall W1
  kind        concrete
  top         96'-10\"
  grade       97'-0\" on south
--^^^^^^^^^^^^^^^^^^^^^^^^^^^ the ground stands 2\" above the wood on wall W1
wall PW1
  kind        pony
  stands on   W1
",
        );
    }
}

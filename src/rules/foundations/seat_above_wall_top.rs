//! Beam seats against the tops of the walls they are in.

use crate::geometry::surfaces::Surface;
use crate::house::House;
use crate::rules::{Findings, rule};

rule! {
    /// A beam's seat lies above the top of the wall it is in.
    ///
    /// A seat is concrete. Where the beam's underside is above the wall, the seat is the wall's top, and plate, grout and
    /// shims make up the rest.
    ///
    /// ## Why
    /// There is no concrete up there. The mason is left to build a seat out of mortar on the day the beam arrives.
    ///
    /// ## Source
    /// Common practice: the levels themselves.
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W1
    ///   kind        concrete
    ///   top         99'-0 1/2"
    /// pocket PK1
    ///   in          W1 from east face
    ///   seat        99'-2"
    /// ```
    /// ```framing,passes
    /// wall W1
    ///   kind        concrete
    ///   top         99'-0 1/2"
    /// pocket PK1
    ///   in          W1 from east face
    ///   seat        99'-0 1/2"
    /// ```
    "seat-above-wall-top", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for pocket in &house.model.pockets {
        let Some((seat, span)) = pocket.seat.stated() else { continue };
        let Some(wall) = pocket.wall.value().and_then(|wall| house.model.wall(wall.target?)) else {
            continue;
        };
        let Ok(top) = house.geometry.surfaces.of(wall.common.id, Surface::Top) else { continue };
        if *seat <= top.total() || !wall.raked.is_empty() {
            continue;
        }
        findings
            .about(
                pocket.common.id,
                span,
                format!(
                    "the seat of {} lies {} above the top of {}: there is no concrete to seat on",
                    pocket.common.label(),
                    *seat - top.total(),
                    wall.common.label()
                ),
            )
            .related(
                wall.top.span().unwrap_or(wall.common.name_span),
                format!("its top at {}", top.total().in_feet()),
            )
            .help(format!(
                "seat it at {} and make up the rest with plate, grout and shims",
                top.total().in_feet()
            ))
            .basis("common practice")
            .follows(wall.common.id)
            .follows(pocket.common.id);
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// 99'-0 9/16" less 99'-0 1/2" is 1/16".
    #[test]
    fn says_by_how_much() {
        check_rule(
            &RULE,
            "
wall W1
  kind        concrete
  top         99'-0 1/2\"
pocket PK1
  in          W1 from east face
  seat        99'-0 9/16\"
--            ^^^^^^^^^^^ the seat of pocket PK1 lies 1/16\" above the top of wall W1: there is no concrete to seat on
",
        );
    }
}

//! The ground above the underside of footings.

use crate::geometry::enclosure::outdoor_grades;
use crate::geometry::footing_steps::{drop_at, drops_along};
use crate::geometry::surfaces::Surface;
use crate::house::House;
use crate::model::foundation::{Footing, Grade, Wall};
use crate::profiles::foundations::FOOTING_DEPTH;
use crate::rules::{Findings, rule};
use crate::units::Length;

rule! {
    /// A footing lies less deep than frost reaches.
    ///
    /// Each `grade` line of the walls on a strip footing is compared with the underside of the footing there, steps
    /// counted. Without a frost depth the least depth of the limit `footing-depth` holds.
    ///
    /// ## Why
    /// Ground that freezes under a footing lifts it, and the house with it.
    ///
    /// ## Source
    /// Residential code R403.1.4 and R403.1.4.1; frost depth is the project's own.
    ///
    /// ## Examples
    /// ```framing,fires
    /// project "Shed"
    ///   frost       42"
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0'
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   grade       98'-0" on south
    ///   stands on   F1
    /// footing F1
    ///   under       W1
    ///   size        16" x 8"
    ///   top         95'-6"
    /// ```
    /// ```framing,passes
    /// project "Shed"
    ///   frost       42"
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0'
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   grade       98'-0" on south
    ///   stands on   F1
    /// footing F1
    ///   under       W1
    ///   size        16" x 8"
    ///   top         95'-2"
    /// ```
    "frost-depth", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let frost = house.model.project.as_ref().and_then(|project| project.frost.stated());
    let least = house.limits.of(&FOOTING_DEPTH);
    for footing in &house.model.footings {
        let Ok(bottom) = house.geometry.surfaces.of(footing.common.id, Surface::Bottom) else { continue };
        let (needed, basis) = match frost {
            Some((frost, _)) if *frost > least.value => {
                (*frost, "R403.1.4.1; the project's `frost`".to_owned())
            }
            Some(_) | None => (least.value, least.basis()),
        };
        let Some(Shallow { grade, wall, cover }) = shallowest(house, footing, bottom.total()) else {
            continue;
        };
        if cover >= needed {
            continue;
        }
        let finding = findings.about(
            footing.common.id,
            footing.top.span().unwrap_or(footing.common.name_span),
            format!(
                "the underside of {} lies {cover} below the grade at {}: {needed} at the least",
                footing.common.label(),
                wall.common.label()
            ),
        );
        finding.suspects(footing.common.id, "bottom");
        finding.related(grade.span, format!("grade at {}", grade.elevation.in_feet()));
        finding.note(format!("underside at {}: {bottom}", (grade.elevation - cover).in_feet()));
        if let Some((_, span)) = frost {
            finding.related(span, "the frost depth");
        }
        finding.help(format!("lower the footing by {}", needed - cover)).basis(basis);
    }
}

/// The place of a footing with the least ground above its underside.
struct Shallow<'a> {
    grade: &'a Grade,
    wall: &'a Wall,
    cover: Length,
}

fn shallowest<'a>(house: &'a House, footing: &Footing, bottom: Length) -> Option<Shallow<'a>> {
    let walls = footing.under.iter().filter_map(|wall| house.model.wall(wall.target?));
    let places =
        walls.flat_map(|wall| outdoor_grades(&house.model, wall).into_iter().map(move |grade| (wall, grade)));
    let covers = places.filter_map(|(wall, grade)| {
        let dropped = match grade.at {
            Some(at) => drop_at(&house.model, footing, at.axis, at.at)?,
            None => drops_along(&house.model, footing, wall)?.0,
        };
        Some(Shallow { grade, wall, cover: grade.elevation - (bottom - dropped) })
    });
    covers.min_by_key(|place| place.cover)
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// 96'-0" less (93'-8" less 10") is 38"; the frost line is at 42".
    #[test]
    fn says_by_how_much() {
        check_rule(
            &RULE,
            "
project \"Shed\"
  frost       42\"
grid
  x           A 0', B 12'
  y           1 0'
wall W1
  kind        concrete
  from        A/1 to B/1
  grade       96'-0\" on south
  stands on   F1
footing F1
  under       W1
  size        20\" x 10\"
  top         93'-8\"
--            ^^^^^^ the underside of footing F1 lies 3'-2\" below the grade at wall W1: 3'-6\" at the least
-- | lower the footing by 4\"
",
        );
    }

    /// Ground that falls by 2' where the footing steps down by 2' is as deep as before.
    #[test]
    fn follows_the_steps_of_a_footing() {
        let house = |step: &str, mark: &str| {
            format!(
                "
project \"Shed\"
  frost       42\"
grid
  x           A 0', B 20'
  y           1 0'
wall W1
  kind        concrete
  from        A/1 to B/1
  grade       98'-0\" on south at A
  grade       96'-0\" on south at B
  stands on   F1
footing F1
  under       W1
  size        20\" x 10\"
  top         95'-4\"
{mark}  step        down {step} at A plus 10'
"
            )
        };
        check_rule(&RULE, &house("2'", ""));
        check_rule(
            &RULE,
            &house(
                "1'-11\"",
                "--            ^^^^^^ the underside of footing F1 lies 3'-5\" below the grade at wall W1: 3'-6\" at the least\n",
            ),
        );
    }
}

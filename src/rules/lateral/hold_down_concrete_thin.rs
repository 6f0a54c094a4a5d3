//! Hold-downs against the concrete they are cast into.

use crate::geometry::hold_downs::concrete_under;
use crate::house::House;
use crate::rules::{Findings, rule};

rule! {
    /// A hold-down is cast into thinner concrete than its capacity was declared for.
    ///
    /// The concrete is that of the wall below, as the framed wall says what it stands over; beside a shelf it is the
    /// upstand alone.
    ///
    /// ## Why
    /// Near a face the concrete breaks out long before the strap gives way. Beside a shelf 4" are left of a wall that is
    /// 10" thick on every other sheet.
    ///
    /// ## Source
    /// Common practice: a capacity holds for the thickness and the edge it was declared with.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0'
    /// wall W1
    ///   kind        concrete
    ///   thick       10"
    /// shelf SH1
    ///   in          W1 from north face
    ///   width       6"
    /// floor main
    /// wall W2
    ///   kind        framed
    ///   from        A/1 to B/1
    ///   hold down   at A plus 6" by "cast-in strap" 2900 lb in 8" of concrete source "invented"
    ///   stands on   main over W1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0'
    /// wall W1
    ///   kind        concrete
    ///   thick       10"
    /// shelf SH1
    ///   in          W1 from north face
    ///   width       6"
    /// floor main
    /// wall W2
    ///   kind        framed
    ///   from        A/1 to B/1
    ///   hold down   at A plus 6" by "cast-in strap" 1200 lb in 4" of concrete source "invented"
    ///   stands on   main over W1
    /// ```
    "hold-down-concrete-thin", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for wall in &house.model.walls {
        for held in &wall.hold_downs {
            let Some(concrete) = concrete_under(&house.model, wall, &held.at) else { continue };
            let Some(below) = house.model.common(concrete.wall).filter(|_| concrete.thick < held.concrete)
            else {
                continue;
            };
            let shelf = concrete.shelf.and_then(|shelf| house.model.common(shelf));
            let place = match shelf {
                Some(shelf) => format!("{} leaves {} of {}", shelf.label(), concrete.thick, below.label()),
                None => format!("{} is {} thick", below.label(), concrete.thick),
            };
            let finding = findings.about(
                wall.common.id,
                held.span,
                format!(
                    "a hold-down of {} is declared for {} of concrete, and {place}",
                    wall.common.label(),
                    held.concrete
                ),
            );
            finding
                .related(shelf.unwrap_or(below).name_span, shelf.unwrap_or(below).label())
                .help("take the capacity for this thickness from its source, move it, or thicken the concrete there")
                .follows(concrete.wall)
                .basis("common practice");
            if let Some(shelf) = concrete.shelf {
                finding.follows(shelf);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn a_shelf_takes_its_width_where_it_reaches() {
        let house = |at: &str, mark: &str| {
            format!(
                "
grid
  x           A 0', B 20'
  y           1 0'
wall W1
  kind        concrete
  thick       10\"
shelf SH1
  in          W1 from north face from A to A plus 8'
  width       6\"
wall PW1
  kind        pony
  stands on   W1
floor main
wall W2
  kind        framed
  from        A/1 to B/1
  hold down   at {at} by \"cast-in strap\" 2900 lb in 8\" of concrete source \"invented\"
{mark}  stands on   main over PW1
"
            )
        };
        check_rule(&RULE, &house("A plus 9'", ""));
        check_rule(
            &RULE,
            &house(
                "A plus 8'",
                "--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ a hold-down of wall W2 is declared for 8\" of concrete, and shelf SH1 leaves 4\" of wall W1\n",
            ),
        );
    }
}

//! Drains against the joists of their floor.

use crate::geometry::carried::Carried;
use crate::geometry::layout::{half_thickness, nearest_joist};
use crate::house::House;
use crate::profiles::framing::{CLOSET_HOLE, DRAIN_CLEARANCE};
use crate::rules::{Findings, rule};
use crate::units::Length;

rule! {
    /// A drain comes down on a joist.
    ///
    /// The layout of the joists follows from their spacing and its origin. The hole needs its half width and a little
    /// air beside the nearest joist.
    ///
    /// ## Why
    /// The plumber finds out with a saw in hand, and the joist is cut.
    ///
    /// ## Source
    /// Common practice: the limits `closet-hole` (when the drain does not state its hole) and `drain-clearance`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 10'
    /// floor main
    ///   subfloor    100'-0"
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    ///   spacing     16" from A
    /// drain D1
    ///   floor       main
    ///   at          A plus 2'-9" / 1 plus 3'
    ///   hole        4"
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 10'
    /// floor main
    ///   subfloor    100'-0"
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    ///   spacing     16" from A
    /// drain D1
    ///   floor       main
    ///   at          A plus 3'-4" / 1 plus 3'
    ///   hole        4"
    /// ```
    "drain-on-joist", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let air = house.limits.of(&DRAIN_CLEARANCE);
    let carried = Carried::of(&house.model);
    for drain in &house.model.drains {
        let (Some((at, span)), Some(floor)) =
            (drain.at.stated(), drain.floor.value().and_then(|floor| floor.target))
        else {
            continue;
        };
        if drain.hole.is_broken() {
            continue;
        }
        let hole = drain.hole.get().unwrap_or(house.limits.of(&CLOSET_HOLE).value);
        let needed = hole.half() + air.value;
        let fields = carried.fields_of(floor).iter();
        let fields = fields.filter(|joists| joists.fill.iter().any(|rect| rect.contains(at)));
        for joists in fields {
            let Some(across) = joists.run.get().map(|run| run.across()) else { continue };
            let place = at.on(across);
            let (Some(joist), Some(half)) = (nearest_joist(joists, place), half_thickness(joists)) else {
                continue;
            };
            let clear = (place - joist).abs() - half;
            if clear >= needed {
                continue;
            }
            let origin = joists.spacing.get().map(|spacing| spacing.origin.at).unwrap_or_default();
            let away = needed - clear;
            let shift = if place >= joist { away } else { -away };
            findings
                .about(
                    drain.common.id,
                    span,
                    format!(
                        "the middle of {} is {} the joist at {} of {}: it needs {needed}",
                        drain.common.label(),
                        off(clear),
                        (joist - origin),
                        joists.common.name
                    ),
                )
                .related(joists.spacing.span().unwrap_or(joists.common.name_span), "the layout of the joists")
                .note(format!("half of a {hole} hole and {} of air", air.value))
                .help(format!(
                    "move the drain {} away from the joist, move the layout by as much, or head the joist off",
                    shift.abs()
                ))
                .basis(air.basis());
        }
    }
}

/// How far from the joist's face, on its either side.
fn off(clear: Length) -> String {
    if clear.is_negative() { format!("{} inside", clear.abs()) } else { format!("{clear} clear of") }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// A drain so far east of line A, with what is said of that place; joists 1-1/2" wide stand at 0'-0", 1'-4", 2'-8".
    /// Half of its 3" and 1/2" of air make 2" (common practice).
    fn check(east_of_a: &str, said: &str, help: &str) {
        let text = format!(
            "
grid
  x           A 0', B 12'
  y           1 0', 2 10'
floor main
  subfloor    100'-0\"
joists J1
  floor       main
  size        2x10 SPF No.2
  fill        A to B by 1 to 2
  run         along y
  spacing     16\" from A
drain D1
  floor       main
  at          A plus {east_of_a} / 1 plus 3'
--            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the middle of drain D1 is {said} the joist at 2'-8\" of J1: it needs 2\"
-- | {help}
  hole        3\"
"
        );
        check_rule(&RULE, &text);
    }

    /// 33-1/2" is 1-1/2" from the middle of the third joist, 3/4" from its face.
    #[test]
    fn measures_from_the_face() {
        check("2'-9 1/2\"", "3/4\" clear of", "move the drain 1-1/4\" away");
    }

    /// 32-1/4" is 1/4" beside the middle of that joist, 1/2" inside its face.
    #[test]
    fn a_middle_on_the_joist_is_inside_it() {
        check("2'-8 1/4\"", "1/2\" inside", "move the drain 2-1/2\" away");
    }
}

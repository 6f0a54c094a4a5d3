//! The opening of a stair against the stair.

use crate::geometry::flights::direction_of;
use crate::house::House;
use crate::model::openings::Opening;
use crate::model::stairs::{Stair, StairOpening};
use crate::profiles::stairs::OPENING_SLACK;
use crate::rules::{Findings, rule};

rule! {
    /// The opening in the floor does not fit the stair that comes up through it.
    ///
    /// The top nosing lies on the edge towards which the stair climbs, and the opening is at least as wide as the stair
    /// on both sides of its middle. How long the opening is, headroom decides.
    ///
    /// ## Why
    /// A stair drawn on one sheet and an opening on another drift apart; the opening is framed first.
    ///
    /// ## Source
    /// Common practice: the limit `opening-slack`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 20'
    /// opening O1
    ///   fill        A plus 2' to A plus 12' by 1 plus 2' to 1 plus 5'
    /// stair S1
    ///   width       3'-0"
    ///   top         at A plus 11' / 1 plus 3'-6"
    ///   climbs      east
    ///   opening     O1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 20'
    /// opening O1
    ///   fill        A plus 2' to A plus 12' by 1 plus 2' to 1 plus 5'
    /// stair S1
    ///   width       3'-0"
    ///   top         at A plus 12' / 1 plus 3'-6"
    ///   climbs      east
    ///   opening     O1
    /// ```
    "opening-misses-stair", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for stair in &house.model.stairs {
        let Some(StairOpening::Named(reference)) = stair.opening.value() else { continue };
        let opening = reference.target.and_then(|opening| house.model.opening(opening));
        if let Some(opening) = opening {
            along(house, stair, opening, findings);
            across(house, stair, opening, findings);
        }
    }
}

/// The top nosing against the edge it should lie on.
fn along(house: &House, stair: &Stair, opening: &Opening, findings: &mut Findings<'_>) {
    let slack = house.limits.of(&OPENING_SLACK);
    let (Some((top, span)), Some((axis, is_up)), Some(rect)) =
        (stair.top.stated(), stair.climbs.get().and_then(direction_of), opening.fill.first())
    else {
        return;
    };
    let (low, high) = rect.on(axis);
    let edge = if is_up { high } else { low };
    let off = (top.on(axis) - edge).abs();
    if off <= slack.value {
        return;
    }
    let is_inside = low < top.on(axis) && top.on(axis) < high;
    findings
        .about(
            stair.common.id,
            span,
            format!(
                "the top nosing of {} lies {off} {} the edge of {} towards which it climbs",
                stair.common.label(),
                if is_inside { "inside" } else { "past" },
                opening.common.label()
            ),
        )
        .related(rect.span, opening.common.label())
        .help("move the stair or the edge of the opening")
        .follows(opening.common.id)
        .suspects(stair.common.id, "opening")
        .basis(slack.basis());
}

/// The width of the stair between the sides of the opening.
fn across(house: &House, stair: &Stair, opening: &Opening, findings: &mut Findings<'_>) {
    let slack = house.limits.of(&OPENING_SLACK);
    let (Some(top), Some((axis, _)), Some((width, span)), Some(rect)) = (
        stair.top.value(),
        stair.climbs.get().and_then(direction_of),
        stair.width.stated(),
        opening.fill.first(),
    ) else {
        return;
    };
    let (low, high) = rect.on(axis.across());
    let middle = top.on(axis.across());
    let over = (low - (middle - width.half())).max(middle + width.half() - high);
    if over <= slack.value {
        return;
    }
    findings
        .about(
            stair.common.id,
            span,
            format!(
                "{} is {width} wide and reaches {over} past the side of {}, which is {} wide",
                stair.common.label(),
                opening.common.label(),
                high - low
            ),
        )
        .related(rect.span, opening.common.label())
        .help("widen the opening, or move the stair to its middle")
        .follows(opening.common.id)
        .suspects(stair.common.id, "opening")
        .basis(slack.basis());
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn stair(top: &str, width: &str, marks: (&str, &str)) -> String {
        format!(
            "
grid
  x           A 0', B 20'
  y           1 0', 2 20'
opening O1
  fill        A plus 2' to A plus 12' by 1 plus 2' to 1 plus 5'
stair S1
  width       {width}
{}  top         at {top}
{}  climbs      west
  opening     O1
",
            marks.0, marks.1
        )
    }

    /// Climbing west, the edge is at 2'-0\"; 1\" of slack (common practice).
    #[test]
    fn at_the_limit() {
        check_rule(&RULE, &stair("A plus 2'-1\" / 1 plus 3'-6\"", "3'-0\"", ("", "")));
        check_rule(
            &RULE,
            &stair(
                "A plus 2'-1 1/8\" / 1 plus 3'-6\"",
                "3'-0\"",
                (
                    "",
                    "--               ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the top nosing of stair S1 lies 1-1/8\" inside the edge of opening O1 towards which it climbs\n",
                ),
            ),
        );
    }

    /// 3'-0\" about 3'-9\" reach to 5'-3\": 3\" past 5'-0\".
    #[test]
    fn measures_across_as_well() {
        check_rule(
            &RULE,
            &stair(
                "A plus 2' / 1 plus 3'-9\"",
                "3'-0\"",
                (
                    "--            ^^^^^ stair S1 is 3'-0\" wide and reaches 3\" past the side of opening O1, which is 3'-0\" wide\n",
                    "",
                ),
            ),
        );
    }
}

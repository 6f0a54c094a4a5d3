//! Where a foundation wall steps, against the edge of the floor it steps for.

use crate::geometry::carried::Carried;
use crate::geometry::drops::stepping_floors;
use crate::geometry::surfaces::{joist_bottom, under_sill};
use crate::geometry::wall_lines::{LineStep, steps_in_line};
use crate::house::House;
use crate::model::foundation::Wall;
use crate::model::framing::Joists;
use crate::model::plan::Axis;
use crate::profiles::foundations::STEP_STATION;
use crate::profiles::levels::CLOSURE_TOLERANCE;
use crate::rules::{Findings, rule};
use crate::text::Span;
use crate::units::Length;

rule! {
    /// A foundation wall steps somewhere else than the floor on it.
    ///
    /// Where two concrete walls in one line have different tops, and the higher is the height of the upper of two floors
    /// that step: its deck has to end where the wall steps, within the limit `step-station`.
    ///
    /// ## Why
    /// Where the low wall runs on under the upper floor, its joists hang over a wall that is a foot too low. Where the
    /// high wall runs on, it stands in the lower floor.
    ///
    /// ## Source
    /// Common practice: the plan's own coordinates.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 14', 3 28'
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// floor den
    ///   subfloor    98'-6"
    ///   deck        3/4"
    ///   steps down  from main by 3 risers
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to A / 2 plus 6"
    ///   thick       8"
    ///   top         97'-6 1/2"
    ///   sill        1 of 2x6 treated
    /// wall W2
    ///   kind        concrete
    ///   from        A / 2 plus 6" to A/3
    ///   thick       8"
    ///   top         99'-0 1/2"
    ///   sill        1 of 2x6 treated
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 2 to 3
    ///   run         along x
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 14', 3 28'
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// floor den
    ///   subfloor    98'-6"
    ///   deck        3/4"
    ///   steps down  from main by 3 risers
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to A/2
    ///   thick       8"
    ///   top         97'-6 1/2"
    ///   sill        1 of 2x6 treated
    /// wall W2
    ///   kind        concrete
    ///   from        A/2 to A/3
    ///   thick       8"
    ///   top         99'-0 1/2"
    ///   sill        1 of 2x6 treated
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 2 to 3
    ///   run         along x
    /// ```
    "step-at-wrong-station", Warning
}

/// How far from a wall's step the edge of the floor it steps for may be looked for.
const REACH: Length = Length::feet(3);

fn check(house: &House, findings: &mut Findings<'_>) {
    let limit = house.limits.of(&STEP_STATION);
    let carried = Carried::of(&house.model);
    let floors = stepping_floors(&house.model, &house.geometry);
    if floors.is_empty() {
        return;
    }
    for step in steps_in_line(&house.model, &house.geometry.surfaces) {
        let fields = floors.iter().flat_map(|(upper, _)| carried.fields_of(*upper));
        let edge = fields
            .filter(|joists| carries_at_its_level(house, step.high, step.high_top, joists))
            .filter_map(|joists| Some((joists.common.id, nearest_edge(joists, &step)?)))
            .min_by_key(|(_, (edge, _))| (*edge - step.high_end).abs());
        let Some((joists, (edge, edge_span))) =
            edge.filter(|(_, (edge, _))| (*edge - step.high_end).abs() <= REACH)
        else {
            continue;
        };
        // Both counted into the upper floor.
        let into = |place: Length| if step.rises { place - edge } else { edge - place };
        let (low_under, high_out) = (into(step.low_end), -into(step.high_end));
        let (wall, message) = if low_under > limit.value {
            let message = format!(
                "{} runs {low_under} under the floor that lies on {}: its joists hang over it",
                step.low.common.label(),
                step.high.common.label()
            );
            (step.low, message)
        } else if high_out > limit.value {
            let message = format!(
                "{} runs {high_out} past the edge of the floor on it, into the lower floor",
                step.high.common.label()
            );
            (step.high, message)
        } else {
            continue;
        };
        findings
            .about(wall.common.id, wall.from.span().unwrap_or(wall.common.name_span), message)
            .related(edge_span, "the edge of the upper floor")
            .help("let the wall step where the floor does")
            .basis(limit.basis())
            .suspects(joists, "edge");
    }
}

/// True when joists lie as high as the sill on a wall: whether they bear on it or run along it.
fn carries_at_its_level(house: &House, wall: &Wall, top: Length, joists: &Joists) -> bool {
    let tolerance = house.limits.of(&CLOSURE_TOLERANCE).value;
    joist_bottom(&house.geometry.floors, joists)
        .and_then(|bottom| under_sill(bottom, &wall.sill, wall.common.id))
        .is_ok_and(|concrete| (concrete.total() - top).abs() < tolerance)
}

/// The edge of a field's deck that lies nearest to a step, along the wall. `None` for a field beside another wall.
fn nearest_edge(joists: &Joists, step: &LineStep<'_>) -> Option<(Length, Span)> {
    let across: Axis = step.axis.across();
    let line = step.high.from.value()?.from.on(across);
    let reach = step.high.thick.get()?;
    let here = joists.fill.iter().filter(|rect| {
        let (low, high) = rect.on(across);
        low - reach <= line && line <= high + reach
    });
    let nearest =
        |edges: Vec<(Length, Span)>| edges.into_iter().min_by_key(|(edge, _)| (*edge - step.high_end).abs());
    let fill: Vec<(Length, Span)> = here
        .flat_map(|rect| {
            let (low, high) = rect.on(step.axis);
            [(low, rect.span), (high, rect.span)]
        })
        .collect();
    let filled = nearest(fill).filter(|_| !joists.common.may_say("deck edge"))?;
    let edges = joists.deck_edges.iter().filter(|edge| edge.axis == step.axis);
    // A deck edge beside the fill's own edge stands for it.
    let deck = nearest(edges.map(|edge| (edge.at, edge.span)).collect());
    Some(deck.filter(|(edge, _)| (*edge - filled.0).abs() <= Length::feet(1)).unwrap_or(filled))
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(first: &str, second: &str) -> String {
        format!(
            "
grid
  x           A 0', B 12'
  y           1 0', 2 14', 3 28'
floor main
  subfloor    100'-0\"
  deck        3/4\"
floor den
  subfloor    98'-6\"
  deck        3/4\"
  steps down  from main by 3 risers
joists J1
  floor       main
  size        2x10 SPF No.2
  fill        A to B by 2 to 3
  run         along x
wall W1
  kind        concrete
  thick       8\"
  top         97'-6 1/2\"
  sill        1 of 2x6 treated
{first}wall W2
  kind        concrete
  thick       8\"
  top         99'-0 1/2\"
  sill        1 of 2x6 treated
{second}"
        )
    }

    /// 1/2" either way passes (common practice); 5-1/2" do not.
    #[test]
    fn both_ways() {
        check_rule(
            &RULE,
            &house("  from        A/1 to A / 2 plus 1/2\"\n", "  from        A / 2 plus 1/2\" to A/3\n"),
        );
        check_rule(
            &RULE,
            &house(
                "  from        A/1 to A / 2 plus 5-1/2\"
--            ^^^^^^^^^^^^^^^^^^^^^^^^ wall W1 runs 5-1/2\" under the floor that lies on wall W2: its joists hang over it
",
                "  from        A / 2 plus 5-1/2\" to A/3\n",
            ),
        );
        check_rule(
            &RULE,
            &house(
                "  from        A/1 to A / 2 less 5-1/2\"\n",
                "  from        A / 2 less 5-1/2\" to A/3
--            ^^^^^^^^^^^^^^^^^^^^^^^^ wall W2 runs 5-1/2\" past the edge of the floor on it, into the lower floor
",
            ),
        );
    }
}

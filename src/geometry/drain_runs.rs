//! The way a drain's pipe takes below its floor, and how far it has fallen.

use crate::geometry::flights::direction_of;
use crate::geometry::passages::Way;
use crate::model::openings::Drain;
use crate::model::plan::Axis;
use crate::text::Span;
use crate::units::Length;

/// One straight run of a drain's pipe.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PipeRun {
    /// Its way in plan.
    pub way: Way,
    /// How far the pipe has fallen where it begins.
    pub fallen: Length,
    /// How far it falls along it.
    pub falls: Length,
    /// The line.
    pub span: Span,
}

/// The runs of a drain, each from the end of the one before; `least_fall` in a foot where a line says none. They end
/// before one to a hand: a pipe has none.
pub fn runs_of(drain: &Drain, least_fall: Length) -> Vec<PipeRun> {
    let mut runs = Vec::new();
    let Some(mut place) = drain.at.get() else { return runs };
    let mut fallen = Length::ZERO;
    for run in &drain.runs {
        let Some((axis, is_up)) = direction_of(run.value.side) else { break };
        let length = if is_up { run.value.length } else { -run.value.length };
        let from = place.on(axis);
        let way = Way { axis, from, to: from + length, at: place.on(axis.across()) };
        let falls = fall_over(run.value.length, run.value.fall.unwrap_or(least_fall));
        runs.push(PipeRun { way, fallen, falls, span: run.span });
        fallen += falls;
        match axis {
            Axis::X => place.x = way.to,
            Axis::Y => place.y = way.to,
        }
    }
    runs
}

/// How far a pipe falls over a length.
fn fall_over(length: Length, in_a_foot: Length) -> Length {
    in_a_foot.scaled(length.to_inches() / Length::feet(1).to_inches())
}

#[cfg(test)]
mod tests {
    use super::runs_of;
    use crate::testing::rule_check::house;
    use crate::units::Length;

    /// By hand: 8' at 1/4" are 2", then 6' at the least of 1/8" are 3/4".
    #[test]
    fn a_run_begins_where_the_one_before_ends() {
        let house = house(
            "
grid
  x           A 0', B 12'
  y           1 0', 2 20'
drain D1
  at          A plus 3' / 2
  runs        south 8'-0\" at 1/4\" per foot
  runs        east 6'-0\"
",
        );
        let runs = runs_of(house.model.drains.first().unwrap(), Length::sixteenths(0, 2));
        let said: Vec<[Length; 5]> =
            runs.iter().map(|run| [run.way.from, run.way.to, run.way.at, run.fallen, run.falls]).collect();
        let feet = Length::feet;
        assert_eq!(
            said,
            [
                [feet(20), feet(12), feet(3), Length::ZERO, Length::inches(2)],
                [feet(3), feet(9), feet(12), Length::inches(2), Length::sixteenths(0, 12)],
            ]
        );
    }
}

//! Promises that nothing can check.

use crate::geometry::alignment::offset;
use crate::geometry::wall_face::breaks;
use crate::house::House;
use crate::model::element::{Common, ElementId};
use crate::model::promises::Promise;
use crate::rules::{Findings, rule};

rule! {
    /// A promise of the design is written down, but there is nothing to compare.
    ///
    /// Two things that have no place in plan, or run across each other, do not stand over each other; a wall whose line
    /// is its centre does not say which face goes straight on.
    ///
    /// ## Why
    /// The line looks like a check. It is none, and somebody must look.
    ///
    /// ## Source
    /// The format's own rule: a check that did not run is never one that passed.
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W1
    /// wall W2
    /// intent "Line up"
    ///   keep  W1 over W2
    /// ```
    /// ```framing,passes
    /// grid
    ///   x      A 0', B 12'
    ///   y      1 0', 2 10'
    /// beam B1
    ///   size   3-ply 2x10 SPF No.2
    ///   from   A/1 to B/1
    /// beam B2
    ///   size   3-ply 2x10 SPF No.2
    ///   from   A/1 to B/1
    /// intent "Line up"
    ///   keep   B1 over B2
    /// ```
    "promise-not-checked", Advice
}

fn check(house: &House, findings: &mut Findings<'_>) {
    // What has no place because its lines can't be read is said there.
    let are_read = |elements: &[ElementId]| {
        let mut commons = elements
            .iter()
            .filter_map(|element| house.model.common(*element))
            .chain(&house.model.grid.common);
        commons.all(Common::is_read_whole)
    };
    for intent in &house.model.intents {
        for promise in &intent.promises {
            let span = match promise {
                Promise::Over(above, below, _, span) => {
                    let pair = above.target.zip(below.target);
                    pair.filter(|(above, below)| are_read(&[*above, *below]))
                        .filter(|(above, below)| offset(&house.model, *above, *below).is_none())
                        .map(|_| *span)
                }
                Promise::StraightFace(wall, line, span) => {
                    let wall = wall.target.and_then(|wall| house.model.wall(wall));
                    wall.filter(|_| house.model.walls.iter().all(|wall| wall.common.is_read_whole()))
                        .filter(|wall| breaks(&house.model, wall, line).is_none())
                        .map(|_| *span)
                }
                Promise::Holds(_)
                | Promise::NothingBelowCeiling(..)
                | Promise::NoColumn(..)
                | Promise::Meeting(..)
                | Promise::StepFree(..)
                | Promise::Level(..) => None,
            };
            let Some(span) = span else { continue };
            findings.about(
                intent.common.id,
                span,
                format!(
                    "this promise of \"{}\" is not checked: there is nothing to compare in plan; look at it yourself",
                    intent.common.name
                ),
            );
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn what_runs_across_is_said() {
        check_rule(
            &RULE,
            "
grid
  x         A 0', B 12'
  y         1 0', 2 10'
beam B1
  size      3-ply 2x10 SPF No.2
  from      A/1 to B/1
beam B2
  size      3-ply 2x10 SPF No.2
  from      A/1 to A/2
wall W1
  kind      concrete
  from      A/1 to B/1
  line      centre
  thick     8\"
intent \"Line up\"
  keep      B1 over B2
--^^^^^^^^^^^^^^^^^^^^ this promise of \"Line up\" is not checked: there is nothing to compare in plan; look at it yourself
  keep      B1 over W1
  keep      face of W1 straight from A/1 to B/1
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ this promise of \"Line up\" is not checked: there is nothing to compare in plan; look at it yourself
",
        );
    }
}

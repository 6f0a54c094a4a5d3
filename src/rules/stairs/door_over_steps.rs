//! Doors against the steps beside them.

use std::collections::HashMap;

use crate::geometry::carried::Carried;
use crate::geometry::doorways;
use crate::geometry::stair_plan::{flight, overlap};
use crate::house::House;
use crate::model::element::ElementId;
use crate::model::plan::PlanRect;
use crate::model::stairs::{Foot, Stair};
use crate::rules::{Findings, rule};

rule! {
    /// A door swings over steps.
    ///
    /// The square that a door's leaf sweeps is compared with the treads of every stair that begins or ends on the door's
    /// floor.
    ///
    /// ## Why
    /// Whoever opens it from the room steps into nothing; whoever comes up meets the leaf.
    ///
    /// ## Source
    /// Residential code R311.7.6 (from memory).
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 20'
    /// floor main
    ///   subfloor    100'-0"
    /// wall W1
    ///   kind        framed
    ///   stands on   main over W9
    /// wall W9
    ///   kind        concrete
    /// door D1
    ///   in          W1
    ///   at          A plus 10' / 1 plus 10'
    ///   size        3'-0" x 6'-8"
    ///   swings      south
    /// stair S1
    ///   from        grade to main
    ///   risers      4
    ///   tread       10"
    ///   width       3'-0"
    ///   top         at A plus 10' / 1 plus 9'
    ///   climbs      north
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 20'
    /// floor main
    ///   subfloor    100'-0"
    /// wall W1
    ///   kind        framed
    ///   stands on   main over W9
    /// wall W9
    ///   kind        concrete
    /// door D1
    ///   in          W1
    ///   at          A plus 10' / 1 plus 10'
    ///   size        3'-0" x 6'-8"
    ///   swings      north
    /// stair S1
    ///   from        grade to main
    ///   risers      4
    ///   tread       10"
    ///   width       3'-0"
    ///   top         at A plus 10' / 1 plus 9'
    ///   climbs      north
    /// ```
    "door-over-steps", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let model = &house.model;
    let mut flights: HashMap<ElementId, Vec<(&Stair, PlanRect)>> = HashMap::new();
    for stair in &model.stairs {
        let Some(treads) = flight(stair) else { continue };
        for floor in ends_of(stair) {
            flights.entry(floor).or_default().push((stair, treads));
        }
    }
    let carried = Carried::of(model);
    for door in &model.doors {
        let (Some(floor), Some(sweep)) =
            (doorways::floor_of(model, door), doorways::sweep(model, &carried, door))
        else {
            continue;
        };
        for (stair, treads) in flights.get(&floor).into_iter().flatten() {
            let Some((x, y)) = overlap(&sweep, treads) else { continue };
            findings
                .about(
                    door.common.id,
                    door.swings.span().unwrap_or(door.common.name_span),
                    format!(
                        "{} swings over the treads of {}: {x} by {y} of its sweep",
                        door.common.label(),
                        stair.common.label()
                    ),
                )
                .related(stair.common.name_span, stair.common.label())
                .help("let it swing the other way, or move the stair a door's width off")
                .follows(stair.common.id)
                .basis("R311.7.6 (from memory)");
        }
    }
}

/// The floors between which a stair goes.
fn ends_of(stair: &Stair) -> impl Iterator<Item = ElementId> {
    let lower = match stair.from.value() {
        Some(Foot::Floor(from)) => from.target,
        Some(Foot::Grade) | None => None,
    };
    let upper = stair.to.value().and_then(|to| to.target);
    lower.into_iter().chain(upper)
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(stair_top: &str, mark: &str) -> String {
        format!(
            "
grid
  x           A 0', B 20'
  y           1 0', 2 20'
floor main
  subfloor    100'-0\"
wall W1
  kind        framed
  stands on   main over W9
wall W9
  kind        concrete
door D1
  in          W1
  at          A plus 10' / 1 plus 10'
  size        3'-0\" x 6'-8\"
  swings      south
{mark}stair S1
  from        grade to main
  risers      4
  tread       10\"
  width       3'-0\"
  top         at A plus 10' / {stair_top}
  climbs      north
"
        )
    }

    /// The leaf sweeps 3'-0\" south of the wall, to 7'-0\"; treads that begin at 7'-2\" lie 2\" under it, all its width.
    #[test]
    fn at_the_edge() {
        check_rule(&RULE, &house("1 plus 7'-0\"", ""));
        check_rule(
            &RULE,
            &house(
                "1 plus 7'-2\"",
                "--            ^^^^^ door D1 swings over the treads of stair S1: 3'-0\" by 2\" of its sweep\n",
            ),
        );
    }
}

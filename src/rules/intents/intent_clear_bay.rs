//! Columns in a bay that was to stay clear.

use crate::house::House;
use crate::model::framing::Column;
use crate::model::plan::PlanRect;
use crate::model::promises::Promise;
use crate::rules::{Findings, rule};
use crate::syntax::vocabulary::ElementKind;
use crate::text::Span;

rule! {
    /// A column stands where the design promises that none will.
    ///
    /// `no column in A to C by 2 to 3` keeps a bay clear; on its edge a column may stand. It looks at columns that stand
    /// on the ground; a post that a beam carries over the bay does not stand in it. In an `area` it looks at the
    /// columns that stand on its floor as well.
    ///
    /// ## Why
    /// The bay was the reason for the beam. A column that creeps back in takes away what was paid for.
    ///
    /// ## Source
    /// Common practice: the plan's own coordinates.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 10'
    /// intent "Room for the boat"
    ///   no column   in A to B by 1 to 2
    /// column C1
    ///   at          A plus 4' / 1 plus 5'
    ///   stands on   F1
    /// footing F1
    ///   at          A plus 4' / 1 plus 5'
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 10'
    /// intent "Room for the boat"
    ///   no column   in A to B by 1 to 2
    /// column C1
    ///   at          B / 1 plus 5'
    ///   stands on   F1
    /// footing F1
    ///   at          B / 1 plus 5'
    /// ```
    "intent-clear-bay", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for intent in &house.model.intents {
        for promise in &intent.promises {
            if let Promise::NoColumn(bay, span) = promise {
                for column in house.model.columns.iter().filter(|column| stands_on_ground(column)) {
                    report(column, bay, *span, &intent.common.name, findings);
                }
            }
        }
    }
    for area in &house.model.areas {
        let Some(span) = area.no_column else { continue };
        let floor = area.floor.value().and_then(|floor| floor.target);
        let on_it = house.model.columns.iter().filter(|column| {
            let on = column.stands_on.value().and_then(|stand| stand.on.reference()).and_then(|on| on.target);
            stands_on_ground(column) || (floor.is_some() && on == floor)
        });
        for column in on_it {
            for bay in &area.fill {
                report(column, bay, span, &area.common.name, findings);
            }
        }
    }
}

fn stands_on_ground(column: &Column) -> bool {
    let on = column.stands_on.value().and_then(|stand| stand.on.reference()).and_then(|on| on.target);
    on.is_some_and(|on| matches!(on.kind, ElementKind::Footing | ElementKind::Slab))
}

fn report(column: &Column, bay: &PlanRect, promise: Span, name: &str, findings: &mut Findings<'_>) {
    let Some((at, span)) = column.at.stated() else { return };
    let ((west, east), (south, north)) = (bay.x, bay.y);
    let is_inside = west < at.x && at.x < east && south < at.y && at.y < north;
    if !is_inside {
        return;
    }
    findings
        .about(
            column.common.id,
            span,
            format!(
                "{} stands inside the bay that `{name}` keeps clear: {} from its west edge, where {} are clear",
                column.common.label(),
                at.x - west,
                east - west
            ),
        )
        .suspects(column.common.id, "plan")
        .related(promise, "the promise")
        .note(format!(
            "{} from the west edge, {} from the east, {} from the south, {} from the north",
            at.x - west,
            east - at.x,
            at.y - south,
            north - at.y
        ))
        .help("move the column to the edge of the bay or out of it, or give the promise up")
        .basis("common practice");
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn a_post_on_a_beam_does_not_stand_in_it() {
        check_rule(
            &RULE,
            "
grid
  x           A 0', B 12'
  y           1 0', 2 10'
intent \"Room for the boat\"
  no column   in A to B by 1 to 2
beam T1
  size        W8x18
  from        A / 1 plus 5' to B / 1 plus 5'
column P1
  at          A plus 4' / 1 plus 5'
  stands on   T1
",
        );
    }

    #[test]
    fn says_where() {
        check_rule(
            &RULE,
            "
grid
  x           A 0', B 12'
  y           1 0', 2 10'
intent \"Room for the boat\"
  no column   in A to B by 1 to 2
footing F1
  at          A plus 4' / 1 plus 5'
column C1
  at          A plus 4' / 1 plus 5'
--            ^^^^^^^^^^^^^^^^^^^^^ column C1 stands inside the bay that `Room for the boat` keeps clear: 4'-0\" from its west edge, where 12'-0\" are clear
  stands on   F1
",
        );
    }
}

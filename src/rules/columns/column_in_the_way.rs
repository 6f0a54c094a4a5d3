//! Columns where people walk.

use crate::geometry::carried::Carried;
use crate::geometry::doorways::{sweep, threshold};
use crate::geometry::flights::line_of_nosings;
use crate::geometry::stair_plan::{flight, overlap};
use crate::house::House;
use crate::model::element::ElementId;
use crate::model::framing::Column;
use crate::model::plan::PlanRect;
use crate::profiles::stairs::STAIR_HEADROOM;
use crate::rules::{Findings, rule};
use crate::units::Length;

rule! {
    /// A column stands in a flight of stairs or in the swing of a door.
    ///
    /// In plan and in height: a column above a flight's headroom or below its treads is not in the way, nor is one that
    /// ends below the threshold of a door.
    ///
    /// ## Why
    /// The framing sheet shows the column, the plan the stair; on no sheet stand both.
    ///
    /// ## Source
    /// Common practice: the plan's own coordinates; headroom of the residential code R311.7.2.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 20'
    /// slab SL1
    ///   fill        A to B by 1 to 2
    ///   top         91'-0"
    /// floor cellar
    ///   on          SL1
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// stair S1
    ///   from        cellar to main
    ///   risers      14
    ///   tread       10"
    ///   width       3'-0"
    ///   top         at A plus 15' / 1 plus 10'
    ///   climbs      east
    /// footing F1
    ///   top         90'-8"
    /// column C1
    ///   at          A plus 10' / 1 plus 10'
    ///   size        HSS 4 x 4 x 1/4
    ///   base        bare
    ///   length      8'-0"
    ///   stands on   F1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 20'
    /// slab SL1
    ///   fill        A to B by 1 to 2
    ///   top         91'-0"
    /// floor cellar
    ///   on          SL1
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// stair S1
    ///   from        cellar to main
    ///   risers      14
    ///   tread       10"
    ///   width       3'-0"
    ///   top         at A plus 15' / 1 plus 10'
    ///   climbs      east
    /// footing F1
    ///   top         90'-8"
    /// column C1
    ///   at          A plus 10' / 1 plus 12'
    ///   size        HSS 4 x 4 x 1/4
    ///   base        bare
    ///   length      8'-0"
    ///   stands on   F1
    /// ```
    "column-in-the-way", Warning
}

/// A column as it stands in the room.
struct Shaft<'a> {
    column: &'a Column,
    rect: PlanRect,
    foot: Length,
    head: Length,
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let mut shafts: Vec<Shaft<'_>> =
        house.model.columns.iter().filter_map(|column| shaft_of(house, column)).collect();
    shafts.sort_by_key(|shaft| shaft.rect.x.0);
    let widest = shafts.iter().map(|shaft| shaft.rect.x.1 - shaft.rect.x.0).max().unwrap_or_default();
    // Only the columns between the west and the east edge of a way can stand in it.
    let near = |way: &PlanRect| {
        let from = shafts.partition_point(|shaft| shaft.rect.x.0 < way.x.0 - widest);
        let to = shafts.partition_point(|shaft| shaft.rect.x.0 < way.x.1);
        shafts.get(from..to).unwrap_or_default().iter()
    };
    let headroom = house.limits.of(&STAIR_HEADROOM).value;
    for (stair, numbers) in house.model.stairs.iter().zip(&house.geometry.flights) {
        let Some(way) = flight(stair) else { continue };
        for shaft in near(&way).filter(|shaft| overlap(&shaft.rect, &way).is_some()) {
            let Some(line) = shaft.column.at.value().and_then(|at| line_of_nosings(stair, numbers, at))
            else {
                continue;
            };
            if shaft.head > line && shaft.foot < line + headroom {
                report(house, shaft, stair.common.id, "in the flight of", findings);
            }
        }
    }
    let carried = Carried::of(&house.model);
    for door in &house.model.doors {
        let Some(way) = sweep(&house.model, &carried, door) else { continue };
        let (Ok(sill), Some([_, height])) =
            (threshold(&house.model, &house.geometry.floors, door), door.size.value())
        else {
            continue;
        };
        let sill = sill.total();
        for shaft in near(&way).filter(|shaft| overlap(&shaft.rect, &way).is_some()) {
            if shaft.head > sill && shaft.foot < sill + *height {
                report(house, shaft, door.common.id, "in the swing of", findings);
            }
        }
    }
}

fn shaft_of<'a>(house: &'a House, column: &'a Column) -> Option<Shaft<'a>> {
    let stack = house.geometry.columns.get(column.common.id.index as usize)?;
    let (foot, head) = (stack.foot.as_ref().ok()?.total(), stack.head.as_ref().ok()?.total());
    let (at, size) = (column.at.value()?, column.size.value()?);
    let half = size.depth()?.max(size.width()?).half();
    let rect = PlanRect { x: (at.x - half, at.x + half), y: (at.y - half, at.y + half), span: at.span };
    Some(Shaft { column, rect, foot, head })
}

fn report(house: &House, shaft: &Shaft<'_>, of: ElementId, place: &str, findings: &mut Findings<'_>) {
    let Some(common) = house.model.common(of) else { return };
    let column = &shaft.column.common;
    findings
        .about(
            column.id,
            shaft.column.at.span().unwrap_or(column.name_span),
            format!("{} stands {place} {}", column.label(), common.label()),
        )
        .related(common.name_span, common.label())
        .help("move one of the two")
        .basis("common practice");
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// The leaf sweeps 3'-0" south of the wall, from 8'-6" to 11'-6".
    #[test]
    fn sees_the_swing_of_a_door() {
        let house = |at: &str, mark: &str| {
            format!(
                "
grid
  x           A 0', B 20'
  y           1 0', 2 20'
slab SL1
  fill        A to B by 1 to 2
  top         91'-0\"
floor cellar
  on          SL1
wall IW1
  kind        framed
  from        A/2 to B/2
  studs       2x4 SPF No.2 at 16\"
  stands on   SL1
door DR1
  in          IW1
  at          A plus 10' / 2
  size        3'-0\" x 6'-8\"
  swings      into cellar
  threshold   0\" above finish
footing F1
  top         90'-8\"
column C1
  at          {at}
{mark}  size        HSS 4 x 4 x 1/4
  base        bare
  length      8'-0\"
  stands on   F1
"
            )
        };
        check_rule(&RULE, &house("A plus 8' / 2 less 1'", ""));
        check_rule(
            &RULE,
            &house(
                "A plus 9' / 2 less 1'",
                "--            ^^^^^^^^^^^^^^^^^^^^^ column C1 stands in the swing of door DR1\n",
            ),
        );
    }
}

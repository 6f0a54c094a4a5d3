//! Partitions that something bears on.

use crate::house::House;
use crate::model::element::ElementId;
use crate::rules::{Findings, rule};
use crate::syntax::vocabulary::ElementKind;

rule! {
    /// A wall is said not to bear, and something bears on it.
    ///
    /// Another partition on top of it is no load in this sense, and neither are its own jacks and headers.
    ///
    /// ## Why
    /// Whoever reads `bearing no` may take the wall out, or stand it on a single joist.
    ///
    /// ## Source
    /// Common practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W1
    ///   kind        framed
    ///   bearing     no
    /// joists J1
    ///   bears on    W1
    /// ```
    /// ```framing,passes
    /// wall W1
    ///   kind        framed
    ///   bearing     yes
    /// joists J1
    ///   bears on    W1
    /// ```
    "partition-loaded", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for wall in &house.model.walls {
        let Some((false, span)) = wall.bearing.stated().map(|(bears, span)| (*bears, span)) else { continue };
        let mut carried = house.geometry.load_path.carried_by(wall.common.id).iter();
        let Some(load) = carried.find(|load| brings_load(house, **load)) else { continue };
        let Some(load) = house.model.common(*load) else { continue };
        findings
            .about(
                wall.common.id,
                span,
                format!(
                    "{} is said not to bear, and {} {} on it",
                    wall.common.label(),
                    load.label(),
                    load.verb("bears", "bear")
                ),
            )
            .related(load.name_span, load.label())
            .help("write `bearing yes`, or let something else carry it")
            .basis("common practice");
    }
}

fn brings_load(house: &House, element: ElementId) -> bool {
    match element.kind {
        ElementKind::Joists
        | ElementKind::Beam
        | ElementKind::Ledger
        | ElementKind::Roof
        | ElementKind::Column => true,
        ElementKind::Wall => house.model.wall(element).is_some_and(|wall| wall.bearing.get() == Some(true)),
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn a_partition_may_stand_on_a_partition() {
        let house = |bearing: &str, mark: &str| {
            format!(
                "
floor main
wall W1
  kind        framed
  bearing     no
{mark}wall W2
  kind        framed
  bearing     {bearing}
  stands on   main over W1
"
            )
        };
        check_rule(&RULE, &house("no", ""));
        check_rule(
            &RULE,
            &house("yes", "--            ^^ wall W1 is said not to bear, and wall W2 bears on it\n"),
        );
    }
}

//! Posts over a hollow floor.

use std::collections::HashSet;

use crate::geometry::carried::Carried;
use crate::geometry::joist_space;
use crate::house::House;
use crate::model::element::{Common, ElementId};
use crate::model::field::Field;
use crate::model::framing::Base;
use crate::model::support::Stand;
use crate::rules::{Findings, rule};
use crate::verify::bearings::standing::heaviest_place;
use crate::verify::quantity::Quantity;

rule! {
    /// A post or jack studs stand on the deck over a hollow between the joists.
    ///
    /// What stands on a floor over a wall or beam sends its load down through the joist space. Squash blocks under it,
    /// solid blocking over the support, or a base that goes through the deck fill that space.
    ///
    /// ## Why
    /// Deck and rim crush or roll under a load that needs solid wood below. It shows years later, in a door that sticks.
    ///
    /// ## Source
    /// Common practice of framing over joists.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor    100'-0"
    /// wall W1
    ///   kind        concrete
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   bears on    W1
    /// column P1
    ///   stands on   main over W1
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor    100'-0"
    /// wall W1
    ///   kind        concrete
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   bears on    W1
    /// column P1
    ///   stands on   main over W1
    ///   squash      3 of 2x6 SPF No.2
    /// ```
    "squash-block-missing", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let model = &house.model;
    let carried = Carried::of(model);
    let blocked: HashSet<ElementId> =
        model.squashes.iter().filter_map(|squash| squash.under.value()?.target).collect();
    // Blocks under a name that nothing has may be the ones that are missed.
    if model.squashes.iter().any(|squash| {
        squash.under.is_broken() || squash.under.value().is_some_and(|under| under.target.is_none())
    }) {
        return;
    }
    let mut standing: Vec<(&Common, &Field<Stand>)> = Vec::new();
    for column in &model.columns {
        let goes_through = matches!(column.base.value(), Some(Base::Bare { is_through_deck: true }));
        if !goes_through && column.squash.is_missing() && !column.base.is_broken() {
            standing.push((&column.common, &column.stands_on));
        }
    }
    for jacks in model.jacks.iter().filter(|jacks| jacks.squash.is_missing()) {
        standing.push((&jacks.common, &jacks.stands_on));
    }
    for (common, stands_on) in standing {
        let Some((stand, span)) = stands_on.stated() else { continue };
        if common.has_unread_lines || blocked.contains(&common.id) {
            continue;
        }
        let Some(space) = joist_space::under(&carried, stand).filter(|space| !space.is_blocked_solid())
        else {
            continue;
        };
        let name = |id| model.common(id).map(|common| common.name.to_string()).unwrap_or_default();
        findings
            .about(
                common.id,
                span,
                format!(
                    "{} {} on the deck of {} over {}{}, with {} of hollow joist space below and no squash blocks",
                    common.label(),
                    common.verb("stands", "stand"),
                    name(space.floor),
                    name(space.over),
                    load_on(house, common.id),
                    space.depth
                ),
            )
            .related(space.joists.common.name_span, format!("{}, {} deep", space.joists.common.label(), space.depth))
            .help(format!(
                "add blocks {} long as wide as what they carry: `squash 2 of 2x6 SPF under each`, or block the joists solid over {}",
                joist_space::block_length(&space),
                name(space.over)
            ))
            .basis("common practice");
    }
}

/// How much comes down there, where it is known: ` with 8,236 lb`.
fn load_on(house: &House, element: ElementId) -> String {
    let pressing = heaviest_place(&house.known(), element);
    pressing.map(|pressing| format!(" with {}", Quantity::from(pressing.force))).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(post: &str, joists: &str) -> String {
        format!(
            "
floor main
  subfloor    100'-0\"
  deck        3/4\"
wall W1
  kind        concrete
joists J1
  floor       main
  size        2x10 SPF No.2
  bears on    W1
{joists}column P1
{post}"
        )
    }

    #[test]
    fn looks_for_anything_that_fills_the_space() {
        check_rule(
            &RULE,
            &house(
                "  stands on   main over W1
--            ^^^^^^^^^^^^ column P1 stands on the deck of main over W1, with 9-1/4\" of hollow joist space below and no squash blocks
-- | 9-5/16\" long
",
                "",
            ),
        );
        check_rule(&RULE, &house("  stands on   main over W1\n", "  blocked     solid over W1\n"));
        check_rule(&RULE, &house("  stands on   main over W1\n  base        bare, through the deck\n", ""));
        check_rule(
            &RULE,
            &house(
                "  stands on   main over W1\nsquash SQ1\n  under       P1\n  size        2 of 2x6 SPF No.2\n",
                "",
            ),
        );
        check_rule(&RULE, &house("  stands on   W1\n", ""));
    }
}

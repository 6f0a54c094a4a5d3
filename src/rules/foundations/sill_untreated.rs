//! Wood that lies on concrete.

use crate::diagnostic::{Edit, Fix};
use crate::house::House;
use crate::house::lines::part_at;
use crate::model::element::Common;
use crate::model::foundation::Wall;
use crate::model::member::Member;
use crate::rules::{Findings, rule};
use crate::syntax::vocabulary::ElementKind;
use crate::text::Span;

rule! {
    /// Wood that lies on concrete is not treated.
    ///
    /// Sills on concrete walls and shelves, and sole plates of walls that stand on a footing, a slab or a concrete wall
    /// without a sill.
    ///
    /// ## Why
    /// Concrete draws water out of the ground and hands it on to whatever lies on it.
    ///
    /// ## Source
    /// Residential code R317.1, read in a secondary copy. Naturally durable species serve as well: waive it with the species.
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W1
    ///   kind        concrete
    ///   sill        1 of 2x6 SPF
    /// ```
    /// ```framing,passes
    /// wall W1
    ///   kind        concrete
    ///   sill        1 of 2x6 SPF treated
    /// ```
    "sill-untreated", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for wall in &house.model.walls {
        if let Some((sill, span)) = wall.sill.stated() {
            check_member(house, &wall.common, &sill.member, "sill", span, findings);
        }
        if let Some((plates, span)) = wall.sole.stated()
            && let Some(member) = &plates.member
            && stands_on_concrete(house, wall)
        {
            check_member(house, &wall.common, member, "sole plate", span, findings);
        }
    }
    for shelf in &house.model.shelves {
        if let Some((sill, span)) = shelf.sill.stated() {
            check_member(house, &shelf.common, &sill.member, "sill", span, findings);
        }
    }
}

fn check_member(
    house: &House,
    of: &Common,
    member: &Member,
    what: &str,
    span: Span,
    findings: &mut Findings<'_>,
) {
    if member.is_treated {
        return;
    }
    let finding = findings.about(
        of.id,
        span,
        format!("the {what} of {} lies on concrete and is not treated", of.label()),
    );
    finding.help(format!("write `{} treated`", member.text)).basis("R317.1 (read in a secondary copy)");
    if let Some(written) = part_at(house, span, "member") {
        finding.fix(Fix {
            title: format!("write `{} treated`", member.text),
            edits: vec![Edit { span: Span { start: written.end, ..written }, text: " treated".to_owned() }],
        });
    }
}

fn stands_on_concrete(house: &House, wall: &Wall) -> bool {
    let stand = wall.stands_on.value();
    let Some(on) = stand.and_then(|stand| stand.on.reference()).and_then(|on| on.target) else {
        return false;
    };
    match on.kind {
        ElementKind::Footing | ElementKind::Slab => true,
        ElementKind::Wall => house.model.wall(on).is_some_and(|under| {
            under.sill.is_missing() && under.kind.get().is_some_and(|kind| kind.is_mineral())
        }),
        ElementKind::Floor => house.model.floor(on).is_some_and(|floor| floor.on.value().is_some()),
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn asks_the_sole_of_a_wall_on_a_footing() {
        check_rule(
            &RULE,
            "
footing F1
  top         91'-0\"
wall BW1
  kind        framed
  sole        1 of 2x6 SPF
--            ^^^^^^^^^^^^ the sole plate of wall BW1 lies on concrete and is not treated
-- | write `2x6 SPF treated`
  stands on   F1
",
        );
    }

    #[test]
    fn leaves_the_sole_on_a_deck_alone() {
        check_rule(
            &RULE,
            "
floor main
  subfloor    100'-0\"
  deck        3/4\"
wall UW1
  kind        framed
  sole        1 of 2x6 SPF
  stands on   main
",
        );
    }
}

//! Walls without a footing, and posts that come down on a bare slab.

use crate::geometry::load_path::PathEnd;
use crate::house::House;
use crate::rules::{Findings, rule};
use crate::syntax::vocabulary::ElementKind;
use crate::verify::limit_state::LimitState;

rule! {
    /// A wall or a post has no footing under it.
    ///
    /// A wall needs a `stands on` line. A post that stands on a slab needs a footing there: a slab on ground is no
    /// footing. With the load known, a note says whether it goes through.
    ///
    /// ## Why
    /// A 4" slab of plain concrete punches at about 3,300 lb under the base plate of a small column, less than any post
    /// under a beam brings.
    ///
    /// ## Source
    /// Residential code R403.1 (from memory); the slab's figure is common practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W1
    ///   kind        concrete
    /// ```
    /// ```framing,passes
    /// wall W1
    ///   kind        concrete
    ///   stands on   F1
    /// footing F1
    ///   under       W1
    /// ```
    "footing-missing", Error, danger
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for wall in &house.model.walls {
        if house.geometry.load_path.end_of(wall.common.id) == PathEnd::Drops(wall.common.id) {
            let message = format!("{} stands on nothing", wall.common.label());
            findings
                .about(wall.common.id, wall.common.name_span, message)
                .help("say `stands on` and its footing, wall or floor")
                .basis("R403.1 (from memory)");
        }
    }
    for column in &house.model.columns {
        let Some((stand, span)) = column.stands_on.stated() else { continue };
        let on = match (&stand.over, stand.on.reference()) {
            (Some(over), _) => over.target,
            (None, Some(reference)) => reference.target,
            (None, None) => None,
        };
        let slab = on.and_then(|on| match on.kind {
            ElementKind::Slab => house.model.slab(on),
            ElementKind::Floor => {
                let slab = house.model.floor(on)?.on.value()?.target?;
                house.model.slab(slab)
            }
            _ => None,
        });
        if let Some(slab) = slab {
            let punching = house.verifications.on(LimitState::Punching).find(|verification| {
                verification.of == slab.common.id && verification.against == Some(column.common.id)
            });
            let finding = findings
                .about(
                    column.common.id,
                    span,
                    format!(
                        "{} comes down on {} with no footing under it",
                        column.common.label(),
                        slab.common.label()
                    ),
                )
                .help("pour a pad under it and let it stand on that, through the slab")
                .basis("R403.1 (from memory); common practice");
            match punching.map(|verification| (&verification.outcome, verification.fails())) {
                Some((Ok(check), true)) => finding.note(format!(
                    "it goes through: {} under {}, the slab bears {} as plain concrete",
                    check.demand, check.combination, check.capacity
                )),
                Some((Ok(check), false)) => finding.note(format!(
                    "it does not go through: {} under {}, the slab bears {} as plain concrete; the soil is not checked",
                    check.demand, check.combination, check.capacity
                )),
                Some((Err(_), _)) | None => finding,
            };
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// By hand: 4 in. on soil count 2; plate 8, tube 4: bo = 4 (6 + 2) = 32 in.; 0.6 x 2.66 x 50 x 32 x 2 = 5,107 lb. 1.6 x 5,000 = 8,000 lb.
    #[test]
    fn says_whether_it_goes_through() {
        check_rule(
            &RULE,
            "
grid
  x           A 0'
  y           1 0'
slab SL1
  top         90'-0\"
  thick       4\"
  concrete    2500 psi
column C1
  at          A/1
  size        HSS 4 x 4 x 1/4
  base        plate 8\" x 8\" x 1/2\"
  load        5000 lb live
  stands on   SL1
--            ^^^ column C1 comes down on slab SL1 with no footing under it
-- | it goes through: 8,000 lb under 1.2D + 1.6L, the slab bears 5,107 lb as plain concrete
",
        );
    }

    #[test]
    fn sees_a_post_on_a_slab() {
        check_rule(
            &RULE,
            "
slab SL1
  top         90'-0\"
  thick       4\"
column C1
  stands on   SL1
--            ^^^ column C1 comes down on slab SL1 with no footing under it
",
        );
    }
}

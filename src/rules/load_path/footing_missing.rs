//! Walls without a footing, and posts that come down on a bare slab.

use crate::geometry::load_path::PathEnd;
use crate::house::House;
use crate::rules::{Findings, rule};
use crate::syntax::vocabulary::ElementKind;

rule! {
    /// A wall or a post has no footing under it.
    ///
    /// A wall needs a `stands on` line. A post that stands on a slab needs a footing there: a slab on ground is no
    /// footing.
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
            findings
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
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

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

//! The least size of columns on the foundation.

use crate::house::House;
use crate::profiles::foundations::{STEEL_COLUMN_DIAMETER, WOOD_COLUMN_SIDE};
use crate::rules::{Findings, rule};
use crate::syntax::vocabulary::ElementKind;

rule! {
    /// A column on the foundation is slighter than any column may be.
    ///
    /// Wood posts by their smaller side, steel columns by their outer size, whatever they carry.
    ///
    /// ## Why
    /// A column in a basement is knocked, leaned on and cut into. The least size leaves something for that.
    ///
    /// ## Source
    /// Residential code R407.3: 4x4 of wood from memory, 3" of steel pipe read in a copy of low grade.
    ///
    /// ## Examples
    /// ```framing,fires
    /// footing F1
    ///   top         91'-0"
    /// post P1
    ///   size        2-ply 2x4 SPF No.2
    ///   stands on   F1
    /// ```
    /// ```framing,passes
    /// footing F1
    ///   top         91'-0"
    /// post P1
    ///   size        4x4 SPF No.2
    ///   stands on   F1
    /// ```
    "column-minimum", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for column in &house.model.columns {
        let on = column.stands_on.value().and_then(|stand| stand.on.reference()).and_then(|on| on.target);
        if !on.is_some_and(|on| matches!(on.kind, ElementKind::Footing | ElementKind::Slab)) {
            continue;
        }
        let Some((size, span)) = column.size.stated() else { continue };
        let (Some(is_steel), Some(depth), Some(width)) = (size.is_steel(), size.depth(), size.width()) else {
            continue;
        };
        let limit = house.limits.of(if is_steel { &STEEL_COLUMN_DIAMETER } else { &WOOD_COLUMN_SIDE });
        let side = depth.min(width);
        if side >= limit.value {
            continue;
        }
        findings
            .about(
                column.common.id,
                span,
                format!("{} is {side} across: {} at the least", column.common.label(), limit.value),
            )
            .help(if is_steel { "take a pipe of 3\" or a tube as strong" } else { "take a 4x4 or larger" })
            .basis(limit.basis());
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// Two plies of 2x6 are 3" by 5-1/2", three 4-1/2" by 5-1/2" (4x4 is 3-1/2", from memory); a tube of 3" is as wide as
    /// the limit.
    #[test]
    fn measures_the_smaller_side() {
        check_rule(
            &RULE,
            "
footing F1
  top         91'-0\"
column C1
  size        2-ply 2x6 SPF No.2
--            ^^^^^^^^^^^^^^^^^^ column C1 is 3\" across: 3-1/2\" at the least
  stands on   F1
column C3
  size        HSS 3 x 3 x 1/4
  stands on   F1
column C2
  size        3-ply 2x6 SPF No.2
  stands on   F1
",
        );
    }

    #[test]
    fn leaves_posts_on_beams_alone() {
        check_rule(
            &RULE,
            "
beam B1
  size        W8x24
post P1
  size        2-ply 2x4 SPF No.2
  stands on   B1
",
        );
    }
}

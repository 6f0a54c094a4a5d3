//! Base plates and their nuts under the slab poured over them.

use crate::geometry::pads::slab_over;
use crate::geometry::surfaces::Surface;
use crate::house::House;
use crate::model::framing::Base;
use crate::profiles::foundations::{BASE_COVER, BASE_NUTS};
use crate::rules::{Findings, rule};

rule! {
    /// A base plate or its nuts stand out of the slab that was to cover them.
    ///
    /// From the footing's top up: grout, plate, nuts (the limit `base-nuts`) and concrete over them (`base-cover`). A plate
    /// that lies on the slab altogether is meant to be seen.
    ///
    /// ## Why
    /// Nuts in the walking surface are cut off, and the column with them, or the floor gets a bump that no finish hides.
    ///
    /// ## Source
    /// Common practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 12'
    /// slab SL1
    ///   fill        A to B by 1 to 2
    ///   top         91'-2"
    /// footing F1
    ///   top         91'-0"
    /// column C1
    ///   at          A plus 6' / 1 plus 6'
    ///   base        plate 9" x 9" x 1/2", grout 1"
    ///   stands on   F1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 12'
    /// slab SL1
    ///   fill        A to B by 1 to 2
    ///   top         91'-4"
    /// footing F1
    ///   top         91'-0"
    /// column C1
    ///   at          A plus 6' / 1 plus 6'
    ///   base        plate 9" x 9" x 1/2", grout 1"
    ///   stands on   F1
    /// ```
    "base-not-buried", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let (cover, nuts) = (house.limits.of(&BASE_COVER), house.limits.of(&BASE_NUTS));
    for (column, stack) in house.model.columns.iter().zip(&house.geometry.columns) {
        let Some((Base::Plate([_, _, thickness], _), span)) = column.base.stated() else { continue };
        let (Some(at), Ok(foot)) = (column.at.value(), &stack.foot) else { continue };
        let on = column.stands_on.value().and_then(|stand| stand.on.reference()).and_then(|on| on.target);
        let Some(footing) = on.and_then(|on| house.model.footing(on)) else { continue };
        let Some(slab) = slab_over(&house.model, at) else { continue };
        let Ok(top) = house.geometry.surfaces.of(slab.common.id, Surface::Top) else { continue };
        let is_on_top = foot.total() - *thickness >= top.total();
        let needed = foot.total() + nuts.value + cover.value;
        if is_on_top || needed <= top.total() {
            continue;
        }
        let over_nuts = top.total() - foot.total() - nuts.value;
        let place = match over_nuts.is_negative() {
            true => format!("stand {} out of {}", over_nuts.abs(), slab.common.label()),
            false => format!("lie {over_nuts} under the top of {}", slab.common.label()),
        };
        findings
            .about(
                column.common.id,
                span,
                format!(
                    "the nuts of {} {place}: {} of concrete over them at the least",
                    column.common.label(),
                    cover.value
                ),
            )
            .related(
                slab.top.span().unwrap_or(slab.common.name_span),
                format!("the slab's top at {}", top.total().in_feet()),
            )
            .note(format!("{foot}, and {} of nuts", nuts.value))
            .help(format!("lower the footing by {}, or the column with a longer shaft", needed - top.total()))
            .basis(cover.basis())
            .follows(footing.common.id);
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(slab: &str, mark: &str) -> String {
        format!(
            "
grid
  x           A 0', B 12'
  y           1 0', 2 12'
slab SL1
  fill        A to B by 1 to 2
  top         {slab}
footing F1
  top         91'-0\"
column C1
  at          A plus 6' / 1 plus 6'
  base        plate 9\" x 9\" x 1/2\", grout 1\"
{mark}  stands on   F1
"
        )
    }

    /// 91'-0" + 1" grout + 1/2" plate + 1-1/4" nuts + 1/2" cover = 91'-3 1/4" (common practice).
    #[test]
    fn adds_up_what_has_to_be_covered() {
        check_rule(&RULE, &house("91'-3 1/4\"", ""));
        check_rule(
            &RULE,
            &house(
                "91'-3\"",
                "--            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the nuts of column C1 lie 1/4\" under the top of slab SL1: 1/2\" of concrete over them at the least\n",
            ),
        );
        check_rule(
            &RULE,
            &house(
                "91'-2 1/2\"",
                "--            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the nuts of column C1 stand 1/4\" out of slab SL1: 1/2\" of concrete over them at the least\n",
            ),
        );
    }

    /// Its plate begins at 91'-1": on a slab that ends there it stands free.
    #[test]
    fn a_plate_on_the_slab_is_meant() {
        check_rule(&RULE, &house("91'-1\"", ""));
    }
}

//! Pads under the slab that is poured over them.

use crate::geometry::pads::{pads_of, slab_over};
use crate::geometry::surfaces::Surface;
use crate::house::House;
use crate::profiles::foundations::SLAB_THICKNESS;
use crate::rules::{Findings, rule};
use crate::units::Length;

rule! {
    /// A slab is too thin over a pad that reaches up into it.
    ///
    /// The slab's top less the pad's, where the pad lies inside the slab. A pad poured up to the slab's top is part of it.
    ///
    /// ## Why
    /// A skin of concrete over a pad cracks round its edges in the first year.
    ///
    /// ## Source
    /// Residential code R506.1, from memory: a slab on ground is 3-1/2" thick.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 12'
    /// slab SL1
    ///   fill        A to B by 1 to 2
    ///   top         91'-4"
    ///   thick       4"
    /// footing F1
    ///   kind        pad
    ///   at          A plus 6' / 1 plus 6'
    ///   size        2'-6" x 2'-6" x 12"
    ///   top         91'-2 1/2"
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 12'
    /// slab SL1
    ///   fill        A to B by 1 to 2
    ///   top         91'-4"
    ///   thick       4"
    /// footing F1
    ///   kind        pad
    ///   at          A plus 6' / 1 plus 6'
    ///   size        2'-6" x 2'-6" x 12"
    ///   top         91'-0"
    /// ```
    "pad-vs-slab", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let least = house.limits.of(&SLAB_THICKNESS);
    for footing in house.model.footings.iter().filter(|footing| !pads_of(footing).is_empty()) {
        let Ok(top) = house.geometry.surfaces.of(footing.common.id, Surface::Top) else { continue };
        let Some(slab) = footing.at.iter().find_map(|at| slab_over(&house.model, at)) else { continue };
        let Ok(slab_top) = house.geometry.surfaces.of(slab.common.id, Surface::Top) else { continue };
        let over = slab_top.total() - top.total();
        // A slab thinner than the limit everywhere is not the pad's fault.
        let wanted = slab.thick.get().map_or(least.value, |thick| thick.min(least.value));
        if over <= Length::ZERO || over >= wanted {
            continue;
        }
        findings
            .about(
                footing.common.id,
                footing.top.span().unwrap_or(footing.common.name_span),
                format!(
                    "{} is only {over} thick over {}: {wanted} at the least",
                    slab.common.label(),
                    footing.common.label()
                ),
            )
            .related(
                slab.top.span().unwrap_or(slab.common.name_span),
                format!("the slab's top at {}", slab_top.total().in_feet()),
            )
            .note(format!(
                "{} top of the slab − {} top of the pad = {over}",
                slab_top.total().in_feet(),
                top.total().in_feet()
            ))
            .help(format!("lower the pad by {}, or pour it up to the slab's top", wanted - over))
            .basis(least.basis());
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(top: &str, mark: &str) -> String {
        format!(
            "
grid
  x           A 0', B 12'
  y           1 0', 2 12'
slab SL1
  fill        A to B by 1 to 2
  top         91'-4\"
  thick       4\"
footing F1
  kind        pad
  at          A plus 6' / 1 plus 6'
  size        2'-6\" x 2'-6\" x 12\"
  top         {top}
{mark}"
        )
    }

    /// 91'-4" less 91'-0 1/2" is 3-1/2", which passes (from memory); 1/16" higher does not; 91'-4" is poured with it.
    #[test]
    fn three_and_a_half_inches_pass() {
        check_rule(&RULE, &house("91'-0 1/2\"", ""));
        check_rule(&RULE, &house("91'-4\"", ""));
        check_rule(
            &RULE,
            &house(
                "91'-0 9/16\"",
                "--            ^^^^^^^^^^^ slab SL1 is only 3-7/16\" thick over footing F1: 3-1/2\" at the least\n",
            ),
        );
    }
}

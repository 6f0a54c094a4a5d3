//! Hung joists that reach past what they hang from.

use crate::geometry::carried::carrying_element;
use crate::geometry::hung::beside;
use crate::house::House;
use crate::model::support::Contact;
use crate::profiles::framing::HANGER_HEIGHT;
use crate::rules::{Findings, rule};
use crate::syntax::vocabulary::ElementKind;

rule! {
    /// Joists hang from a beam or ledger that is not beside enough of them.
    ///
    /// A hanger is nailed to its carrier over most of the joist's depth. Where the joist begins below the carrier, or the
    /// carrier stops far above the joist's underside, there is nothing to nail to.
    ///
    /// ## Why
    /// The seat of the hanger hangs in the air and the few nails at its top take the whole load. At a step between two
    /// floors, one beam for both is easily too shallow or too high for the lower joists.
    ///
    /// ## Source
    /// Common practice: the limit `hanger-height`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// beam B1
    ///   size        W6x15
    ///   set         flush in main
    /// joists J1
    ///   floor       main
    ///   size        11-7/8 I-joist class 40
    ///   hangs from  B1 by hanger 1100 lb source "example"
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// beam B1
    ///   size        W8x24
    ///   set         flush in main
    /// joists J1
    ///   floor       main
    ///   size        11-7/8 I-joist class 40
    ///   hangs from  B1 by hanger 1100 lb source "example"
    /// ```
    "hang-deeper-than-beam", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let limit = house.limits.of(&HANGER_HEIGHT);
    for joists in &house.model.joists {
        for support in joists.supports.iter().filter(|support| matches!(support.by, Contact::Hangs(_))) {
            let carrier = carrying_element(support)
                .filter(|carrier| matches!(carrier.kind, ElementKind::Beam | ElementKind::Ledger));
            let Some(carrier) = carrier else { continue };
            let Ok(hung) = beside(&house.geometry.floors, &house.geometry.surfaces, joists, carrier) else {
                continue;
            };
            let least = hung.depth().scaled(limit.value.0);
            if hung.beside() >= least {
                continue;
            }
            let name = house.model.common(carrier).map(|common| common.label()).unwrap_or_default();
            let finding = findings.about(
                joists.common.id,
                support.span,
                format!(
                    "{} of the {} depth of {} {} beside {name}: {least} at the least",
                    hung.beside(),
                    hung.depth(),
                    joists.common.label(),
                    if hung.beside().is_positive() { "are" } else { "is" },
                ),
            );
            finding
                .note(format!("joists: top {}, underside {}", hung.joist_top, hung.joist_bottom.total().in_feet()))
                .note(format!(
                    "{name}: top {}, underside {}",
                    hung.carrier_top,
                    hung.carrier_bottom.total().in_feet()
                ))
                .help("take a deeper beam or set it at the joists' level, or let them bear on a ledger or wall below")
                .follows(carrier)
                .basis(limit.basis());
            for element in hung.joist_top.elements() {
                finding.follows(element);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn hung(low: &str, mark: &str) -> String {
        format!(
            "
floor main
  subfloor    100'-0\"
  deck        3/4\"
beam B1
  size        4x10 DF No.2
  set         flush in main, held {low} low
joists J1
  floor       main
  size        2x10 SPF No.2
  hangs from  B1 by hanger 700 lb source \"invented for this test\"
{mark}"
        )
    }

    /// 60% of 9-1/4\" are 5.55\" (common practice). Held 3-11/16\" low the beam is beside 5-9/16\" of the joists, held
    /// 3-3/4\" low beside 5-1/2\".
    #[test]
    fn at_the_limit() {
        check_rule(&RULE, &hung("3-11/16\"", ""));
        check_rule(
            &RULE,
            &hung(
                "3-3/4\"",
                "--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ 5-1/2\" of the 9-1/4\" depth of joists J1 are beside beam B1: 5-9/16\"~ at the least\n",
            ),
        );
    }
}

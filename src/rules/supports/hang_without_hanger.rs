//! Joists that lie on a beam which is not below them.

use crate::geometry::hung::beside;
use crate::house::House;
use crate::model::support::Contact;
use crate::rules::{Findings, rule};
use crate::syntax::vocabulary::ElementKind;

rule! {
    /// Joists are said to lie on a beam that is beside them.
    ///
    /// The beam's top is above the joists' underside: they meet its side and have to hang there, from hangers or from a
    /// ledger.
    ///
    /// ## Why
    /// Ends held by nails through the beam, or by nothing, come down with the first full load.
    ///
    /// ## Source
    /// Residential code R502.6.2 (from memory).
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// beam B1
    ///   size        3-ply 2x10 SPF No.2
    ///   set         flush in main
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   bears on    B1
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// beam B1
    ///   size        3-ply 2x10 SPF No.2
    ///   set         flush in main
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   hangs from  B1 by hanger 700 lb source "example"
    /// ```
    "hang-without-hanger", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for joists in &house.model.joists {
        for support in joists.supports.iter().filter(|support| matches!(support.by, Contact::Bears(_))) {
            let beam = support.on.reference().and_then(|reference| reference.target);
            let Some(beam) = beam.filter(|beam| beam.kind == ElementKind::Beam) else { continue };
            let Ok(meeting) = beside(&house.geometry.floors, &house.geometry.surfaces, joists, beam) else {
                continue;
            };
            // A seat that is a little high is a stack that does not close.
            if !meeting.is_side_by_side() {
                continue;
            }
            let name = house.model.common(beam).map(|common| common.label()).unwrap_or_default();
            findings
                .about(
                    joists.common.id,
                    support.span,
                    format!(
                        "{} are said to lie on {name}, whose top is {} above their underside",
                        joists.common.label(),
                        meeting.carrier_top.total() - meeting.joist_bottom.total()
                    ),
                )
                .note(format!("{name}: {}", meeting.carrier_top))
                .note(format!("underside of {}: {}", joists.common.name, meeting.joist_bottom))
                .help(format!(
                    "write `hangs from {}` with its hanger, or drop the beam under the floor",
                    support.on.name()
                ))
                .follows(beam)
                .basis("R502.6.2 (from memory)");
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// 100'-0\" less 3/4\" and 9-1/4\" is 99'-2\"; the beam's top is 9-1/4\" above.
    #[test]
    fn says_how_far_they_overlap() {
        check_rule(
            &RULE,
            "
floor main
  subfloor    100'-0\"
  deck        3/4\"
beam B1
  size        3-ply 2x10 SPF No.2
  set         flush in main
beam B2
  size        3-ply 2x10 SPF No.2
  set         dropped under main
joists J1
  floor       main
  size        2x10 SPF No.2
  bears on    B1
--^^^^^^^^^^^^^^ joists J1 are said to lie on beam B1, whose top is 9-1/4\" above their underside
  bears on    B2
",
        );
    }
}

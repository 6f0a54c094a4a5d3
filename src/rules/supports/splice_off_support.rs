//! Joints of beams and joists that nothing is under.

use crate::diagnostic::Edit;
use crate::house::House;
use crate::model::element::Common;
use crate::model::support::{Joint, Support};
use crate::rules::{Findings, rule};

rule! {
    /// The pieces of a beam or of joists meet over something that does not carry them.
    ///
    /// `joint over X` needs a `bears on X` or `hangs from X` of the same member.
    ///
    /// ## Why
    /// A joint between supports is a hinge: both pieces fall there.
    ///
    /// ## Source
    /// Common practice: equilibrium of each piece. A splice that is designed to bend stands between supports on purpose;
    /// waive it with the design.
    ///
    /// ## Examples
    /// ```framing,fires
    /// column C1
    ///   size        HSS 4 x 4 x 1/4
    /// column C2
    ///   size        HSS 4 x 4 x 1/4
    /// beam B1
    ///   size        W8x24
    ///   joint       over C2
    ///   bears on    C1
    /// ```
    /// ```framing,passes
    /// column C1
    ///   size        HSS 4 x 4 x 1/4
    /// beam B1
    ///   size        W8x24
    ///   joint       over C1
    ///   bears on    C1
    /// ```
    "splice-off-support", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for beam in &house.model.beams {
        check_member(&beam.common, &beam.joints, &beam.supports, findings);
    }
    for joists in &house.model.joists {
        check_member(&joists.common, &joists.joints, &joists.supports, findings);
    }
}

fn check_member(of: &Common, joints: &[Joint], supports: &[Support], findings: &mut Findings<'_>) {
    // A line that can't be read may be the support that is missed.
    if of.may_say("bears on") || of.may_say("hangs from") {
        return;
    }
    for joint in joints {
        let Some(over) = joint.over.target else { continue };
        let is_carried = supports.iter().any(|support| {
            support.on.reference().is_some_and(|on| on.target == Some(over) || on.target.is_none())
        });
        if is_carried {
            continue;
        }
        let finding = findings.about(
            of.id,
            joint.span,
            format!("the pieces of {} meet over {}, which does not carry them", of.label(), joint.over.name),
        );
        for support in supports {
            finding.related(support.span, format!("{} carries them", support.on.name()));
            let name = support.on.name();
            if support.on.reference().is_some() {
                finding.choice(
                    format!("let them meet over {name}"),
                    Edit { span: joint.over.span, text: name.to_owned() },
                );
            }
        }
        finding
            .help("name a support they bear on, or say that this one carries them")
            .basis("common practice");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn asks_joists_too() {
        check_rule(
            &RULE,
            "
beam B1
  size        W8x24
beam B2
  size        W8x24
joists J1
  size        2x10 SPF No.2
  joint       lapped 6\" over B2
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the pieces of joists J1 meet over B2, which does not carry them
-- | B1 carries them
  bears on    B1
",
        );
    }
}

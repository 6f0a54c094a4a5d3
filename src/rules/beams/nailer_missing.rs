//! Wood on steel, and what it is nailed to.

use crate::geometry::carried::Carried;
use crate::house::House;
use crate::model::support::{Connector, Contact};
use crate::rules::{Findings, rule};

rule! {
    /// Joists lie on a steel beam, or hang from it, with no wood to be nailed to.
    ///
    /// Joists on steel want a `nailer` on top; those in hangers want one, or `packing` in the web.
    ///
    /// ## Why
    /// Nails do not go into a flange. The crew adds a plate on the day, and the floor comes up by its thickness.
    ///
    /// ## Source
    /// Common practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// beam B1
    ///   size        W8x24
    /// joists J1
    ///   size        2x10 SPF No.2
    ///   bears on    B1
    /// ```
    /// ```framing,passes
    /// beam B1
    ///   size        W8x24
    ///   nailer      2x6 SPF flat on top, bolted
    /// joists J1
    ///   size        2x10 SPF No.2
    ///   bears on    B1
    /// ```
    "nailer-missing", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let carried = Carried::of(&house.model);
    for beam in &house.model.beams {
        let is_steel = beam.size.value().and_then(|size| size.is_steel()) == Some(true);
        if !is_steel || !beam.nailer.is_missing() || beam.common.has_unread_lines {
            continue;
        }
        let needs = |contact: &Contact| match contact {
            Contact::Bears(_) => Some("lie on"),
            Contact::Hangs(Connector::Hanger { .. }) if beam.packing.is_missing() => Some("hang from"),
            Contact::Hangs(_) => None,
        };
        let found = carried
            .joists_on(beam.common.id)
            .iter()
            .find_map(|(joists, support)| Some((joists, support, needs(&support.by)?)));
        let Some((joists, support, how)) = found else { continue };
        let cure = match support.by {
            Contact::Bears(_) => "add a `nailer` on top: its thickness belongs to the stack",
            Contact::Hangs(_) => "add `packing` in the web, or a `nailer` for hangers over the top",
        };
        findings
            .about(
                beam.common.id,
                beam.common.name_span,
                format!(
                    "{} {how} {}, which is steel and has no wood to nail to",
                    joists.common.label(),
                    beam.common.label()
                ),
            )
            .follows(beam.common.id)
            .related(support.span, joists.common.label())
            .help(cure)
            .basis("common practice");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn hangers_take_packing() {
        check_rule(
            &RULE,
            "
beam B1
  size        W8x24
  packing     solid 2x in web, both sides
beam B2
--   ^^ joists J1 hang from beam B2, which is steel and has no wood to nail to
  size        W8x24
joists J1
  size        2x10 SPF No.2
  hangs from  B1 by hanger 900 lb source \"invented\"
  hangs from  B2 by hanger 900 lb source \"invented\"
",
        );
    }
}

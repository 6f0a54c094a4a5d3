//! Grout under steel plates, as drawn and as the pad was poured.

use crate::geometry::surfaces::Surface;
use crate::house::House;
use crate::model::element::ElementId;
use crate::model::framing::Base;
use crate::profiles::foundations::{GROUT_LEAST, GROUT_MOST};
use crate::rules::{Finding, Findings, rule};
use crate::text::Span;
use crate::units::Length;

rule! {
    /// Grout under a plate is too thin to be packed, or thicker than grout should be.
    ///
    /// Under column bases and beam seats. Where the footing's top has been shot, the grout that is left counts as well.
    ///
    /// ## Why
    /// Less than the limit `grout-least` cannot be packed full under a plate; more than `grout-most` crumbles at its edges.
    /// Then another column or a steel pack is the answer, and better before the crane comes.
    ///
    /// ## Source
    /// Common practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// column C1
    ///   size        HSS 4 x 4 x 1/4
    ///   base        plate 9" x 9" x 1/2", grout 2"
    /// ```
    /// ```framing,passes
    /// column C1
    ///   size        HSS 4 x 4 x 1/4
    ///   base        plate 9" x 9" x 1/2", grout 1-1/2"
    /// ```
    "grout-range", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for column in &house.model.columns {
        let Some((Base::Plate(_, grout), span)) = column.base.stated() else { continue };
        let what = column.common.label();
        if let Some(finding) = outside(house, *grout, &what, findings, column.common.id, span) {
            finding.help("change the level of the footing, or the column");
            continue;
        }
        let on = column.stands_on.value().and_then(|stand| stand.on.reference()).and_then(|on| on.target);
        let Some(footing) = on.and_then(|on| house.model.footing(on)) else { continue };
        let shot = footing.common.shots.iter().rev().find(|shot| &*shot.fact == "top");
        let (Some(shot), Ok(top), true) = (
            shot,
            house.geometry.surfaces.of(footing.common.id, Surface::Top),
            footing.pedestal.is_missing(),
        ) else {
            continue;
        };
        let high = shot.value - top.total();
        let way = if high.is_positive() { "high" } else { "low" };
        let what = format!("{what} on {}, shot {} {way},", footing.common.label(), high.abs());
        if let Some(finding) = outside(house, *grout - high, &what, findings, column.common.id, span) {
            finding
                .related(
                    shot.span,
                    format!("{} less {} as drawn", shot.value.in_feet(), top.total().in_feet()),
                )
                .help("order another length of column, or fill up with a steel pack");
        }
    }
    for pocket in &house.model.pockets {
        let Some((grout, span)) = pocket.grout.stated() else { continue };
        if *grout == Length::ZERO {
            continue;
        }
        if let Some(finding) =
            outside(house, *grout, &pocket.common.label(), findings, pocket.common.id, span)
        {
            finding.help("change the seat, or the plate").follows(pocket.common.id);
        }
    }
}

fn outside<'f>(
    house: &House,
    grout: Length,
    what: &str,
    findings: &'f mut Findings<'_>,
    of: ElementId,
    span: Span,
) -> Option<&'f mut Finding> {
    let (least, most) = (house.limits.of(&GROUT_LEAST), house.limits.of(&GROUT_MOST));
    let (limit, word) = if grout < least.value {
        (least, "least")
    } else if grout > most.value {
        (most, "most")
    } else {
        return None;
    };
    let message = if grout.is_positive() {
        format!("the plate of {what} has {grout} of grout: {} at the {word}", limit.value)
    } else {
        format!("the plate of {what} has no room for grout: {} at the {word}", limit.value)
    };
    let finding = findings.about(of, span, message);
    finding.basis(limit.basis());
    Some(finding)
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// 3/4" and 1-1/2" pass (common practice); 1/16" beyond does not.
    #[test]
    fn both_ends_pass() {
        check_rule(
            &RULE,
            "
column C1
  base        plate 9\" x 9\" x 1/2\", grout 3/4\"
column C2
  base        plate 9\" x 9\" x 1/2\", grout 11/16\"
--            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the plate of column C2 has 11/16\" of grout: 3/4\" at the least
column C3
  base        plate 9\" x 9\" x 1/2\", grout 1-9/16\"
--            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the plate of column C3 has 1-9/16\" of grout: 1-1/2\" at the most
pocket PK1
  grout       1-1/2\"
pocket PK2
  grout       2\"
--            ^^ the plate of pocket PK2 has 2\" of grout: 1-1/2\" at the most
",
        );
    }

    /// Drawn 1" of grout on 91'-0"; poured to 90'-11 3/8", 5/8" low, it takes 1-5/8".
    #[test]
    fn a_low_pad_takes_more() {
        check_rule(
            &RULE,
            "
footing F1
  kind        pad
  size        2'-6\" x 2'-6\" x 12\"
  top         91'-0\"
  shot        top 90'-11 3/8\" on 2027-04-03
column C1
  base        plate 9\" x 9\" x 1/2\", grout 1\"
--            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the plate of column C1 on footing F1, shot 5/8\" low, has 1-5/8\" of grout: 1-1/2\" at the most
  stands on   F1
",
        );
    }
}

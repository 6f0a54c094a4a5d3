//! Grout under steel plates, as drawn and as the pad was poured.

use crate::house::House;
use crate::house::as_built::AsBuilt;
use crate::model::element::ElementId;
use crate::model::framing::Base;
use crate::profiles::foundations::{GROUT_LEAST, GROUT_MOST};
use crate::rules::{Finding, Findings, rule};
use crate::text::Span;
use crate::units::Length;

rule! {
    /// Grout under a plate is too thin to be packed, or thicker than grout should be.
    ///
    /// Under column bases and beam seats. Where something was measured, the grout counts as well that is left in the house as
    /// built, with every measured number in place of the drawn one, when the column is cut as drawn.
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
        let Some((wanted, built)) = as_built(house, column.common.id) else { continue };
        let on = column.stands_on.value().and_then(|stand| stand.on.reference()).and_then(|on| on.target);
        let shot = on.and_then(|on| built.measured.iter().find(|shot| shot.of == on && &*shot.fact == "top"));
        let what = match shot.and_then(|shot| Some((shot, shot.by()?, house.model.common(shot.of)?))) {
            Some((_, by, footing)) => {
                let way = if by.is_positive() { "high" } else { "low" };
                format!("{what} on {}, shot {} {way},", footing.label(), by.abs())
            }
            None => format!("{what}, as built,"),
        };
        let Some(finding) = outside(house, wanted, &what, findings, column.common.id, span) else { continue };
        for shot in built.measured.iter().filter(|shot| Some(shot.of) == on) {
            if let Some(drawn) = shot.drawn {
                let says = format!("{} less {} as drawn", shot.value.in_feet(), drawn.in_feet());
                finding.related(shot.span, says);
            }
            finding.follows(shot.of);
        }
        let cut = |house: &House| {
            let stack = house.geometry.columns.get(column.common.id.index as usize)?;
            stack.cut.as_ref().ok().map(|cut| cut.total().in_inches())
        };
        match (cut(&built.house), cut(house)) {
            (Some(anew), Some(drawn)) if wanted > *grout => {
                finding.help(format!("cut it to {anew} instead of {drawn}, or fill up with a steel pack"))
            }
            (Some(anew), Some(drawn)) => finding.help(format!("cut it to {anew} instead of {drawn}")),
            _ => finding.help("order another length of column, or fill up with a steel pack"),
        };
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
            continue;
        }
        let Some((wanted, built)) = as_built(house, pocket.common.id) else { continue };
        let what = format!("{}, as built,", pocket.common.label());
        if let Some(finding) = outside(house, wanted, &what, findings, pocket.common.id, span) {
            for shot in built.measured.iter().filter(|shot| shot.of == pocket.common.id) {
                finding.related(shot.span, format!("its {} as measured", shot.fact));
            }
            finding.help("fill up with a thicker plate, or cut the seat down").follows(pocket.common.id);
        }
    }
}

/// The grout that the house as built leaves, where it is another than drawn.
fn as_built(house: &House, of: ElementId) -> Option<(Length, &AsBuilt)> {
    let built = house.as_built()?;
    let grout = built.grouts.iter().find(|grout| grout.of == of)?;
    Some((grout.wanted, built))
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

    /// 100'-0" − 3/4" − 8.14" (true depth of a W8x18) − 1/2" cap is 99'-2.61"; the foot is at 91'-0" + 1" + 1/2". Cut 97.11",
    /// 97-1/8" to the nearest 1/16". Poured to 90'-11 3/8", 5/8" low, it takes 1-5/8" of grout or a cut of 97.735", 97-3/4".
    #[test]
    fn a_low_pad_takes_more() {
        let house = |pad: &str, beam: &str, mark: &str| {
            format!(
                "
floor main
  subfloor    100'-0\"
  deck        3/4\"
beam B1
  size        W8x18
  set         flush in main
  bears on    C1
{beam}footing F1
  kind        pad
  size        2'-6\" x 2'-6\" x 12\"
  top         91'-0\"
  shot        top {pad} on 2027-04-03
column C1
  size        HSS 4 x 4 x 1/4
  cap         plate 6\" x 8\" x 1/2\"
  base        plate 9\" x 9\" x 1/2\", grout 1\"
{mark}  stands on   F1
"
            )
        };
        check_rule(
            &RULE,
            &house(
                "90'-11 3/8\"",
                "",
                "--            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the plate of column C1 on footing F1, shot 5/8\" low, has 1-5/8\" of grout: 1-1/2\" at the most
-- | cut it to 97-3/4\"~ instead of 97-1/8\"~
-- | 90'-11 3/8\" less 91'-0\" as drawn
",
            ),
        );
        check_rule(&RULE, &house("90'-11 1/2\"", "", ""));
        // The beam was measured 5/8" low too: the grout is as drawn.
        let beam = "  shot        top 99'-10 5/8\" on 2027-04-09\n";
        check_rule(&RULE, &house("90'-11 3/8\"", beam, ""));
        // High by 5/8" it leaves 3/8".
        check_rule(
            &RULE,
            &house(
                "91'-0 5/8\"",
                "",
                "--            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the plate of column C1 on footing F1, shot 5/8\" high, has 3/8\" of grout: 3/4\" at the least
-- | cut it to 96-1/2\"~ instead
",
            ),
        );
    }

    /// The seat of 98'-1" was poured 3/4" low: 1" of grout becomes 1-3/4". Drawn: 99'-11 1/4" − 8.14" leaves 99'-3.11";
    /// 99'-3.11" − 3/4" − 1" is the seat's 99'-1.36".
    #[test]
    fn a_low_seat_takes_more() {
        check_rule(
            &RULE,
            "
floor main
  subfloor    100'-0\"
  deck        3/4\"
beam B1
  size        W8x18
  set         flush in main
  bears on    PK1
pocket PK1
  seat        1189.36 in
  plate       6\" x 10\" x 3/4\"
  grout       1\"
--            ^^ the plate of pocket PK1, as built, has 1-3/4\" of grout: 1-1/2\" at the most
  shot        seat 1188.61 in on 2027-04-03
",
        );
    }
}

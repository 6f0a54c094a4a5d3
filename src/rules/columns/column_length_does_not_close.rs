//! A column's stated cut length against the one that beam, cap, base and footing leave.

use crate::facts::FactValue;
use crate::facts::comparison::literal;
use crate::geometry::load_path::PathEnd;
use crate::house::House;
use crate::profiles::levels::{COLUMN_CUT_TOLERANCE, POST_CUT_TOLERANCE};
use crate::rules::{Findings, rule};

rule! {
    /// A column is cut to another length than there is between its base and its cap.
    ///
    /// The length is the underside of the beam less shims and cap, less the top of the footing with grout and base plate.
    ///
    /// Of a column that is ordered or set it names the ways out; an `accept "note" on DATE` there makes it advice.
    ///
    /// ## Why
    /// A steel column is ordered from this number. Too long and nothing fits; too short and it stands on a stack of shims.
    ///
    /// ## Source
    /// Common practice: subtraction; the limit `column-cut-tolerance` for steel, `post-cut-tolerance` for wood.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// beam B1
    ///   size        W8x18
    ///   set         flush in main
    ///   bears on    C1
    /// column C1
    ///   size        HSS 4 x 4 x 1/4
    ///   cap         plate 6" x 8" x 1/2"
    ///   base        plate 8" x 8" x 1/2", grout 1"
    ///   stands on   F1
    ///   cut         should be 96"
    /// footing F1
    ///   top         91'-0"
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// beam B1
    ///   size        W8x18
    ///   set         flush in main
    ///   bears on    C1
    /// column C1
    ///   size        HSS 4 x 4 x 1/4
    ///   cap         plate 6" x 8" x 1/2"
    ///   base        plate 8" x 8" x 1/2", grout 1"
    ///   stands on   F1
    ///   cut         should be 97-1/8"
    /// footing F1
    ///   top         91'-0"
    /// ```
    "column-length-does-not-close", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (column, stack) in house.model.columns.iter().zip(&house.geometry.columns) {
        // A column that carries what it stands on has no length; the circle is another finding.
        if house.geometry.load_path.end_of(column.common.id) == PathEnd::Circle {
            continue;
        }
        let Ok(cut) = &stack.cut else { continue };
        let is_steel = column.size.value().and_then(|size| size.is_steel()).unwrap_or(false);
        let tolerance = house.limits.of(if is_steel { &COLUMN_CUT_TOLERANCE } else { &POST_CUT_TOLERANCE });
        let claims = column.common.claims.iter().filter(|claim| matches!(&*claim.fact, "cut" | "length"));
        for claim in claims {
            let Some(stated) = literal(&claim.value).ok().and_then(|value| value.as_length()) else {
                continue;
            };
            let claim_value = FactValue::Length(stated);
            let off = stated - cut.total();
            if off.abs() <= claim.within.unwrap_or(tolerance.value) {
                continue;
            }
            let direction = if off.is_positive() { "long" } else { "short" };
            let (label, stated) = (column.common.label(), stated.in_inches());
            let message = if cut.total().is_positive() {
                let (room, off) = (cut.total().in_inches(), off.abs());
                format!("{label} is cut to {stated}, but there is room for {room}: {off} too {direction}")
            } else {
                let below = cut.total().abs();
                format!("{label} is cut to {stated}, but what it carries ends {below} below its foot")
            };
            let finding = findings.about(column.common.id, claim.value_span, message);
            let (own, room) = (claim_value, FactValue::Length(cut.total()));
            finding.disagrees(column.common.id, "cut", own, room).note(cut.to_string());
            for term in cut.terms().iter().filter(|term| term.of != column.common.id) {
                if let Some(span) = term.span {
                    finding.related(span, format!("{} {}", term.amount.abs(), term.what));
                }
            }
            finding.help(format!("cut it to {}", cut.total().in_inches()));
            let fits = FactValue::Length(cut.total());
            let fits =
                fits.written(house.text_at(claim.value_span), Some(claim.within.unwrap_or(tolerance.value)));
            if let Some(fits) = fits.filter(|_| cut.total().is_positive()) {
                finding.write(claim.value_span, fits);
            }
            finding.basis(tolerance.basis());
            let footing =
                column.stands_on.value().and_then(|stand| stand.on.reference()).and_then(|on| on.target);
            if let Some(footing) = footing {
                finding.follows(footing);
            }
            for (beam, _) in &stack.beams {
                finding.follows(*beam).suspects(*beam, "bottom");
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// By hand: 100'-0" − 3/4" − 8.14" (true depth of a W8x18) − 1/2" cap − (91'-0" + 1" grout + 1/2" plate)
    /// = 108 − 0.75 − 8.14 − 0.5 − 1.5 = 97.11".
    #[test]
    fn adds_up_the_stack() {
        check_rule(
            &RULE,
            "
floor main
  subfloor    100'-0\"
  deck        3/4\"
beam B1
  size        W8x18
  set         flush in main
  bears on    C1
column C1
  size        HSS 4 x 4 x 1/4
  cap         plate 6\" x 8\" x 1/2\"
  base        plate 8\" x 8\" x 1/2\", grout 1\"
  stands on   F1
  cut         should be 95\" within 1/16\"
--                      ^^^ column C1 is cut to 95\", but there is room for 97-1/8\"~: 2-1/8\"~ too short
-- | cut it to 97-1/8\"~
footing F1
  top         91'-0\"
",
        );
    }
}

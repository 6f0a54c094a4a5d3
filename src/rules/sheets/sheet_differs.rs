//! Numbers on a sheet against those of the house.

use crate::facts::comparison::{Outcome, outcome_of};
use crate::house::House;
use crate::rules::assertions::{apart, explain, is_stated, place_of, sentence, text};
use crate::rules::{Findings, rule};
use crate::syntax::value::Relation;
use crate::syntax::value::Within;

rule! {
    /// A sheet shows a number that is not the house's.
    ///
    /// ## Why
    /// The same number stands on the plan, the section and the foundation sheet. The crew builds from the one it holds.
    ///
    /// ## Source
    /// Common practice: sheets are checked against each other. Without `within`, numbers agree when they differ by less
    /// than the limit `closure-tolerance`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor  100'-0"
    /// sheet A-301 "Section"
    ///   shows     subfloor of main = 99'-10"
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor  100'-0"
    /// sheet A-301 "Section"
    ///   shows     subfloor of main = 100'-0"
    /// ```
    "sheet-differs", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for sheet in &house.model.sheets {
        for assertion in &sheet.shows {
            let Outcome::Fails(failure) = outcome_of(house, assertion) else { continue };
            let comparison = &assertion.comparison;
            let label = sheet.common.label();
            let is_shown = comparison.relation == Relation::Equal && is_stated(&comparison.right);
            let message = if is_shown {
                format!(
                    "{label} shows {} as {}, but it is {}{}",
                    text(house, assertion, &comparison.left),
                    failure.right,
                    failure.left,
                    apart(assertion, &failure)
                )
            } else {
                format!("{label} shows otherwise: {}", sentence(house, assertion, &failure))
            };
            let finding = findings.about(sheet.common.id, assertion.span, message);
            explain(finding, &failure);
            let within = comparison.within.and_then(Within::length);
            let shown = text(house, assertion, &comparison.right);
            if let Some(actual) = failure.left.written(shown, within).filter(|_| is_shown) {
                finding.write(place_of(assertion, &comparison.right), actual);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// Less than 1/16" apart agrees; 1/16" does not (common practice).
    #[test]
    fn agrees_below_the_tolerance() {
        check_rule(
            &RULE,
            "
floor main
  subfloor  100'-0\"
sheet A-301
  shows     subfloor of main = 100'-0 1/32\"
  shows     subfloor of main = 100'-0 1/16\"
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ sheet A-301 shows subfloor of main as 100'-0 1/16\", but it is 100'-0\": 1/16\" apart
  shows     risers of S1 = 3
--^^^^^^^^^^^^^^^^^^^^^^^^^^ sheet A-301 shows risers of S1 as 3, but it is 2
stair S1
  risers    2
",
        );
    }
}

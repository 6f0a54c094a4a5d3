//! Comparisons of a length with a number, a level with an area.

use crate::facts::FactValue;
use crate::facts::comparison::{Outcome, outcome_of, stands};
use crate::house::House;
use crate::model::promises::Promise;
use crate::rules::claims::{both_sides, claims};
use crate::rules::{Findings, rule};
use crate::syntax::value::{Relation, Within};

rule! {
    /// Two things are compared that are not of one kind.
    ///
    /// ## Why
    /// A number of risers is no height. The line can't hold or fail, so it checks nothing.
    ///
    /// ## Source
    /// Plain sense.
    ///
    /// ## Examples
    /// ```framing,fires
    /// stair S1
    ///   risers  3
    ///   risers  should be 6-1/2"
    /// ```
    /// ```framing,passes
    /// stair S1
    ///   risers  3
    ///   risers  should be 3
    /// ```
    "comparison-of-unlike-things", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (common, claim) in claims(house) {
        let Ok((derived, stated)) = both_sides(house, common, claim) else { continue };
        if stands(house, &derived.value, Relation::Equal, &stated, claim.within.map(Within::Length)).is_none()
        {
            findings.about(common.id, claim.span, unlike(&derived.value, &stated));
        }
    }
    let intents = house.model.intents.iter().flat_map(|intent| {
        intent.promises.iter().filter_map(move |promise| match promise {
            Promise::Holds(assertion) => Some((&intent.common, assertion)),
            _ => None,
        })
    });
    let sheets =
        house.model.sheets.iter().flat_map(|sheet| sheet.shows.iter().map(move |line| (&sheet.common, line)));
    for (common, assertion) in intents.chain(sheets) {
        if let Outcome::DifferentKinds(left, right) = outcome_of(house, assertion) {
            findings.about(common.id, assertion.span, unlike(&left, &right));
        }
    }
}

fn unlike(left: &FactValue, right: &FactValue) -> String {
    format!("{} ({left}) is compared with {} ({right})", kind(left), kind(right))
}

const fn kind(value: &FactValue) -> &'static str {
    match value {
        FactValue::Elevation(_) => "a level",
        FactValue::Length(_) => "a length",
        FactValue::Count(_) => "a number",
        FactValue::Area(_) => "an area",
        FactValue::Force { .. } | FactValue::LineLoad(_) => "a load",
        FactValue::Pressure(_) => "a pressure",
        FactValue::Number(_) => "a number",
        FactValue::Size(_) => "a size",
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn says_what_each_side_is() {
        check_rule(
            &RULE,
            "
floor main
  subfloor  100'-0\"
stair S1
  risers    3
intent \"I\"
  keep      subfloor of main = 100'
  keep      subfloor of main = risers of S1
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ a level (100'-0\") is compared with a number (3)
sheet A-1
  shows     risers of S1 = 3 ft
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ a number (3) is compared with a length (3'-0\")
",
        );
    }
}

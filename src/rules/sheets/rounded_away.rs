//! Rounded numbers on sheets that other numbers are made of.

use crate::diagnostic::Edit;
use crate::facts::comparison::{Outcome, outcome_of, sides};
use crate::house::House;
use crate::model::element::Assertion;
use crate::profiles::levels::CLOSURE_TOLERANCE;
use crate::rules::assertions::{is_stated, place_of, text};
use crate::rules::{Findings, rule};
use crate::syntax::value::Relation;
use crate::text::Span;
use crate::units::Length;

rule! {
    /// A sheet shows a rounded number, and another dimension is made of it.
    ///
    /// A line that may be off by some length (`within`) shows a number that is off by the limit `closure-tolerance` or
    /// more, and the shown number stands in a string of dimensions, or another sheet shows the same thing otherwise.
    ///
    /// ## Why
    /// A number good enough to read is not good enough to add. Each sum takes the rounding along.
    ///
    /// ## Source
    /// Common practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x         A 0', B 12'-3 1/4"
    ///   y         1 0'
    /// beam B1
    ///   from      A/1 to B/1
    /// sheet S-101 "Plan"
    ///   shows     length of B1 = 12'-3" within 1/2"
    ///   string    12'-3", 4'-0" = 16'-3"
    /// ```
    /// ```framing,passes
    /// grid
    ///   x         A 0', B 12'-3 1/4"
    ///   y         1 0'
    /// beam B1
    ///   from      A/1 to B/1
    /// sheet S-101 "Plan"
    ///   shows     length of B1 = 12'-3" within 1/2"
    ///   string    12'-3 1/4", 4'-0" = 16'-3 1/4"
    /// ```
    "rounded-away", Advice
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let tolerance = house.limits.of(&CLOSURE_TOLERANCE);
    for sheet in &house.model.sheets {
        for assertion in &sheet.shows {
            let Some((actual, shown)) = rounded(house, assertion) else { continue };
            let off = (actual - shown).abs();
            let Some((place, what)) = fed_by(house, assertion, shown).filter(|_| off >= tolerance.value)
            else {
                continue;
            };
            findings
                .about(
                    sheet.common.id,
                    assertion.span,
                    format!(
                        "{} shows {} as {shown}, {off} off, and {what}",
                        sheet.common.label(),
                        text(house, assertion, &assertion.comparison.left)
                    ),
                )
                .related(place, "there")
                .note(format!("it is {actual}"))
                .help("show the number itself, or add up the exact ones")
                .choice(
                    format!("show {actual}"),
                    Edit {
                        span: place_of(assertion, &assertion.comparison.right),
                        text: actual.in_inches().to_string(),
                    },
                );
        }
    }
}

/// What a line really is, and the other number that it shows for it: within what it allows.
fn rounded(house: &House, assertion: &Assertion) -> Option<(Length, Length)> {
    let comparison = &assertion.comparison;
    let is_shown = comparison.relation == Relation::Equal && is_stated(&comparison.right);
    if !is_shown || comparison.within.is_none() || outcome_of(house, assertion) != Outcome::Holds {
        return None;
    }
    let (actual, shown) = sides(house, assertion).ok()?;
    Some((actual.as_length()?, shown.as_length()?))
}

/// Where the shown number is used: in a string, or against another sheet.
fn fed_by(house: &House, assertion: &Assertion, shown: Length) -> Option<(Span, String)> {
    let strings =
        house.model.sheets.iter().flat_map(|sheet| sheet.strings.iter().map(move |string| (sheet, string)));
    let uses = |string: &(Vec<Length>, Length)| string.0.contains(&shown) || string.1 == shown;
    if let Some((sheet, string)) = strings.into_iter().find(|(_, string)| uses(&string.value)) {
        return Some((string.span, format!("a string of {} has it", sheet.common.label())));
    }
    let left = text(house, assertion, &assertion.comparison.left);
    for sheet in &house.model.sheets {
        let others = sheet.shows.iter().filter(|other| other.span != assertion.span);
        for other in others.filter(|other| text(house, other, &other.comparison.left) == left) {
            let value = sides(house, other).ok().and_then(|(_, value)| value.as_length());
            if let Some(value) = value.filter(|value| *value != shown) {
                return Some((other.span, format!("{} shows it as {value}", sheet.common.label())));
            }
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// Less than 1/16" off is not rounded (common practice).
    #[test]
    fn another_sheet_may_show_it_better() {
        let house = |shown: &str, mark: &str| {
            format!(
                "
grid
  x         A 0', B 12'-3 1/4\"
  y         1 0'
beam B1
  from      A/1 to B/1
sheet S-101
  shows     length of B1 = {shown} within 1/2\"
{mark}sheet S-102
  shows     length of B1 = 12'-3 1/4\"
"
            )
        };
        check_rule(&RULE, &house("12'-3 1/4\"", ""));
        check_rule(&RULE, &house("12'-3 7/32\"", ""));
        check_rule(
            &RULE,
            &house(
                "12'-3\"",
                "--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ sheet S-101 shows length of B1 as 12'-3\", 1/4\" off, and sheet S-102 shows it as 12'-3 1/4\"\n",
            ),
        );
    }
}

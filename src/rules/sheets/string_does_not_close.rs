//! Strings of dimensions on sheets.

use crate::geometry::dimension_string::{Suspect, misfit};
use crate::house::House;
use crate::house::lines::{fact_at, part_at};
use crate::model::plan::Axis;
use crate::profiles::levels::CLOSURE_TOLERANCE;
use crate::rules::{Findings, rule};
use crate::syntax::value::Value;
use crate::text::Span;
use crate::units::Length;

rule! {
    /// The parts of a string of dimensions do not add up to the whole beside it.
    ///
    /// When one number put right would make it add up, and the result is a number that stands elsewhere in the string or
    /// between grid lines, the finding says which one it probably is.
    ///
    /// ## Why
    /// The crew lays out from one end or from the other, and the two do not meet.
    ///
    /// ## Source
    /// Arithmetic; the limit `closure-tolerance`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// sheet A-101
    ///   string  9'-4", 9'-3", 9'-4" = 28'-0"
    /// ```
    /// ```framing,passes
    /// sheet A-101
    ///   string  9'-4", 9'-4", 9'-4" = 28'-0"
    /// ```
    "string-does-not-close", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    if house.model.sheets.iter().all(|sheet| sheet.strings.is_empty()) {
        return;
    }
    let known = grid_lengths(house);
    let tolerance = house.limits.of(&CLOSURE_TOLERANCE);
    for sheet in &house.model.sheets {
        for string in &sheet.strings {
            let (parts, whole) = &string.value;
            let Some(misfit) = misfit(parts, *whole, tolerance.value, &known) else { continue };
            let off = misfit.whole - misfit.sum;
            let less = if off.is_positive() { "less" } else { "more" };
            let finding = findings.about(
                sheet.common.id,
                string.span,
                format!(
                    "the parts of this string add up to {}, {} {less} than its {}",
                    misfit.sum,
                    off.abs(),
                    misfit.whole
                ),
            );
            match misfit.suspect {
                Some(Suspect::Part(part, right)) => {
                    finding.help(format!("{part} is probably meant to be {right}"));
                    if let Some(place) = place_of(house, string.span, part) {
                        finding.write(place, right.to_string());
                    }
                }
                Some(Suspect::Whole) => {
                    finding.help(format!("the whole is probably meant to be {}", misfit.sum));
                    if let Some(place) = part_at(house, string.span, "sum") {
                        finding.write(place, misfit.sum.to_string());
                    }
                }
                None => {}
            }
            finding.basis(tolerance.basis());
        }
    }
}

/// Where a part of a string stands.
fn place_of(house: &House, string: Span, part: Length) -> Option<Span> {
    let (chunk, fact) = fact_at(house, string)?;
    let written = fact.parts_of("value").find(|written| written.value == Value::Length(part))?;
    Some(written.span.within(string.file, chunk.start))
}

/// The distances between neighbouring grid lines, and over all of them.
fn grid_lengths(house: &House) -> Vec<Length> {
    let mut lengths = Vec::new();
    for axis in [Axis::X, Axis::Y] {
        let lines = house.model.grid.lines.values();
        let mut places: Vec<Length> = lines.filter(|line| line.axis == axis).map(|line| line.at).collect();
        places.sort();
        lengths.extend(places.iter().zip(places.iter().skip(1)).map(|(near, far)| *far - *near));
        lengths.extend(places.last().zip(places.first()).map(|(last, first)| *last - *first));
    }
    lengths
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// 14'-0\" + 9'-4\" + 9'-3\" + 9'-4\" = 41'-11\".
    #[test]
    fn names_the_likely_mistake() {
        check_rule(
            &RULE,
            "
sheet S-101
  string        14'-0\", 9'-4\", 9'-3\", 9'-4\" = 42'-0\"
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the parts of this string add up to 41'-11\", 1\" less than its 42'-0\"
-- | 9'-3\" is probably meant to be 9'-4\"
",
        );
    }

    /// 1/16\" off is a mistake, less is rounding.
    #[test]
    fn at_the_limit() {
        check_rule(&RULE, "\nsheet S-101\n  string  5-1/32\", 5\" = 10\"\n");
        check_rule(
            &RULE,
            "
sheet S-101
  string  5-1/16\", 5\" = 10\"
--^^^^^^^^^^^^^^^^^^^^^^^^^ the parts of this string add up to 10-1/16\", 1/16\" more than its 10\"
",
        );
    }
}

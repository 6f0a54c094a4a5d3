//! Fractions that no tape shows.

use crate::house::House;
use crate::rules::spelling::told;
use crate::rules::wording::quoted;
use crate::rules::{Findings, rule};
use crate::syntax::ProblemKind;

rule! {
    /// A length holds a fraction that can't be.
    ///
    /// Above the line stands less than below it, below it no zero, and a length with parts of a foot has no inches.
    ///
    /// ## Why
    /// There is no reading to offer: the number was meant to be another one.
    ///
    /// ## Source
    /// Common practice: how a tape is read.
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W1
    ///   thick  9/7"
    /// ```
    /// ```framing,passes
    /// wall W1
    ///   thick  7-1/2"
    /// ```
    "impossible-fraction", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ProblemKind::UnclearDimension(readings) = problem.kind else { continue };
        if !readings.is_empty() {
            continue;
        }
        let text = house.text_at(problem.span);
        let below =
            text.split_once('/').map(|(_, below)| below.trim_end_matches(|c: char| !c.is_ascii_digit()));
        let message = match below {
            Some(below) if below.bytes().all(|figure| figure == b'0') => {
                format!("{} is divided by nothing", quoted(text))
            }
            Some(_) => format!("the fraction in {} is not below one", quoted(text)),
            None => format!("{} has parts of a foot and inches too", quoted(text)),
        };
        findings.in_text(problem.span, message);
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn says_what_is_odd_in_it() {
        check_rule(
            &RULE,
            "
wall W1
  thick   3/0\"
--        ^^^^ `3/0\"` is divided by nothing
  top     12'-7/4\"
--        ^^^^^^^^ the fraction in `12'-7/4\"` is not below one
  height  2.5'-6\"
--        ^^^^^^^ `2.5'-6\"` has parts of a foot and inches too
  grade   97'-63/64\" on north
",
        );
    }
}

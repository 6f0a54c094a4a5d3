//! Numbers beyond any house.

use crate::house::House;
use crate::rules::spelling::told;
use crate::rules::wording::quoted;
use crate::rules::{Findings, rule};
use crate::syntax::ProblemKind;

rule! {
    /// A number is larger than anything a house can have.
    ///
    /// ## Why
    /// It is a slip of the hand: a key held down, two numbers without the blank between them.
    ///
    /// ## Source
    /// The format's own rule: a length ends at 100 miles, any other number at twelve figures.
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W1
    ///   top  1234567890123456789012345678901234567890'
    /// ```
    /// ```framing,passes
    /// wall W1
    ///   top  99'-0 1/2"
    /// ```
    "number-too-large", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ProblemKind::NumberTooLarge = problem.kind else { continue };
        let number = quoted(house.text_at(problem.span));
        findings.in_text(problem.span, format!("{number} is too large for a house"));
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn a_length_ends_at_a_hundred_miles() {
        check_rule(
            &RULE,
            "
wall W1
  top     528000'
wall W2
  top     528001'
--        ^^^^^^^ `528001'` is too large for a house
",
        );
    }
}

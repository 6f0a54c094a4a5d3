//! Lengths that can't be kept exactly.

use crate::diagnostic::Edit;
use crate::house::House;
use crate::rules::spelling::told;
use crate::rules::wording::quoted;
use crate::rules::{Findings, rule};
use crate::syntax::ProblemKind;

rule! {
    /// A length is finer than the format keeps.
    ///
    /// Lengths are counted in 1/203200 inch, so that 1/64", 0.01" and 1 mm are all whole. A third of an inch is not.
    ///
    /// ## Why
    /// A rounded number would make two elevations equal that are not, or the other way round.
    ///
    /// ## Source
    /// The format's own rule. An inch is 25.4 mm exactly (international inch, 1959).
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W1
    ///   thick  7-1/3"
    /// ```
    /// ```framing,passes
    /// wall W1
    ///   thick  7-11/32"
    /// ```
    "length-not-exact", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ProblemKind::NotExact(below, above) = problem.kind else { continue };
        let text = quoted(house.text_at(problem.span));
        findings
            .in_text(problem.span, format!("{text} can't be kept exactly; {below} and {above} can"))
            .help(format!("write `{below}` or `{above}`"))
            .choice(format!("write `{below}`"), Edit { span: problem.span, text: below.to_string() })
            .choice(format!("write `{above}`"), Edit { span: problem.span, text: above.to_string() });
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn names_the_nearest_that_are() {
        check_rule(
            &RULE,
            "
wall W1
  thick   1/3\"
--        ^^^^ `1/3\"` can't be kept exactly; 21/64\" and 11/32\" can
wall W2
  thick   0.333333\"
--        ^^^^^^^^^ `0.333333\"` can't be kept exactly; 0.33\" and 0.34\" can
wall W3
  thick   10-1/64\"
  top     2.4 m
",
        );
    }
}

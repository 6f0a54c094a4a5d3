//! Lines far longer than any fact.

use crate::house::House;
use crate::rules::spelling::told;
use crate::rules::{Findings, rule};
use crate::syntax::ProblemKind;

rule! {
    /// A line is far longer than any fact and is not read.
    ///
    /// ## Why
    /// It is no line that a person wrote: two files run together, or something that is no framing spec.
    ///
    /// ## Source
    /// The format's own rule: a fact takes at most 65536 characters of one line. Comments may be longer.
    ///
    /// ## Examples
    /// A line of that length is too long to be shown here.
    "line-too-long", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ProblemKind::LineTooLong = problem.kind else { continue };
        let n_characters = house.text_at(problem.span).trim_end().chars().count();
        findings.in_text(
            problem.span,
            format!("this line is {n_characters} characters long and is not read; no fact takes 65536"),
        );
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::found;

    #[test]
    fn the_line_is_not_read_and_the_next_one_is() {
        let of = |n_figures: usize| format!("beam B1\n  size {}\n  size W8x24\n", "1".repeat(n_figures));
        assert_eq!(found(&RULE, &of(65_528)), []);
        let long = found(&RULE, &of(65_530));
        assert_eq!(
            long[0].message,
            "this line is 65537 characters long and is not read; no fact takes 65536"
        );
    }
}

//! Words that can be no name.

use crate::house::House;
use crate::rules::spelling::told;
use crate::rules::wording::quoted;
use crate::rules::{Findings, rule};
use crate::syntax::ProblemKind;

rule! {
    /// A name is not written as names are.
    ///
    /// ## Why
    /// A name that could be a size or a number could not be told from one where it is used.
    ///
    /// ## Source
    /// The format's own rule: a letter, then letters, digits, `_`, `-` and `.`; no `x` between digits.
    ///
    /// ## Examples
    /// ```framing,fires
    /// beam W8x24
    ///   size  W8x24
    /// ```
    /// ```framing,passes
    /// beam B1
    ///   size  W8x24
    /// ```
    "name-malformed", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ProblemKind::NameMalformed = problem.kind else { continue };
        let text = quoted(house.text_at(problem.span));
        findings
            .in_text(problem.span, format!("{text} can be no name"))
            .help("a name is a letter, then letters, digits, `_`, `-` and `.`; no `x` between digits, no dot at the end");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn a_number_or_a_size_is_no_name() {
        check_rule(
            &RULE,
            "
beam 12
--   ^^ `12` can be no name
beam 2x10
--   ^^^^ `2x10` can be no name
beam B-1_a.2
beam Bx1
",
        );
    }
}

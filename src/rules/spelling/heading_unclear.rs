//! Words behind an element's name.

use crate::house::House;
use crate::rules::spelling::told;
use crate::rules::wording::quoted;
use crate::rules::{Findings, rule};
use crate::syntax::ProblemKind;

rule! {
    /// Something stands on an element's first line that does not belong there.
    ///
    /// ## Why
    /// It is not read. A title without its quotes is lost, a fact on the first line too.
    ///
    /// ## Source
    /// The format's own rule: the word that opens it, its name, maybe a title in quotes; facts on lines of their own.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main Main floor
    ///   subfloor  100'-0"
    /// ```
    /// ```framing,passes
    /// floor main "Main floor"
    ///   subfloor  100'-0"
    /// ```
    "heading-unclear", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ProblemKind::HeadingUnclear = problem.kind else { continue };
        let text = quoted(house.text_at(problem.span));
        findings
            .in_text(problem.span, format!("{text} does not belong on the element's first line"))
            .help("a title stands in quotes, a fact on a line of its own");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn a_title_needs_its_quotes() {
        check_rule(
            &RULE,
            "
project Loon Cove
--      ^^^^ `Loon` does not belong on the element's first line
beam B1 \"Girder\" W8x24
--               ^^^^^ `W8x24` does not belong on the element's first line
beam B2 \"Girder\" -- a comment does
",
        );
    }
}

//! Facts that belong to nothing.

use crate::house::House;
use crate::rules::spelling::told;
use crate::rules::{Findings, rule};
use crate::syntax::ProblemKind;

rule! {
    /// A fact stands before any element.
    ///
    /// ## Why
    /// A fact belongs to the element above it; here there is none, so it says nothing of anything.
    ///
    /// ## Source
    /// The format's own rule: a line that begins with a blank is a fact of the element above it.
    ///
    /// ## Examples
    /// ```framing,fires
    ///   top  99'-0 1/2"
    /// wall W1
    /// ```
    /// ```framing,passes
    /// wall W1
    ///   top  99'-0 1/2"
    /// ```
    "fact-before-element", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ProblemKind::FactBeforeElement = problem.kind else { continue };
        findings
            .in_text(problem.span, "this fact belongs to no element: none is opened above it")
            .help("an element is opened in the first column: take the blank away, or move the line");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn several_lost_facts_are_one_finding() {
        check_rule(
            &RULE,
            "
  top   99'
--^^^^^^^^^ this fact belongs to no element: none is opened above it
  thick 10\"
wall W1
  top   99'
",
        );
    }
}

//! Elements without the name they need.

use crate::house::House;
use crate::rules::spelling::told;
use crate::rules::{Findings, rule};
use crate::syntax::ProblemKind;
use crate::syntax::vocabulary::spec_of;

rule! {
    /// An element has no name.
    ///
    /// ## Why
    /// Without a name nothing can stand on it, bear on it or be said about it.
    ///
    /// ## Source
    /// The format's own rule: the name stands behind the word that opens the element.
    ///
    /// ## Examples
    /// ```framing,fires
    /// column
    ///   at  A/1
    /// ```
    /// ```framing,passes
    /// column C1
    ///   at  A/1
    /// ```
    "name-missing", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ProblemKind::NameMissing(kind) = problem.kind else { continue };
        let example = spec_of(*kind).example.lines().next().unwrap_or("");
        findings
            .in_text(problem.span, format!("no name stands behind `{}`", kind.word()))
            .help(format!("write one, as in `{example}`"));
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn a_title_is_no_name_and_a_grid_needs_none() {
        check_rule(
            &RULE,
            "
grid
  x A 0'
beam \"Girder\"
--<^ no name stands behind `beam`
-- | as in `beam
hold point
--<^^^^^^^ no name stands behind `hold point`
",
        );
    }
}

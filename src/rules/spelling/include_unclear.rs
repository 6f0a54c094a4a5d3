//! Include lines that name no file.

use crate::house::House;
use crate::rules::spelling::told;
use crate::rules::{Findings, rule};
use crate::syntax::ProblemKind;

rule! {
    /// An include line names no file.
    ///
    /// ## Why
    /// The part of the house that it should bring in is not there.
    ///
    /// ## Source
    /// The format's own rule: `include` and one path in quotes, relative to the file it stands in.
    ///
    /// ## Examples
    /// ```framing,fires
    /// include foundation.framing
    /// ```
    /// ```framing,passes
    /// include "foundation.framing"
    /// ```
    "include-unclear", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ProblemKind::IncludeUnclear = problem.kind else { continue };
        findings
            .in_text(problem.span, "`include` wants one path in quotes and nothing else")
            .help("write it as in `include \"foundation.framing\"`");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn one_path_in_quotes() {
        check_rule(
            &RULE,
            "
include
--<^^^^ `include` wants one path in quotes and nothing else
include \"a.framing\" \"b.framing\"
--<^^^^ `include` wants one path in quotes and nothing else
include \"a.framing\" -- the walls
",
        );
    }
}

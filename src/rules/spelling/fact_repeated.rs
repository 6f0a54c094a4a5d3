//! Facts that stand twice.

use crate::house::House;
use crate::rules::spelling::told;
use crate::rules::wording::quoted;
use crate::rules::{Findings, rule};
use crate::syntax::ProblemKind;

rule! {
    /// A fact that an element has once stands twice.
    ///
    /// ## Why
    /// One of the two is wrong, and who reads only one of them builds from it.
    ///
    /// ## Source
    /// The format's own rule: the first one counts. Facts that may be repeated are marked so in `grammar/reference.md`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// column C1
    ///   shim  1/8"
    ///   shim  1/4"
    /// ```
    /// ```framing,passes
    /// column C1
    ///   shim  1/8"
    /// ```
    "fact-repeated", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ProblemKind::FactRepeated(phrase, first) = problem.kind else { continue };
        let first = problem.place(*first);
        let is_same = {
            let words = |span| house.text_at(span).split_whitespace().collect::<Vec<_>>();
            words(problem.span) == words(first)
        };
        let finding = findings
            .in_text(problem.span, format!("`{phrase}` is said a second time; the first counts"))
            .related(first, format!("the first is {}", quoted(house.text_at(first))));
        if is_same {
            finding.help("keep one of the two lines").take_out(house, problem.span);
        } else {
            finding.keep_one(house, ("the first", first), ("the second", problem.span));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn names_both() {
        check_rule(
            &RULE,
            "
column C1
  shim      1/8\"
  shim      1/4\"
--^^^^ `shim` is said a second time; the first counts
-- | the first is `shim      1/8\"`
column C2
  shim      1/4\"
  stands on F1
beam B1
  bears on  W1
  bears on  W2
",
        );
    }
}

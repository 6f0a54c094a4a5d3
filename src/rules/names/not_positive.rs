//! Numbers that are nothing or less.

use crate::house::House;
use crate::model::problem::ModelProblemKind;
use crate::rules::names::{report, told};
use crate::rules::wording::quoted;
use crate::rules::{Findings, rule};

rule! {
    /// A number is nothing or less where there must be something.
    ///
    /// ## Why
    /// Joists at no spacing and a wall of no thickness can't be built.
    ///
    /// ## Source
    /// Plain sense: sizes, spacings and counts are more than nothing; gaps and layers are not less.
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W1
    ///   thick  0"
    /// ```
    /// ```framing,passes
    /// wall W1
    ///   thick  10"
    /// ```
    "not-positive", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let text = quoted(house.text_at(problem.span));
        match problem.kind {
            ModelProblemKind::NotPositive(phrase) => {
                report(findings, problem, format!("`{phrase}` must be more than nothing, and {text} is not"));
            }
            ModelProblemKind::Negative(phrase) => {
                report(findings, problem, format!("`{phrase}` can't be less than nothing, and {text} is"));
            }
            _ => {}
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn at_nothing() {
        check_rule(
            &RULE,
            "
wall W1
  thick     0\"
--          ^^ `thick` must be more than nothing, and `0\"` is not
wall W2
  thick     1/64\"
column C1
  shim      -1/8\"
--          ^^^^^ `shim` can't be less than nothing, and `-1/8\"` is
column C2
  shim      0\"
stair S1
  risers    0
--          ^ `risers` must be more than nothing, and `0` is not
",
        );
    }

    /// A load that pulls up, a product that bends at once: either would turn every force behind it round.
    #[test]
    fn a_load_or_a_value_below_nothing() {
        check_rule(
            &RULE,
            "
floor main
  dead      -12 psf
--          ^^^^^^^ `dead` can't be less than nothing, and `-12 psf` is
beam B1
  load      -400 plf live
--          ^^^^^^^^ `load` can't be less than nothing, and `-400 plf` is
product LV14
  values    E 0 psi, Fb 2600 psi
--            ^^^^^ `values` must be more than nothing, and `0 psi` is not
",
        );
    }
}

//! Loads in the wrong unit, sizes in the wrong form.

use crate::house::House;
use crate::model::problem::ModelProblemKind;
use crate::rules::names::{report, told};
use crate::rules::wording::quoted;
use crate::rules::{Findings, rule};

rule! {
    /// A load has another unit than its fact takes, or a footing's size another form than its kind has.
    ///
    /// ## Why
    /// 40 plf on a floor says nothing of the load on an area; a strip has no length of its own.
    ///
    /// ## Source
    /// The format's own rule: a load's unit says what it acts on; sizes are width x length x thickness, thickness last.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   live  40 plf
    /// ```
    /// ```framing,passes
    /// floor main
    ///   live  40 psf
    /// ```
    "value-of-other-kind", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let text = quoted(house.text_at(problem.span));
        match problem.kind {
            ModelProblemKind::LoadOfOtherKind(takes) => {
                report(findings, problem, format!("{text} is no load in {takes}, as belongs here"));
            }
            ModelProblemKind::SizeOfOtherKind(has) => {
                report(findings, problem, format!("{text} is not the size of such a footing: it has {has}"));
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
    fn says_what_belongs_there() {
        check_rule(
            &RULE,
            "
floor main
  live      40 plf
--          ^^^^^^ `40 plf` is no load in psf, as belongs here
footing F1
  kind      strip
  size      20\" x 20\" x 10\"
--          ^^^^^^^^^^^^^^^ `20\" x 20\" x 10\"` is not the size of such a footing: it has width x thickness
",
        );
    }
}

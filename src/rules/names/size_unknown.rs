//! Sizes that no table and no product has.

use crate::house::House;
use crate::model::problem::ModelProblemKind;
use crate::rules::names::{report, told};
use crate::rules::wording::{either, quoted};
use crate::rules::{Findings, rule};

rule! {
    /// A member's size stands in no table, and no product of the spec has it.
    ///
    /// ## Why
    /// The true depth decides every level above and below the member; it is never guessed from a name.
    ///
    /// ## Source
    /// Dressed sizes of softwood lumber (American Softwood Lumber Standard PS 20), tables of rolled shapes, and the
    /// products that the spec declares.
    ///
    /// ## Examples
    /// ```framing,fires
    /// beam B1
    ///   size  W8x25
    /// ```
    /// ```framing,passes
    /// beam B1
    ///   size  W8x24
    /// ```
    "size-unknown", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ModelProblemKind::UnknownSize(nearest) = &problem.kind else { continue };
        let text = house.text_at(problem.span);
        let finding =
            report(findings, problem, format!("{} is in no table, and no product has it", quoted(text)));
        let sizes: Vec<String> = nearest.iter().map(|size| format!("`{size}`")).collect();
        match nearest.as_slice() {
            [] => finding.help("declare it as a `product` with its size, values and source"),
            [only] if !text.contains(' ') => finding.meant(problem.span, only),
            _ => finding.help(format!("the nearest are {}", either(&sizes))),
        };
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn names_the_nearest() {
        check_rule(
            &RULE,
            "
beam B1
  size      W8x25
--          ^^^^^ `W8x25` is in no table, and no product has it
-- | W8x24
beam B2
  size      3-ply LV13
--          ^^^^^^^^^^ `3-ply LV13` is in no table, and no product has it
-- | LV12
product LV12
  kind      composite lumber 1-3/4 x 12
  values    E 2.0e6 psi
  source    \"table 4\" on 2027-01-15
",
        );
    }
}

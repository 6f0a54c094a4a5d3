//! Days that no calendar has.

use crate::house::House;
use crate::rules::spelling::told;
use crate::rules::wording::quoted;
use crate::rules::{Findings, rule};
use crate::syntax::ProblemKind;

rule! {
    /// A day does not exist.
    ///
    /// ## Why
    /// Days decide what is already poured and which waivers have run out.
    ///
    /// ## Source
    /// The civil calendar; days are written year-month-day (ISO 8601).
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W1
    ///   status  poured 2027-02-29
    /// ```
    /// ```framing,passes
    /// wall W1
    ///   status  poured 2028-02-29
    /// ```
    "day-does-not-exist", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ProblemKind::NoSuchDay = problem.kind else { continue };
        let text = quoted(house.text_at(problem.span));
        findings
            .in_text(problem.span, format!("{text} is no day of the calendar"))
            .help("a day is written year-month-day: `2027-03-01`");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// 2027 is no leap year, 2028 is one.
    #[test]
    fn leap_days_count() {
        check_rule(
            &RULE,
            "
wall W1
  status  set 2028-02-29
  shot    top 99' on 2027-02-29
--                   ^^^^^^^^^^ `2027-02-29` is no day of the calendar
",
        );
    }
}

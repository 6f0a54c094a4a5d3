//! Dimensions that are read, but not as people write them.

use crate::diagnostic::Severity;
use crate::house::House;
use crate::rules::spelling::told;
use crate::rules::wording::quoted;
use crate::rules::{Findings, rule};
use crate::syntax::ProblemKind;

rule! {
    /// A dimension is read, but nobody writes it so.
    ///
    /// Twelve inches and more behind feet are a warning; inches without their mark are only advice.
    ///
    /// ## Why
    /// 12'-13" is 13'-1", or a slip for 12'-3": who reads it on site can't know.
    ///
    /// ## Source
    /// Common practice: feet and inches below twelve.
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W1
    ///   top  98'-13"
    /// ```
    /// ```framing,passes
    /// wall W1
    ///   top  99'-1"
    /// ```
    "odd-dimension", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ProblemKind::OddDimension(plain) = problem.kind else { continue };
        let text = house.text_at(problem.span);
        let is_marked = text.ends_with(['"', '”', '″', '\'', '’', '′', 'n', '.']);
        let finding = if is_marked {
            findings.in_text(
                problem.span,
                format!("{} has a foot or more in its inches: it is {plain}", quoted(text)),
            )
        } else {
            let finding = findings
                .in_text(problem.span, format!("{} has no inch mark; it is read as {plain}", quoted(text)));
            finding.severity(Severity::Advice)
        };
        finding.help(format!("write `{plain}`")).write(problem.span, plain.as_ref());
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::diagnostic::Severity;
    use crate::testing::rule_check::{check_rule, found};

    #[test]
    fn at_a_foot() {
        check_rule(
            &RULE,
            "
wall W1
  top     12'-11 1/2\"
wall W2
  top     12'-12\"
--        ^^^^^^^ `12'-12\"` has a foot or more in its inches: it is 13'-0\"
wall W3
  top     12'-6
--        ^^^^^ `12'-6` has no inch mark; it is read as 12'-6\"
-- | write `12'-6\"`
",
        );
    }

    #[test]
    fn a_missing_mark_is_only_advice() {
        assert_eq!(found(&RULE, "wall W1\n  top 12'-6\n")[0].severity, Severity::Advice);
        assert_eq!(found(&RULE, "wall W1\n  top 12'-13\"\n")[0].severity, Severity::Warning);
    }
}

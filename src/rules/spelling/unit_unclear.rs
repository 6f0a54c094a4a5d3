//! Dimensions that can be read in several ways.

use crate::diagnostic::Edit;
use crate::house::{House, TextProblem};
use crate::rules::spelling::told;
use crate::rules::wording::{either, quoted};
use crate::rules::{Findings, rule};
use crate::syntax::ProblemKind;

rule! {
    /// A dimension can be read in more than one way.
    ///
    /// A number without its unit, a dash that could join or take away, a dropped blank before a fraction, a comma
    /// inside a number. It is never guessed: the line is not read until it says which.
    ///
    /// ## Why
    /// 12-6 is 12'-6" to one reader and a mark to the next; the wrong one is found when the piece does not fit.
    ///
    /// ## Source
    /// Common practice: how dimensions are written on drawings and in framers' notes.
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W1
    ///   thick  7.5
    /// ```
    /// ```framing,passes
    /// wall W1
    ///   thick  7.5"
    /// ```
    "unit-unclear", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        match problem.kind {
            ProblemKind::UnclearDimension(readings) if !readings.is_empty() => {
                unclear(house, problem, readings, findings);
            }
            ProblemKind::CommaInNumber(plain) => {
                let text = house.text_at(problem.span);
                findings
                    .in_text(
                        problem.span,
                        format!("{} has a comma in it, and a comma parts a list", quoted(text)),
                    )
                    .help(format!("write `{plain}`"))
                    .write(problem.span, plain.as_ref());
            }
            _ => {}
        }
    }
}

fn unclear(house: &House, problem: TextProblem<'_>, readings: &[Box<str>], findings: &mut Findings<'_>) {
    let text = house.text_at(problem.span);
    let lacks_unit = readings.iter().all(|reading| {
        reading.strip_prefix(text).is_some_and(|rest| matches!(rest.trim(), "\"" | "in" | "ft"))
    });
    let shown: Vec<String> = readings.iter().map(|reading| format!("`{reading}`")).collect();
    let message = match (lacks_unit, shown.as_slice()) {
        (true, _) => format!("{} has no unit", quoted(text)),
        (false, [_]) => format!("{} is not written as a dimension is", quoted(text)),
        (false, _) => format!("{} can be read as {}", quoted(text), either(&shown)),
    };
    let finding = findings.in_text(problem.span, message);
    finding.help(format!("write {}", either(&shown)));
    if let [only] = readings {
        finding.write(problem.span, only.as_ref());
        return;
    }
    for reading in readings {
        finding.choice(format!("write `{reading}`"), Edit { span: problem.span, text: reading.to_string() });
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::{check_rule, found};

    #[test]
    fn the_readings_are_offered() {
        check_rule(
            &RULE,
            "
wall W1
  thick   7.5
--        ^^^ `7.5` has no unit
-- | write `7.5 in` or `7.5 ft`
  top     12-6
--        ^^^^ `12-6` can be read as `12'-6\"` or `12 less 6`
  height  11/2\"
--        ^^^^^ `11/2\"` can be read as `1-1/2\"` or `5-1/2\"`
  weight  12,000 plf
--        ^^^^^^ `12,000` has a comma in it, and a comma parts a list
-- | write `12000`
column C1
  size    4x4
--        ^^^ `4x4` can be read as `4x4 SPF No.2` or `HSS 4 x 4 x 1/4`
floor main
  subfloor  98.5
--          ^^^^ `98.5` has no unit
-- | write `98.5 ft`
",
        );
    }

    #[test]
    fn one_reading_is_a_fix() {
        let found = found(&RULE, "floor main\n  subfloor 98.5\nfloor den\n  deck 3\n");
        assert_eq!(found[0].fix.as_ref().map(|fix| fix.title.as_str()), Some("write `98.5 ft`"));
        assert_eq!(found[1].fix, None);
    }
}

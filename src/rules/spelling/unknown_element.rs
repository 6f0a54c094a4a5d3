//! First words that open nothing.

use crate::house::House;
use crate::rules::spelling::told;
use crate::rules::wording::quoted;
use crate::rules::{Findings, rule};
use crate::syntax::ProblemKind;
use crate::syntax::names;

rule! {
    /// A line in the first column opens no element.
    ///
    /// ## Why
    /// The line is not read, and neither are the facts below it, unless it is a fact itself that lost its blank.
    ///
    /// ## Source
    /// The format's own rule: an element begins in the first column with its word, a fact with a blank.
    ///
    /// ## Examples
    /// ```framing,fires
    /// colum C1
    ///   at  A/1
    /// ```
    /// ```framing,passes
    /// column C1
    ///   at  A/1
    /// ```
    "unknown-element", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ProblemKind::UnknownElement(nearest) = problem.kind else { continue };
        let text = house.text_at(problem.span);
        let finding = findings.in_text(problem.span, format!("{} opens no element", quoted(text)));
        if names::begins_fact(text) {
            finding.help("a fact begins with a blank: indent the line");
        } else if let Some(nearest) = nearest {
            finding.meant(problem.span, nearest);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::{check_rule, found};

    #[test]
    fn offers_the_nearest_word_or_the_indent() {
        check_rule(
            &RULE,
            "
colum C1
--<^^ `colum` opens no element
-- | did you mean `column`?
  at A/1
beam B1
size W8x24
--<^ `size` opens no element
-- | a fact begins with a blank
zygote
--<^^^ `zygote` opens no element
",
        );
    }

    #[test]
    fn the_nearest_word_is_a_fix() {
        let found = found(&RULE, "baem B1\n");
        let fix = found[0].fix.as_ref().unwrap();
        assert_eq!((fix.title.as_str(), fix.edits[0].text.as_str()), ("write `beam`", "beam"));
    }
}

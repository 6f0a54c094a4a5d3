//! Quotes without their partner.

use crate::diagnostic::{Edit, Fix};
use crate::house::House;
use crate::rules::spelling::told;
use crate::rules::{Findings, rule};
use crate::syntax::ProblemKind;
use crate::text::Span;

rule! {
    /// Text in quotes is not closed on its line.
    ///
    /// ## Why
    /// A fact never runs on to a second line, so the rest of the line would be swallowed.
    ///
    /// ## Source
    /// The format's own rule: text ends at the next quote on its line. Inches inside text are written `in.`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// beam B1 "Girder
    ///   size  W8x24
    /// ```
    /// ```framing,passes
    /// beam B1 "Girder, 2 in. low"
    ///   size  W8x24
    /// ```
    "text-not-closed", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ProblemKind::UnclosedText = problem.kind else { continue };
        let finding = findings.in_text(problem.span, "this text is not closed on its line");
        finding.help("close it with a `\"`; write `in.` for inches inside text");
        let text = house.text_at(problem.span);
        // What looks like a comment, or another fact behind it, may not have been meant as text.
        if !text.contains("--") {
            let end = problem.span.start.saturating_add(u32::try_from(text.trim_end().len()).unwrap_or(0));
            let edit = Edit { span: Span::new(problem.span.file, end, end), text: "\"".to_owned() };
            finding.fix(Fix { title: "close the text at the end of its line".to_owned(), edits: vec![edit] });
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn marks_the_text_and_reads_on() {
        check_rule(
            &RULE,
            "
beam B1
  load  435 plf live \"second floor
--                   ^^^^^^^^^^^^^ this text is not closed on its line
beam B2 \"closed\"
",
        );
    }
}

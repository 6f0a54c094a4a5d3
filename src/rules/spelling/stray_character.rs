//! Characters that mean nothing.

use crate::diagnostic::{Edit, Fix};
use crate::house::House;
use crate::rules::spelling::told;
use crate::rules::{Findings, rule};
use crate::syntax::ProblemKind;
use crate::text::Span;

rule! {
    /// A character stands where it means nothing.
    ///
    /// ## Why
    /// The line is not read: what it says counts as unknown until the character is gone.
    ///
    /// ## Source
    /// The format's own rule. An inch mark touches the number before it; a quote opens text only behind a blank; `--`
    /// opens a comment only at the line's start or behind a blank.
    ///
    /// ## Examples
    /// ```framing,fires
    /// beam B1
    ///   size  2x10;
    /// ```
    /// ```framing,passes
    /// beam B1
    ///   size  2x10
    /// ```
    "stray-character", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let mut too_large: Option<Span> = None;
    for problem in told(house) {
        if *problem.kind == ProblemKind::NumberTooLarge {
            too_large = Some(problem.span);
        }
        let ProblemKind::StrayCharacter = problem.kind else { continue };
        // The unit behind a number that can't be read is no second mistake.
        if too_large
            .is_some_and(|number| number.file == problem.span.file && number.end == problem.span.start)
        {
            continue;
        }
        let text = house.text_at(problem.span);
        let (message, help) = match text {
            "--" => ("`--` opens a comment only behind a blank".to_owned(), "write a blank before it"),
            "\"" | "“" | "”" | "″" => (
                format!("this `{text}` marks no inches and opens no text"),
                "an inch mark touches the number before it; text is opened behind a blank and closed on its line",
            ),
            "'" | "’" | "′" => {
                (format!("this `{text}` marks no feet"), "a foot mark touches the number before it")
            }
            "-" | "−" | "+" | "±" => (
                format!("this `{text}` belongs to no number"),
                "a sign touches its number; to add and take away write `plus` and `less`",
            ),
            "#" | "//" | ";" => (format!("`{text}` means nothing here"), "a comment begins with `--`"),
            _ => {
                let shown = match text.chars().next() {
                    Some(character) if character.is_control() || text.trim().is_empty() => {
                        format!("the character U+{:04X}", u32::from(character))
                    }
                    _ => format!("`{text}`"),
                };
                (format!("{shown} means nothing here"), "")
            }
        };
        let finding = findings.in_text(problem.span, message);
        if !help.is_empty() {
            finding.help(help);
        }
        if matches!(text, "--" | "#" | "//" | ";") {
            let before = house.text_at(Span { end: problem.span.start, ..house.line_of(problem.span) });
            let blank = if before.is_empty() || before.ends_with([' ', '\t']) { "" } else { " " };
            finding.fix(Fix {
                title: "make it a comment".to_owned(),
                edits: vec![Edit { span: problem.span, text: format!("{blank}--") }],
            });
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::{check_rule, found};

    #[test]
    fn says_what_the_character_could_have_been() {
        check_rule(
            &RULE,
            "
beam B1
  size  2x10 {
--           ^ `{` means nothing here
  set   top \" 99'
--          ^ this `\"` marks no inches and opens no text
-- | an inch mark touches the number before it
column C1
  at    A/1--note
--         ^^ `--` opens a comment only behind a blank
",
        );
    }

    #[test]
    fn a_line_of_rubbish_is_one_finding() {
        assert_eq!(found(&RULE, "{{{{ ; }}}}\n").len(), 1);
        assert_eq!(found(&RULE, "wall W1\n  top 12345678901234567890'\n").len(), 0);
        assert_eq!(
            found(&RULE, "beam B1\n  size \u{7}\n")[0].message,
            "the character U+0007 means nothing here"
        );
    }
}

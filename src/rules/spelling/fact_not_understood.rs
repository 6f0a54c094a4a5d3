//! Values that don't fit their fact.

use crate::house::House;
use crate::rules::spelling::told;
use crate::rules::wording::{either, quoted};
use crate::rules::{Findings, rule};
use crate::syntax::ProblemKind;
use crate::text::Span;

/// More than this that could stand here helps nobody.
const MOST_EXPECTED: usize = 5;

rule! {
    /// What stands behind a fact's phrase does not fit it.
    ///
    /// ## Why
    /// The line is not read; what it would say counts as unknown.
    ///
    /// ## Source
    /// The format's own rule: each fact has one form (`grammar/reference.md`).
    ///
    /// ## Examples
    /// ```framing,fires
    /// beam B1
    ///   bears on  W1 by 7"
    /// ```
    /// ```framing,passes
    /// beam B1
    ///   bears on  W1 for 7"
    /// ```
    "fact-not-understood", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ProblemKind::NotUnderstood { phrase, expected, found } = problem.kind else { continue };
        let wanted = wanted(expected);
        match found {
            Some(found) if wanted == "the end of the line" => {
                findings.in_text(problem.span, format!("{} is too much behind `{phrase}`", quoted(found)));
            }
            Some(found) => {
                findings.in_text(
                    problem.span,
                    format!("{} does not fit here; `{phrase}` goes on with {wanted}", quoted(found)),
                );
            }
            None => {
                findings.in_text(
                    line_up_to(house, problem.span),
                    format!("the line ends too early; `{phrase}` goes on with {wanted}"),
                );
            }
        }
    }
}

fn wanted(expected: &[Box<str>]) -> String {
    let mut items: Vec<String> = expected.iter().map(|item| item.to_string()).collect();
    // What could be said comes before that nothing need be said.
    items.sort_by_key(|item| item == "the end of the line");
    if items.len() > MOST_EXPECTED {
        items.truncate(MOST_EXPECTED);
        items.push("something else".to_owned());
    }
    if items.is_empty() { "something else".to_owned() } else { either(&items) }
}

/// The line up to this place, without its indent.
fn line_up_to(house: &House, span: Span) -> Span {
    let line = Span { end: span.end, ..house.line_of(span) };
    let indent = house.text_at(line).len() - house.text_at(line).trim_start().len();
    Span::new(span.file, line.start + u32::try_from(indent).unwrap_or(0), span.end)
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn says_what_could_stand_there() {
        check_rule(
            &RULE,
            "
beam B1
  bears on  W1 foot
--             ^^^^ `foot` does not fit here; `bears on` goes on with `for` or the end of the line
joists J1
  spacing   16\" from 3\"
--                   ^^ `3\"` does not fit here; `spacing` goes on with a grid line
column C1
  cap       plate 9\" x
--^^^^^^^^^^^^^^^^^^^^ the line ends too early; `cap` goes on with a size in inches
wall W1
  kind      concrete
",
        );
    }
}

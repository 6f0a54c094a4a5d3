//! Values that don't fit their fact.

use crate::house::House;
use crate::rules::spelling::told;
use crate::rules::wording::{either, quoted};
use crate::rules::{Findings, rule};
use crate::syntax::ProblemKind;
use crate::syntax::vocabulary::{CLAIM, ElementKind, spec_of};
use crate::text::Span;

/// More than this that could stand here helps nobody.
const MOST_EXPECTED: usize = 7;

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
        let finding = match found {
            Some(found) if wanted == "the end of the line" => {
                findings.in_text(problem.span, format!("{} is too much behind `{phrase}`", quoted(found)))
            }
            Some(found) => findings.in_text(
                problem.span,
                format!("{} does not fit here; `{phrase}` goes on with {wanted}", quoted(found)),
            ),
            None => findings.in_text(
                line_up_to(house, problem.span),
                format!("the line ends too early; `{phrase}` goes on with {wanted}"),
            ),
        };
        if let Some(example) = problem.element.and_then(|kind| example_of(kind, phrase)) {
            finding.help(format!("write it as in `{example}`"));
        }
    }
}

fn wanted(expected: &[Box<str>]) -> String {
    let mut items: Vec<String> = expected.iter().flat_map(|item| single_words(item)).collect();
    // What could be said comes before that nothing need be said.
    items.sort_by_key(|item| item == "the end of the line");
    if items.len() > MOST_EXPECTED {
        items.truncate(MOST_EXPECTED);
        items.push("something else".to_owned());
    }
    if items.is_empty() { "something else".to_owned() } else { either(&items) }
}

/// The words of a list such as `` `=`, `<` or `>` ``; another item is itself.
fn single_words(item: &str) -> Vec<String> {
    if !item.starts_with('`') {
        return vec![item.to_owned()];
    }
    item.split(", ").flat_map(|words| words.split(" or ")).map(str::to_owned).collect()
}

/// A line of this fact.
fn example_of(kind: ElementKind, phrase: &str) -> Option<&'static str> {
    let facts = spec_of(kind).all_facts().chain([&CLAIM]);
    facts.into_iter().find(|fact| fact.phrase == phrase).map(|fact| fact.example)
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
-- | write it as in `spacing 16\" from A`
column C1
  cap       plate 9\" x
--^^^^^^^^^^^^^^^^^^^^ the line ends too early; `cap` goes on with a size in inches
intent \"I\"
  keep      top of W1
--^^^^^^^^^^^^^^^^^^^ the line ends too early; `keep` goes on with `plus`, `less`, `=`, `<`, `<=`, `>` or `>=`
wall W1
  kind      concrete
  kind      brick
--          ^^^^^ `brick` does not fit here; `kind` goes on with `concrete`, `masonry`, `framed` or `pony`
",
        );
    }
}

//! Phrases that begin no fact.

use crate::house::House;
use crate::rules::spelling::told;
use crate::rules::wording::{a_kind, quoted};
use crate::rules::{Findings, rule};
use crate::syntax::ProblemKind;
use crate::text::Span;

rule! {
    /// A line begins with no fact that its element has.
    ///
    /// ## Why
    /// The line is not read; what it would say counts as unknown.
    ///
    /// ## Source
    /// The format's own rule: each kind of element has a closed list of facts (`grammar/reference.md`). A claim
    /// (`… should be …`) names a fact that follows from the rest.
    ///
    /// ## Examples
    /// ```framing,fires
    /// beam B1
    ///   bear on  W1
    /// ```
    /// ```framing,passes
    /// beam B1
    ///   bears on  W1
    /// ```
    "unknown-fact", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ProblemKind::UnknownFact(kind, nearest) = problem.kind else { continue };
        let place = match nearest {
            Some(nearest) => first_words(house, problem.span, nearest.split(' ').count()),
            None => problem.span,
        };
        let text = quoted(house.text_at(place));
        let message = if is_claim(house, problem.span) {
            format!("{text} is nothing that follows for {}", a_kind(*kind))
        } else {
            format!("{text} is no fact of {}", a_kind(*kind))
        };
        let finding = findings.in_text(place, message);
        if let Some(nearest) = nearest {
            finding.meant(place, nearest);
        }
    }
}

/// The line from this place on.
fn line_from(house: &House, span: Span) -> &str {
    house.text_at(Span { start: span.start, ..house.line_of(span) })
}

/// So many words of the line, with the blanks between them: what the nearest phrase would take the place of.
fn first_words(house: &House, span: Span, n_words: usize) -> Span {
    let line = line_from(house, span);
    let mut end = 0;
    for _ in 0..n_words {
        let rest = line.get(end..).unwrap_or("");
        let blanks = rest.len() - rest.trim_start().len();
        let word = rest.trim_start().split([' ', '\t']).next().unwrap_or("");
        end += blanks + word.len();
    }
    let end = span.start.saturating_add(u32::try_from(end).unwrap_or(0));
    Span::new(span.file, span.start, end.max(span.end))
}

fn is_claim(house: &House, span: Span) -> bool {
    let behind = line_from(house, span).get((span.end - span.start) as usize..).unwrap_or("");
    let mut words = behind.split_whitespace();
    words.next() == Some("should") && words.next() == Some("be")
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::{check_rule, found};

    #[test]
    fn the_nearest_phrase_of_this_element() {
        check_rule(
            &RULE,
            "
beam B1
  siez      W8x24
--^^^^ `siez` is no fact of a beam
-- | did you mean `size`?
  bear on   W1
--^^^^^^^ `bear on` is no fact of a beam
  wobble    3
--^^^^^^ `wobble` is no fact of a beam
wall W1
  size      2x10
--^^^^ `size` is no fact of a wall
column C1
  ctu       should be 96\"
--^^^ `ctu` is nothing that follows for a column
-- | did you mean `cut`?
",
        );
    }

    #[test]
    fn the_fix_writes_the_whole_phrase() {
        let found = found(&RULE, "beam B1\n  bear  on W1\n");
        let fix = found[0].fix.as_ref().unwrap();
        assert_eq!(fix.edits[0].text, "bears on");
        assert_eq!((fix.edits[0].span.start, fix.edits[0].span.end), (10, 18));
    }
}

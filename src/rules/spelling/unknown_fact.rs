//! Phrases that begin no fact.

use crate::house::House;
use crate::rules::spelling::told;
use crate::rules::wording::{a_kind, quoted};
use crate::rules::{Findings, rule};
use crate::syntax::ProblemKind;
use crate::syntax::vocabulary::ElementKind;
use crate::text::{LocalSpan, Span};

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
    let mut strangers: Option<Strangers<'_>> = None;
    for problem in told(house) {
        let ProblemKind::UnknownFact(kind, nearest) = problem.kind else { continue };
        if nearest.is_none() && !is_claim(house, problem.span) {
            let element = problem.place(LocalSpan::default());
            match &mut strangers {
                Some(strangers) if strangers.element == element => strangers.places.push(problem.span),
                Some(_) | None => {
                    report_strangers(house, strangers.take(), findings);
                    strangers = Some(Strangers { element, kind, places: vec![problem.span] });
                }
            }
            continue;
        }
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
    report_strangers(house, strangers, findings);
}

/// Lines of one element that are like nothing it has: most often its neighbour's, whose first line is lost.
struct Strangers<'a> {
    /// Where the element begins.
    element: Span,
    kind: &'a ElementKind,
    /// The words, in the order of the lines.
    places: Vec<Span>,
}

fn report_strangers(house: &House, strangers: Option<Strangers<'_>>, findings: &mut Findings<'_>) {
    let Some(Strangers { kind, places, .. }) = strangers else { return };
    let Some((first, more)) = places.split_first() else { return };
    let finding = findings
        .in_text(*first, format!("{} is no fact of {}", quoted(house.text_at(*first)), a_kind(*kind)));
    for place in more {
        finding.related(*place, format!("nor is {}", quoted(house.text_at(*place))));
    }
    if !more.is_empty() {
        finding.help("if they belong to another element, its first line is missing above them");
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
-- | nor is `sway`
-- | if they belong to another element, its first line is missing above them
  sway      4
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

//! The lines of a spec as edits see them: a fact's parts, a line taken out, a line added.

use crate::diagnostic::Edit;
use crate::house::House;
use crate::model::element::Common;
use crate::syntax::vocabulary::{CLAIM, ElementSpec, spec_of};
use crate::syntax::{self, Chunk, Fact, LineKind, Opening};
use crate::text::Span;

/// The fact whose line a place is in, with the chunk it counts from.
pub fn fact_at(house: &House, place: Span) -> Option<(&Chunk, &Fact)> {
    let chunk = house.trees.get(place.file.0 as usize)?.chunk_at(place.start)?;
    let local = place.start - chunk.start;
    let after = chunk.body.facts.partition_point(|fact| fact.span.start <= local);
    let fact = chunk.body.facts.get(after.checked_sub(1)?)?;
    (local <= fact.span.end).then_some((chunk, fact))
}

/// Where the part with this label stands, of the fact whose line a place is in.
pub fn part_at(house: &House, place: Span, label: &str) -> Option<Span> {
    let (chunk, fact) = fact_at(house, place)?;
    Some(fact.part(label)?.span.within(place.file, chunk.start))
}

/// The line in which a place begins, taken out with its end.
pub fn removed(house: &House, place: Span) -> Edit {
    let line = house.line_of(place);
    let Some(source) = house.inputs.sources.get(place.file.0 as usize) else {
        return Edit { span: place, text: String::new() };
    };
    let (_, end) = source.lines.range_of(source.lines.line_of(place.start));
    // The last line has no end of its own: it takes the one before it along.
    let start = if end == line.end { before_line(&source.text, line.start) } else { line.start };
    Edit { span: Span::new(place.file, start, end), text: String::new() }
}

fn before_line(text: &str, start: u32) -> u32 {
    let before = text.get(..start as usize).unwrap_or("");
    let without = before.strip_suffix("\r\n").or_else(|| before.strip_suffix(['\n', '\r'])).unwrap_or(before);
    u32::try_from(without.len()).unwrap_or(start)
}

/// A fact added to an element, behind those that the vocabulary lists before it, as the formatter writes it.
pub fn added(house: &House, common: &Common, fact: &str) -> Option<Edit> {
    let file = common.span.file;
    let chunk = house.trees.get(file.0 as usize)?.chunk_at(common.span.start)?;
    let Opening::Element(heading) = &chunk.body.opening else { return None };
    let spec = spec_of(heading.kind);
    let place = place_of_words(spec, fact);
    let mut last = chunk.body.lines.iter().find(|line| line.kind == LineKind::Opening)?;
    for line in &chunk.body.lines {
        match line.kind {
            LineKind::Fact(index) if place_of(spec, chunk.body.facts.get(index)?) <= place => last = line,
            // What can't be read stays where it is, and what is added comes behind it.
            LineKind::Fact(_)
            | LineKind::Blank
            | LineKind::Comment
            | LineKind::Opening
            | LineKind::Broken => {}
        }
    }
    let behind = house.line_of(last.span.within(file, chunk.start)).end;
    let text = format!("{}{}", line_end(house, common.span), as_written(house, chunk, common.span, fact));
    Some(Edit { span: Span::new(file, behind, behind), text })
}

/// Where the vocabulary lists a fact among all that may stand in an element. What an element claims comes behind its own
/// facts and before those that every element has.
pub fn place_of(spec: &ElementSpec, fact: &Fact) -> usize {
    spec.all_facts()
        .position(|known| std::ptr::eq(known, fact.spec) && !std::ptr::eq(known, &CLAIM))
        .unwrap_or_else(|| place_of_claims(spec))
}

/// The same of a line that is still to be written: its phrase is the longest that begins it.
fn place_of_words(spec: &ElementSpec, line: &str) -> usize {
    let begins =
        |phrase: &str| line.strip_prefix(phrase).is_some_and(|rest| rest.is_empty() || rest.starts_with(' '));
    let known = spec.all_facts().enumerate().filter(|(_, fact)| begins(fact.phrase));
    let longest = known.max_by_key(|(_, fact)| fact.phrase.len());
    match longest {
        Some((place, _)) if !line.contains(" should be ") => place,
        _ => place_of_claims(spec),
    }
}

/// As far as the last of the element's own facts.
const fn place_of_claims(spec: &ElementSpec) -> usize {
    spec.facts.len().saturating_sub(1)
}

/// A fact of an element as the formatter writes it among the element's own.
fn as_written(house: &House, chunk: &Chunk, element: Span, fact: &str) -> String {
    let end = chunk.start + chunk.body.length;
    let written = house.text_at(Span::new(element.file, chunk.start, end));
    let formatted = syntax::format(&format!("{}\n  {fact}\n", written.trim_end()));
    let line = formatted.trim_end().rsplit('\n').next().unwrap_or("");
    line.to_owned()
}

/// How the lines of a file end.
pub fn line_end(house: &House, place: Span) -> &'static str {
    let source = house.inputs.sources.get(place.file.0 as usize);
    let text = source.map_or("", |source| &source.text);
    match text.find(['\r', '\n']).and_then(|at| text.get(at..)) {
        Some(rest) if rest.starts_with("\r\n") => "\r\n",
        Some(rest) if rest.starts_with('\r') => "\r",
        _ => "\n",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::rule_check::house;

    fn after(text: &str, edit: &Edit) -> String {
        let mut text = text.to_owned();
        text.replace_range(edit.span.start as usize..edit.span.end as usize, &edit.text);
        text
    }

    fn with_added(text: &str, name: &str, fact: &str) -> String {
        let house = house(text);
        let common = house.model.common(house.model.named(name).unwrap()).unwrap();
        after(text, &added(&house, common, fact).unwrap())
    }

    #[test]
    fn a_fact_is_added_where_the_vocabulary_lists_it() {
        let text = "wall W1\n  kind          pony -- short\n  stands on     F1\n\nfooting F1\n";
        assert_eq!(
            with_added(text, "W1", "sheathed both sides"),
            "wall W1\n  kind          pony -- short\n  sheathed      both sides\n  stands on     F1\n\nfooting F1\n"
        );
        assert_eq!(
            with_added("footing F1\r\n\r\n", "F1", "top 90'"),
            "footing F1\r\n  top           90'-0\"\r\n\r\n"
        );
        assert_eq!(with_added("footing F1", "F1", "top 90'"), "footing F1\n  top           90'-0\"");
    }

    #[test]
    fn a_claim_stands_before_what_every_element_has() {
        let text = "column C1\n  cap none\n  status drawn\n";
        assert_eq!(
            with_added(text, "C1", "cut should be 96\""),
            "column C1\n  cap none\n  cut           should be 96\"\n  status drawn\n"
        );
    }

    #[test]
    fn a_line_is_taken_out_with_its_end() {
        for end in ["\n", "\r\n", "\r"] {
            let text = ["grid", "  x A 0' -- a", "  y 1 0'"].join(end);
            let house = house(&text);
            let place = |at: &str| {
                let at = u32::try_from(text.find(at).unwrap()).unwrap();
                Span::new(crate::text::FileId(0), at, at)
            };
            assert_eq!(after(&text, &removed(&house, place("x A"))), ["grid", "  y 1 0'"].join(end));
            assert_eq!(after(&text, &removed(&house, place("y 1"))), ["grid", "  x A 0' -- a"].join(end));
        }
    }
}

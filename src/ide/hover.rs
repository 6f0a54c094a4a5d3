//! What there is to say about the place under the cursor.

use crate::diagnostic::Diagnostic;
use crate::rules;
use crate::snapshot::Snapshot;
use crate::syntax::vocabulary::{ElementSpec, FactSpec, spec_of};
use crate::syntax::{Chunk, Opening};
use crate::text::{FileId, Span};

/// What there is to say about a place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hover {
    /// The place it is about.
    pub span: Span,
    /// What there is to say, in Markdown.
    pub text: String,
}

/// What is wrong at `offset` and why that matters; then what the format says of the fact or element that stands there.
pub fn hover(snapshot: &Snapshot, file: FileId, offset: u32) -> Option<Hover> {
    let mut said: Vec<(Span, String)> = findings_at(snapshot, file, offset)
        .into_iter()
        .map(|finding| (finding.span, finding_text(finding)))
        .collect();
    said.extend(word_at(snapshot, file, offset));
    let span = said.first()?.0;
    let texts: Vec<String> = said.into_iter().map(|(_, text)| text).collect();
    Some(Hover { span, text: texts.join("\n\n---\n\n") })
}

/// Roots and consequences at a place, the narrowest first.
fn findings_at(snapshot: &Snapshot, file: FileId, offset: u32) -> Vec<&Diagnostic> {
    let all = snapshot.findings.iter().flat_map(Diagnostic::with_consequences);
    let mut here: Vec<_> =
        all.filter(|finding| finding.span.file == file && finding.span.touches(offset)).collect();
    here.sort_by_key(|finding| finding.span.end - finding.span.start);
    here
}

fn finding_text(finding: &Diagnostic) -> String {
    let mut parts =
        vec![format!("**{}** `{}`", finding.severity.word(), finding.rule), finding.message.clone()];
    parts.extend(list(finding.notes.iter().cloned()));
    parts.extend(list(finding.consequences.iter().map(|one| format!("follows: {}", one.message))));
    parts.extend(list(finding.help.iter().map(|help| format!("help: {help}"))));
    let basis = finding.basis.as_ref().map(|basis| format!("by {basis}; "));
    parts.push(format!("{}{}", basis.unwrap_or_default(), finding.remedy.sentence()));
    parts.extend(finding.waiver.as_ref().map(|line| format!("to accept it here, write `{line}`")));
    parts.extend(rules::rule_named(finding.rule).map(|rule| reason(rule.documentation).to_owned()));
    parts.join("\n\n")
}

fn list(lines: impl Iterator<Item = String>) -> Option<String> {
    let lines: Vec<String> = lines.map(|line| format!("- {line}")).collect();
    (!lines.is_empty()).then(|| lines.join("\n"))
}

/// A rule's documentation up to its examples: what it looks for, why, and its source.
fn reason(documentation: &str) -> &str {
    documentation.split("## Examples").next().unwrap_or_default().trim()
}

/// What the format says of the fact or the heading at a place.
fn word_at(snapshot: &Snapshot, file: FileId, offset: u32) -> Option<(Span, String)> {
    let chunk = snapshot.house.trees.get(file.0 as usize)?.chunk_at(offset)?;
    fact_at(chunk, file, offset).or_else(|| heading_at(chunk, file, offset))
}

fn fact_at(chunk: &Chunk, file: FileId, offset: u32) -> Option<(Span, String)> {
    let spans = chunk.body.facts.iter().map(|fact| (fact.span.within(file, chunk.start), fact.spec));
    let (span, spec) = spans.into_iter().find(|(span, _)| span.touches(offset))?;
    Some((span, fact_text(spec)))
}

fn heading_at(chunk: &Chunk, file: FileId, offset: u32) -> Option<(Span, String)> {
    let Opening::Element(heading) = &chunk.body.opening else { return None };
    let named = heading.name.as_ref().or(heading.title.as_ref()).map(|(_, span)| *span);
    let span = heading.keyword.to(named.unwrap_or(heading.keyword)).within(file, chunk.start);
    span.touches(offset).then(|| (span, element_text(spec_of(heading.kind))))
}

fn fact_text(spec: &FactSpec) -> String {
    let mut parts = vec![format!("**{}**", spec.phrase), spec.meaning.to_owned()];
    if !spec.default.is_empty() {
        parts.push(format!("without it: {}", spec.default));
    }
    parts.push(example(spec.example));
    parts.join("\n\n")
}

fn element_text(spec: &ElementSpec) -> String {
    [format!("**{}**", spec.keyword), spec.summary.to_owned(), example(spec.example)].join("\n\n")
}

fn example(lines: &str) -> String {
    format!("```framing\n{}\n```", lines.trim_end())
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use super::*;
    use crate::inputs::{Inputs, Settings};
    use crate::snapshot::{Caches, analyse};
    use crate::syntax::vocabulary::ElementKind;
    use crate::testing::rule_check::TODAY;
    use crate::text::Source;

    /// A house in which nothing is wrong, so that only the vocabulary has something to say.
    const HOUSE: &str = include_str!("../../grammar/samples/first.framing");

    /// What is said at `$0`, which stands in `piece`, a piece of the house; and the text it is about.
    fn said(piece: &str) -> Option<(String, String)> {
        let at = HOUSE.find(&piece.replace("$0", "")).unwrap() + piece.find("$0").unwrap();
        let inputs = Inputs {
            sources: vec![Source::new("test.framing", HOUSE)],
            includes: Vec::new(),
            settings: Settings::default(),
        };
        let snapshot = analyse(&Arc::new(inputs), &mut Caches::default(), TODAY, &|| false).unwrap();
        let hover = hover(&snapshot, FileId(0), u32::try_from(at).unwrap())?;
        Some((HOUSE[hover.span.start as usize..hover.span.end as usize].to_owned(), hover.text))
    }

    fn check(piece: &str, about: &str, expected: &str) {
        let (place, text) = said(piece).unwrap();
        assert_eq!(place, about);
        assert!(text.contains(expected), "{text}");
    }

    #[test]
    fn a_fact_says_its_meaning_from_its_phrase_to_its_last_value() {
        let wall = spec_of(ElementKind::Wall);
        let meaning = wall.facts.iter().find(|fact| fact.phrase == "thick").unwrap().meaning;
        for piece in ["$0thick         8\"", "th$0ick         8\"", "thick         8\"$0"] {
            check(piece, "thick         8\"", meaning);
        }
    }

    #[test]
    fn a_heading_says_what_the_element_is() {
        let summary = spec_of(ElementKind::Footing).summary;
        check("foot$0ing F1 \"Strip", "footing F1", summary);
        check("footing F$01 \"Strip", "footing F1", summary);
    }

    #[test]
    fn there_is_nothing_to_say_of_comments_and_blank_lines() {
        assert_eq!(said("-- A cab$0in of one room"), None);
        assert_eq!(said("$0\ngrid\n"), None);
    }
}

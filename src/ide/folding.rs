//! What an editor can fold away.

use crate::house::House;
use crate::ide::outline::{Block, Outline, outline};
use crate::syntax::Opening;
use crate::text::{FileId, Span};

/// A stretch that can be folded into its first line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fold {
    /// From its first byte to its last; more than one line.
    pub span: Span,
    /// What it is.
    pub kind: FoldKind,
}

/// What a stretch that can be folded is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum FoldKind {
    /// An element, into its first line.
    Element,
    /// A section, into its heading.
    Section,
    /// Lines of comment.
    Comment,
    /// Includes that follow each other.
    Includes,
}

/// What can be folded in a file, in the order of the text. Invariant: of two folds one holds the other or they have no
/// line in common, and no two begin on one line.
pub fn folding(house: &House, file: FileId) -> Vec<Fold> {
    let outline = outline(house, file);
    let Some(source) = house.inputs.sources.get(file.0 as usize) else { return Vec::new() };
    let is_long = |span: Span| source.lines.line_of(span.start) < source.lines.line_of(span.end);
    let mut folds: Vec<Fold> = Vec::new();
    let mut add = |span: Span, kind| {
        if is_long(span) {
            folds.push(Fold { span, kind });
        }
    };
    for section in &outline.sections {
        // A heading between rules stays in sight.
        let last_line = house.line_of(Span::new(file, section.heading.end, section.heading.end));
        add(Span::new(file, last_line.start, section.span.end), FoldKind::Section);
    }
    for comment in &outline.comments {
        if outline.sections.binary_search_by_key(&comment.start, |section| section.heading.start).is_err() {
            add(*comment, FoldKind::Comment);
        }
    }
    outline.blocks.iter().for_each(|block| add(block.span, FoldKind::Element));
    for run in include_runs(&outline, &is_long) {
        add(run, FoldKind::Includes);
    }
    folds.sort_by_key(|fold| (fold.span.start, std::cmp::Reverse(fold.span.end)));
    folds
}

/// From the first to the last of includes that follow each other in one section.
fn include_runs(outline: &Outline<'_>, is_long: &impl Fn(Span) -> bool) -> Vec<Span> {
    let is_include =
        |block: &Block<'_>| matches!(block.chunk.body.opening, Opening::Include(_)) && !is_long(block.span);
    let begins_section =
        |place: usize| outline.sections.binary_search_by_key(&place, |section| section.blocks.start).is_ok();
    let mut runs: Vec<Span> = Vec::new();
    let mut is_in_run = false;
    for (place, block) in outline.blocks.iter().enumerate() {
        match runs.last_mut() {
            Some(run) if is_in_run && is_include(block) && !begins_section(place) => run.end = block.span.end,
            _ if is_include(block) => runs.push(block.span),
            _ => {}
        }
        is_in_run = is_include(block);
    }
    runs
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::cursor::snapshot_of;

    /// Each fold as its kind, its first and its last line.
    fn folds(spec: &str) -> Vec<String> {
        let snapshot = snapshot_of(spec);
        let house = &snapshot.house;
        let told = folding(house, FileId(0)).into_iter().map(|fold| {
            let lines: Vec<_> = house.text_at(fold.span).lines().collect();
            format!("{:?}: {} … {}", fold.kind, lines[0].trim(), lines[lines.len() - 1].trim())
        });
        told.collect()
    }

    #[test]
    fn elements_sections_comments_and_includes() {
        let spec = "\
-- A house
-- of wood.

project \"House\"

include \"a.framing\"
include \"b.framing\" -- walls

-- =====
-- beams
-- =====

-- Why
-- so long.
beam B1
  size 2x10

  from A/1 to B/1

beam B2

-- posts
";
        assert_eq!(
            folds(spec),
            [
                "Comment: -- A house … -- of wood.",
                "Includes: include \"a.framing\" … include \"b.framing\" -- walls",
                "Section: -- ===== … beam B2",
                "Comment: -- Why … -- so long.",
                "Element: beam B1 … from A/1 to B/1",
            ]
        );
    }

    #[test]
    fn a_comment_between_the_facts_of_an_element_heads_no_section() {
        let spec = "beam B1\n  size 2x10\n\n-- posts\n\n  from A/1 to B/1\n\n-- walls\n\nwall W1\n";
        assert_eq!(folds(spec), ["Element: beam B1 … from A/1 to B/1", "Section: -- walls … wall W1"]);
    }

    #[test]
    fn includes_of_two_sections_are_two_runs() {
        let spec = "-- a\n\n-- one\n\ninclude \"a.framing\"\ninclude \"b.framing\"\n\n-- two\n\ninclude \"c.framing\"\n  lost\n";
        assert_eq!(
            folds(spec),
            [
                "Section: -- one … include \"b.framing\"",
                "Includes: include \"a.framing\" … include \"b.framing\"",
                "Section: -- two … lost",
                "Element: include \"c.framing\" … lost",
            ]
        );
    }
}

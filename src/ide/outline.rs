//! The shape of a file: its elements with their notes, under the comments that head its sections.
//!
//! Comments directly above an element are its note. Comments with a blank line above and below them, of which one line
//! has words, head a section: it reaches down to the next heading. Words that end with a full stop are a remark, and so
//! are words between the facts of an element.

use std::ops::Range;

use crate::house::House;
use crate::syntax::{Chunk, Line, LineKind, Opening};
use crate::text::{FileId, LocalSpan, Span};

/// The shape of a file.
#[derive(Debug, Default)]
pub struct Outline<'a> {
    /// Elements, includes and lines that open nothing, in the order of the text.
    pub blocks: Vec<Block<'a>>,
    /// In the order of the text.
    pub sections: Vec<Section>,
    /// Every run of two or more lines of comment that stands in the first column.
    pub comments: Vec<Span>,
}

/// An element or another chunk that a line in the first column opens.
#[derive(Debug)]
pub struct Block<'a> {
    /// Its text as it was read.
    pub chunk: &'a Chunk,
    /// The comments directly above it.
    pub note: Option<Span>,
    /// From its first line up to the end of its last line that says something.
    pub span: Span,
}

impl Block<'_> {
    /// The block with its note.
    pub fn whole(&self) -> Span {
        self.note.map_or(self.span, |note| note.to(self.span))
    }
}

/// A stretch of a file under a heading.
#[derive(Debug, PartialEq, Eq)]
pub struct Section {
    /// The words of its heading.
    pub title: String,
    /// The comments that head it.
    pub heading: Span,
    /// From its heading up to the last word before the next one.
    pub span: Span,
    /// The blocks under it, by their places in [`Outline::blocks`].
    pub blocks: Range<usize>,
}

/// The shape of a file; empty for a file that the spec does not have.
pub fn outline(house: &House, file: FileId) -> Outline<'_> {
    let at = file.0 as usize;
    let (Some(tree), Some(source)) = (house.trees.get(at), house.inputs.sources.get(at)) else {
        return Outline::default();
    };
    let text = Text { file, text: &source.text };
    let mut outline = Outline::default();
    let mut reader = Reader { text, run: None, is_behind_blank: false };
    for chunk in &tree.chunks {
        for line in &chunk.body.lines {
            reader.read(chunk, line, &mut outline);
        }
    }
    reader.end_run(After::Blank, &mut outline);
    let mut end = to_u32(text.text.trim_end().len());
    let mut n_blocks = outline.blocks.len();
    for section in outline.sections.iter_mut().rev() {
        section.span.end = end.max(section.heading.end);
        section.blocks.end = n_blocks;
        n_blocks = section.blocks.start;
        end = to_u32(text.until(section.heading.start).trim_end().len());
    }
    outline
}

/// Where the note of the element behind this chunk begins, counted from the chunk: the comments in the first column that
/// end it. The chunk's length when there are none.
pub fn note_start(chunk: &Chunk) -> u32 {
    let note = chunk.body.lines.iter().rev().take_while(|line| is_heading_comment(line));
    note.last().map_or(chunk.body.length, |line| line.span.start)
}

#[derive(Clone, Copy)]
struct Text<'a> {
    file: FileId,
    text: &'a str,
}

impl<'a> Text<'a> {
    fn until(self, end: u32) -> &'a str {
        self.text.get(..end as usize).unwrap_or("")
    }

    /// The place without the blanks and line ends that end it.
    fn trimmed(self, chunk: &Chunk, span: LocalSpan) -> Span {
        let span = span.within(self.file, chunk.start);
        let text = self.text.get(span.start as usize..span.end as usize).unwrap_or("");
        Span::new(self.file, span.start, span.start + to_u32(text.trim_end().len()))
    }
}

/// What stands below a run of comments.
#[derive(Clone, Copy, PartialEq)]
enum After {
    Blank,
    Block,
    Fact,
}

/// Lines of comment that follow each other.
struct Run {
    span: Span,
    n_lines: usize,
    is_behind_blank: bool,
    /// The words of each line that has some.
    titles: Vec<String>,
}

struct Reader<'a> {
    text: Text<'a>,
    run: Option<Run>,
    is_behind_blank: bool,
}

impl<'a> Reader<'a> {
    fn read(&mut self, chunk: &'a Chunk, line: &Line, outline: &mut Outline<'a>) {
        let place = self.text.trimmed(chunk, line.span);
        match line.kind {
            LineKind::Comment if is_heading_comment(line) => self.read_comment(place),
            LineKind::Blank => {
                self.end_run(After::Blank, outline);
                self.is_behind_blank = true;
            }
            LineKind::Opening => {
                let note = self.end_run(After::Block, outline);
                outline.blocks.push(Block { chunk, note, span: place });
            }
            LineKind::Comment | LineKind::Fact(_) | LineKind::Broken => {
                self.end_run(After::Fact, outline);
                let n_blocks = outline.blocks.len();
                if let Some(block) = outline.blocks.last_mut() {
                    block.span.end = place.end;
                    // What stands between the facts of an element heads nothing.
                    while outline.sections.pop_if(|section| section.blocks.start == n_blocks).is_some() {}
                }
            }
        }
    }

    fn read_comment(&mut self, place: Span) {
        let is_behind_blank = self.is_behind_blank;
        let run = self.run.get_or_insert_with(|| Run {
            span: place,
            n_lines: 0,
            is_behind_blank,
            titles: Vec::new(),
        });
        run.span.end = place.end;
        run.n_lines += 1;
        let text = self.text.text.get(place.start as usize..place.end as usize).unwrap_or("");
        let title = text.trim_matches(|it: char| it.is_whitespace() || "-=*~#_".contains(it));
        if !title.is_empty() {
            run.titles.push(title.to_owned());
        }
    }

    /// Ends a run of comments; gives its place when it is the note of what follows.
    fn end_run(&mut self, after: After, outline: &mut Outline<'a>) -> Option<Span> {
        self.is_behind_blank = false;
        let run = self.run.take()?;
        if run.n_lines > 1 {
            outline.comments.push(run.span);
        }
        if after == After::Blank
            && run.is_behind_blank
            && let [title] = run.titles.as_slice()
            && !title.ends_with('.')
        {
            let blocks = outline.blocks.len()..outline.blocks.len();
            let section = Section { title: title.clone(), heading: run.span, span: run.span, blocks };
            outline.sections.push(section);
        }
        (after == After::Block).then_some(run.span)
    }
}

/// A line of comment in the first column.
fn is_heading_comment(line: &Line) -> bool {
    line.kind == LineKind::Comment && line.comment.is_some_and(|comment| comment.start == line.span.start)
}

/// True for a chunk that an element's line opens.
pub fn is_element(chunk: &Chunk) -> bool {
    matches!(chunk.body.opening, Opening::Element(_))
}

fn to_u32(length: usize) -> u32 {
    u32::try_from(length).unwrap_or(u32::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::cursor::snapshot_of;

    /// The first and last line of a place.
    fn ends(house: &House, span: Span) -> String {
        let text = house.text_at(span);
        format!("{} … {}", text.lines().next().unwrap_or(""), text.lines().last().unwrap_or(""))
    }

    const SPEC: &str = "\
-- A house.
-- Of wood.

project \"House\"

-- floors -------

-- The main one.
floor main
  deck          3/4\"
  -- not sure yet

-- 8 less 3 is 5.

-- between
  live          40 psf

-- ======
-- beams
-- ======

beam B1
  size          W8x24
include \"more.framing\"

-- one thing
-- and another
";

    #[test]
    fn comments_between_blank_lines_head_sections() {
        let snapshot = snapshot_of(SPEC);
        let house = &snapshot.house;
        let outline = outline(house, FileId(0));
        let sections: Vec<_> = outline
            .sections
            .iter()
            .map(|it| (it.title.as_str(), ends(house, it.span), it.blocks.clone()))
            .collect();
        assert_eq!(
            sections,
            [
                ("floors", "-- floors ------- …   live          40 psf".to_owned(), 1..2),
                ("beams", "-- ====== … -- and another".to_owned(), 2..4),
            ]
        );
    }

    #[test]
    fn an_element_ends_with_its_last_word_and_has_its_note_above() {
        let snapshot = snapshot_of(SPEC);
        let house = &snapshot.house;
        let outline = outline(house, FileId(0));
        let blocks: Vec<_> = outline.blocks.iter().map(|block| ends(house, block.whole())).collect();
        assert_eq!(
            blocks,
            [
                "project \"House\" … project \"House\"",
                "-- The main one. …   live          40 psf",
                "beam B1 …   size          W8x24",
                "include \"more.framing\" … include \"more.framing\"",
            ]
        );
        let comments: Vec<_> = outline.comments.iter().map(|run| ends(house, *run)).collect();
        assert_eq!(
            comments,
            ["-- A house. … -- Of wood.", "-- ====== … -- ======", "-- one thing … -- and another"]
        );
    }

    #[test]
    fn a_file_that_is_not_there_has_no_shape() {
        let snapshot = snapshot_of("");
        assert!(outline(&snapshot.house, FileId(0)).blocks.is_empty());
        assert!(outline(&snapshot.house, FileId(9)).blocks.is_empty());
    }
}

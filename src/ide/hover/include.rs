//! An include line: the file it leads to, or why it leads to none.

use crate::ide::hover::cursor::Cursor;
use crate::ide::hover::markdown::escaped;
use crate::ide::hover::{Piece, Worth};
use crate::inputs::IncludeOutcome;
use crate::report::counted;
use crate::syntax::Opening;
use crate::text::FileId;

/// The include path at the cursor.
pub fn piece(cursor: &Cursor<'_>) -> Option<Piece> {
    let house = cursor.house();
    let includes = house.inputs.includes.iter().filter(|include| include.file == cursor.file);
    let mut here = includes.map(|include| (include, include.span.within(include.file, 0)));
    let (include, span) = here.find(|(_, span)| span.touches(cursor.offset))?;
    let text = match &include.outcome {
        IncludeOutcome::Read(file) => format!("leads to {}", file_in_words(cursor, *file)),
        IncludeOutcome::Again(file) => {
            format!("leads to {}, which an earlier line has read already", file_in_words(cursor, *file))
        }
        IncludeOutcome::Missing => "leads to no file".to_owned(),
        IncludeOutcome::Outside => "leads out of the project's folder, and is not read".to_owned(),
        IncludeOutcome::Cycle(names) => {
            format!("leads round in a circle, and is not read again: {}", escaped(&names.join(" → ")))
        }
        IncludeOutcome::Unreadable(why) => format!("leads to a file that can't be read: {}", escaped(why)),
    };
    Some(Piece { span, worth: Worth::Much, text: format!("**include**: {text}"), has_figures: false })
}

fn file_in_words(cursor: &Cursor<'_>, file: FileId) -> String {
    let house = cursor.house();
    let name =
        house.inputs.sources.get(file.0 as usize).map(|source| escaped(&source.name)).unwrap_or_default();
    let tree = house.trees.get(file.0 as usize);
    let chunks = tree.into_iter().flat_map(|tree| &tree.chunks);
    let elements = chunks.filter(|chunk| matches!(chunk.body.opening, Opening::Element(_))).count();
    format!("{name}: {}", counted(elements, "element"))
}

#[cfg(test)]
mod tests {
    use crate::ide::hover::{FindingsBeside, hover};
    use crate::testing::cursor::at_cursor;

    fn check(fixture: &str, expected: &str) {
        let (snapshot, file, offset) = at_cursor(fixture);
        let said =
            hover(&snapshot, file, offset, FindingsBeside::No).expect("there is something to say").text;
        assert!(said.contains(expected), "{said}");
    }

    #[test]
    fn a_path_says_where_it_leads() {
        let spec = "project \"House\"\ninclude \"parts/be$0ams.framing\"\n-- file parts/beams.framing\nbeam B1\n  from A/1 to B/1\nbeam B2\n";
        check(spec, "leads to parts/beams.framing: 2 elements");
        check("project \"House\"\ninclude \"no$0where.framing\"\n", "leads to no file");
        check(
            "project \"House\"\ninclude \"../b$0eyond.framing\"\n",
            "leads out of the project's folder, and is not read",
        );
    }
}

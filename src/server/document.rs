//! A document open in the editor: the text of now, whatever stands on disk.

use std::path::PathBuf;
use std::sync::Arc;

use tower_lsp::lsp_types::{TextDocumentContentChangeEvent, Url};

use crate::server::ruler::{BYTE_ORDER_MARK, Ruler};
use crate::server::view::Page;
use crate::text::{ColumnEncoding, Source};

/// A document open in the editor.
#[derive(Clone, Debug)]
pub struct Document {
    /// The address, exactly as the client writes it.
    pub uri: Url,
    /// The client's count of its changes.
    pub version: i32,
    /// The file it stands for. A document that is in no file gets a path that no file has.
    pub path: PathBuf,
    /// Its text and how the client measures it.
    pub ruler: Ruler,
}

impl Document {
    /// A document as it is opened.
    pub fn new(uri: Url, version: i32, text: String, encoding: ColumnEncoding) -> Self {
        let path = path_of(&uri);
        let source = Source::new(uri.as_str(), text);
        Self { uri, version, path, ruler: Ruler::new(source, encoding) }
    }

    /// The same document after changes, each of which is placed in the text that the one before left.
    pub fn changed(&self, version: i32, changes: Vec<TextDocumentContentChangeEvent>) -> Self {
        let mut ruler = self.ruler.clone();
        for change in changes {
            let text = match change.range {
                Some(range) => {
                    let (start, end) = (ruler.editor_offset(range.start), ruler.editor_offset(range.end));
                    replaced(&ruler.source.text, start, end, &change.text)
                }
                None => change.text,
            };
            ruler.source = Source::new(Arc::clone(&ruler.source.name), text);
        }
        Self { uri: self.uri.clone(), version, path: self.path.clone(), ruler }
    }

    /// The text that is analysed: without a byte-order mark.
    pub fn text(&self) -> Arc<str> {
        let text = &self.ruler.source.text;
        match text.strip_prefix(BYTE_ORDER_MARK) {
            Some(rest) => rest.into(),
            None => Arc::clone(text),
        }
    }

    /// The document as a file of a house.
    pub fn page(&self) -> Page {
        Page { uri: self.uri.clone(), version: Some(self.version), ruler: self.ruler.clone() }
    }
}

fn replaced(text: &str, start: u32, end: u32, by: &str) -> String {
    let (start, end) = (start.min(end) as usize, start.max(end) as usize);
    let before = text.get(..start).unwrap_or_default();
    let behind = text.get(end..).unwrap_or_default();
    [before, by, behind].concat()
}

/// The file that an address stands for; one that is in no file gets a path that no file has.
pub fn path_of(uri: &Url) -> PathBuf {
    match uri.to_file_path() {
        Ok(path) => path,
        // A folder that can't be: nothing is found beside the document.
        Err(()) => {
            let name: String =
                uri.as_str().chars().map(|sign| if sign.is_alphanumeric() { sign } else { '_' }).collect();
            std::path::Path::new("/\u{0}not-in-a-file").join(name).join("unsaved.framing")
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use tower_lsp::lsp_types::{Position, Range};

    fn document(text: &str, encoding: ColumnEncoding) -> Document {
        Document::new(Url::parse("untitled:1").unwrap(), 1, text.to_owned(), encoding)
    }

    fn change(range: Option<Range>, text: &str) -> TextDocumentContentChangeEvent {
        TextDocumentContentChangeEvent { range, range_length: None, text: text.to_owned() }
    }

    #[test]
    fn each_change_is_placed_in_what_the_one_before_left() {
        let at = |line, from, to| Some(Range::new(Position::new(line, from), Position::new(line, to)));
        let changed = document("one\ntwo\n", ColumnEncoding::Utf16).changed(
            2,
            vec![change(at(0, 0, 3), "1\n1"), change(at(2, 3, 3), "!"), change(at(9, 0, 0), "end")],
        );
        assert_eq!(&*changed.text(), "1\n1\ntwo!\nend");
        assert_eq!(changed.version, 2);
    }

    #[test]
    fn a_change_without_a_range_is_the_whole_text() {
        let changed = document("one", ColumnEncoding::Utf8).changed(7, vec![change(None, "\u{feff}two")]);
        assert_eq!(&*changed.text(), "two");
    }

    #[test]
    fn a_document_in_no_file_has_a_path_of_its_own() {
        let path = |uri: &str| path_of(&Url::parse(uri).unwrap());
        assert_ne!(path("untitled:Untitled-1"), path("untitled:Untitled-2"));
        assert_eq!(path("file:///a%20b/c.framing"), std::path::Path::new("/a b/c.framing"));
    }

    /// The column of a character as the protocol defines it, counted another way than `LineIndex` does.
    fn column(before: &str, encoding: ColumnEncoding) -> u32 {
        let count = match encoding {
            ColumnEncoding::Utf8 => before.len(),
            ColumnEncoding::Utf16 => before.encode_utf16().count(),
            ColumnEncoding::Utf32 => before.chars().count(),
        };
        u32::try_from(count).unwrap()
    }

    /// The position of a byte, by cutting the text into lines with nothing but string search.
    fn position(text: &str, offset: usize, encoding: ColumnEncoding) -> Position {
        let line_ends = text[..offset].replace("\r\n", "\n").matches(['\n', '\r']).count();
        let line = u32::try_from(line_ends).unwrap();
        let start = text[..offset].rfind(['\n', '\r']).map_or(0, |at| at + 1);
        Position::new(line, column(&text[start..offset], encoding))
    }

    proptest! {
        #[test]
        fn random_edits_leave_what_a_plain_string_has(
            start in "[a\u{301}é𝄞 \n]{0,30}",
            edits in prop::collection::vec((any::<prop::sample::Index>(), any::<prop::sample::Index>(), "[b漢😀\r\n]{0,4}"), 1..20),
            encoding in prop::sample::select(vec![ColumnEncoding::Utf8, ColumnEncoding::Utf16, ColumnEncoding::Utf32]),
        ) {
            let mut model = start.clone();
            let mut document = document(&start, encoding);
            for (version, (from, to, text)) in (2..).zip(edits) {
                // No position lies between the two characters of one line end.
                let places: Vec<usize> = (0..=model.len())
                    .filter(|at| model.is_char_boundary(*at))
                    .filter(|at| !(model[..*at].ends_with('\r') && model[*at..].starts_with('\n')))
                    .collect();
                let (from, to) = (places[from.index(places.len())], places[to.index(places.len())]);
                let (from, to) = (from.min(to), from.max(to));
                let range = Range::new(position(&model, from, encoding), position(&model, to, encoding));
                document = document.changed(version, vec![change(Some(range), &text)]);
                model.replace_range(from..to, &text);
                prop_assert_eq!(&*document.ruler.source.text, &model);
            }
        }
    }
}

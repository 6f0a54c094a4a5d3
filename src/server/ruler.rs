//! The one boundary between our bytes and an editor's positions.

use tower_lsp::lsp_types::{Position, PositionEncodingKind, Range};

use crate::text::{ColumnEncoding, LineColumn, Source};

/// A byte-order mark: part of an editor's text, not of ours.
pub const BYTE_ORDER_MARK: char = '\u{feff}';

/// Measures one text in the columns a client counts.
#[derive(Clone, Debug)]
pub struct Ruler {
    /// The text as the editor has it.
    pub source: Source,
    /// How columns are counted.
    pub encoding: ColumnEncoding,
}

impl Ruler {
    /// A ruler on a text.
    pub fn new(source: Source, encoding: ColumnEncoding) -> Self {
        Self { source, encoding }
    }

    /// The position of a byte of the analysed text.
    pub fn position(&self, offset: u32) -> Position {
        let offset = offset.saturating_add(self.mark_length());
        let place = self.source.lines.line_column(&self.source.text, offset, self.encoding);
        Position::new(place.line, place.column)
    }

    /// The range between two bytes of the analysed text.
    pub fn range(&self, start: u32, end: u32) -> Range {
        Range::new(self.position(start), self.position(end))
    }

    /// The byte of the analysed text at a position; the nearest inside when it lies outside.
    pub fn offset(&self, position: Position) -> u32 {
        self.editor_offset(position).saturating_sub(self.mark_length())
    }

    /// The byte of the editor's text at a position.
    pub fn editor_offset(&self, position: Position) -> u32 {
        let place = LineColumn { line: position.line, column: position.character };
        self.source.lines.offset(&self.source.text, place, self.encoding)
    }

    /// True of a position in front of the byte-order mark: before the analysed text, where nothing can be said or written.
    pub fn is_before_text(&self, position: Position) -> bool {
        self.editor_offset(position) < self.mark_length()
    }

    /// How many bytes the editor's text has before ours begins.
    fn mark_length(&self) -> u32 {
        if self.source.text.starts_with(BYTE_ORDER_MARK) { 3 } else { 0 }
    }
}

/// The encoding to agree on: bytes if the client can, since then nothing need be counted.
pub fn agreed_encoding(offered: &[PositionEncodingKind]) -> ColumnEncoding {
    if offered.contains(&PositionEncodingKind::UTF8) {
        ColumnEncoding::Utf8
    } else if offered.contains(&PositionEncodingKind::UTF16)
        || !offered.contains(&PositionEncodingKind::UTF32)
    {
        // What a client must understand that says nothing, or nothing we know.
        ColumnEncoding::Utf16
    } else {
        ColumnEncoding::Utf32
    }
}

/// The encoding by the protocol's name.
pub fn encoding_kind(encoding: ColumnEncoding) -> PositionEncodingKind {
    match encoding {
        ColumnEncoding::Utf8 => PositionEncodingKind::UTF8,
        ColumnEncoding::Utf16 => PositionEncodingKind::UTF16,
        ColumnEncoding::Utf32 => PositionEncodingKind::UTF32,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bytes_are_preferred_and_utf_16_is_the_fallback() {
        let [utf8, utf16, utf32] =
            [PositionEncodingKind::UTF8, PositionEncodingKind::UTF16, PositionEncodingKind::UTF32];
        assert_eq!(agreed_encoding(&[utf16.clone(), utf8]), ColumnEncoding::Utf8);
        assert_eq!(agreed_encoding(&[utf32.clone(), utf16]), ColumnEncoding::Utf16);
        assert_eq!(agreed_encoding(&[utf32]), ColumnEncoding::Utf32);
        assert_eq!(agreed_encoding(&[]), ColumnEncoding::Utf16);
        assert_eq!(agreed_encoding(&[PositionEncodingKind::new("utf-7")]), ColumnEncoding::Utf16);
    }

    #[test]
    fn a_byte_order_mark_moves_only_the_first_line() {
        for (encoding, first_column) in
            [(ColumnEncoding::Utf8, 3), (ColumnEncoding::Utf16, 1), (ColumnEncoding::Utf32, 1)]
        {
            let ruler = Ruler::new(Source::new("a", "\u{feff}grid\n  x A 0'\n"), encoding);
            assert_eq!(ruler.position(0), Position::new(0, first_column));
            assert_eq!(ruler.position(5), Position::new(1, 0));
            assert_eq!(ruler.offset(Position::new(0, first_column)), 0);
            assert_eq!(ruler.offset(Position::new(0, 0)), 0);
            assert_eq!(ruler.offset(Position::new(1, 2)), 7);
            assert!(ruler.is_before_text(Position::new(0, 0)));
            assert!(!ruler.is_before_text(Position::new(0, first_column)));
        }
    }
}

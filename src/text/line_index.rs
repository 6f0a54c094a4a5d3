//! Where lines start, and how an editor counts columns.

use std::sync::Arc;

/// How a column is counted. Bytes inside the program; one of these at its edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ColumnEncoding {
    /// Bytes.
    Utf8,
    /// 16-bit code units: what every editor must understand.
    Utf16,
    /// Characters.
    Utf32,
}

impl ColumnEncoding {
    /// How many columns a piece of a line takes.
    pub fn width(self, text: &str) -> u32 {
        let width = match self {
            Self::Utf16 if !text.is_ascii() => text.chars().map(char::len_utf16).sum(),
            Self::Utf32 if !text.is_ascii() => text.chars().count(),
            Self::Utf8 | Self::Utf16 | Self::Utf32 => text.len(),
        };
        u32::try_from(width).unwrap_or(u32::MAX)
    }
}

/// A line and a column, both from zero.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct LineColumn {
    /// The line, from zero.
    pub line: u32,
    /// The column in the encoding it was asked for, from zero.
    pub column: u32,
}

/// The starts of a text's lines, cheap to clone. LF, CRLF and a lone CR each end a line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LineIndex {
    /// Invariant: ascending, begins with 0.
    starts: Arc<[u32]>,
    length: u32,
}

impl LineIndex {
    /// Counts the lines of `text`. Text past 4 GiB is not counted: readers refuse it long before.
    pub fn new(text: &str) -> Self {
        let bytes = text.as_bytes();
        let mut starts = vec![0];
        for (at, byte) in bytes.iter().enumerate() {
            let ends_line = match byte {
                b'\n' => true,
                b'\r' => bytes.get(at + 1) != Some(&b'\n'),
                _ => false,
            };
            if ends_line {
                starts.push(u32::try_from(at + 1).unwrap_or(u32::MAX));
            }
        }
        Self { starts: starts.into(), length: u32::try_from(text.len()).unwrap_or(u32::MAX) }
    }

    /// How many lines there are; one for an empty text.
    pub fn n_lines(&self) -> u32 {
        u32::try_from(self.starts.len()).unwrap_or(u32::MAX)
    }

    /// The line that holds byte `offset`, from zero.
    pub fn line_of(&self, offset: u32) -> u32 {
        let after = self.starts.partition_point(|start| *start <= offset);
        u32::try_from(after.saturating_sub(1)).unwrap_or(u32::MAX)
    }

    /// The first byte of `line`; the text's end for a line past the last.
    pub fn start_of(&self, line: u32) -> u32 {
        self.starts.get(line as usize).copied().unwrap_or(self.length)
    }

    /// The byte range of `line`, its line end included.
    pub fn range_of(&self, line: u32) -> (u32, u32) {
        (self.start_of(line), self.start_of(line.saturating_add(1)))
    }

    /// Line and column of byte `offset` of `text`. A byte inside a character counts as that character's first.
    pub fn line_column(&self, text: &str, offset: u32, encoding: ColumnEncoding) -> LineColumn {
        let offset = floor_boundary(text, offset.min(self.length));
        let line = self.line_of(offset);
        let before = text.get(self.start_of(line) as usize..offset as usize).unwrap_or("");
        LineColumn { line, column: encoding.width(before) }
    }

    /// The byte at a line and column of `text`. Past the line's end means its end (before the line-end characters);
    /// past the last line means the text's end; inside a character means its first byte.
    pub fn offset(&self, text: &str, place: LineColumn, encoding: ColumnEncoding) -> u32 {
        if place.line >= self.n_lines() {
            return self.length;
        }
        let (start, end) = self.range_of(place.line);
        let line = text.get(start as usize..end as usize).unwrap_or("");
        let line = line.trim_end_matches(['\r', '\n']);
        let mut column = 0;
        for (at, character) in line.char_indices() {
            let width = match encoding {
                ColumnEncoding::Utf8 => character.len_utf8(),
                ColumnEncoding::Utf16 => character.len_utf16(),
                ColumnEncoding::Utf32 => 1,
            };
            if column + width > place.column as usize {
                return start + u32::try_from(at).unwrap_or(0);
            }
            column += width;
        }
        start + u32::try_from(line.len()).unwrap_or(0)
    }
}

/// The last character boundary at or before `offset`.
fn floor_boundary(text: &str, offset: u32) -> u32 {
    let mut at = offset;
    while at > 0 && !text.is_char_boundary(at as usize) {
        at -= 1;
    }
    at
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str = "a\u{301}é𝄞b\r\nsecond\rthird\n";

    #[test]
    fn every_line_end_counts_once() {
        let index = LineIndex::new(TEXT);
        assert_eq!(index.n_lines(), 4);
        assert_eq!(index.line_of(index.start_of(2)), 2);
        assert_eq!(&TEXT[index.start_of(1) as usize..][..6], "second");
    }

    #[test]
    fn columns_count_as_the_encoding_says() {
        let index = LineIndex::new(TEXT);
        let offset = u32::try_from(TEXT.find('b').unwrap()).unwrap();
        // a, combining acute (2 bytes), é (2 bytes), clef (4 bytes, 2 code units).
        for (encoding, column) in
            [(ColumnEncoding::Utf8, 9), (ColumnEncoding::Utf16, 5), (ColumnEncoding::Utf32, 4)]
        {
            let place = index.line_column(TEXT, offset, encoding);
            assert_eq!(place, LineColumn { line: 0, column });
            assert_eq!(index.offset(TEXT, place, encoding), offset);
        }
    }

    #[test]
    fn a_place_outside_is_brought_inside() {
        let index = LineIndex::new(TEXT);
        let far = LineColumn { line: 1, column: 900 };
        assert_eq!(index.offset(TEXT, far, ColumnEncoding::Utf16), index.start_of(1) + 6);
        let beyond = LineColumn { line: 40, column: 0 };
        assert_eq!(index.offset(TEXT, beyond, ColumnEncoding::Utf8) as usize, TEXT.len());
        // The second code unit of the clef is inside a character: its first byte.
        let inside = LineColumn { line: 0, column: 4 };
        assert_eq!(index.offset(TEXT, inside, ColumnEncoding::Utf16), 5);
    }

    #[test]
    fn every_boundary_goes_there_and_back() {
        let index = LineIndex::new(TEXT);
        for (at, character) in TEXT.char_indices() {
            if character == '\n' || character == '\r' {
                continue;
            }
            for encoding in [ColumnEncoding::Utf8, ColumnEncoding::Utf16, ColumnEncoding::Utf32] {
                let offset = u32::try_from(at).unwrap();
                let place = index.line_column(TEXT, offset, encoding);
                assert_eq!(index.offset(TEXT, place, encoding), offset);
            }
        }
    }
}

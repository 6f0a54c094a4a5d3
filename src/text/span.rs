//! Places in text, in bytes.

use crate::text::FileId;

/// A range of bytes inside one element's own text, from its first byte.
///
/// Parsed trees hold only these, so that an element that moves down a line need not be parsed again.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct LocalSpan {
    /// The first byte.
    pub start: u32,
    /// One past the last byte. Invariant: not below `start`.
    pub end: u32,
}

impl LocalSpan {
    /// The bytes from `start` up to `end`.
    pub const fn new(start: u32, end: u32) -> Self {
        Self { start, end: if end < start { start } else { end } }
    }

    /// From the start of this one to the end of the other.
    pub const fn to(self, last: Self) -> Self {
        Self::new(self.start, last.end)
    }

    /// The same bytes counted from the file's start, for an element that begins at byte `element_start` of `file`.
    pub const fn within(self, file: FileId, element_start: u32) -> Span {
        Span {
            file,
            start: element_start.saturating_add(self.start),
            end: element_start.saturating_add(self.end),
        }
    }
}

/// A range of bytes in one file of a spec.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Span {
    /// Which file.
    pub file: FileId,
    /// The first byte.
    pub start: u32,
    /// One past the last byte.
    pub end: u32,
}

impl Span {
    /// The bytes from `start` up to `end` of `file`.
    pub const fn new(file: FileId, start: u32, end: u32) -> Self {
        Self { file, start, end: if end < start { start } else { end } }
    }

    /// From the start of this one to the end of the other, in this one's file.
    pub const fn to(self, last: Self) -> Self {
        Self::new(self.file, self.start, last.end)
    }

    /// True when the byte lies in it or just behind it, where a cursor may stand.
    pub const fn touches(self, offset: u32) -> bool {
        self.start <= offset && offset <= self.end
    }
}

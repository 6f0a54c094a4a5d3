//! One file of a spec as it was read.

use std::sync::Arc;

use crate::text::LineIndex;

/// Which file of a spec: an index into its list of sources.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FileId(pub u32);

/// A file's name and text, with its lines counted.
#[derive(Clone, Debug)]
pub struct Source {
    /// The name shown to a person: a path relative to the spec's root folder, with `/` between folders.
    pub name: Arc<str>,
    /// The text, without a byte-order mark.
    pub text: Arc<str>,
    /// Where its lines start.
    pub lines: LineIndex,
}

impl Source {
    /// A source from its name and text.
    pub fn new(name: impl Into<Arc<str>>, text: impl Into<Arc<str>>) -> Self {
        let text = text.into();
        let lines = LineIndex::new(&text);
        Self { name: name.into(), text, lines }
    }
}

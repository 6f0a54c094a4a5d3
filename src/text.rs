//! Text as bytes: which file, where in it, and how an editor counts columns.

mod line_index;
mod nearest;
mod source;
mod span;

pub use line_index::{ColumnEncoding, LineColumn, LineIndex};
pub use nearest::nearest;
pub use source::{FileId, Source};
pub use span::{LocalSpan, Span};

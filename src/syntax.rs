//! Text to tree. Parsing cannot fail: what can't be read becomes a [`Problem`] at its place and the rest is read.
//!
//! A file is cut into *chunks* by the format's own rule (a line in the first column opens an element); each chunk is
//! read alone, with places counted from its own start. `vocabulary` is the one table that says what an element and a
//! fact look like: the parser, the grammar, the reference, the random specs and the editors all come from it.

mod elements;
mod facts;
pub mod form;
mod format;
pub mod lexer;
mod lines;
pub mod names;
pub mod next;
mod parse;
pub mod problem;
pub mod tree;
pub mod value;
pub mod vocabulary;

pub use format::{VALUE_COLUMN, format};
pub use lines::{chunk_around, line_start};
pub use parse::{ElementCache, parse, parse_fresh};
pub use problem::{Problem, ProblemKind};
pub use tree::{Body, Chunk, Fact, Heading, Line, LineKind, Opening, Part, Tree};

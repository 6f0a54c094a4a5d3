//! Editor questions: one file each, in the editor's words, without its protocol.

mod formatting;
mod hover;

pub use formatting::{Replacement, formatting};
pub use hover::{Hover, hover};

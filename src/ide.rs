//! Editor questions: one file each, in the editor's words, without its protocol.

mod formatting;
mod hover;
mod meaning;

pub use formatting::{Replacement, formatting};
pub use hover::{Hover, hover};
pub use meaning::{Meaning, Named, element_at, named_at, places_of};

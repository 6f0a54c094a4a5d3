//! Editor questions: one file each, in the editor's words, without its protocol.

mod definition;
mod figures;
mod folding;
mod formatting;
mod highlight;
mod hover;
mod implementation;
mod jump;
mod lens;
mod links;
mod meaning;
mod outline;
mod references;
mod rename;
mod selection;
mod symbols;
mod tokens;
mod type_definition;

pub use definition::{declaration, definition};
pub use folding::{Fold, FoldKind, folding};
pub use formatting::{Replacement, formatting, formatting_behind_line, formatting_of_lines};
pub use highlight::{Highlight, highlights};
pub use hover::{Hover, hover, plain};
pub use implementation::implementation;
pub use jump::{Jump, Target};
pub use lens::{Lens, LensAction, lenses};
pub use links::{Link, LinkTarget, links};
pub use meaning::{Meaning, Named, element_at, named_at, places_of};
pub use outline::{Block, Outline, Section, outline};
pub use references::references;
pub use rename::{Edit, NoRename, Renamable, prepare_rename, rename};
pub use selection::selection;
pub use symbols::{MOST_FOUND, Symbol, SymbolKind, spec_symbols, symbols, symbols_like};
pub use tokens::{Modifier, Modifiers, Word, WordKind, tokens};
pub use type_definition::type_definition;

//! The answers: one file a question. Each decodes, calls `ide`, encodes; none keeps anything.

pub mod code_action;
pub mod completion;
pub mod diagnostics;
pub mod folding;
pub mod formatting;
pub mod hints;
pub mod hover;
pub mod jump;
pub mod kept;
pub mod kinds;
pub mod lenses;
pub mod links;
pub mod load_path;
pub mod made_of;
pub mod moved_files;
pub mod references;
pub mod rename;
pub mod selection;
pub mod sheets;
pub mod signature_help;
pub mod symbols;
pub mod tokens;

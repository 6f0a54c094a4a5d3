//! What an editor shows an element as: the protocol knows the parts of programs only, and each has a picture.

use tower_lsp::lsp_types::SymbolKind;

use crate::syntax::vocabulary::ElementKind;

/// The picture for an element.
pub const fn kind_of_element(element: ElementKind) -> SymbolKind {
    match element {
        ElementKind::Project => SymbolKind::PACKAGE,
        ElementKind::Grid => SymbolKind::ENUM,
        ElementKind::Product => SymbolKind::CLASS,
        ElementKind::Floor | ElementKind::Area => SymbolKind::MODULE,
        ElementKind::Joists => SymbolKind::ARRAY,
        ElementKind::Ledger
        | ElementKind::Beam
        | ElementKind::Column
        | ElementKind::Header
        | ElementKind::Jacks
        | ElementKind::Squash
        | ElementKind::Roof => SymbolKind::OBJECT,
        ElementKind::Wall
        | ElementKind::Shelf
        | ElementKind::Pocket
        | ElementKind::Footing
        | ElementKind::Slab => SymbolKind::STRUCT,
        ElementKind::Opening
        | ElementKind::Stair
        | ElementKind::Landing
        | ElementKind::Stoop
        | ElementKind::Door
        | ElementKind::Window => SymbolKind::INTERFACE,
        ElementKind::Load => SymbolKind::NUMBER,
        ElementKind::Drain | ElementKind::Hole | ElementKind::Notch | ElementKind::Duct => {
            SymbolKind::PROPERTY
        }
        ElementKind::Intent => SymbolKind::BOOLEAN,
        ElementKind::Sheet => SymbolKind::FILE,
        ElementKind::HoldPoint => SymbolKind::EVENT,
    }
}

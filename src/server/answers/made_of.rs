//! `textDocument/prepareTypeHierarchy`, `typeHierarchy/supertypes` and `subtypes`: what an element is made of, and what
//! is made of a product or a size.

use tower_lsp::lsp_types::{Position, SymbolKind, TypeHierarchyItem, Url};

use crate::house::House;
use crate::ide::{self, Made, MadeItem};
use crate::server::answers::kept::{About, Kept};
use crate::server::answers::kinds::kind_of_element;
use crate::server::view::{Analysed, View};

/// The product, size or element at a position, in the first project of the file that has it.
pub fn prepare(view: &View, position: Position) -> Option<Vec<TypeHierarchyItem>> {
    let offset = view.offset(position);
    view.houses().find_map(|house| {
        let made = ide::made_at(&house.snapshot().house, house.file, offset)?;
        Some(vec![item(&house.analysed, &view.page.uri, made)?])
    })
}

/// What it is made of in every project of the file, each once.
pub fn supertypes(view: &View, kept: &Kept) -> Option<Vec<TypeHierarchyItem>> {
    items(view, kept, ide::makings_of)
}

/// What is made of it in every project of the file, each once.
pub fn subtypes(view: &View, kept: &Kept) -> Option<Vec<TypeHierarchyItem>> {
    items(view, kept, ide::made_of)
}

fn items(
    view: &View,
    kept: &Kept,
    question: fn(&House, &Made) -> Vec<MadeItem>,
) -> Option<Vec<TypeHierarchyItem>> {
    let mut found: Option<Vec<TypeHierarchyItem>> = None;
    for house in view.houses() {
        let Some(made) = made_in(&house.snapshot().house, &kept.about) else { continue };
        let found = found.get_or_insert_default();
        for made in question(&house.snapshot().house, &made) {
            let item = item(&house.analysed, &kept.uri, made);
            let is_known = |new: &TypeHierarchyItem| {
                found.iter().any(|it| it.data == new.data && it.uri == new.uri && it.range == new.range)
            };
            let new = item.filter(|item| !is_known(item));
            found.extend(new);
        }
    }
    found
}

fn made_in(house: &House, about: &About) -> Option<Made> {
    match about {
        About::Element { .. } => about.element_in(house).map(Made::Element),
        About::Size(text) => Some(Made::Size(text.as_str().into())),
        About::Leaf => None,
    }
}

fn item(house: &Analysed, asked_from: &Url, made: MadeItem) -> Option<TypeHierarchyItem> {
    let (name, whole) = (house.location(made.name)?, house.location(made.whole)?);
    let (kind, about) = match &made.what {
        Made::Element(id) => (kind_of_element(id.kind), About::element(&house.snapshot.house, *id)),
        Made::Size(text) => (SymbolKind::CLASS, About::Size(text.to_string())),
    };
    Some(TypeHierarchyItem {
        name: made.label,
        kind,
        tags: None,
        detail: Some(made.detail).filter(|detail| !detail.is_empty()),
        uri: name.uri,
        range: whole.range,
        selection_range: name.range,
        data: Kept { uri: asked_from.clone(), about }.data(),
    })
}

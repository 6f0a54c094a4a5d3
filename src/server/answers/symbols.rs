//! `textDocument/documentSymbol` and `workspace/symbol`.

use std::collections::HashSet;

use tower_lsp::lsp_types::{
    DocumentSymbol, DocumentSymbolResponse, Location, SymbolInformation, SymbolKind, Url,
};

use crate::ide::{self, Symbol};
use crate::server::answers::kinds::kind_of_element;
use crate::server::desk::Workspace;
use crate::server::view::{Analysed, View};

/// An element of a spec with its place, as it is kept of specs of which no file is open.
#[derive(Clone, Debug)]
pub struct Placed {
    /// As an outline shows it.
    pub symbol: Symbol,
    /// Where its name stands.
    pub location: Location,
}

/// What stands in the file: nested if the client can show that, else as a list.
pub fn document_symbols(view: &View) -> DocumentSymbolResponse {
    let symbols = ide::symbols(&view.house.snapshot().house, view.house.file);
    let text_document = view.client.text_document.as_ref();
    let ability = text_document.and_then(|text| text.document_symbol.as_ref());
    let kinds = ability.and_then(|it| it.symbol_kind.as_ref()).and_then(|it| it.value_set.as_deref());
    if ability.and_then(|it| it.hierarchical_document_symbol_support) == Some(true) {
        let nested = symbols.into_iter().map(|symbol| nested(view, symbol, kinds));
        return DocumentSymbolResponse::Nested(nested.collect());
    }
    let mut flat = Vec::new();
    for symbol in symbols {
        add_flat(view, symbol, None, kinds, &mut flat);
    }
    DocumentSymbolResponse::Flat(flat)
}

/// The elements of a house, each with its place.
pub fn placed(house: &Analysed) -> Vec<Placed> {
    let symbols = ide::spec_symbols(&house.snapshot.house).into_iter();
    symbols
        .filter_map(|symbol| Some(Placed { location: house.location(symbol.name_span)?, symbol }))
        .collect()
}

/// The elements of every house that a query means, the likeliest first.
pub fn workspace_symbols(workspace: &Workspace, query: &str) -> Vec<SymbolInformation> {
    let ability = workspace.client.workspace.as_ref().and_then(|workspace| workspace.symbol.as_ref());
    let kinds = ability.and_then(|it| it.symbol_kind.as_ref()).and_then(|it| it.value_set.as_deref());
    let open: Vec<Placed> = workspace.houses.iter().flat_map(|house| placed(house)).collect();
    let elsewhere = workspace.surveyed.iter().flat_map(|house| &house.symbols);
    let mut seen: HashSet<(&Url, u32)> = HashSet::new();
    // A file of several projects has its elements once.
    let once = open
        .iter()
        .chain(elsewhere)
        .filter(|it| seen.insert((&it.location.uri, it.location.range.start.line)));
    let found = ide::symbols_like(query, once, |it| &it.symbol.name);
    found.into_iter().map(|it| information(it.symbol.clone(), it.location.clone(), None, kinds)).collect()
}

fn nested(view: &View, symbol: Symbol, kinds: Option<&[SymbolKind]>) -> DocumentSymbol {
    #[allow(deprecated, reason = "the type has no constructor, and the member must be given")]
    DocumentSymbol {
        kind: kind(symbol.kind, kinds),
        range: view.range(symbol.span.start, symbol.span.end),
        selection_range: view.range(symbol.name_span.start, symbol.name_span.end),
        name: symbol.name,
        detail: Some(symbol.detail).filter(|detail| !detail.is_empty()),
        tags: None,
        deprecated: None,
        children: (!symbol.children.is_empty())
            .then(|| symbol.children.into_iter().map(|child| nested(view, child, kinds)).collect()),
    }
}

fn add_flat(
    view: &View,
    symbol: Symbol,
    container: Option<&str>,
    kinds: Option<&[SymbolKind]>,
    all: &mut Vec<SymbolInformation>,
) {
    let range = view.range(symbol.span.start, symbol.span.end);
    let location = Location::new(view.page.uri.clone(), range);
    let name = symbol.name.clone();
    let children = symbol.children.clone();
    all.push(information(symbol, location, container.map(str::to_owned), kinds));
    for child in children {
        add_flat(view, child, Some(&name), kinds, all);
    }
}

fn information(
    symbol: Symbol,
    location: Location,
    container_name: Option<String>,
    kinds: Option<&[SymbolKind]>,
) -> SymbolInformation {
    #[allow(deprecated, reason = "the type has no constructor, and the member must be given")]
    SymbolInformation {
        kind: kind(symbol.kind, kinds),
        container_name: container_name.or(Some(symbol.detail).filter(|detail| !detail.is_empty())),
        name: symbol.name,
        tags: None,
        deprecated: None,
        location,
    }
}

/// Of the kinds we use those that a client does not know without saying so.
const LATER_KINDS: [SymbolKind; 4] =
    [SymbolKind::KEY, SymbolKind::OBJECT, SymbolKind::STRUCT, SymbolKind::EVENT];

/// The protocol's kind, or one that every client knows when this one does not know ours.
fn kind(kind: ide::SymbolKind, known: Option<&[SymbolKind]>) -> SymbolKind {
    let ours = match kind {
        ide::SymbolKind::Section => SymbolKind::NAMESPACE,
        ide::SymbolKind::Include => SymbolKind::FILE,
        ide::SymbolKind::GridLine => SymbolKind::KEY,
        ide::SymbolKind::Element(element) => kind_of_element(element),
    };
    let is_known = !LATER_KINDS.contains(&ours) || known.is_some_and(|known| known.contains(&ours));
    if is_known { ours } else { SymbolKind::VARIABLE }
}

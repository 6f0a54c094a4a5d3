//! `textDocument/definition`, `declaration`, `typeDefinition` and `implementation`: where a name leads.

use tower_lsp::lsp_types::{
    GotoCapability, GotoDefinitionResponse, Location, LocationLink, Position, TextDocumentClientCapabilities,
};

use crate::house::House;
use crate::ide::{Jump, Target};
use crate::server::view::{Analysed, View};
use crate::text::FileId;

/// A question that a jump answers.
pub type Question = fn(&House, FileId, u32) -> Option<Jump>;

/// Where the name at a position leads in every project of the file, each place once. `of` finds what the client says of
/// this request.
pub fn jump(
    view: &View,
    position: Position,
    question: Question,
    of: fn(&TextDocumentClientCapabilities) -> Option<&GotoCapability>,
) -> Option<GotoDefinitionResponse> {
    let offset = view.offset(position);
    let mut links: Vec<LocationLink> = Vec::new();
    for house in view.houses() {
        let Some(jump) = question(&house.snapshot().house, house.file, offset) else { continue };
        let from = view.range(jump.from.start, jump.from.end);
        for target in jump.to {
            let link = link(&house.analysed, target)
                .map(|link| LocationLink { origin_selection_range: Some(from), ..link });
            links.extend(link.filter(|link| !links.contains(link)));
        }
    }
    let client = view.client.text_document.as_ref().and_then(of);
    let takes_links = client.and_then(|client| client.link_support).unwrap_or(false);
    match (links.is_empty(), takes_links) {
        (true, _) => None,
        (false, true) => Some(GotoDefinitionResponse::Link(links)),
        (false, false) => {
            let places = links.into_iter().map(|it| Location::new(it.target_uri, it.target_selection_range));
            Some(GotoDefinitionResponse::Array(places.collect()))
        }
    }
}

fn link(house: &Analysed, target: Target) -> Option<LocationLink> {
    let (name, whole) = (house.location(target.name)?, house.location(target.whole)?);
    Some(LocationLink {
        origin_selection_range: None,
        target_uri: name.uri,
        target_range: whole.range,
        target_selection_range: name.range,
    })
}

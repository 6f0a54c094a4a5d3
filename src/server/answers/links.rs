//! `textDocument/documentLink`.

use tower_lsp::lsp_types::{DocumentLink, Url};

use crate::ide::{self, LinkTarget};
use crate::server::view::View;

/// What in the file leads elsewhere.
pub fn links(view: &View) -> Vec<DocumentLink> {
    let ability = view.client.text_document.as_ref().and_then(|text| text.document_link.as_ref());
    let shows_tooltips = ability.and_then(|links| links.tooltip_support) == Some(true);
    let links = ide::links(&view.house.snapshot().house, view.house.file).into_iter();
    let encoded = links.filter_map(|link| {
        let target = match link.target {
            LinkTarget::File(file) => view.house.analysed.page(file)?.uri.clone(),
            LinkTarget::Address(address) => Url::parse(&address).ok()?,
        };
        Some(DocumentLink {
            range: view.range(link.span.start, link.span.end),
            target: Some(target),
            tooltip: shows_tooltips.then_some(link.tooltip),
            data: None,
        })
    });
    encoded.collect()
}

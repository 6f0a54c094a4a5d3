//! What a client can show, as far as we act on it.

use tower_lsp::lsp_types::{ClientCapabilities, MarkupKind};

use crate::server::ruler::agreed_encoding;
use crate::text::ColumnEncoding;

/// What a client can show.
#[derive(Clone, Copy, Debug)]
pub struct Abilities {
    /// How it counts columns.
    pub encoding: ColumnEncoding,
    /// It shows places that belong to a diagnostic.
    pub shows_related: bool,
    /// It renders Markdown in a hover.
    pub renders_markdown: bool,
    /// It tells us of changed files when asked to.
    pub watches_files: bool,
}

impl Abilities {
    /// What the client says of itself; whatever it does not say it can't.
    pub fn of(client: &ClientCapabilities) -> Self {
        let offered = client.general.as_ref().and_then(|general| general.position_encodings.as_deref());
        let text_document = client.text_document.as_ref();
        let diagnostics = text_document.and_then(|text| text.publish_diagnostics.as_ref());
        let hover = text_document.and_then(|text| text.hover.as_ref());
        let formats = hover.and_then(|hover| hover.content_format.as_deref());
        let watching = client.workspace.as_ref().and_then(|workspace| workspace.did_change_watched_files);
        Self {
            encoding: agreed_encoding(offered.unwrap_or_default()),
            shows_related: diagnostics.and_then(|some| some.related_information).unwrap_or(false),
            renders_markdown: formats.is_some_and(|formats| formats.contains(&MarkupKind::Markdown)),
            watches_files: watching.and_then(|some| some.dynamic_registration).unwrap_or(false),
        }
    }
}

//! `textDocument/hover`.

use tower_lsp::lsp_types::{Hover, HoverContents, MarkupContent, MarkupKind, Position};

use crate::ide::{self, FindingsBeside};
use crate::server::view::View;

/// What there is to say about a position, by the first house of the file that has something to say.
pub fn hover(view: &View, position: Position) -> Option<Hover> {
    let offset = view.offset(position);
    let beside = if view.preferences.hovers_tell_findings { FindingsBeside::No } else { FindingsBeside::Yes };
    let hover = view.houses().find_map(|house| ide::hover(house.snapshot(), house.file, offset, beside))?;
    let (kind, value) = if view.abilities.renders_markdown {
        (MarkupKind::Markdown, hover.text)
    } else {
        (MarkupKind::PlainText, ide::plain(&hover.text))
    };
    Some(Hover {
        contents: HoverContents::Markup(MarkupContent { kind, value }),
        range: Some(view.range(hover.span.start, hover.span.end)),
    })
}

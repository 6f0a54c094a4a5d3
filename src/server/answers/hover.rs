//! `textDocument/hover`.

use tower_lsp::lsp_types::{Hover, HoverContents, MarkupContent, MarkupKind, Position};

use crate::ide;
use crate::server::view::View;

/// What there is to say about a position.
pub fn hover(view: &View, position: Position) -> Option<Hover> {
    let hover = ide::hover(view.house.snapshot(), view.house.file, view.offset(position))?;
    let kind = if view.abilities.renders_markdown { MarkupKind::Markdown } else { MarkupKind::PlainText };
    Some(Hover {
        contents: HoverContents::Markup(MarkupContent { kind, value: hover.text }),
        range: Some(view.range(hover.span.start, hover.span.end)),
    })
}

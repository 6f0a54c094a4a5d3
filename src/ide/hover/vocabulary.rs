//! What the format says of the fact or the heading at a place.

use crate::ide::hover::cursor::Cursor;
use crate::ide::hover::markdown::fenced;
use crate::ide::hover::{Piece, Worth};
use crate::syntax::vocabulary::{ElementSpec, FactSpec, spec_of};

/// The meaning, the default and an example of the fact at the cursor, or of the element whose heading it is.
pub fn piece(cursor: &Cursor<'_>) -> Option<Piece> {
    if let Some(fact) = cursor.fact {
        return Some(Piece {
            span: cursor.span(fact.span),
            worth: Worth::Some,
            text: of_fact(fact.spec),
            has_figures: false,
        });
    }
    let heading = cursor.heading()?;
    let named = heading.name.as_ref().or(heading.title.as_ref()).map(|(_, span)| *span);
    let title = heading.title.as_ref().map(|(_, span)| *span);
    let span = cursor.span(heading.keyword.to(named.unwrap_or(heading.keyword)));
    let is_here =
        span.touches(cursor.offset) || title.is_some_and(|title| cursor.span(title).touches(cursor.offset));
    is_here.then(|| Piece {
        span,
        worth: Worth::Some,
        text: of_element(spec_of(heading.kind)),
        has_figures: false,
    })
}

fn of_fact(spec: &FactSpec) -> String {
    let mut parts = vec![format!("**{}**", spec.phrase), spec.meaning.to_owned()];
    if !spec.default.is_empty() {
        parts.push(format!("without it: {}", spec.default));
    }
    parts.push(fenced("framing", spec.example));
    parts.join("\n\n")
}

fn of_element(spec: &ElementSpec) -> String {
    [format!("**{}**", spec.keyword), spec.summary.to_owned(), fenced("framing", spec.example)].join("\n\n")
}

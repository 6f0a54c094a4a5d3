//! `textDocument/semanticTokens`.

use tower_lsp::lsp_types::{
    Range, SemanticToken, SemanticTokenModifier, SemanticTokenType, SemanticTokensEdit, SemanticTokensLegend,
};

use crate::ide;
use crate::server::view::View;
use crate::text::Span;

/// What the numbers in our tokens mean.
pub fn legend() -> SemanticTokensLegend {
    SemanticTokensLegend {
        token_types: ide::WordKind::ALL.map(|kind| SemanticTokenType::new(kind.name())).to_vec(),
        token_modifiers: ide::Modifier::ALL.map(|one| SemanticTokenModifier::new(one.name())).to_vec(),
    }
}

/// The tokens of the file, or of the lines of a range.
pub fn tokens(view: &View, range: Option<Range>) -> Vec<SemanticToken> {
    let (house, file) = (&view.house.snapshot().house, view.house.file);
    let stretch = range.map(|range| Span::new(file, view.offset(range.start), view.offset(range.end)));
    let ruler = &view.page.ruler;
    let mut tokens: Vec<SemanticToken> = Vec::new();
    // The last token: where it starts in our text, its line and its column.
    let (mut last, mut line, mut column) = (0, 0, 0);
    let mut line_end = 0;
    for word in ide::tokens(house, file, stretch) {
        let is_on_line = !tokens.is_empty() && word.span.start < line_end;
        let (delta_line, delta_start) = if is_on_line {
            let delta = ruler.encoding.width(house.text_at(Span::new(file, last, word.span.start)));
            column += delta;
            (0, delta)
        } else {
            let place = ruler.position(word.span.start);
            let delta = place.line - line;
            let delta_start = if delta == 0 { place.character - column } else { place.character };
            (line, column) = (place.line, place.character);
            line_end = house.line_of(word.span).end;
            (delta, delta_start)
        };
        last = word.span.start;
        tokens.push(SemanticToken {
            delta_line,
            delta_start,
            length: ruler.encoding.width(house.text_at(word.span)),
            token_type: word.kind.place(),
            token_modifiers_bitset: word.modifiers.0,
        });
    }
    tokens
}

/// The one edit that leads from old tokens to new ones; none when they are the same.
pub fn edit(old: &[SemanticToken], new: &[SemanticToken]) -> Option<SemanticTokensEdit> {
    let same = |(one, other): &(&SemanticToken, &SemanticToken)| one == other;
    let before = old.iter().zip(new).take_while(same).count();
    let (old, new) = (old.get(before..)?, new.get(before..)?);
    let behind = old.iter().rev().zip(new.iter().rev()).take_while(same).count();
    let (n_old, new) = (old.len() - behind, new.get(..new.len() - behind)?);
    // A client counts the numbers of which a token has five.
    let count = |tokens: usize| u32::try_from(5 * tokens).unwrap_or(u32::MAX);
    let edit = SemanticTokensEdit {
        start: count(before),
        delete_count: count(n_old),
        data: (!new.is_empty()).then(|| new.to_vec()),
    };
    (n_old > 0 || !new.is_empty()).then_some(edit)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn an_edit_leads_from_old_tokens_to_new_ones(
            old in prop::collection::vec(0u32..3, 0..12),
            new in prop::collection::vec(0u32..3, 0..12),
        ) {
            let [old, new] = [old, new].map(|lengths| -> Vec<SemanticToken> {
                lengths.into_iter().map(|length| SemanticToken { length, ..SemanticToken::default() }).collect()
            });
            let mut changed = old.clone();
            if let Some(edit) = edit(&old, &new) {
                let (start, end) = (edit.start as usize / 5, (edit.start + edit.delete_count) as usize / 5);
                changed.splice(start..end, edit.data.unwrap_or_default());
            }
            prop_assert_eq!(changed, new);
        }
    }
}

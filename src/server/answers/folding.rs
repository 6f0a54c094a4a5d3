//! `textDocument/foldingRange`.

use tower_lsp::lsp_types::{FoldingRange, FoldingRangeKind};

use crate::ide::{self, FoldKind};
use crate::server::view::View;

/// What can be folded in the file. Whole lines fold, so no column is told.
pub fn folding(view: &View) -> Vec<FoldingRange> {
    let ability = view.client.text_document.as_ref().and_then(|text| text.folding_range.as_ref());
    let most = ability.and_then(|folding| folding.range_limit).map_or(usize::MAX, |most| most as usize);
    let mut folds = ide::folding(&view.house.snapshot().house, view.house.file);
    if folds.len() > most {
        // The largest fold most away; the rest stays in the order of the text.
        let mut sizes: Vec<u32> = folds.iter().map(|fold| fold.span.end - fold.span.start).collect();
        sizes.sort_unstable_by(|one, other| other.cmp(one));
        let least = sizes.get(most).copied().unwrap_or(0);
        folds.retain(|fold| fold.span.end - fold.span.start > least);
    }
    let encoded = |fold: ide::Fold| {
        let range = view.range(fold.span.start, fold.span.end);
        FoldingRange {
            start_line: range.start.line,
            end_line: range.end.line,
            kind: match fold.kind {
                FoldKind::Element => None,
                FoldKind::Section => Some(FoldingRangeKind::Region),
                FoldKind::Comment => Some(FoldingRangeKind::Comment),
                FoldKind::Includes => Some(FoldingRangeKind::Imports),
            },
            ..FoldingRange::default()
        }
    };
    folds.into_iter().map(encoded).collect()
}

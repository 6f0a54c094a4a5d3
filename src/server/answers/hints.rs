//! `textDocument/inlayHint` and `inlayHint/resolve`.

use serde::{Deserialize, Serialize};
use tower_lsp::lsp_types::{InlayHint, InlayHintLabel, InlayHintTooltip, Position, Range, TextEdit, Url};

use crate::ide::{self, Hint, HintKind};
use crate::server::preferences::InlayHintPreferences;
use crate::server::view::View;

/// What a hint keeps for the question how it came about.
#[derive(Serialize, Deserialize)]
struct Kept {
    uri: Url,
    kind: String,
    label: String,
}

/// The hints in a range, of the kinds that the person wants.
pub fn hints(view: &View, range: Range) -> Vec<InlayHint> {
    let kinds = wanted(view.preferences.inlay_hints);
    let leaves = Leaves::of(view);
    found(view, range, &kinds).into_iter().map(|hint| encoded(view, hint, leaves)).collect()
}

/// The document whose hint this is.
pub fn document_of(hint: &InlayHint) -> Option<Url> {
    Some(kept(hint)?.uri)
}

/// The hint with everything it can say, if it still stands there.
pub fn resolved(view: &View, hint: &InlayHint) -> Option<InlayHint> {
    let kept = kept(hint)?;
    let kind = HintKind::ALL.into_iter().find(|kind| kind.word() == kept.kind)?;
    let here = found(view, Range::new(hint.position, hint.position), &[kind]);
    let same = here.into_iter().find(|here| here.label == kept.label)?;
    Some(encoded(view, same, Leaves { tooltip: false, edits: false }))
}

fn kept(hint: &InlayHint) -> Option<Kept> {
    Kept::deserialize(hint.data.as_ref()?).ok()
}

fn found(view: &View, range: Range, kinds: &[HintKind]) -> Vec<Hint> {
    let range = (view.offset(range.start), view.offset(range.end));
    ide::hints(view.house.snapshot(), view.house.file, range, kinds)
}

/// What is left for the client to ask for later.
#[derive(Clone, Copy)]
struct Leaves {
    tooltip: bool,
    edits: bool,
}

impl Leaves {
    fn of(view: &View) -> Self {
        let text = view.client.text_document.as_ref();
        let resolve = text.and_then(|text| text.inlay_hint.as_ref()?.resolve_support.as_ref());
        let has = |name: &str| resolve.is_some_and(|some| some.properties.iter().any(|it| it == name));
        Self { tooltip: has("tooltip"), edits: has("textEdits") }
    }
}

fn encoded(view: &View, hint: Hint, leaves: Leaves) -> InlayHint {
    let position: Position = view.page.ruler.position(hint.offset);
    let kept =
        Kept { uri: view.page.uri.clone(), kind: hint.kind.word().to_owned(), label: hint.label.clone() };
    let edit = hint
        .claim
        .map(|edit| TextEdit { range: view.range(edit.span.start, edit.span.end), new_text: edit.text });
    InlayHint {
        position,
        label: InlayHintLabel::String(hint.label),
        kind: None,
        text_edits: edit.filter(|_| !leaves.edits).map(|edit| vec![edit]),
        tooltip: (!leaves.tooltip).then_some(InlayHintTooltip::String(hint.tooltip)),
        padding_left: Some(true),
        padding_right: None,
        data: serde_json::to_value(kept).ok(),
    }
}

fn wanted(preferences: InlayHintPreferences) -> Vec<HintKind> {
    let InlayHintPreferences { elevations, spans, cuts, reactions, ratios, risers } = preferences;
    let is_wanted = |kind: &HintKind| match kind {
        HintKind::Elevation => elevations,
        HintKind::Span => spans,
        HintKind::Cut => cuts,
        HintKind::Reaction => reactions,
        HintKind::Ratio => ratios,
        HintKind::Riser => risers,
    };
    HintKind::ALL.into_iter().filter(is_wanted).collect()
}

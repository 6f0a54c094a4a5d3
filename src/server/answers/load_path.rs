//! `textDocument/prepareCallHierarchy`, `callHierarchy/incomingCalls` and `outgoingCalls`: what hands load to an
//! element, and what takes it on.

use tower_lsp::lsp_types::{
    CallHierarchyIncomingCall, CallHierarchyItem, CallHierarchyOutgoingCall, Position, Range, Url,
};

use crate::house::House;
use crate::ide::{self, LoadStep, LoadStop};
use crate::model::element::ElementId;
use crate::server::answers::kept::{About, Kept};
use crate::server::answers::kinds::kind_of_element;
use crate::server::view::{Analysed, View};
use crate::syntax::vocabulary::ElementKind;
use crate::text::Span;

/// The element at a position, in the first project of the file in which it carries something.
pub fn prepare(view: &View, position: Position) -> Option<Vec<CallHierarchyItem>> {
    let offset = view.offset(position);
    view.houses().find_map(|house| {
        let stop = ide::load_stop_at(&house.snapshot().house, house.file, offset)?;
        Some(vec![item(&house.analysed, &view.page.uri, stop)?])
    })
}

/// What hands load to it in every project of the file, each once.
pub fn incoming(view: &View, kept: &Kept) -> Option<Vec<CallHierarchyIncomingCall>> {
    let call = |(from, from_ranges)| CallHierarchyIncomingCall { from, from_ranges };
    Some(steps(view, kept, ide::taken_up)?.into_iter().map(call).collect())
}

/// What takes its load on in every project of the file, each once.
pub fn outgoing(view: &View, kept: &Kept) -> Option<Vec<CallHierarchyOutgoingCall>> {
    let call = |(to, from_ranges)| CallHierarchyOutgoingCall { to, from_ranges };
    Some(steps(view, kept, ide::handed_on)?.into_iter().map(call).collect())
}

/// The steps to other elements, with the places that say them; `None` when no project has the element any more.
fn steps(
    view: &View,
    kept: &Kept,
    question: fn(&House, ElementId) -> Vec<LoadStep>,
) -> Option<Vec<(CallHierarchyItem, Vec<Range>)>> {
    if kept.about == About::Leaf {
        return Some(Vec::new());
    }
    let mut found: Option<Vec<(CallHierarchyItem, Vec<Range>)>> = None;
    for house in view.houses() {
        let Some(element) = kept.about.element_in(&house.snapshot().house) else { continue };
        let found = found.get_or_insert_default();
        for step in question(&house.snapshot().house, element) {
            let ranges =
                step.said.iter().filter_map(|place: &Span| Some(house.analysed.location(*place)?.range));
            let ranges: Vec<Range> = ranges.collect();
            let step = item(&house.analysed, &kept.uri, step.stop).map(|item| (item, ranges));
            found.extend(step.filter(|step| !found.contains(step)));
        }
    }
    found
}

fn item(house: &Analysed, asked_from: &Url, stop: LoadStop) -> Option<CallHierarchyItem> {
    let (name, whole) = (house.location(stop.name)?, house.location(stop.whole)?);
    let about = stop.element.map_or(About::Leaf, |id| About::element(&house.snapshot.house, id));
    Some(CallHierarchyItem {
        name: stop.label,
        kind: kind_of_element(stop.element.map_or(ElementKind::Load, |id| id.kind)),
        tags: None,
        detail: Some(stop.detail).filter(|detail| !detail.is_empty()),
        uri: name.uri,
        range: whole.range,
        selection_range: name.range,
        data: Kept { uri: asked_from.clone(), about }.data(),
    })
}

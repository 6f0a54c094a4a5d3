//! Where a jump from a name leads.

use crate::house::House;
use crate::ide::meaning::Meaning;
use crate::model::element::ElementId;
use crate::text::Span;

/// A jump from a name to one place or several.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Jump {
    /// The name it starts from.
    pub from: Span,
    /// Where it leads. Invariant: not empty.
    pub to: Vec<Target>,
}

/// Where a jump ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Target {
    /// What the cursor is put on.
    pub name: Span,
    /// All that belongs to it: the whole element, the whole line.
    pub whole: Span,
}

/// A jump to these places; `None` when there are none.
pub fn jump(from: Span, to: Vec<Target>) -> Option<Jump> {
    (!to.is_empty()).then_some(Jump { from, to })
}

/// Where something is declared; a file at its first byte. Rules are declared in no spec.
pub fn declared(house: &House, meaning: &Meaning) -> Option<Target> {
    match meaning {
        Meaning::Element(id) => element(house, *id),
        Meaning::GridLine(_, name) => {
            let name = house.model.grid.lines.get(name)?.span;
            Some(Target { name, whole: house.line_of(name) })
        }
        Meaning::Include(file) => {
            let start = Span::new(*file, 0, 0);
            Some(Target { name: start, whole: start })
        }
        Meaning::Rule(_) => None,
    }
}

/// Where an element is declared.
pub fn element(house: &House, id: ElementId) -> Option<Target> {
    let common = house.model.common(id)?;
    Some(Target { name: common.name_span, whole: common.span })
}

/// Where elements are declared, each once, in the order given.
pub fn elements(house: &House, ids: impl IntoIterator<Item = ElementId>) -> Vec<Target> {
    let mut targets: Vec<Target> = Vec::new();
    for target in ids.into_iter().filter_map(|id| element(house, id)) {
        if !targets.contains(&target) {
            targets.push(target);
        }
    }
    targets
}

//! Where the fields of two floors meet in plan.

use std::collections::{BTreeMap, BTreeSet};

use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::plan::Axis;
use crate::units::Length;

/// Fields this near each other meet: a wall, a ledger, a gap may lie between. Common practice.
const NEAR: Length = Length::inches(18);

/// An edge of a field, across an axis.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Edge {
    from: Length,
    to: Length,
    at: Length,
    is_high: bool,
    floor: ElementId,
}

/// Each two floors whose fields meet along some edge, each pair once, in the model's order.
pub fn meeting_floors(model: &Model) -> BTreeSet<(ElementId, ElementId)> {
    let mut pairs = BTreeSet::new();
    for axis in [Axis::X, Axis::Y] {
        let mut edges: Vec<Edge> = Vec::new();
        for joists in &model.joists {
            let Some(floor) = joists.floor.value().and_then(|floor| floor.target) else { continue };
            for rect in &joists.fill {
                let ((low, high), (from, to)) = (rect.on(axis), rect.on(axis.across()));
                edges.push(Edge { from, to, at: low, is_high: false, floor });
                edges.push(Edge { from, to, at: high, is_high: true, floor });
            }
        }
        pairs.extend(meeting(edges));
    }
    pairs
}

/// Walks along the edges of one axis and keeps, by their place, those that have begun and not ended: of these only the
/// near ones are looked at.
fn meeting(mut edges: Vec<Edge>) -> BTreeSet<(ElementId, ElementId)> {
    edges.sort();
    let mut pairs = BTreeSet::new();
    let mut alive: BTreeMap<(Length, usize), Edge> = BTreeMap::new();
    let mut ends: BTreeSet<(Length, Length, usize)> = BTreeSet::new();
    for (number, edge) in edges.into_iter().enumerate() {
        while let Some((_, at, ended)) = ends.first().copied().filter(|(end, ..)| *end <= edge.from) {
            ends.pop_first();
            alive.remove(&(at, ended));
        }
        // A high edge meets the low edge of a field beyond it, a low edge the high one of a field before it.
        let (low, high) = if edge.is_high { (edge.at, edge.at + NEAR) } else { (edge.at - NEAR, edge.at) };
        for other in alive.range((low, 0)..=(high, usize::MAX)).map(|(_, other)| other) {
            if other.is_high != edge.is_high && other.floor != edge.floor {
                pairs.insert((edge.floor.min(other.floor), edge.floor.max(other.floor)));
            }
        }
        alive.insert((edge.at, number), edge);
        ends.insert((edge.to, edge.at, number));
    }
    pairs
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::syntax::vocabulary::ElementKind;

    fn floor(index: u32) -> ElementId {
        ElementId { kind: ElementKind::Floor, index }
    }

    fn edge(at: i64, is_high: bool, reach: (i64, i64), index: u32) -> Edge {
        let (from, to) = (Length::feet(reach.0), Length::feet(reach.1));
        Edge { from, to, at: Length::inches(at), is_high, floor: floor(index) }
    }

    #[test]
    fn edges_meet_across_a_wall_where_both_reach() {
        let beside = |at: i64, reach: (i64, i64)| {
            meeting(vec![edge(120, true, (0, 10), 0), edge(at, false, reach, 1)])
        };
        assert_eq!(beside(138, (5, 15)), BTreeSet::from([(floor(0), floor(1))]));
        assert_eq!(beside(139, (5, 15)), BTreeSet::new());
        assert_eq!(beside(119, (5, 15)), BTreeSet::new());
        assert_eq!(beside(120, (10, 15)), BTreeSet::new());
    }
}

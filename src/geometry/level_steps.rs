//! Where the fields of two floors meet in plan.

use std::collections::BTreeSet;

use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::plan::Axis;
use crate::units::Length;

/// Fields this near each other meet: a wall, a ledger, a gap may lie between. Common practice.
const NEAR: Length = Length::inches(18);

/// An edge of a field, across an axis.
struct Edge {
    axis: Axis,
    at: Length,
    is_high: bool,
    reach: (Length, Length),
    floor: ElementId,
}

/// Each two floors whose fields meet along some edge, each pair once, in the model's order.
pub fn meeting_floors(model: &Model) -> Vec<(ElementId, ElementId)> {
    let mut edges: Vec<Edge> = Vec::new();
    for joists in &model.joists {
        let Some(floor) = joists.floor.value().and_then(|floor| floor.target) else { continue };
        for rect in &joists.fill {
            for axis in [Axis::X, Axis::Y] {
                let (low, high) = rect.on(axis);
                let reach = rect.on(axis.across());
                edges.push(Edge { axis, at: low, is_high: false, reach, floor });
                edges.push(Edge { axis, at: high, is_high: true, reach, floor });
            }
        }
    }
    edges.sort_by_key(|edge| (edge.axis, edge.at));
    let mut pairs = BTreeSet::new();
    for (at, edge) in edges.iter().enumerate() {
        let near = edges
            .iter()
            .skip(at + 1)
            .take_while(|other| other.axis == edge.axis && other.at - edge.at <= NEAR);
        for other in near {
            let is_between = edge.is_high && !other.is_high;
            let is_touching = edge.at == other.at && edge.is_high != other.is_high;
            let common = edge.reach.1.min(other.reach.1) - edge.reach.0.max(other.reach.0);
            if edge.floor != other.floor && (is_between || is_touching) && common.is_positive() {
                pairs.insert((edge.floor.min(other.floor), edge.floor.max(other.floor)));
            }
        }
    }
    pairs.into_iter().collect()
}

//! Where wood begins on concrete.

use std::collections::HashSet;

use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::foundation::Wall;

/// The concrete and masonry walls that have wood on their tops: a sill, or a framed wall that stands on them.
pub fn walls_under_wood(model: &Model) -> HashSet<ElementId> {
    let is_mineral = |wall: &Wall| wall.kind.get().is_some_and(|kind| kind.is_mineral());
    let mut under_wood = HashSet::new();
    for wall in &model.walls {
        if is_mineral(wall) {
            if wall.sill.value().is_some() {
                under_wood.insert(wall.common.id);
            }
        } else {
            let stand = wall.stands_on.value().and_then(|stand| stand.on.reference());
            let on = stand.and_then(|on| model.wall(on.target?)).filter(|on| is_mineral(on));
            under_wood.extend(on.map(|on| on.common.id));
        }
    }
    under_wood
}

//! A spec as it would be with some edits made.

use std::sync::Arc;

use crate::diagnostic::Edit;
use crate::house::House;
use crate::house::edited::inputs_with;
use crate::snapshot::{Caches, Snapshot, analyse};
use crate::syntax::ElementCache;

/// The spec with these edits made, and everything found in it. What include lines led to stays as it was. `None` when it
/// breaks off.
pub fn with(snapshot: &Snapshot, edits: &[Edit]) -> Option<Snapshot> {
    let inputs = Arc::new(inputs_with(&snapshot.house, edits));
    analyse(&inputs, &mut Caches::default(), snapshot.house.today, &|| false).ok()
}

/// The spec with what was measured in place of what was drawn, and everything found in it. `None` when nothing was
/// measured.
pub fn as_built(snapshot: &Snapshot) -> Option<Snapshot> {
    let inputs = &snapshot.house.as_built()?.house.inputs;
    analyse(inputs, &mut Caches::default(), snapshot.house.today, &|| false).ok()
}

/// The house with these edits made, for who asks only what it comes to.
pub fn house_with(snapshot: &Snapshot, edits: &[Edit]) -> House {
    let inputs = Arc::new(inputs_with(&snapshot.house, edits));
    House::of(&inputs, &mut ElementCache::default(), snapshot.house.today)
}

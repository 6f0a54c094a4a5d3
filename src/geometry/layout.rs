//! Where each joist of a field lies.

use crate::model::framing::Joists;
use crate::units::Length;

/// The joist nearest to a coordinate across the field: its centre. `None` without a spacing.
pub fn nearest_joist(joists: &Joists, at: Length) -> Option<Length> {
    let spacing = joists.spacing.get().filter(|spacing| spacing.step.is_positive())?;
    let from_origin = at - spacing.origin.at;
    Some(spacing.origin.at + from_origin.rounded_to(spacing.step))
}

/// Half the thickness of one joist of the field.
pub fn half_thickness(joists: &Joists) -> Option<Length> {
    joists.size.value()?.thickness().map(Length::half)
}

/// The first and the last joist strictly between two coordinates across the field; `None` when there is none, or no
/// spacing.
pub fn joists_between(joists: &Joists, (from, to): (Length, Length)) -> Option<(Length, Length)> {
    let step = joists.spacing.get()?.step;
    let (low, high) = (nearest_joist(joists, from)?, nearest_joist(joists, to)?);
    let first = if low > from { low } else { low + step };
    let last = if high < to { high } else { high - step };
    (first <= last).then_some((first, last))
}

//! What says again what another consequence says: a reader of a long list is helped by each thing once.

use crate::compare::{Found, Outcome};
use crate::facts::FactValue;
use crate::house::House;
use crate::syntax::vocabulary::ElementKind;

/// Takes out the load of what gets all of it from one neighbour, whose reaction stands in the list, and the joists' levels
/// told of their floor too.
pub(super) fn leave_out(house: &House, found: &mut Vec<Found>) {
    let again: Vec<bool> =
        found.iter().map(|one| found.iter().any(|other| says_again(house, one, other))).collect();
    let mut again = again.into_iter();
    found.retain(|_| !again.next().unwrap_or(false));
}

/// The first of two consequences tells what the second does.
fn says_again(house: &House, one: &Found, other: &Found) -> bool {
    let (Outcome::Moved(key, was, is), Outcome::Moved(other_key, other_was, other_is)) =
        (&one.consequence.outcome, &other.consequence.outcome)
    else {
        return false;
    };
    let is_of_joists = || {
        let floor = one.of.filter(|of| of.kind == ElementKind::Floor);
        let joists = other.of.and_then(|of| {
            house.model.joists.get(of.index as usize).filter(|_| of.kind == ElementKind::Joists)
        });
        floor.is_some()
            && joists.is_some_and(|joists| joists.floor.value().and_then(|floor| floor.target) == floor)
    };
    let is_pair = match (&*key.words, &*other_key.words) {
        ("load", "reaction") => key.case == other_key.case && other_key.of.get(1) == key.of.first(),
        ("joist top", "top") | ("joist bottom", "bottom") => is_of_joists(),
        _ => false,
    };
    is_pair && is_same(was.as_ref(), other_was.as_ref()) && is_same(is.as_ref(), other_is.as_ref())
}

fn is_same(one: Option<&FactValue>, other: Option<&FactValue>) -> bool {
    match (one, other) {
        // What a foot of it gets at the most may hold its own weight too.
        (Some(FactValue::Force { whole: one, .. }), Some(FactValue::Force { whole: other, .. })) => {
            (one.to_lb() - other.to_lb()).abs() < 0.5
        }
        (Some(one), Some(other)) => one.to_string() == other.to_string(),
        (None, None) => true,
        (Some(_), None) | (None, Some(_)) => false,
    }
}

//! What says again what another consequence says: a reader of a long list is helped by each thing once.

use std::collections::{HashMap, HashSet};

use indexmap::IndexMap;

use crate::compare::{Found, Outcome};
use crate::facts::FactValue;
use crate::house::House;
use crate::syntax::vocabulary::ElementKind;

/// Takes out the load of what gets all of it from one neighbour, or hands all of it to one, whose reaction stands in the
/// list, and the joists' levels told of their floor too.
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
    let is_same = || is_same(was.as_ref(), other_was.as_ref()) && is_same(is.as_ref(), other_is.as_ref());
    match (&*key.words, &*other_key.words) {
        ("load", "reaction") if key.case != other_key.case => false,
        ("load", "reaction") if other_key.of.get(1) == key.of.first() => is_same(),
        // What it hands on is heavier by its own weight, before and now.
        ("load", "reaction") if other_key.of.first() == key.of.first() => {
            let more = |was: &Option<FactValue>, is: &Option<FactValue>| Some(force(is)? - force(was)?);
            more(was, is).zip(more(other_was, other_is)).is_some_and(|(one, other)| (one - other).abs() < 0.5)
        }
        ("joist top", "top") | ("joist bottom", "bottom") => is_of_joists() && is_same(),
        _ => false,
    }
}

/// In lb.
fn force(value: &Option<FactValue>) -> Option<f64> {
    match value {
        Some(FactValue::Force { whole, .. }) => Some(whole.to_lb()),
        _ => None,
    }
}

/// Tells once what an element hands alike to several, and what those hand on just so: a header's two ends, the jacks under
/// each, the wall below.
pub(super) fn fold(found: &mut Vec<Found>) {
    // A folded consequence, and the one that tells it.
    let mut told: HashMap<usize, usize> = HashMap::new();
    for alike in alike(found).values() {
        let is_handed = |name: &str| alike.iter().any(|handing| *handing.on == *name);
        for head in alike.iter().filter(|handing| !is_handed(&handing.of)) {
            if told.contains_key(&head.at) {
                continue;
            }
            let mut reached = vec![&head.of];
            let mut next = 0;
            while let Some(of) = reached.get(next).copied() {
                for handing in alike.iter().filter(|handing| handing.of == *of) {
                    if handing.at != head.at && told.contains_key(&handing.at) {
                        continue;
                    }
                    told.insert(handing.at, head.at);
                    reached.push(&handing.on);
                }
                next += 1;
            }
        }
    }
    told.retain(|at, head| at != head);
    let mut in_order: Vec<(usize, usize)> = told.iter().map(|(at, head)| (*at, *head)).collect();
    in_order.sort_unstable();
    for (at, head) in in_order {
        let Some(Outcome::Moved(key, ..)) = found.get(at).map(|one| one.consequence.outcome.clone()) else {
            continue;
        };
        if let Some(head) = found.get_mut(head) {
            head.consequence.also.push(key);
        }
    }
    let mut at = 0;
    found.retain(|_| {
        at += 1;
        !told.contains_key(&(at - 1))
    });
}

/// What one element hands to another.
struct Handing {
    /// Which of the consequences tells it.
    at: usize,
    of: Box<str>,
    on: Box<str>,
}

/// A load case, and what is printed of a reaction before and now.
type Numbers = (Option<Box<str>>, String, String);

/// The reactions that moved, by their numbers.
fn alike(found: &[Found]) -> IndexMap<Numbers, Vec<Handing>> {
    let mut all: IndexMap<Numbers, Vec<Handing>> = IndexMap::new();
    for (at, one) in found.iter().enumerate() {
        let Outcome::Moved(key, Some(was), Some(is)) = &one.consequence.outcome else { continue };
        let ("reaction", [of, on]) = (&*key.words, key.of.as_slice()) else { continue };
        let numbers = (key.case.clone(), was.to_string(), is.to_string());
        all.entry(numbers).or_default().push(Handing { at, of: of.clone(), on: on.clone() });
    }
    all
}

/// Takes the ways out of what moved where a finding about the same element tells them; a number may be rounded there.
pub(super) fn leave_out_ways(found: &mut [Found]) {
    let exact = |way: &str| way.replace('~', "");
    let told: HashSet<(String, String)> = found
        .iter()
        .filter(|one| !matches!(one.consequence.outcome, Outcome::Moved(..)))
        .flat_map(|one| {
            one.consequence.ways_out.iter().map(|way| (one.consequence.element.clone(), exact(way)))
        })
        .collect();
    for one in found.iter_mut().filter(|one| matches!(one.consequence.outcome, Outcome::Moved(..))) {
        let element = one.consequence.element.clone();
        one.consequence.ways_out.retain(|way| !told.contains(&(element.clone(), exact(way))));
    }
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

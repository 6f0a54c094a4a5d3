//! What an element carries in all, and where most of it lies.

use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::plan::Axis;
use crate::statics::action::{Acting, Action, Receiver, Source, Spot};
use crate::statics::cases::ByCase;
use crate::statics::takedown::Takedown;
use crate::units::{Force, Length, LineLoad};

impl Takedown {
    /// All that acts on an element but its own weight.
    pub fn load_on(&self, element: ElementId) -> ByCase<Force> {
        sum(self.on(element).iter().filter(|action| action.source != Source::Weight))
    }

    /// All that acts on an element and its own weight.
    pub fn weight_and_load_on(&self, element: ElementId) -> ByCase<Force> {
        sum(self.on(element).iter())
    }

    /// All that an element hands on.
    pub fn handed_in_all(&self, element: ElementId) -> ByCase<Force> {
        self.handed_by(element).iter().fold(ByCase::default(), |sum, handed| sum + handed.acting.total())
    }

    /// What one element hands on to another.
    pub fn reaction(&self, of: ElementId, on: Receiver) -> ByCase<Force> {
        let there = self.handed_by(of).iter().filter(|handed| handed.to == on);
        there.fold(ByCase::default(), |sum, handed| sum + handed.acting.total())
    }

    /// The heaviest line load on an element that runs along an axis, points left out, its own weight with it.
    pub fn heaviest_line(&self, element: ElementId, axis: Axis) -> ByCase<LineLoad> {
        heaviest_foot(self.on(element).iter().map(|action| &action.acting), axis).unwrap_or_default()
    }

    /// The heaviest foot of what one element hands to another along a line; `None` when it hands on points alone.
    pub fn heaviest_handed(&self, of: ElementId, on: Receiver) -> Option<ByCase<LineLoad>> {
        let there =
            || self.handed_by(of).iter().filter(|handed| handed.to == on).map(|handed| &handed.acting);
        let axis = there().find_map(|acting| match acting {
            Acting::Spread { axis, .. } => Some(*axis),
            Acting::Point { .. } | Acting::Area { .. } => None,
        })?;
        heaviest_foot(there(), axis)
    }
}

/// The heaviest foot of what lies along an axis: what overlaps adds up.
fn heaviest_foot<'a>(actings: impl Iterator<Item = &'a Acting>, axis: Axis) -> Option<ByCase<LineLoad>> {
    let spreads: Vec<(Length, Length, ByCase<LineLoad>)> = actings
        .filter_map(|acting| match *acting {
            Acting::Spread { axis: own, from, to, load, .. } if own == axis => Some((from, to, load)),
            Acting::Spread { .. } | Acting::Point { .. } | Acting::Area { .. } => None,
        })
        .collect();
    let at = |place: Length| {
        let there = spreads.iter().filter(|(from, to, _)| *from <= place && place < *to);
        there.fold(ByCase::default(), |sum, (_, _, load)| sum + *load)
    };
    let loads = spreads.iter().map(|(from, _, _)| at(*from));
    loads.max_by(|one, other| one.total().to_plf().total_cmp(&other.total().to_plf()))
}

fn sum<'a>(actions: impl Iterator<Item = &'a Action>) -> ByCase<Force> {
    actions.fold(ByCase::default(), |sum, action| sum + action.acting.total())
}

/// What one pad or pier of a mark carries, its own weight with it.
#[derive(Clone, Debug, PartialEq)]
pub struct PadLoad {
    /// Where it is.
    pub at: Spot,
    /// What acts on it.
    pub actions: Vec<Action>,
}

impl PadLoad {
    /// All of it.
    pub fn total(&self) -> ByCase<Force> {
        sum(self.actions.iter())
    }
}

/// What each place of a pad or pier carries: every load goes to the place nearest to it.
pub fn by_place(model: &Model, forces: &Takedown, footing: ElementId) -> Vec<PadLoad> {
    let Some(places) = model.footing(footing).map(|footing| &footing.at) else { return Vec::new() };
    let mut pads: Vec<PadLoad> =
        places.iter().map(|at| PadLoad { at: Spot::from(at), actions: Vec::new() }).collect();
    for action in forces.on(footing) {
        let spot = action.acting.middle();
        let nearest =
            pads.iter_mut().min_by(|one, other| spot.distance(one.at).total_cmp(&spot.distance(other.at)));
        if let Some(pad) = nearest {
            pad.actions.push(*action);
        }
    }
    pads
}

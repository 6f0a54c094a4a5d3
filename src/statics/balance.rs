//! The balance sheet: what went on a house against where it ended, case by case.

use std::collections::HashMap;

use crate::model::element::ElementId;
use crate::statics::action::{Action, Handed, Lost, Receiver};
use crate::statics::cases::{ByCase, Case};
use crate::units::Force;

/// What went on a house, and where it ended.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Balance {
    /// All loads of the spec.
    pub applied: ByCase<Force>,
    /// What reached the ground.
    pub on_soil: ByCase<Force>,
    /// What went to something outside of the spec.
    pub outside: ByCase<Force>,
    /// What reached nothing: the element it was lost at, why, how much.
    pub lost: Vec<(ElementId, Lost, ByCase<Force>)>,
}

impl Balance {
    /// All that reached nothing.
    pub fn lost_in_all(&self) -> ByCase<Force> {
        self.lost.iter().fold(ByCase::default(), |sum, (_, _, force)| sum + *force)
    }

    /// How far the sheet is from closing, as a share of all that was applied. It is rounding and no more, for any spec.
    pub fn error(&self) -> f64 {
        let ended = self.on_soil + self.outside + self.lost_in_all();
        let off =
            Case::ALL.iter().map(|case| (*self.applied.of(*case) - *ended.of(*case)).abs()).sum::<Force>();
        let all = self.applied.map(Force::abs).total();
        if off == Force::ZERO { 0.0 } else { off / all.max(Force::lb(1.0)) }
    }
}

/// The sum of some actions.
pub fn total_of<'a>(actions: impl Iterator<Item = &'a Action>) -> ByCase<Force> {
    actions.fold(ByCase::default(), |sum, action| sum + action.acting.total())
}

/// The balance of what was applied and all that was handed on.
pub fn of(applied: ByCase<Force>, handed: &HashMap<ElementId, Vec<Handed>>) -> Balance {
    let mut balance = Balance { applied, ..Balance::default() };
    let mut order: Vec<&ElementId> = handed.keys().collect();
    order.sort();
    for element in order {
        for item in handed.get(element).into_iter().flatten() {
            let force = item.acting.total();
            match item.to {
                Receiver::Element(_) => {}
                Receiver::Outside => balance.outside += force,
                Receiver::Soil => balance.on_soil += force,
                Receiver::Nothing(why) => lose(&mut balance.lost, *element, why, force),
            }
        }
    }
    balance
}

fn lose(lost: &mut Vec<(ElementId, Lost, ByCase<Force>)>, at: ElementId, why: Lost, force: ByCase<Force>) {
    match lost.iter_mut().find(|(element, reason, _)| *element == at && *reason == why) {
        Some((_, _, sum)) => *sum += force,
        None => lost.push((at, why, force)),
    }
}

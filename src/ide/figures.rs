//! The figures of an element that a person asks for first: how full it is, and what makes its figures doubtful.

use std::collections::HashMap;

use crate::geometry::sum::Unknown;
use crate::house::House;
use crate::model::element::{Common, ElementId};
use crate::model::problem::ModelProblemKind;
use crate::statics::action::{Lost, Source};
use crate::statics::cases::{ByCase, Case};
use crate::syntax::Opening;
use crate::syntax::vocabulary::{COMMON, ElementKind};
use crate::units::Force;
use crate::verify::bearings::heaviest;
use crate::verify::check::{Check, Verification};
use crate::verify::limit_state::LimitState;
use crate::verify::quantity::{Quantity, grouped};

/// The checks of an element that ran, one a limit state, the fullest first; those that are no demand come last.
pub fn checks_of(house: &House, element: ElementId) -> Vec<(&Verification, &Check)> {
    let mut all: Vec<(&Verification, &Check)> = house
        .verifications
        .of(element)
        .filter_map(|verification| Some((verification, verification.outcome.as_ref().ok()?)))
        .collect();
    all.sort_by(|(_, one), (_, other)| other.ratio().total_cmp(&one.ratio()));
    let mut seen: Vec<LimitState> = Vec::new();
    all.retain(|(verification, _)| {
        let is_new = !seen.contains(&verification.limit_state);
        seen.push(verification.limit_state);
        is_new
    });
    all.sort_by_key(|(verification, _)| !verification.limit_state.is_of_demand());
    all
}

/// A ratio as a share of a hundred: `94 %`, and between full and over full with the digit that tells which.
pub fn percent(ratio: f64) -> String {
    if !ratio.is_finite() {
        return "no capacity".to_owned();
    }
    let percent = ratio * 100.0;
    if (99.5..=100.5).contains(&percent) { format!("{percent:.1} %") } else { format!("{percent:.0} %") }
}

/// `a`, `a and b`, `a, b and c`; of more than `most` the rest is counted.
pub fn listed(items: &[String], most: usize) -> String {
    let (shown, rest) = items.split_at(items.len().min(most));
    match (shown, rest.len()) {
        ([first @ .., last], 0) if !first.is_empty() => format!("{} and {last}", first.join(", ")),
        (_, 0) => shown.concat(),
        (_, more) => format!("{} and {more} more", shown.join(", ")),
    }
}

/// A force by its heaviest combination and by case: `13,136 lb by D + L (D 3,359, L 9,777)`.
pub fn force_in_words(force: &ByCase<Force>) -> String {
    let cases = Case::ALL.into_iter().filter(|case| *force.of(*case) != Force::ZERO);
    let cases: Vec<String> =
        cases.map(|case| format!("{} {}", case.symbol(), grouped(force.of(case).to_lb()))).collect();
    let cases = cases.join(", ");
    match heaviest(force) {
        Some(most) => {
            format!("{} by {} ({cases})", Quantity::from(most.force), most.combination)
        }
        None => format!("{} ({cases})", Quantity::from(force.total())),
    }
}

/// What isn't known, in words: `size` of beam B1.
pub fn unknown_in_words(house: &House, unknown: &Unknown) -> String {
    match unknown.of.and_then(|of| house.model.common(of)) {
        Some(common) => format!("`{}` of {} is not known", unknown.fact, common.label()),
        None => format!("`{}` is not known", unknown.fact),
    }
}

/// Why the loads and ratios of a house, or of some of its elements, can't be trusted yet.
#[derive(Debug, Default)]
pub struct Doubts {
    everywhere: Option<String>,
    of: HashMap<ElementId, String>,
}

impl Doubts {
    /// Looks for what can't be read, or means nothing, in a house.
    pub fn of(house: &House) -> Self {
        let mut doubts = Self { everywhere: everywhere(house), of: HashMap::new() };
        for common in house.model.commons() {
            if let Some(fact) = unread(common) {
                doubts.of.insert(common.id, format!("{fact} of {} can't be read", common.label()));
            }
        }
        for problem in &house.model.problems {
            let Some(common) = problem.subject.and_then(|subject| house.model.common(subject)) else {
                continue;
            };
            if spoils_figures(&problem.kind) {
                let why = format!("a line of {} is not understood", common.label());
                doubts.of.entry(common.id).or_insert(why);
            }
        }
        for (member, _) in &house.forces.unstable {
            if let Some(common) = house.model.common(*member) {
                let why = format!("{} can't stand as it is supported", common.label());
                doubts.of.entry(*member).or_insert(why);
            }
        }
        doubts.add_lost(house);
        doubts.hand_down(house);
        doubts
    }

    /// Why the figures of an element can't be trusted: something in it, in what it carries, or in the house as a whole.
    pub fn about(&self, element: ElementId) -> Option<&str> {
        self.everywhere.as_ref().or_else(|| self.of.get(&element)).map(String::as_str)
    }

    /// A load that goes somewhere, but nobody can read how much of it where: whatever should get a share is in doubt, and
    /// everything when the names that would say so can't be read.
    fn add_lost(&mut self, house: &House) {
        let lost = house.forces.balance.lost.iter().filter(|(_, why, _)| *why == Lost::Unreadable);
        for (at, ..) in lost {
            let carriers = house.geometry.load_path.carriers_of(*at);
            let concerned = || std::iter::once(at).chain(carriers);
            let label = house.model.common(*at).map(Common::label).unwrap_or_default();
            let known = concerned().find_map(|element| self.of.get(element)).cloned();
            let why = known.unwrap_or_else(|| format!("where the load of {label} goes can't be read"));
            if self.of.contains_key(at) {
                self.everywhere.get_or_insert(why);
                continue;
            }
            for element in concerned() {
                self.of.entry(*element).or_insert_with(|| why.clone());
            }
        }
    }

    /// What rests on a figure in doubt is in doubt too.
    fn hand_down(&mut self, house: &House) {
        if self.of.is_empty() {
            return;
        }
        let mut rest_on: HashMap<ElementId, Vec<ElementId>> = HashMap::new();
        for (element, actions) in &house.forces.on {
            for action in actions {
                if let Source::From(from) | Source::AreaOf(from) | Source::Load(from) = action.source {
                    rest_on.entry(from).or_default().push(*element);
                }
            }
        }
        let mut doubtful: Vec<ElementId> = self.of.keys().copied().collect();
        doubtful.sort();
        let mut next = 0;
        while let Some(at) = doubtful.get(next).copied() {
            next += 1;
            let Some(why) = self.of.get(&at).cloned() else { continue };
            let carriers = house.geometry.load_path.carriers_of(at);
            for element in rest_on.get(&at).into_iter().flatten().chain(carriers) {
                if !self.of.contains_key(element) {
                    self.of.insert(*element, why.clone());
                    doubtful.push(*element);
                }
            }
        }
    }
}

/// What spoils every figure: the house's own loads, its grid, an element that nobody knows.
fn everywhere(house: &House) -> Option<String> {
    let house_wide =
        house.model.project.iter().map(|project| &project.common).chain(&house.model.grid.common);
    for common in house_wide {
        if let Some(fact) = unread(common) {
            return Some(format!("{fact} of the {} can't be read", common.id.kind.word()));
        }
    }
    let mut openings = house.trees.iter().flat_map(|tree| &tree.chunks).map(|chunk| &chunk.body.opening);
    let is_unknown = openings.any(|opening| matches!(opening, Opening::Unknown(..)));
    is_unknown.then(|| "a line in the first column opens no element".to_owned())
}

/// The fact of an element that can't be read, of those that make figures.
fn unread(common: &Common) -> Option<String> {
    if matches!(common.id.kind, ElementKind::Intent | ElementKind::Sheet | ElementKind::HoldPoint) {
        return None;
    }
    if common.has_unread_lines {
        return Some("a line".to_owned());
    }
    let makes_figures = |phrase: &&&str| COMMON.iter().all(|fact| fact.phrase != **phrase);
    common.unread_facts.iter().find(makes_figures).map(|phrase| format!("`{phrase}`"))
}

/// True of a problem that makes loads or sizes other than meant.
const fn spoils_figures(kind: &ModelProblemKind) -> bool {
    match kind {
        ModelProblemKind::UnknownName(..)
        | ModelProblemKind::WrongKind(..)
        | ModelProblemKind::UnknownGridLine(_)
        | ModelProblemKind::GridLineOfOtherAxis(_)
        | ModelProblemKind::FactMissing(_)
        | ModelProblemKind::UnknownSize(_)
        | ModelProblemKind::NotPositive(_)
        | ModelProblemKind::Negative(_)
        | ModelProblemKind::LoadOfOtherKind(_)
        | ModelProblemKind::SizeOfOtherKind(_)
        | ModelProblemKind::NoExtent(_)
        | ModelProblemKind::RefersToItself => true,
        ModelProblemKind::NoProject
        | ModelProblemKind::SecondOfItsKind(..)
        | ModelProblemKind::NameReused(..)
        | ModelProblemKind::GridLineReused(_)
        | ModelProblemKind::GridNotAscending
        | ModelProblemKind::UnknownWord(..)
        | ModelProblemKind::LimitOfOtherKind(_)
        | ModelProblemKind::DecidedTwice(..) => false,
    }
}

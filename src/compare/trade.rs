//! Who must act on what.

use crate::compare::is_of_forces;
use crate::house::House;
use crate::model::element::ElementId;
use crate::rules;
use crate::syntax::vocabulary::ElementKind;

/// Those who read a change of the design, in the order in which the work goes up.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Trade {
    /// Digs, forms and pours.
    Foundation,
    /// Cuts and sets wood.
    Framer,
    /// Makes and sets steel.
    Steel,
    /// Builds stairs and landings.
    Stairs,
    /// Drills, notches and hangs pipes and ducts.
    Plumber,
    /// Checks the plans: forces, limits, promises and sheets.
    PlanChecker,
}

impl Trade {
    /// All of them.
    pub const ALL: [Self; 6] =
        [Self::Foundation, Self::Framer, Self::Steel, Self::Stairs, Self::Plumber, Self::PlanChecker];

    /// The word for it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Foundation => "foundation",
            Self::Framer => "framer",
            Self::Steel => "steel",
            Self::Stairs => "stairs",
            Self::Plumber => "plumber",
            Self::PlanChecker => "plan checker",
        }
    }

    /// Who builds an element.
    pub fn of_element(house: &House, element: ElementId) -> Self {
        let at = element.index as usize;
        match element.kind {
            ElementKind::Footing | ElementKind::Slab | ElementKind::Shelf | ElementKind::Pocket => {
                Self::Foundation
            }
            ElementKind::Wall => match house.model.wall(element).and_then(|wall| wall.kind.get()) {
                Some(kind) if !kind.is_mineral() => Self::Framer,
                Some(_) | None => Self::Foundation,
            },
            ElementKind::Beam | ElementKind::Column => {
                let size = match element.kind {
                    ElementKind::Beam => house.model.beams.get(at).and_then(|beam| beam.size.value()),
                    _ => house.model.columns.get(at).and_then(|column| column.size.value()),
                };
                match size.and_then(|member| member.is_steel()) {
                    Some(true) => Self::Steel,
                    Some(false) | None => Self::Framer,
                }
            }
            ElementKind::Floor
            | ElementKind::Area
            | ElementKind::Joists
            | ElementKind::Opening
            | ElementKind::Ledger
            | ElementKind::Header
            | ElementKind::Jacks
            | ElementKind::Squash
            | ElementKind::Roof
            | ElementKind::Door
            | ElementKind::Window
            | ElementKind::HoldPoint => Self::Framer,
            ElementKind::Stair | ElementKind::Landing | ElementKind::Stoop => Self::Stairs,
            ElementKind::Drain | ElementKind::Hole | ElementKind::Notch | ElementKind::Duct => Self::Plumber,
            ElementKind::Project
            | ElementKind::Grid
            | ElementKind::Product
            | ElementKind::Load
            | ElementKind::Intent
            | ElementKind::Sheet => Self::PlanChecker,
        }
    }

    /// Who answers for a fact of an element: forces and ratios are checked on paper, drops and what one
    /// treads on are climbed.
    pub fn of_fact(house: &House, words: &str, element: ElementId) -> Self {
        match words {
            "area" => Self::PlanChecker,
            words if is_of_forces(words) => Self::PlanChecker,
            "finish" | "drop" | "subfloor drop" | "rise" | "riser" | "risers" | "run" | "headroom" => {
                Self::Stairs
            }
            _ => Self::of_element(house, element),
        }
    }

    /// Who answers for what a rule found of an element.
    pub fn of_finding(house: &House, rule: &str, subject: Option<ElementId>) -> Self {
        let group = rules::rule_named(rule).map(rules::Rule::group).unwrap_or_default();
        match (group, subject) {
            ("stairs", _) => Self::Stairs,
            ("strength" | "intents" | "sheets" | "claims" | "waivers" | "severities", _) | (_, None) => {
                Self::PlanChecker
            }
            (_, Some(subject)) => Self::of_element(house, subject),
        }
    }
}

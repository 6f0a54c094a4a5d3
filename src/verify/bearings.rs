//! Where load crosses from one member to the next: wood across its grain, concrete, plates, hangers.
//!
//! Each place is held against its weakest layer: the member itself, the plate or nailer it lies on, the sill below. Load
//! duration never helps wood across its grain.

pub mod layer;
pub mod members;
pub mod standing;

use crate::statics::cases::ByCase;
use crate::units::Force;
use crate::verify::Known;
use crate::verify::check::Verification;
use crate::verify::demands::{acting, combinations, combined};

/// Verifies every place where load crosses.
pub fn of(known: &Known<'_>) -> Vec<Verification> {
    let mut all = standing::of(known);
    all.extend(members::of(known));
    all
}

/// A force, and what brings it.
#[derive(Clone, Debug, PartialEq)]
pub struct Pressing {
    /// How much.
    pub force: Force,
    /// The load combination.
    pub combination: &'static str,
    /// Which spans carry live load, when not all.
    pub pattern: Option<Box<str>>,
}

/// The heaviest combination; nothing when nothing presses down.
pub fn heaviest(force: &ByCase<Force>) -> Option<Pressing> {
    let all = combinations(acting(force)).map(|combination| (combination.name, combined(combination, force)));
    let (combination, force) = all.max_by(|one, other| one.1.to_lb().total_cmp(&other.1.to_lb()))?;
    (force > Force::ZERO).then_some(Pressing { force, combination, pattern: None })
}

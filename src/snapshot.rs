//! A spec at one moment, with everything found in it.

pub mod edited;

use std::sync::Arc;

use crate::diagnostic::Diagnostic;
use crate::house::House;
use crate::inputs::Inputs;
use crate::rules::{self, Found, Waived};
use crate::syntax::ElementCache;
use crate::syntax::value::Date;

/// What an analysis keeps for the next one.
#[derive(Default)]
pub struct Caches {
    /// Text of an element to its tree.
    pub elements: ElementCache,
}

/// The analysis was told to stop, because newer text is there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cancelled;

/// A spec at one moment.
#[derive(Debug)]
pub struct Snapshot {
    /// What it was made from.
    pub inputs: Arc<Inputs>,
    /// The house.
    pub house: House,
    /// What is wrong with it: roots, each with what follows from it, by file, place and rule.
    pub findings: Vec<Diagnostic>,
    /// What its waivers silence, by file, place and rule.
    pub waived: Vec<Waived>,
}

/// Reads, derives and checks a whole spec.
///
/// `today` decides which waivers have run out. `is_cancelled` is asked between the steps.
///
/// # Errors
/// [`Cancelled`] when `is_cancelled` said so.
pub fn analyse(
    inputs: &Arc<Inputs>,
    caches: &mut Caches,
    today: Date,
    is_cancelled: &dyn Fn() -> bool,
) -> Result<Snapshot, Cancelled> {
    let stop = || if is_cancelled() { Err(Cancelled) } else { Ok(()) };
    stop()?;
    let house = House::of(inputs, &mut caches.elements, today);
    stop()?;
    let Found { findings, waived } = rules::found_in(&house, is_cancelled).ok_or(Cancelled)?;
    Ok(Snapshot { inputs: Arc::clone(inputs), house, findings, waived })
}

//! A spec at one moment, with everything found in it.

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::diagnostic::{Diagnostic, Severity};
use crate::house::House;
use crate::rules;
use crate::syntax::ElementCache;
use crate::syntax::value::Date;
use crate::text::{FileId, LocalSpan, Source};

/// Everything an analysis depends on. Same inputs, same snapshot.
#[derive(Clone, Debug)]
pub struct Inputs {
    /// The files of one spec; the first is its root.
    pub sources: Vec<Source>,
    /// What each include line led to, in the order they were met.
    pub includes: Vec<Include>,
    /// What the configuration says.
    pub settings: Settings,
}

/// An include line and what it led to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Include {
    /// The file it stands in.
    pub file: FileId,
    /// Where the path stands, counted from the file's start.
    pub span: LocalSpan,
    /// The path as written.
    pub path: String,
    /// What it led to.
    pub outcome: IncludeOutcome,
}

/// What an include line led to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum IncludeOutcome {
    /// This file.
    Read(FileId),
    /// No such file.
    Missing,
    /// The path leads out of the root folder, by itself or through a link.
    Outside,
    /// The file includes itself in the end: the names on the way round.
    Cycle(Vec<String>),
    /// The file was read by an earlier include already.
    Again(FileId),
    /// It stands there but can't be read: why, in a person's words.
    Unreadable(String),
}

/// What the configuration file says.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Settings {
    /// Rules whose severity the project sets; `None` switches one off.
    pub severities: BTreeMap<String, Option<Severity>>,
}

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
    let findings = rules::findings_of(&house, &inputs.settings, is_cancelled).ok_or(Cancelled)?;
    Ok(Snapshot { inputs: Arc::clone(inputs), house, findings })
}

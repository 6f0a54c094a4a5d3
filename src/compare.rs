//! Two states of a spec: what somebody changed, and what follows from it, by who must act.
//!
//! Order, comments, files and spelling do not count; a thing with another name is the same thing. Every number of a
//! consequence is a fact of one of the two snapshots.

mod canonical;
mod fact_lines;
pub mod meaning;
mod pairing;
mod repeated;
mod stated;
mod strings;
mod table;
mod trade;
mod verdicts;
mod written;

use std::cmp::Reverse;
use std::collections::{BTreeSet, HashSet};

use crate::compare::pairing::Pair;
use crate::compare::table::Table;
use crate::diagnostic::Diagnostic;
use crate::facts::FactValue;
use crate::model::element::ElementId;
use crate::snapshot::Snapshot;
use crate::syntax::vocabulary::ElementKind;
use crate::text::Span;

pub use crate::rules::Standing;
pub use fact_lines::{FactLine, NothingDerived, Said, fact_lines, nothing_derived};
pub use stated::{Stated, StatedChange};
pub use table::FactKey;
pub use trade::Trade;

/// What changed between two states of a spec, and what follows from it.
#[derive(Clone, Debug)]
pub struct Change {
    /// The spec itself came or went.
    pub whole: Option<Whole>,
    /// What the new spec calls itself.
    pub title: String,
    /// What has another name now: the old label and the new.
    pub renamed: Vec<(String, String)>,
    /// What somebody wrote otherwise, in the order of the new spec.
    pub stated: Vec<StatedChange>,
    /// What follows, by trade: the trade with the gravest first. Every trade stands here.
    pub trades: Vec<TradeChange>,
    /// How many forces and ratios moved by less than a hundredth: they are not listed.
    pub n_slight: usize,
}

/// A spec that is in one of the two states only.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Whole {
    /// It is new: what is found in it follows, its lines are not told one by one.
    Came,
    /// It is gone.
    Went,
}

/// What follows for one trade.
#[derive(Clone, Debug)]
pub struct TradeChange {
    /// Who.
    pub trade: Trade,
    /// What, the gravest first.
    pub consequences: Vec<Consequence>,
    /// What of theirs is in both specs, and no fact or finding of it changed: kind and names.
    pub untouched: Vec<(ElementKind, Vec<String>)>,
}

/// One thing that is otherwise now, though nobody wrote so.
#[derive(Clone, Debug)]
pub struct Consequence {
    /// The element, as a person names it; empty for the text itself.
    pub element: String,
    /// What became of it.
    pub outcome: Outcome,
    /// The element is bought, or stands already.
    pub standing: Option<Standing>,
    /// What can still be done about it then.
    pub ways_out: Vec<String>,
    /// Of a fact that moved: others with the same numbers before and now, which are told here and nowhere else.
    pub also: Vec<FactKey>,
}

/// What became of something.
#[derive(Clone, Debug)]
pub enum Outcome {
    /// A rule speaks that did not.
    Fails(Box<Diagnostic>),
    /// A rule spoke and speaks, with other numbers: before and now.
    StillFails(Box<Diagnostic>, Box<Diagnostic>),
    /// A rule that spoke is silent: what it had said.
    Passes(Box<Diagnostic>),
    /// A waiver silences what a rule says, and it did not, or the rule said something else then.
    Waived(Box<Diagnostic>),
    /// A sheet shows what is so no more, though no rule can tell from the sheet alone: what it shows.
    Stale(String),
    /// A fact has another value; `None` where it has none.
    Moved(FactKey, Option<FactValue>, Option<FactValue>),
}

impl Change {
    /// Nothing that matters is otherwise.
    pub fn is_empty(&self) -> bool {
        self.whole.is_none()
            && self.renamed.is_empty()
            && self.stated.is_empty()
            && self.trades.iter().all(|trade| trade.consequences.is_empty())
    }
}

/// Compares two states of a spec.
pub fn compare(old: &Snapshot, new: &Snapshot) -> Change {
    let (old_elements, new_elements) = (written::elements_of(&old.house), written::elements_of(&new.house));
    let (pairs, renames) = pairing::pairs(&old_elements, &new_elements);
    let stated = stated::changes(old, new, &pairs, &renames);
    let before = table::table(&old.house, &old_elements, &renames);
    let after = table::table(&new.house, &new_elements, &meaning::Renames::default());

    let mut found = Vec::new();
    let n_slight = moved(new, &before, &after, &stated, &mut found);
    repeated::leave_out(&new.house, &mut found);
    repeated::fold(&mut found);
    verdicts::changed(Some(old), new, &renames, &mut found);
    repeated::leave_out_ways(&mut found);
    strings::stale(&old.house, &new.house, &renames, &mut found);

    Change {
        whole: None,
        title: title_of(new),
        renamed: renamed(&pairs, &renames),
        trades: by_trade(new, &pairs, &stated, found),
        stated,
        n_slight,
    }
}

/// A spec that was not there before: what is wrong with it.
pub fn came(new: &Snapshot) -> Change {
    let mut found = Vec::new();
    verdicts::changed(None, new, &meaning::Renames::default(), &mut found);
    of_whole(Whole::Came, new, found)
}

/// A spec that is not there any more: nothing follows from it.
pub fn went(old: &Snapshot) -> Change {
    of_whole(Whole::Went, old, Vec::new())
}

fn of_whole(whole: Whole, snapshot: &Snapshot, found: Vec<Found>) -> Change {
    Change {
        whole: Some(whole),
        title: title_of(snapshot),
        renamed: Vec::new(),
        trades: by_trade(snapshot, &[], &[], found),
        stated: Vec::new(),
        n_slight: 0,
    }
}

/// A consequence on its way to its trade.
struct Found {
    trade: Trade,
    of: Option<ElementId>,
    consequence: Consequence,
}

fn title_of(snapshot: &Snapshot) -> String {
    let project = snapshot.house.model.project.as_ref();
    project.and_then(|project| project.common.title.as_deref()).unwrap_or_default().to_owned()
}

fn renamed(pairs: &[Pair<'_, '_>], renames: &meaning::Renames) -> Vec<(String, String)> {
    let both = pairs.iter().filter_map(|pair| match pair {
        Pair::Both(old, new) => Some((old.common.label(), new.common.label())),
        Pair::Gone(_) | Pair::Come(_) => None,
    });
    // A title is no name: its change is a changed line.
    let is_named = |label: &str| !label.starts_with("project") && !label.starts_with("intent");
    let elements = both.filter(|(old, new)| old != new && is_named(old));
    let lines =
        renames.grid_lines.iter().map(|(old, new)| (format!("grid line {old}"), format!("grid line {new}")));
    // Of a map: in no order of its own.
    let lines: BTreeSet<(String, String)> = lines.collect();
    elements.chain(lines).collect()
}

/// The facts of both tables that differ, and of one only where its elements stand in both specs; how many differ by
/// less than matters.
fn moved(
    new: &Snapshot,
    before: &Table,
    after: &Table,
    stated: &[StatedChange],
    found: &mut Vec<Found>,
) -> usize {
    let mut n_slight = 0;
    let keys = after.keys().chain(before.keys().filter(|key| !after.contains_key(*key)));
    for key in keys {
        let (was, is) = (before.get(key), after.get(key));
        let of: Option<Vec<ElementId>> = key.of.iter().map(|name| new.house.model.named(name)).collect();
        let Some(&[element, ..]) = of.as_deref() else { continue };
        // What came or went is told as a whole, and a changed line is not told again as its own consequence.
        let is_told = key.of.iter().any(|name| stated.iter().any(|change| change.came_or_went(name)))
            || matches!(&*key.of, [name] if stated.iter().any(|change| change.tells(name, &key.words, is)));
        if is_told {
            continue;
        }
        match (was, is) {
            (Some(was), Some(is)) if was.to_string() == is.to_string() => continue,
            (Some(was), Some(is)) if is_slight(was, is) => {
                n_slight += 1;
                continue;
            }
            _ => {}
        }
        let common = new.house.model.common(element);
        let standing = common.and_then(Standing::of).filter(|_| !is_of_forces(&key.words));
        let ways_out = match (standing, was, is) {
            (Some(standing), Some(was), Some(is)) => standing.ways_out(element.kind, &key.words, was, is),
            _ => Vec::new(),
        };
        found.push(Found {
            trade: Trade::of_fact(&new.house, &key.words, element),
            of: Some(element),
            consequence: Consequence {
                element: common.map(|common| common.label()).unwrap_or_default(),
                outcome: Outcome::Moved(key.clone(), was.cloned(), is.cloned()),
                standing,
                ways_out,
                also: Vec::new(),
            },
        });
    }
    n_slight
}

fn is_of_forces(words: &str) -> bool {
    matches!(words, "load" | "reaction" | "pressure" | "utilisation")
}

/// A force or a ratio that moved by less than a hundredth: a beam's own weight runs down to every pad.
fn is_slight(was: &FactValue, is: &FactValue) -> bool {
    let (was, is) = match (was, is) {
        (FactValue::Force { whole: was, .. }, FactValue::Force { whole: is, .. }) => {
            (was.to_lb(), is.to_lb())
        }
        (FactValue::LineLoad(was), FactValue::LineLoad(is)) => (was.to_plf(), is.to_plf()),
        (FactValue::Pressure(was), FactValue::Pressure(is)) => (was.to_psf(), is.to_psf()),
        (FactValue::Number(was), FactValue::Number(is)) => (*was, *is),
        _ => return false,
    };
    (was - is).abs() < 0.01 * was.abs().max(is.abs())
}

fn by_trade(
    new: &Snapshot,
    pairs: &[Pair<'_, '_>],
    stated: &[StatedChange],
    found: Vec<Found>,
) -> Vec<TradeChange> {
    let mut touched: HashSet<ElementId> = found.iter().filter_map(|found| found.of).collect();
    touched.extend(stated.iter().filter_map(|change| change.of));
    let folded = found.iter().flat_map(|found| &found.consequence.also).flat_map(|key| &key.of);
    touched.extend(folded.filter_map(|name| new.house.model.named(name)));
    touched.extend(found.iter().flat_map(|found| concerned(new, &found.consequence.outcome)));
    let mut trades: Vec<TradeChange> = Trade::ALL
        .iter()
        .map(|trade| TradeChange { trade: *trade, consequences: Vec::new(), untouched: Vec::new() })
        .collect();
    for found in found {
        if let Some(entry) = trades.iter_mut().find(|entry| entry.trade == found.trade) {
            entry.consequences.push(found.consequence);
        }
    }
    for pair in pairs {
        let Pair::Both(_, written) = pair else { continue };
        let is_asked_for =
            !matches!(written.kind(), ElementKind::Project | ElementKind::Grid | ElementKind::Product);
        if touched.contains(&written.id()) || !is_asked_for {
            continue;
        }
        let trade = Trade::of_element(&new.house, written.id());
        if let Some(entry) = trades.iter_mut().find(|entry| entry.trade == trade) {
            let name = written.common.name.to_string();
            match entry.untouched.iter_mut().find(|(kind, _)| *kind == written.kind()) {
                Some((_, names)) => names.push(name),
                None => entry.untouched.push((written.kind(), vec![name])),
            }
        }
    }
    for entry in &mut trades {
        entry.consequences.sort_by_key(|consequence| Reverse(consequence.outcome.weight()));
    }
    trades.sort_by_key(|entry| {
        let gravest = entry.consequences.first().map(|consequence| consequence.outcome.weight().0);
        Reverse((gravest, entry.consequences.len()))
    });
    trades
}

/// The elements in which a finding of the new spec points somewhere.
fn concerned(new: &Snapshot, outcome: &Outcome) -> Vec<ElementId> {
    let (Outcome::Fails(finding) | Outcome::StillFails(_, finding) | Outcome::Waived(finding)) = outcome
    else {
        return Vec::new();
    };
    let places: Vec<Span> =
        finding.related.iter().map(|related| related.span).chain([finding.span]).collect();
    let is_in = |place: &Span, whole: Span| {
        place.file == whole.file && whole.start <= place.start && place.start < whole.end
    };
    let commons = new.house.model.commons();
    commons
        .filter(|common| places.iter().any(|place| is_in(place, common.span)))
        .map(|common| common.id)
        .collect()
}

impl Outcome {
    /// How much it matters: first what it is, then how far it moved.
    fn weight(&self) -> (u8, i64) {
        match self {
            Self::Fails(finding) => (verdicts::weight_of(finding), 0),
            Self::StillFails(..) => (2, 0),
            Self::Passes(_) => (1, 0),
            Self::Waived(_) => (4, 0),
            Self::Stale(_) => (5, 0),
            Self::Moved(_, was, is) => (0, how_far(was.as_ref(), is.as_ref())),
        }
    }
}

/// How far a length moved, how full a member is now; what came to have a value, or lost it, counts most, then a ratio that
/// passed 1; other kinds of values least, what presses on soil before other forces.
fn how_far(was: Option<&FactValue>, is: Option<&FactValue>) -> i64 {
    match (was, is) {
        (Some(FactValue::Number(was)), Some(FactValue::Number(is))) if (*was > 1.0) != (*is > 1.0) => {
            i64::MAX - 1
        }
        (Some(FactValue::Number(_)), Some(FactValue::Number(is))) => 2 + (is * 1e6) as i64,
        (Some(FactValue::Pressure(_)), Some(FactValue::Pressure(_))) => 1,
        (Some(was), Some(is)) => match (was.as_length(), is.as_length()) {
            (Some(was), Some(is)) => (is - was).abs().to_units(),
            _ => 0,
        },
        _ => i64::MAX,
    }
}

//! Which element of the old spec is which of the new, and what has another name now.

use std::collections::{HashMap, HashSet};

use crate::compare::meaning::{Renames, Side, meaning};
use crate::compare::written::Written;
use crate::model::plan::Axis;
use crate::syntax::Fact;
use crate::syntax::value::Value;
use crate::syntax::vocabulary::{ElementKind, Naming, spec_of};

/// An element of either spec, or of both.
#[derive(Clone, Copy, Debug)]
pub enum Pair<'o, 'n> {
    /// In both.
    Both(&'o Written<'o>, &'n Written<'n>),
    /// Only in the old one.
    Gone(&'o Written<'o>),
    /// Only in the new one.
    Come(&'n Written<'n>),
}

/// Pairs the elements of two specs: those of the new in their order, then what is gone.
pub fn pairs<'o, 'n>(old: &'o [Written<'o>], new: &'n [Written<'n>]) -> (Vec<Pair<'o, 'n>>, Renames) {
    let mut renames = Renames { grid_lines: renamed_grid_lines(old, new), ..Renames::default() };
    let mut partner: Vec<Option<usize>> = by_name(old, new);
    rename(old, new, &mut partner, &mut renames);
    let met: HashSet<usize> = partner.iter().flatten().copied().collect();
    let mut pairs: Vec<Pair<'o, 'n>> = new
        .iter()
        .zip(&partner)
        .map(|(new, partner)| match partner.and_then(|at| old.get(at)) {
            Some(old) => Pair::Both(old, new),
            None => Pair::Come(new),
        })
        .collect();
    pairs.extend(old.iter().enumerate().filter(|(at, _)| !met.contains(at)).map(|(_, old)| Pair::Gone(old)));
    (pairs, renames)
}

/// For each new element the old one of the same kind and name, or of the same title where the kind has no names; of
/// several the first that is left.
fn by_name(old: &[Written<'_>], new: &[Written<'_>]) -> Vec<Option<usize>> {
    let mut places: HashMap<(ElementKind, &str), Vec<usize>> = HashMap::new();
    for (at, written) in old.iter().enumerate().rev() {
        places.entry(key(written)).or_default().push(at);
    }
    new.iter().map(|written| places.get_mut(&key(written)).and_then(Vec::pop)).collect()
}

fn key<'w>(written: &'w Written<'_>) -> (ElementKind, &'w str) {
    match written.kind() {
        // A spec has one of each.
        kind @ (ElementKind::Project | ElementKind::Grid) => (kind, ""),
        kind => (kind, &written.common.name),
    }
}

/// Pairs what is left: the same kind, and lines that say the same. Round by round, since what is renamed in one round
/// lets more lines agree in the next.
fn rename(old: &[Written<'_>], new: &[Written<'_>], partner: &mut [Option<usize>], renames: &mut Renames) {
    loop {
        let taken: HashSet<usize> = partner.iter().flatten().copied().collect();
        let gone: Vec<usize> = (0..old.len()).filter(|at| !taken.contains(at)).collect();
        let Some((at, match_at)) = best(old, new, &gone, partner, renames) else { return };
        let (Some(was), Some(is)) = (old.get(match_at), new.get(at)) else { return };
        if spec_of(is.kind()).naming == Naming::Name {
            renames.elements.insert(was.common.name.clone(), is.common.name.clone());
        }
        if let Some(slot) = partner.get_mut(at) {
            *slot = Some(match_at);
        }
    }
}

/// The new element and the old one that agree best among those without a partner, when more than half of the lines of
/// both agree and no other old one agrees as well.
fn best(
    old: &[Written<'_>],
    new: &[Written<'_>],
    gone: &[usize],
    partner: &[Option<usize>],
    renames: &Renames,
) -> Option<(usize, usize)> {
    let mut best: Option<(f64, usize, usize)> = None;
    let come = new.iter().enumerate().filter(|(at, _)| partner.get(*at).is_some_and(Option::is_none));
    for (at, is) in come {
        let agreeing = gone.iter().filter_map(|&old_at| {
            let was = old.get(old_at).filter(|was| was.kind() == is.kind())?;
            Some((agreement(was, is, renames), old_at))
        });
        let mut agreeing: Vec<(f64, usize)> = agreeing.filter(|(share, _)| *share > HALF).collect();
        agreeing.sort_by(|(a, _), (b, _)| b.total_cmp(a));
        let is_clear = match agreeing.as_slice() {
            [(first, _), (second, _), ..] => first > second,
            [_] => true,
            [] => false,
        };
        let found = agreeing.first().filter(|_| is_clear).map(|(share, old_at)| (*share, at, *old_at));
        if let Some(found) = found
            && best.is_none_or(|(share, ..)| found.0 > share)
        {
            best = Some(found);
        }
    }
    best.map(|(_, at, old_at)| (at, old_at))
}

const HALF: f64 = 0.5;

/// The share of lines that agree, a title counted as a line; of elements without lines none.
fn agreement(was: &Written<'_>, is: &Written<'_>, renames: &Renames) -> f64 {
    let meanings = |written: &Written<'_>, side: Side| -> Vec<String> {
        let lines = written.lines.iter().map(|line| meaning(written.kind(), line.fact, side, renames));
        lines.chain(written.common.title.iter().map(|title| format!("title {title}"))).collect()
    };
    let (before, mut after) = (meanings(was, Side::Old), meanings(is, Side::New));
    let most = before.len().max(after.len());
    let agreeing = before.iter().filter(|line| match after.iter().position(|other| other == *line) {
        Some(at) => {
            after.swap_remove(at);
            true
        }
        None => false,
    });
    agreeing.count() as f64 / most.max(1) as f64
}

/// Grid lines that stand where a line of another name stood: that name is gone and this one is new.
fn renamed_grid_lines(old: &[Written<'_>], new: &[Written<'_>]) -> HashMap<Box<str>, Box<str>> {
    let (old, new) = (grid_lines(old), grid_lines(new));
    let is_in = |lines: &[GridLine], name: &str| lines.iter().any(|line| line.name == name);
    old.iter()
        .filter(|was| !is_in(&new, was.name))
        .filter_map(|was| {
            let same =
                |line: &&GridLine| line.axis == was.axis && line.at == was.at && !is_in(&old, line.name);
            Some((was.name.into(), new.iter().find(same)?.name.into()))
        })
        .collect()
}

/// A grid line as written.
struct GridLine<'w> {
    axis: Axis,
    name: &'w str,
    at: i64,
}

fn grid_lines<'w>(written: &'w [Written<'_>]) -> Vec<GridLine<'w>> {
    let grids = written.iter().filter(|written| written.kind() == ElementKind::Grid);
    grids.flat_map(|grid| &grid.lines).flat_map(|line| lines_of(line.fact)).collect()
}

fn lines_of(fact: &Fact) -> Vec<GridLine<'_>> {
    let axis = match fact.spec.phrase {
        "x" => Axis::X,
        "y" => Axis::Y,
        _ => return Vec::new(),
    };
    let pairs = fact.parts.chunks_exact(2).filter_map(|pair| match pair {
        [name, at] => match (&name.value, &at.value) {
            (Value::Name(name), Value::Length(at)) => Some(GridLine { axis, name, at: at.to_units() }),
            _ => None,
        },
        _ => None,
    });
    pairs.collect()
}

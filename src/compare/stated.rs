//! What somebody wrote otherwise.

use std::collections::HashMap;

use crate::compare::meaning::{Renames, Side, meaning};
use crate::compare::pairing::Pair;
use crate::compare::written::{Written, WrittenLine, plain};
use crate::facts::FactValue;
use crate::house::House;
use crate::model::element::ElementId;
use crate::rules::Standing;
use crate::snapshot::Snapshot;
use crate::syntax::Fact;
use crate::syntax::value::Value;
use crate::syntax::vocabulary::CLAIM;
use crate::text::Span;
use crate::units::Length;

/// One thing that somebody wrote otherwise.
#[derive(Clone, Debug)]
pub struct StatedChange {
    /// The element, as a person names it now; of what is gone, as it was named.
    pub element: String,
    /// Its name alone.
    name: String,
    /// The element of the new spec; `None` for what is gone.
    pub of: Option<ElementId>,
    /// What was written.
    pub what: Stated,
    /// Where: in the new spec, or in the old one for what is gone from it.
    pub place: Span,
    /// The element is bought, or stands already.
    pub standing: Option<Standing>,
    /// The lengths that the line states now.
    lengths: Vec<Length>,
}

/// What was written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Stated {
    /// A new element: its lines.
    Came(Vec<String>),
    /// An element less: the lines it had.
    Went(Vec<String>),
    /// A title: before and now.
    Title(String, String),
    /// A line: its phrase, what stood behind it and what stands there now; `None` for no such line.
    Line(String, Option<String>, Option<String>),
    /// A line that can't be read: before and now.
    Unread(Option<String>, Option<String>),
}

impl StatedChange {
    /// The element of this name came or went.
    pub fn came_or_went(&self, name: &str) -> bool {
        matches!(self.what, Stated::Came(_) | Stated::Went(_)) && self.name == name
    }

    /// The line states this fact of the element of this name. A length that it does not state follows from it: a floor's
    /// `finish` line states what lies on the deck, and the fact is how high that comes.
    pub fn tells(&self, name: &str, words: &str, is: Option<&FactValue>) -> bool {
        match &self.what {
            Stated::Line(phrase, _, Some(_)) => {
                let length = is.and_then(FactValue::as_length);
                self.name == name
                    && phrase == words
                    && length.is_none_or(|length| self.lengths.contains(&length))
            }
            Stated::Line(_, _, None)
            | Stated::Came(_)
            | Stated::Went(_)
            | Stated::Title(..)
            | Stated::Unread(..) => false,
        }
    }
}

/// Every such change, in the order of the pairs.
pub fn changes(
    old: &Snapshot,
    new: &Snapshot,
    pairs: &[Pair<'_, '_>],
    renames: &Renames,
) -> Vec<StatedChange> {
    pairs.iter().flat_map(|pair| of_pair(&old.house, &new.house, pair, renames)).collect()
}

fn of_pair(old: &House, new: &House, pair: &Pair<'_, '_>, renames: &Renames) -> Vec<StatedChange> {
    let whole = |written: &Written<'_>, of: Option<ElementId>, what: Stated| StatedChange {
        element: written.common.label(),
        name: written.common.name.to_string(),
        of,
        what,
        place: written.common.name_span,
        standing: Standing::of(written.common),
        lengths: Vec::new(),
    };
    match pair {
        Pair::Come(is) => vec![whole(is, Some(is.id()), Stated::Came(lines_of(new, is)))],
        Pair::Gone(was) => vec![whole(was, None, Stated::Went(lines_of(old, was)))],
        Pair::Both(was, is) => {
            let mut changes = Vec::new();
            let title =
                |written: &Written<'_>| written.common.title.as_deref().unwrap_or_default().to_owned();
            if renames.text(&title(was)) != renames.text(&title(is)) {
                changes.push(whole(is, Some(is.id()), Stated::Title(title(was), title(is))));
            }
            // What it was when the line was written otherwise counts too: a poured wall may not become a drawn one unseen.
            let standing = Standing::of(is.common).or_else(|| Standing::of(was.common));
            let change = |what: Stated, place: Span| StatedChange {
                what,
                place,
                standing,
                ..whole(is, Some(is.id()), Stated::Came(Vec::new()))
            };
            for (phrase, before, after) in changed_lines(was, is, renames) {
                let said = |house: &House, line: Option<WrittenLine<'_>>| {
                    line.map(|line| behind_phrase(house, &line))
                };
                let place = after.map_or(is.common.name_span, |line| line.span);
                let lengths = after.map(|line| lengths_of(line.fact)).unwrap_or_default();
                // The line itself says how far it has come.
                let standing = standing.filter(|_| phrase != "status");
                let what = Stated::Line(phrase, said(old, before), said(new, after));
                changes.push(StatedChange { standing, lengths, ..change(what, place) });
            }
            for (before, after) in changed_texts(&was.unread, &is.unread) {
                changes.push(change(Stated::Unread(before, after), is.common.name_span));
            }
            changes
        }
    }
}

/// The lines that say something else, by phrase, in the order of the new element: what said the same is gone from
/// both, the rest is paired in order.
fn changed_lines<'o, 'n>(
    was: &Written<'o>,
    is: &Written<'n>,
    renames: &Renames,
) -> Vec<(String, Option<WrittenLine<'o>>, Option<WrittenLine<'n>>)> {
    let mut before: Vec<Option<WrittenLine<'o>>> = was.lines.iter().copied().map(Some).collect();
    let mut meanings: HashMap<String, Vec<usize>> = HashMap::new();
    for (at, line) in was.lines.iter().enumerate().rev() {
        meanings.entry(meaning(was.kind(), line.fact, Side::Old, renames)).or_default().push(at);
    }
    let mut left = Vec::new();
    for line in &is.lines {
        match meanings.get_mut(&meaning(is.kind(), line.fact, Side::New, renames)).and_then(Vec::pop) {
            Some(at) => before.get_mut(at).into_iter().for_each(|slot| *slot = None),
            None => left.push(*line),
        }
    }
    let mut changed = Vec::new();
    for line in left {
        let same = |slot: &&mut Option<WrittenLine<'o>>| {
            slot.is_some_and(|old| said_of(old.fact) == said_of(line.fact))
        };
        let old = before.iter_mut().find(same).and_then(Option::take);
        changed.push((said_of(line.fact), old, Some(line)));
    }
    changed.extend(before.into_iter().flatten().map(|line| (said_of(line.fact), Some(line), None)));
    changed
}

/// Its lines, with single blanks: those that can be read, then the others.
fn lines_of(house: &House, written: &Written<'_>) -> Vec<String> {
    let read = written.lines.iter().map(|line| plain(house.text_at(line.span)));
    read.chain(written.unread.iter().cloned()).collect()
}

/// What a line is about: its phrase; of a claim the fact it claims.
pub(super) fn said_of(fact: &Fact) -> String {
    let claimed = fact.part("fact").filter(|_| std::ptr::eq(fact.spec, &CLAIM));
    match claimed.map(|part| &part.value) {
        Some(Value::FactName(fact)) => format!("{} should be", fact.fact),
        _ => fact.spec.phrase.to_owned(),
    }
}

/// The lengths that a line states.
pub(super) fn lengths_of(fact: &Fact) -> Vec<Length> {
    let lengths = fact.parts.iter().filter_map(|part| match part.value {
        Value::Length(length) => Some(length),
        _ => None,
    });
    lengths.collect()
}

/// What stands behind the phrase, with single blanks.
fn behind_phrase(house: &House, line: &WrittenLine<'_>) -> String {
    let whole = plain(house.text_at(line.span));
    let phrase = said_of(line.fact);
    whole.strip_prefix(&phrase).map_or(whole.clone(), |rest| rest.trim_start().to_owned())
}

/// The texts that stand on one side only, paired in order.
fn changed_texts(was: &[String], is: &[String]) -> Vec<(Option<String>, Option<String>)> {
    let mut before = was.to_vec();
    let mut after = Vec::new();
    for text in is {
        match before.iter().position(|other| other == text) {
            Some(at) => _ = before.remove(at),
            None => after.push(text.clone()),
        }
    }
    let n = before.len().max(after.len());
    let (mut before, mut after) = (before.into_iter(), after.into_iter());
    (0..n).map(|_| (before.next(), after.next())).collect()
}

//! One file as one line for each fact, in an order and a spelling that its text does not decide: what a tool that
//! compares lines finds otherwise is said otherwise.

use std::collections::HashMap;

use crate::compare::canonical;
use crate::compare::meaning::Renames;
use crate::compare::stated::{lengths_of, said_of};
use crate::compare::table::{FactKey, table};
use crate::compare::written::{elements_of, plain};
use crate::facts::FactValue;
use crate::house::House;
use crate::syntax::vocabulary::{ElementKind, FACT_NAMES, Naming, spec_of};
use crate::syntax::{Chunk, Fact, Heading, LineKind, Opening};
use crate::units::Length;

/// A line: the element and what is said of it.
#[derive(Clone, Debug, PartialEq)]
pub struct FactLine {
    /// The element, as a person names it; empty for a line that stands in none.
    pub element: String,
    /// What is said of it.
    pub said: Said,
}

/// What is said of an element.
#[derive(Clone, Debug, PartialEq)]
pub enum Said {
    /// It is there; its title, or the path of an include.
    There(Option<String>),
    /// A fact of the text: its phrase and what stands behind it.
    Stated(String, String),
    /// A line of the text that could not be read; nothing where it is the element's own.
    NotRead(String),
    /// A fact that follows.
    Derived(FactKey, FactValue),
}

/// Why only what the text states is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NothingDerived {
    /// It has include lines, and what they lead to is not here.
    Includes,
    /// It opens no project: what it is a part of is not here.
    Part,
}

/// Why nothing may follow from the only file of a house.
pub fn nothing_derived(house: &House) -> Option<NothingDerived> {
    let openings = || house.trees.iter().flat_map(|tree| &tree.chunks).map(|chunk| &chunk.body.opening);
    if openings().any(|opening| matches!(opening, Opening::Include(_))) {
        return Some(NothingDerived::Includes);
    }
    let is_project = |opening: &Opening| matches!(opening, Opening::Element(heading) if heading.kind == ElementKind::Project);
    (!openings().any(is_project)).then_some(NothingDerived::Part)
}

/// Every line of the only file of a house, and what follows from it, each behind what its element states, but for a
/// number that the element states itself.
pub fn fact_lines(house: &House) -> Vec<FactLine> {
    let text = house.inputs.sources.first().map_or("", |source| &source.text);
    let chunks = house.trees.first().map(|tree| tree.chunks.as_slice()).unwrap_or_default();
    let mut groups: Vec<Group> = chunks.iter().map(|chunk| Group::of(chunk, text)).collect();
    groups.sort_by(|a, b| a.order().cmp(&b.order()));
    let mut derived = if nothing_derived(house).is_none() { derived(house) } else { HashMap::new() };
    let mut lines = Vec::new();
    for group in groups {
        let mut follows = derived.remove(&group.element).unwrap_or_default();
        follows.retain(|(key, value)| !group.states(key, value));
        let stated = group.lines.into_iter().map(|line| line.said);
        let follows = follows.into_iter().map(|(key, value)| Said::Derived(key, value));
        lines.extend(stated.chain(follows).map(|said| FactLine { element: group.element.clone(), said }));
    }
    lines
}

/// What follows, by the label of the element that it is first about, in the order of the table of facts.
fn derived(house: &House) -> HashMap<String, Vec<(FactKey, FactValue)>> {
    let mut facts: Vec<(FactKey, FactValue)> =
        table(house, &elements_of(house), &Renames::default()).into_iter().collect();
    let place = |key: &FactKey| FACT_NAMES.iter().position(|spec| *spec.words == *key.words);
    facts.sort_by(|(a, _), (b, _)| (place(a), &a.of, &a.case).cmp(&(place(b), &b.of, &b.case)));
    let mut derived: HashMap<String, Vec<(FactKey, FactValue)>> = HashMap::new();
    for (key, value) in facts {
        let first = key.of.first().and_then(|name| house.model.named(name));
        let Some(common) = first.and_then(|id| house.model.common(id)) else { continue };
        derived.entry(common.label()).or_default().push((key, value));
    }
    derived
}

/// A stretch of the text that is read alone: an element, an include, or what opens neither.
struct Group {
    rank: Rank,
    element: String,
    lines: Vec<Line>,
}

/// What stands first.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Rank {
    Include,
    Element(ElementKind),
    NotRead,
}

/// A line, and where it comes among those of its element.
struct Line {
    place: usize,
    said: Said,
    /// The lengths that it states.
    lengths: Vec<Length>,
}

impl Group {
    fn of(chunk: &Chunk, text: &str) -> Self {
        let body = &*chunk.body;
        let start = chunk.start as usize;
        let text = text.get(start..start + body.length as usize).unwrap_or("");
        let words = |start: u32, end: u32| plain(text.get(start as usize..end as usize).unwrap_or(""));
        let mut group = Self { rank: Rank::NotRead, element: String::new(), lines: Vec::new() };
        for line in &body.lines {
            let written =
                || words(line.span.start, line.comment.map_or(line.span.end, |comment| comment.start));
            match (line.kind, &body.opening) {
                (LineKind::Blank | LineKind::Comment, _) => {}
                (LineKind::Opening, Opening::Element(heading)) => {
                    group.rank = Rank::Element(heading.kind);
                    group.element = label(heading);
                    let title = heading.title.as_ref().filter(|_| !is_known_by_title(heading.kind));
                    group.add(0, Said::There(title.map(|(title, _)| title.to_string())));
                    if body.problems.iter().any(|problem| problem.span.start < line.span.end) {
                        group.add(LAST, Said::NotRead(written()));
                    }
                }
                (LineKind::Opening, Opening::Include(Some((path, _)))) => {
                    group.rank = Rank::Include;
                    group.element = "include".to_owned();
                    group.add(0, Said::There(Some(path.to_string())));
                }
                (LineKind::Opening, _) => {
                    group.element = written();
                    group.add(0, Said::NotRead(String::new()));
                }
                (LineKind::Fact(index), Opening::Element(heading)) => {
                    if let Some(fact) = body.facts.get(index) {
                        group.lines.push(Line::of(heading.kind, fact, text));
                    }
                }
                (LineKind::Fact(_) | LineKind::Broken, _) => group.add(LAST, Said::NotRead(written())),
            }
        }
        group.lines.sort_by(|a, b| (a.place, a.said.words()).cmp(&(b.place, b.said.words())));
        group
    }

    fn add(&mut self, place: usize, said: Said) {
        self.lines.push(Line { place, said, lengths: Vec::new() });
    }

    /// By kind, then by name, `B2` before `B10`; of two with one name by what they say.
    fn order(&self) -> (Rank, &str, u64, Vec<(&str, &str)>) {
        let letters = self.element.trim_end_matches(|last: char| last.is_ascii_digit());
        let number = self.element.get(letters.len()..).and_then(|figures| figures.parse().ok());
        let said = self.lines.iter().map(|line| line.said.words()).collect();
        (self.rank, letters, number.unwrap_or(0), said)
    }

    /// A line of it states this number.
    fn states(&self, key: &FactKey, value: &FactValue) -> bool {
        let is_it = |line: &Line| {
            line.said.words().0 == &*key.words
                && value.as_length().is_none_or(|length| line.lengths.contains(&length))
        };
        key.of.len() == 1 && self.lines.iter().any(is_it)
    }
}

/// The place of what stands behind all facts.
const LAST: usize = usize::MAX;

impl Line {
    fn of(kind: ElementKind, fact: &Fact, text: &str) -> Self {
        let whole = canonical::line(kind, fact, text);
        let phrase = said_of(fact);
        let behind = whole.strip_prefix(&phrase).map_or(whole.clone(), |rest| rest.trim_start().to_owned());
        // A claim has a spec of its own and stands behind what the element is made of.
        let place = spec_of(kind).all_facts().position(|spec| std::ptr::eq(spec, fact.spec));
        let place = place.map_or(LAST - 1, |place| place + 1);
        Self { place, said: Said::Stated(phrase, behind), lengths: lengths_of(fact) }
    }
}

impl Said {
    /// What lines are put in order by.
    fn words(&self) -> (&str, &str) {
        match self {
            Self::There(title) => ("", title.as_deref().unwrap_or_default()),
            Self::Stated(phrase, behind) => (phrase, behind),
            Self::NotRead(written) => (written, ""),
            Self::Derived(key, _) => (&key.words, ""),
        }
    }
}

/// The element by its kind and name: a title can change without making it another thing, unless it is all that tells
/// one from the next.
fn label(heading: &Heading) -> String {
    let word = heading.kind.word();
    match (&heading.name, &heading.title) {
        (Some((name, _)), _) => format!("{word} {name}"),
        (None, Some((title, _))) if is_known_by_title(heading.kind) => format!("{word} \"{title}\""),
        (None, _) => word.to_owned(),
    }
}

fn is_known_by_title(kind: ElementKind) -> bool {
    spec_of(kind).naming == Naming::Title && kind != ElementKind::Project
}

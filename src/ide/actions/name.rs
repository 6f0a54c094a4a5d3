//! What a spec names or needs and does not have yet.

use crate::diagnostic::Edit;
use crate::house::{House, lines};
use crate::ide::actions::{Action, ActionKind, Mended};
use crate::ide::meaning::element_at;
use crate::model::element::Common;
use crate::model::problem::{ModelProblem, ModelProblemKind};
use crate::snapshot::Snapshot;
use crate::syntax;
use crate::syntax::form::{Form, Kind};
use crate::syntax::vocabulary::{ElementKind, Naming, Presence, spec_of};
use crate::syntax::{LineKind, Opening};
use crate::text::Span;

/// Of more kinds than this none is offered, unless the name tells which it is.
const MOST_KINDS: usize = 3;

/// A closed list of more words than this is no choice to offer.
const MOST_WORDS: usize = 4;

/// An element for each name that nothing has: behind the one that uses the name, with the facts it needs in a comment. Their
/// values are the author's: none is made up.
pub fn new_elements(snapshot: &Snapshot, place: Span) -> Vec<Action> {
    let house = &snapshot.house;
    let mut all = Vec::new();
    for problem in problems_at(house, place) {
        let ModelProblemKind::UnknownName(kinds, _) = &problem.kind else { continue };
        let name = house.text_at(problem.span);
        let user = element_at(house, place.file, problem.span.start).and_then(|id| house.model.common(id));
        let Some(user) = user else { continue };
        for kind in likely_kinds(house, name, kinds) {
            let spec = spec_of(kind);
            let needed = spec.facts.iter().filter(|fact| fact.presence == Presence::Required);
            let needed: Vec<&str> = needed.map(|fact| fact.phrase).collect();
            let text = format!("{} {name}\n  -- still to say: {}\n", spec.keyword, needed.join(", "));
            let Some(edit) = behind_element(house, user, &text) else { continue };
            let title = format!("make {} {name}", spec.keyword);
            let mends = vec![Mended { rule: "unknown-name", span: problem.span }];
            all.push(Action { mends, ..Action::new(title, ActionKind::QuickFix, vec![edit]) });
        }
    }
    all
}

/// A fact that an element lacks and that is one of a few words: each of them.
pub fn missing_words(snapshot: &Snapshot, place: Span) -> Vec<Action> {
    let house = &snapshot.house;
    let mut all = Vec::new();
    for problem in problems_at(house, place) {
        let (ModelProblemKind::FactMissing(phrase), Some(id)) = (&problem.kind, problem.subject) else {
            continue;
        };
        let fact = spec_of(id.kind).all_facts().find(|fact| fact.phrase == *phrase);
        let Some(Form::Slot(_, Kind::Word(words))) = fact.map(|fact| fact.form) else { continue };
        let Some(common) = house.model.common(id).filter(|_| words.len() <= MOST_WORDS) else { continue };
        for word in words {
            let line = format!("{phrase} {word}");
            let Some(edit) = lines::added(house, common, &line) else { continue };
            let mends = vec![Mended { rule: "fact-missing", span: problem.span }];
            let action = Action::new(format!("add `{line}`"), ActionKind::QuickFix, vec![edit]);
            all.push(Action { mends, ..action });
        }
    }
    all
}

/// A further element behind one, with a blank line between.
pub fn behind_element(house: &House, common: &Common, text: &str) -> Option<Edit> {
    let file = common.span.file;
    let chunk = house.trees.get(file.0 as usize)?.chunk_at(common.span.start)?;
    let Opening::Element(_) = &chunk.body.opening else { return None };
    // Comments at its end may belong to the element that comes next.
    let is_said = |kind: LineKind| matches!(kind, LineKind::Opening | LineKind::Fact(_) | LineKind::Broken);
    let last = chunk.body.lines.iter().rfind(|line| is_said(line.kind))?;
    let behind = house.line_of(last.span.within(file, chunk.start)).end;
    let end = lines::line_end(house, common.span);
    let element = syntax::format(text).trim_end().replace('\n', end);
    let rest = house.text_at(Span::new(file, behind, chunk.start + chunk.body.length));
    let next = rest.trim_start_matches(' ').strip_prefix(end).unwrap_or(rest);
    let blank = if next.is_empty() || next.starts_with(['\r', '\n']) { "" } else { end };
    Some(Edit { span: Span::new(file, behind, behind), text: format!("{end}{end}{element}{blank}") })
}

fn problems_at(house: &House, place: Span) -> impl Iterator<Item = &ModelProblem> {
    let problems = &house.model.problems;
    let near =
        problems.partition_point(|problem| (problem.span.file, problem.span.end) < (place.file, place.start));
    let here = problems.get(near..).unwrap_or_default().iter();
    here.take_while(move |problem| problem.span.file == place.file && problem.span.start <= place.end)
}

/// The kinds that a name can mean; of many those whose names begin with the same letters.
fn likely_kinds(house: &House, name: &str, kinds: &[ElementKind]) -> Vec<ElementKind> {
    let named = kinds.iter().copied().filter(|kind| spec_of(*kind).naming == Naming::Name);
    let fitting: Vec<ElementKind> = named.collect();
    let letters =
        |name: &str| -> String { name.chars().take_while(|letter| letter.is_alphabetic()).collect() };
    let is_alike = |kind: &ElementKind| {
        house.model.commons().any(|common| common.id.kind == *kind && letters(&common.name) == letters(name))
    };
    let alike: Vec<ElementKind> = fitting.iter().copied().filter(is_alike).collect();
    match (alike.is_empty(), fitting.len() <= MOST_KINDS) {
        (false, _) => alike,
        (true, true) => fitting,
        (true, false) => Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use crate::ide::actions::tests::{check, titles};

    #[test]
    fn an_element_of_the_name_with_what_it_needs() {
        let text = "project\ncolumn C1\n  stands on     F$02\n-- the pads\nfooting F1\n";
        let after = check(text, "make footing F2");
        assert_eq!(
            after,
            "project\ncolumn C1\n  stands on     F2\n\nfooting F2\n  -- still to say: size, top\n\n-- the pads\nfooting F1\n"
        );
    }

    #[test]
    fn a_name_that_could_be_anything_makes_nothing() {
        let titles = titles("project\nbeam B1\n  bears on      X$09\n");
        assert!(titles.iter().all(|title| !title.starts_with("make")), "{titles:?}");
    }

    #[test]
    fn a_missing_word_is_one_of_its_list() {
        let text = "project\nwall $0W1\n  from          A/1 to B/1\n";
        assert_eq!(
            check(text, "add `kind pony`"),
            "project\nwall W1\n  kind          pony\n  from          A/1 to B/1\n"
        );
    }
}

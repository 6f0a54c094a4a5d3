//! Names, grid lines and values that the house can make nothing of. Nothing here can be waived.

pub mod decided_twice;
pub mod fact_missing;
pub mod grid_line_misused;
pub mod grid_not_ascending;
pub mod limit_of_other_kind;
pub mod name_of_other_kind;
pub mod name_reused;
pub mod not_positive;
pub mod project_missing;
pub mod refers_to_itself;
pub mod second_of_its_kind;
pub mod size_unknown;
pub mod unknown_grid_line;
pub mod unknown_name;
pub mod unknown_word;
pub mod value_of_other_kind;
pub mod without_extent;

use std::collections::{HashMap, HashSet};

use crate::house::House;
use crate::model::problem::{ModelProblem, ModelProblemKind};
use crate::rules::{Finding, Findings, MOST_TOLD};
use crate::text::{FileId, Span};

/// The problems of the model that are told one by one: the first of each file.
fn told(house: &House) -> Vec<&ModelProblem> {
    let mut counts: HashMap<FileId, usize> = HashMap::new();
    let mut told = distinct(house);
    told.retain(|problem| {
        let count = counts.entry(problem.span.file).or_default();
        *count += 1;
        *count <= MOST_TOLD
    });
    told
}

/// The problems of the model that make a finding of their own: of one reused name the first, and of the facts that one
/// element lacks the first.
pub(in crate::rules) fn distinct(house: &House) -> Vec<&ModelProblem> {
    let (mut reused, mut lacking) = (HashSet::new(), HashSet::new());
    let problems = house.model.problems.iter();
    problems
        .filter(|problem| match &problem.kind {
            ModelProblemKind::NameReused(name, _) => reused.insert(name),
            ModelProblemKind::FactMissing(_) => lacking.insert(problem.subject),
            _ => true,
        })
        .collect()
}

/// Reports what can't be waived, with the element it is about, so that what follows from it comes under it.
fn report<'f>(
    findings: &'f mut Findings<'_>,
    problem: &ModelProblem,
    message: impl Into<String>,
) -> &'f mut Finding {
    let finding = findings.in_text(problem.span, message);
    finding.subject = problem.subject;
    finding
}

/// Problems about the same word, by its text, in the order of the text: one slip made in one name shows at every use.
fn by_word(house: &House, wanted: impl Fn(&ModelProblemKind) -> bool) -> Vec<(&str, Vec<&ModelProblem>)> {
    let mut words: Vec<(&str, Vec<&ModelProblem>)> = Vec::new();
    let mut places: HashMap<&str, usize> = HashMap::new();
    for problem in told(house).into_iter().filter(|problem| wanted(&problem.kind)) {
        let word = house.text_at(problem.span);
        let at = *places.entry(word).or_insert(words.len());
        match words.get_mut(at) {
            Some((_, problems)) => problems.push(problem),
            None => words.push((word, vec![problem])),
        }
    }
    words
}

/// Adds the further places of one slip, and the edit that mends all of them when the word that was meant is known.
fn at_every_place(finding: &mut Finding, others: &[&ModelProblem], meant: Option<&str>) {
    const MOST_PLACES: usize = 8;
    for problem in others.iter().take(MOST_PLACES) {
        finding.related(problem.span, "here too");
    }
    if others.len() > MOST_PLACES {
        finding.note(format!("and in {} more places", others.len() - MOST_PLACES));
    }
    let Some(meant) = meant else { return };
    let first = finding.diagnostic.span;
    finding.meant(first, meant);
    if let Some(fix) = &mut finding.diagnostic.fix {
        let edit = |span: Span| crate::diagnostic::Edit { span, text: meant.to_owned() };
        fix.edits.extend(others.iter().map(|problem| edit(problem.span)));
    }
}

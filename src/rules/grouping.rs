//! One mistake, one root finding: what follows from another finding is listed under it.

use std::collections::HashMap;

use crate::diagnostic::Diagnostic;
use crate::model::element::ElementId;
use crate::rules::Finding;

/// Roots by file, place and rule, each with what follows from it.
///
/// A finding goes under the first finding whose subject it follows from. Findings that follow from the same element,
/// or question the same surface, without that element having a finding of its own, fold under the gravest of them.
pub fn grouped(mut findings: Vec<Finding>) -> Vec<Diagnostic> {
    findings.sort_by(|a, b| {
        let key = |finding: &Finding| (finding.diagnostic.span, finding.diagnostic.rule);
        key(a).cmp(&key(b))
    });
    let parents = parents_of(&findings);
    let mut children: HashMap<usize, Vec<usize>> = HashMap::new();
    let mut roots = Vec::new();
    for (at, parent) in parents.iter().enumerate() {
        match parent {
            Some(parent) => children.entry(*parent).or_default().push(at),
            None => roots.push(at),
        }
    }
    roots.into_iter().filter_map(|root| tree_of(root, &findings, &children)).collect()
}

/// For each finding the one it is listed under. No cycles: a parent is chosen only when its own line of parents does
/// not lead back.
fn parents_of(findings: &[Finding]) -> Vec<Option<usize>> {
    let mut by_subject: HashMap<ElementId, usize> = HashMap::new();
    for (at, finding) in findings.iter().enumerate() {
        let Some(subject) = finding.subject else { continue };
        let first = by_subject.entry(subject).or_insert(at);
        if is_graver(findings, at, *first) {
            *first = at;
        }
    }
    let mut by_suspect: HashMap<(ElementId, &'static str), usize> = HashMap::new();
    for (at, finding) in findings.iter().enumerate() {
        let Some(suspect) = finding.suspect else { continue };
        let first = by_suspect.entry(suspect).or_insert(at);
        if is_graver(findings, at, *first) {
            *first = at;
        }
    }
    let mut parents = vec![None; findings.len()];
    for (at, finding) in findings.iter().enumerate() {
        let is_other = |parent: &usize| *parent != at;
        let of_cause =
            finding.follows.iter().find_map(|cause| by_subject.get(cause).copied().filter(is_other));
        let of_suspect = finding.suspect.and_then(|suspect| by_suspect.get(&suspect)).copied();
        let candidate = of_cause.or(of_suspect).filter(is_other);
        if let Some(parent) = candidate.filter(|parent| !leads_to(&parents, *parent, at))
            && let Some(slot) = parents.get_mut(at)
        {
            *slot = Some(parent);
        }
    }
    parents
}

/// The graver of two findings; of equals the one that follows from less, then the earlier one.
fn is_graver(findings: &[Finding], one: usize, other: usize) -> bool {
    let weight = |at: usize| {
        findings
            .get(at)
            .map(|finding| (finding.diagnostic.severity, std::cmp::Reverse(finding.follows.len())))
    };
    weight(one) > weight(other)
}

/// True when the line of parents from `from` reaches `goal`.
fn leads_to(parents: &[Option<usize>], from: usize, goal: usize) -> bool {
    let mut at = Some(from);
    while let Some(current) = at {
        if current == goal {
            return true;
        }
        at = parents.get(current).copied().flatten();
    }
    false
}

fn tree_of(at: usize, findings: &[Finding], children: &HashMap<usize, Vec<usize>>) -> Option<Diagnostic> {
    let mut diagnostic = findings.get(at)?.diagnostic.clone();
    // Chains of consequences are as short as chains of support; flattening keeps the tree two levels deep.
    let mut waiting: Vec<usize> = children.get(&at).cloned().unwrap_or_default();
    waiting.reverse();
    while let Some(child) = waiting.pop() {
        if let Some(finding) = findings.get(child) {
            diagnostic.consequences.push(finding.diagnostic.clone());
        }
        waiting.extend(children.get(&child).into_iter().flatten().rev());
    }
    Some(diagnostic)
}

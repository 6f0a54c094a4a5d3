//! One mistake, one root finding: what follows from another finding is listed under it.

use std::cmp::Reverse;
use std::collections::HashMap;
use std::hash::Hash;

use crate::diagnostic::{Diagnostic, Severity};
use crate::rules::{Finding, RULES};

/// Roots by file, place and rule, each with what follows from it.
///
/// A finding goes under the gravest one about an element that it follows from. Findings that question the same surface,
/// or follow from the same element without that having a finding of its own, fold under the gravest of them.
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
    let weights = weights_of(findings);
    // Where the text leaves something out, nothing is derived from it, and advice mends nothing: neither causes others.
    let by_subject = gravest_by(findings, &weights, |finding| {
        let is_cause = !finding.is_of_the_text && finding.diagnostic.severity > Severity::Advice;
        finding.subject.into_iter().filter(|_| is_cause).collect()
    });
    let by_suspect = gravest_by(findings, &weights, |finding| finding.suspect.into_iter().collect());
    let by_cause = gravest_by(findings, &weights, |finding| finding.follows.clone());
    let mut parents = vec![None; findings.len()];
    for (at, finding) in findings.iter().enumerate() {
        let of_cause =
            finding.follows.iter().find_map(|cause| by_subject.get(cause).filter(|parent| **parent != at));
        let of_suspect = finding.suspect.and_then(|suspect| by_suspect.get(&suspect));
        let of_same_cause = finding.follows.first().and_then(|cause| by_cause.get(cause));
        let mut candidates = [of_cause, of_suspect, of_same_cause].into_iter().flatten().copied();
        let parent = candidates.find(|parent| *parent != at && !leads_to(&parents, *parent, at));
        if let Some(slot) = parents.get_mut(at) {
            *slot = parent;
        }
    }
    parents
}

/// How grave each finding is: by its severity, then by the place of its rule in the list, the causes first.
fn weights_of(findings: &[Finding]) -> Vec<(Severity, Reverse<usize>)> {
    let ranks: HashMap<&str, usize> = RULES.iter().enumerate().map(|(at, rule)| (rule.slug, at)).collect();
    let rank = |finding: &Finding| ranks.get(finding.diagnostic.rule).copied().unwrap_or(usize::MAX);
    findings.iter().map(|finding| (finding.diagnostic.severity, Reverse(rank(finding)))).collect()
}

/// The gravest finding under each key, the first of equals.
fn gravest_by<K: Eq + Hash>(
    findings: &[Finding],
    weights: &[(Severity, Reverse<usize>)],
    keys_of: impl Fn(&Finding) -> Vec<K>,
) -> HashMap<K, usize> {
    let mut gravest = HashMap::new();
    for (at, finding) in findings.iter().enumerate() {
        for key in keys_of(finding) {
            let first = gravest.entry(key).or_insert(at);
            if weights.get(at) > weights.get(*first) {
                *first = at;
            }
        }
    }
    gravest
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

#[cfg(test)]
mod tests {
    use crate::rules::found_in;
    use crate::testing::rule_check::house;

    /// The roots of a house, each with what is listed under it, of the rules that start with one of the words.
    fn roots(text: &str, words: &[&str]) -> Vec<String> {
        let findings = found_in(&house(text), &|| false).unwrap().findings;
        let is_meant = |rule: &str| words.iter().any(|word| rule.starts_with(word));
        let roots = findings.iter().filter(|finding| is_meant(finding.rule));
        roots
            .map(|root| {
                let under =
                    root.consequences.iter().map(|finding| finding.rule).filter(|rule| is_meant(rule));
                format!("{}: {}", root.rule, under.collect::<Vec<_>>().join(", "))
            })
            .collect()
    }

    fn beam(size: &str) -> String {
        format!(
            "
floor main
  subfloor    100'-0\"
  deck        3/4\"
joists J1
  floor       main
  size        2x10 SPF No.2
beam B1
  size        {size}
  set         flush in main
  bears on    C1
  bears on    C2
column C1
  size        HSS 4 x 4 x 1/4
  cap         none
  base        bare
  stands on   F1
  cut         should be 100\"
column C2
  size        HSS 4 x 4 x 1/4
  cap         none
  base        bare
  stands on   F2
  cut         should be 100\"
footing F1
  top         90'-0\"
footing F2
  top         90'-0\"
"
        )
    }

    /// A W10x22 is deeper than the joists: the columns under it are wrong because of it.
    #[test]
    fn what_follows_from_a_beam_comes_under_the_beam() {
        let wanted = ["flush-beam-projects: column-length-does-not-close, column-length-does-not-close"];
        assert_eq!(roots(&beam("W10x22"), &["flush-beam", "column-length"]), wanted);
    }

    /// A W8x18 does not project; the columns are off alike, and the first says so for both.
    #[test]
    fn what_follows_from_the_same_beam_is_one_finding() {
        let wanted = ["column-length-does-not-close: column-length-does-not-close"];
        assert_eq!(roots(&beam("W8x18"), &["flush-beam", "column-length"]), wanted);
    }
}

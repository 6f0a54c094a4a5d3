//! Findings as SARIF's results: each with its place, what it is known by, what silences it and what mends it.

use std::collections::{BTreeMap, HashMap};

use crate::diagnostic::{self, Diagnostic};
use crate::report::details::details;
use crate::report::fingerprint::fingerprints;
use crate::report::sarif::places::{file_of, location_of, name_in_base, region_of};
use crate::report::sarif::shape::{
    ArtifactChange, Content, Fix, LogicalLocation, Outcome, Replacement, Suppression, Text,
};
use crate::report::{Around, Checked};
use crate::rules::{RULES, Waived};

/// Raised when the same finding is known by something else.
const FINGERPRINT: &str = "storyrodFinding/v1";

/// A finding with what it follows from, or what silences it.
#[derive(Clone, Copy)]
struct Entry<'a> {
    finding: &'a Diagnostic,
    root: Option<&'a Diagnostic>,
    waived: Option<&'a Waived>,
}

/// The results of one spec: each root with what follows from it, then what is waived.
pub(super) fn results_of<'a>(around: Around<'_>, checked: &Checked<'a>) -> Vec<Outcome<'a>> {
    let entries = entries_of(checked);
    let indices: HashMap<&str, usize> = RULES.iter().enumerate().map(|(at, rule)| (rule.slug, at)).collect();
    let marks = marks_of(around, checked, &entries);
    let results = entries.into_iter().zip(marks);
    results
        .map(|(entry, mark)| result_of(around, checked, entry, indices.get(entry.finding.rule), mark))
        .collect()
}

fn entries_of<'a>(checked: &Checked<'a>) -> Vec<Entry<'a>> {
    let mut entries = Vec::new();
    for root in checked.findings {
        entries.push(Entry { finding: root, root: None, waived: None });
        let following = root.consequences.iter().flat_map(Diagnostic::with_consequences);
        entries.extend(following.map(|finding| Entry { finding, root: Some(root), waived: None }));
    }
    let waived = checked.waived.iter();
    entries.extend(waived.map(|waived| Entry { finding: &waived.finding, root: None, waived: Some(waived) }));
    entries
}

/// The fingerprint of each entry. They are counted in the order of reading, in which nothing depends on what is listed
/// under what.
fn marks_of(around: Around<'_>, checked: &Checked<'_>, entries: &[Entry<'_>]) -> Vec<String> {
    let mut order: Vec<(usize, &Diagnostic)> =
        entries.iter().map(|entry| entry.finding).enumerate().collect();
    order.sort_by_key(|(_, finding)| (finding.span, finding.rule));
    let in_order: Vec<&Diagnostic> = order.iter().map(|(_, finding)| *finding).collect();
    let marks =
        order.iter().map(|(at, _)| *at).zip(fingerprints(&name_in_base(around, checked.name()), &in_order));
    // Back in the order of the entries.
    marks.collect::<BTreeMap<_, _>>().into_values().collect()
}

fn result_of<'a>(
    around: Around<'_>,
    checked: &Checked<'a>,
    entry: Entry<'a>,
    rule_index: Option<&usize>,
    mark: String,
) -> Outcome<'a> {
    let finding = entry.finding;
    let mut place = location_of(around, checked, finding.span, None);
    if !finding.subject.is_empty() {
        let fully_qualified_name = finding.subject.clone();
        place.logical_locations.push(LogicalLocation { fully_qualified_name, kind: "element" });
    }
    let root = entry.root.map(|root| (root.span, format!("follows from: {} [{}]", root.message, root.rule)));
    let related = finding.related.iter().map(|related| (related.span, related.message.clone()));
    let related = root.into_iter().chain(related).enumerate().map(|(at, (span, message))| {
        let mut place = location_of(around, checked, span, Some(&message));
        place.id = Some(at + 1);
        place
    });
    let message: Vec<_> = [finding.message.clone()].into_iter().chain(details(finding)).collect();
    Outcome {
        rule_id: finding.rule,
        rule_index: rule_index.copied(),
        level: finding.severity.into(),
        message: Text::of(&message.join("\n")),
        locations: [place],
        related_locations: related.collect(),
        partial_fingerprints: BTreeMap::from([(FINGERPRINT, mark)]),
        suppressions: entry
            .waived
            .map(|waived| suppression_of(around, checked, waived))
            .into_iter()
            .collect(),
        fixes: finding.fix.as_ref().map(|fix| fix_of(around, checked, fix)).into_iter().collect(),
    }
}

fn suppression_of<'a>(around: Around<'_>, checked: &Checked<'a>, waived: &'a Waived) -> Suppression<'a> {
    Suppression {
        kind: "inSource",
        status: "accepted",
        justification: &waived.reason,
        location: location_of(around, checked, waived.by, None),
    }
}

fn fix_of<'a>(around: Around<'_>, checked: &Checked<'a>, fix: &'a diagnostic::Fix) -> Fix<'a> {
    let mut changes: BTreeMap<_, Vec<_>> = BTreeMap::new();
    for edit in &fix.edits {
        changes.entry(edit.span.file).or_default().push(edit);
    }
    let changes = changes.into_values().filter_map(|edits| {
        let first = edits.first()?;
        let replacements = edits.iter().map(|edit| Replacement {
            deleted_region: region_of(checked, edit.span),
            inserted_content: Content { text: &edit.text },
        });
        Some(ArtifactChange {
            artifact_location: file_of(around, checked, first.span),
            replacements: replacements.collect(),
        })
    });
    Fix { description: Text::of(&fix.title), artifact_changes: changes.collect() }
}

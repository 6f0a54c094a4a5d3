//! Waivers: what the author says about findings of one element.

use std::collections::HashSet;

use crate::diagnostic::Diagnostic;
use crate::house::House;
use crate::model::element::{Common, ElementId, Waiver};
use crate::rules::{self, Finding};
use crate::text::Span;

/// A finding that a waiver silences, or a project that switches its rule off.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Waived {
    /// What would be found.
    pub finding: Diagnostic,
    /// The line that silences it.
    pub by: Span,
    /// Its reason.
    pub reason: Box<str>,
}

/// The findings that no waiver silences, and those that one does. Each of the former that a waiver
/// could silence carries the line to write.
pub fn parted(house: &House, findings: Vec<Finding>) -> (Vec<Finding>, Vec<Waived>) {
    let (mut kept, mut waived) = (Vec::new(), Vec::new());
    for mut finding in findings {
        let common = finding.subject.and_then(|subject| house.model.common(subject));
        let waivers = common.map(|common| common.waivers.as_slice()).unwrap_or_default();
        if let Some(waiver) = waivers.iter().find(|waiver| silences(waiver, &finding, house)) {
            let reason = waiver.reason.clone().unwrap_or_default();
            waived.push(Waived { finding: finding.diagnostic, by: waiver.span, reason });
            continue;
        }
        if common.is_some() && !finding.is_of_the_text {
            finding.diagnostic.waiver = Some(format!("waive {} because \"…\"", finding.diagnostic.rule));
        }
        kept.push(finding);
    }
    (kept, waived)
}

/// The waivers that silence nothing, of those that could: known rule, with a reason, not past their day.
///
/// Asked by the rule that reports them; it runs the other rules that are waived somewhere.
pub fn idle_waivers<'h>(house: &'h House, asking: &str) -> Vec<(&'h Common, &'h Waiver)> {
    let waived =
        || house.model.commons().flat_map(|common| common.waivers.iter().map(move |it| (common, it)));
    let slugs: HashSet<&str> = waived().map(|(_, waiver)| &*waiver.rule).collect();
    let mut working: HashSet<(ElementId, &str)> = HashSet::new();
    for rule in rules::RULES.iter().filter(|rule| rule.slug != asking && slugs.contains(rule.slug)) {
        let mut findings = rules::Findings::new(house, rule);
        (rule.check)(house, &mut findings);
        let subjects = findings.into_list().into_iter().filter(|finding| !finding.is_of_the_text);
        working.extend(subjects.filter_map(|finding| Some((finding.subject?, rule.slug))));
    }
    waived()
        .filter(|(common, waiver)| {
            let could = is_in_force(waiver, house)
                && *waiver.rule != *asking
                && rules::rule_named(&waiver.rule).is_some();
            could && !working.contains(&(common.id, &*waiver.rule))
        })
        .collect()
}

fn silences(waiver: &Waiver, finding: &Finding, house: &House) -> bool {
    !finding.is_of_the_text && *waiver.rule == *finding.diagnostic.rule && is_in_force(waiver, house)
}

/// It has a reason and its last day is not past.
fn is_in_force(waiver: &Waiver, house: &House) -> bool {
    waiver.has_reason() && waiver.until.is_none_or(|until| house.today <= until)
}

//! What rules say of one state and not of the other.

use std::collections::HashMap;

use crate::compare::meaning::Renames;
use crate::compare::{Consequence, Found, Outcome, Standing, Trade};
use crate::diagnostic::{Diagnostic, Severity};
use crate::house::House;
use crate::model::element::{Common, ElementId};
use crate::rules;
use crate::snapshot::Snapshot;

/// Adds what fails now and did not, what fails with other numbers, what is silenced now, and what no longer fails.
/// Without an old one everything is new.
pub fn changed(old: Option<&Snapshot>, new: &Snapshot, renames: &Renames, found: &mut Vec<Found>) {
    let subjects = Subjects::of(&new.house);
    let before_in_order = old.map(all).unwrap_or_default();
    let mut before: HashMap<Key, Vec<&Diagnostic>> = HashMap::new();
    for finding in before_in_order.iter().rev() {
        before.entry(Key::of(finding, renames)).or_default().push(finding);
    }
    let none = Renames::default();
    for finding in all(new) {
        let known = before.get_mut(&Key::of(finding, &none)).and_then(Vec::pop);
        let outcome = match known {
            None => Outcome::Fails(Box::new(finding.clone())),
            Some(was) if renames.text(&was.message) != renames.text(&finding.message) => {
                Outcome::StillFails(Box::new(was.clone()), Box::new(finding.clone()))
            }
            Some(_) => continue,
        };
        found.push(subjects.found(&new.house, finding.rule, &finding.subject, outcome));
    }
    for waived in &new.waived {
        let key = Key::of(&waived.finding, &none);
        // What is silenced now has not gone away.
        _ = before.get_mut(&key).and_then(Vec::pop);
        let was_waived = old.iter().flat_map(|old| &old.waived).any(|was| {
            Key::of(&was.finding, renames) == key
                && renames.text(&was.finding.message) == renames.text(&waived.finding.message)
        });
        if !was_waived {
            let outcome = Outcome::Waived(Box::new(waived.finding.clone()));
            found.push(subjects.found(&new.house, waived.finding.rule, &waived.finding.subject, outcome));
        }
    }
    // What is left in the old one's order.
    for finding in before_in_order {
        let key = Key::of(finding, renames);
        let is_left = before.get_mut(&key).is_some_and(|left| {
            let at = left.iter().position(|other| std::ptr::eq(*other, finding));
            at.map(|at| left.remove(at)).is_some()
        });
        if is_left {
            found.push(subjects.found(
                &new.house,
                finding.rule,
                &key.subject,
                Outcome::Passes(Box::new(finding.clone())),
            ));
        }
    }
}

/// How much a new finding matters.
pub fn weight_of(finding: &Diagnostic) -> u8 {
    let rule = rules::rule_named(finding.rule);
    match finding.severity {
        _ if rule.is_some_and(|rule| rule.is_danger) => 8,
        Severity::Error => 7,
        Severity::Warning if rule.is_some_and(|rule| rule.group() == "intents") => 6,
        Severity::Warning => 5,
        Severity::Advice => 3,
    }
}

fn all(snapshot: &Snapshot) -> Vec<&Diagnostic> {
    snapshot.findings.iter().flat_map(Diagnostic::with_consequences).collect()
}

/// What makes two findings the same: the rule and the element; of the text itself, what is said.
#[derive(PartialEq, Eq, Hash)]
struct Key {
    rule: &'static str,
    subject: String,
    message: Option<String>,
}

impl Key {
    fn of(finding: &Diagnostic, renames: &Renames) -> Self {
        let subject = match finding.subject.rsplit_once(' ') {
            Some((word, name)) => format!("{word} {}", renames.element(name)),
            None => finding.subject.clone(),
        };
        let message = subject.is_empty().then(|| renames.text(&finding.message));
        Self { rule: finding.rule, subject, message }
    }
}

/// The elements of a house by their labels.
struct Subjects<'h>(HashMap<String, &'h Common>);

impl<'h> Subjects<'h> {
    fn of(house: &'h House) -> Self {
        Self(house.model.commons().map(|common| (common.label(), common)).collect())
    }

    fn found(&self, house: &House, rule: &str, subject: &str, outcome: Outcome) -> Found {
        let common = self.0.get(subject);
        let of: Option<ElementId> = common.map(|common| common.id);
        let standing = common.and_then(|common| Standing::of(common));
        let ways_out = match &outcome {
            // What is to be written otherwise is no way out for who stands before concrete.
            Outcome::Fails(is) | Outcome::StillFails(_, is)
                if standing.is_some() && rules::is_comparing(rule) =>
            {
                is.help.clone()
            }
            _ => Vec::new(),
        };
        Found {
            trade: Trade::of_finding(house, rule, of),
            of,
            consequence: Consequence {
                element: subject.to_owned(),
                outcome,
                standing,
                ways_out,
                also: Vec::new(),
            },
        }
    }
}

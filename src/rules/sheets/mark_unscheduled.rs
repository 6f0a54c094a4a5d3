//! Elements that a schedule forgot.

use std::collections::{BTreeMap, HashSet};

use crate::diagnostic::{Edit, Fix};
use crate::house::House;
use crate::model::element::ElementId;
use crate::rules::{Findings, rule};
use crate::syntax::vocabulary::ElementKind;
use crate::text::Span;

rule! {
    /// A schedule lists elements of a kind, but one of them stands in no schedule.
    ///
    /// ## Why
    /// What is not in the schedule is not ordered.
    ///
    /// ## Source
    /// Common practice: a schedule is complete for its kind.
    ///
    /// ## Examples
    /// ```framing,fires
    /// column C1
    /// column C2
    /// sheet S-201
    ///   schedules  C1
    /// ```
    /// ```framing,passes
    /// column C1
    /// column C2
    /// sheet S-201
    ///   schedules  C1
    /// sheet S-202
    ///   schedules  C2
    /// ```
    "mark-unscheduled", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let mut listed: HashSet<ElementId> = HashSet::new();
    // The last schedule of each kind is where the missing ones would go.
    let mut last: BTreeMap<ElementKind, (ElementId, Span)> = BTreeMap::new();
    for sheet in &house.model.sheets {
        if sheet.common.has_unread_lines || sheet.schedules.iter().any(|mark| mark.target.is_none()) {
            return;
        }
        for mark in &sheet.schedules {
            if let Some(target) = mark.target {
                listed.insert(target);
                last.insert(target.kind, (sheet.common.id, mark.span));
            }
        }
    }
    if last.is_empty() {
        return;
    }
    for common in house.model.commons().filter(|common| !listed.contains(&common.id)) {
        let Some((sheet, span)) = last.get(&common.id.kind) else { continue };
        let name = house.model.common(*sheet).map(|sheet| sheet.label()).unwrap_or_default();
        findings
            .about(
                *sheet,
                *span,
                format!("{} stands in no schedule; {name} lists others of its kind", common.label()),
            )
            .related(common.name_span, common.label())
            .help(format!("add it: `schedules {}`", common.name))
            .fix(Fix {
                title: format!("add {} to the schedule", common.name),
                edits: vec![Edit {
                    span: Span { start: span.end, ..*span },
                    text: format!(", {}", common.name),
                }],
            })
            .basis("common practice");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn looks_at_the_kinds_that_are_scheduled() {
        check_rule(
            &RULE,
            "
column C1
column C2
beam B1
sheet S-201
  schedules  C1
--           ^^ column C2 stands in no schedule; sheet S-201 lists others of its kind
",
        );
    }
}

//! The severities that a project sets: how much a rule matters in this house, or that it does not.

use crate::house::House;
use crate::model::site::OwnSeverity;
use crate::rules::silence::Waived;
use crate::rules::{Finding, Rule, rule_named};

/// The project's own severities, in the order of the text.
pub fn own_severities(house: &House) -> &[OwnSeverity] {
    house.model.project.as_ref().map(|project| project.severities.as_slice()).unwrap_or_default()
}

/// True when it makes the rule matter less than by itself, or not at all.
pub fn is_lower(own: &OwnSeverity, rule: &Rule) -> bool {
    own.severity < Some(rule.severity)
}

/// True when the rule can't matter less than by itself: it means danger, or nothing else can be read where it speaks.
pub fn is_fixed(rule: &Rule) -> bool {
    rule.is_danger || rule.is_of_the_text()
}

/// The findings with the severities that the project sets, and those of rules that it switches off.
pub fn with_severities(house: &House, findings: Vec<Finding>) -> (Vec<Finding>, Vec<Waived>) {
    let (mut kept, mut off) = (Vec::new(), Vec::new());
    for mut finding in findings {
        let Some(own) = in_force(house, finding.diagnostic.rule) else {
            kept.push(finding);
            continue;
        };
        let reason = own.reason.clone().unwrap_or_default();
        let Some(severity) = own.severity else {
            off.push(Waived { finding: finding.diagnostic, by: own.span, reason });
            continue;
        };
        if severity != finding.diagnostic.severity {
            let by_itself = finding.diagnostic.severity.word();
            let because = if own.has_reason() { format!(": {reason}") } else { String::new() };
            let word = severity.word();
            finding.severity(severity);
            finding
                .note(format!("{word} by this project's own `severity`, in place of {by_itself}{because}"));
        }
        kept.push(finding);
    }
    (kept, off)
}

/// The first line for a rule, when it may say what it says.
fn in_force<'h>(house: &'h House, slug: &str) -> Option<&'h OwnSeverity> {
    let own = own_severities(house).iter().find(|own| *own.rule == *slug)?;
    let rule = rule_named(slug)?;
    (!is_lower(own, rule) || (own.has_reason() && !is_fixed(rule))).then_some(own)
}

#[cfg(test)]
mod tests {
    use crate::diagnostic::Severity;
    use crate::rules::found_in;
    use crate::testing::rule_check::house;

    /// What the rule `element-unreferenced`, advice by itself, comes to: severity and last note.
    fn of_unused_product(severity: &str) -> Vec<(Severity, Option<String>)> {
        let text =
            format!("project \"P\"\n{severity}product LV12\n  kind  composite lumber 1-3/4 x 11-7/8\n");
        let found = found_in(&house(&text), &|| false).unwrap();
        let of_rule = found.findings.into_iter().filter(|finding| finding.rule == "element-unreferenced");
        of_rule.map(|finding| (finding.severity, finding.notes.last().cloned())).collect()
    }

    #[test]
    fn a_rule_matters_more_and_its_finding_says_so() {
        assert_eq!(
            of_unused_product("").iter().map(|(severity, _)| *severity).collect::<Vec<_>>(),
            [Severity::Advice]
        );
        let note = "error by this project's own `severity`, in place of advice";
        assert_eq!(
            of_unused_product("  severity element-unreferenced error\n"),
            [(Severity::Error, Some(note.to_owned()))]
        );
        assert_eq!(
            of_unused_product("  severity element-unreferenced error because \"one list of products\"\n"),
            [(Severity::Error, Some(format!("{note}: one list of products")))]
        );
        let [(severity, note)] = &of_unused_product("  severity element-unreferenced advice\n")[..] else {
            panic!("one finding")
        };
        assert_eq!(*severity, Severity::Advice);
        assert!(!note.as_ref().is_some_and(|note| note.contains("severity")), "{note:?}");
    }

    #[test]
    fn a_rule_that_is_off_leaves_its_finding_with_the_reason() {
        let text = "project \"P\"\n  severity element-unreferenced off because \"a list for all houses\"\nproduct LV12\n  kind  composite lumber 1-3/4 x 11-7/8\n";
        let house = house(text);
        let found = found_in(&house, &|| false).unwrap();
        assert!(found.findings.iter().all(|finding| finding.rule != "element-unreferenced"));
        let [silenced] = found.waived.as_slice() else { panic!("{:?}", found.waived) };
        assert_eq!(&*silenced.reason, "a list for all houses");
        assert!(house.text_at(silenced.by).starts_with("severity element-unreferenced off"));
    }

    #[test]
    fn a_line_that_may_not_stand_so_changes_nothing() {
        let advice = [Severity::Advice];
        for line in [
            "severity element-unreferenced off",
            "severity element-unreferenced off because \"\"",
            "severity element-unreferenced advice\n  severity element-unreferenced error",
        ] {
            let found = of_unused_product(&format!("  {line}\n"));
            assert_eq!(found.iter().map(|(severity, _)| *severity).collect::<Vec<_>>(), advice, "{line}");
        }
    }

    /// `13"` behind feet is a warning of the text.
    #[test]
    fn danger_and_the_text_itself_matter_no_less_but_may_matter_more() {
        let of = |slug: &str, line: &str| -> Vec<Severity> {
            let text = format!(
                "project \"P\"\n  {line}\nwall W1\n  top 12'-13\"\ncolumn C1\n  stands on C1\nbeam B1\n  bears on C1\n"
            );
            let found = found_in(&house(&text), &|| false).unwrap();
            let all = found.findings.iter().flat_map(|finding| finding.with_consequences());
            all.filter(|finding| finding.rule == slug).map(|finding| finding.severity).collect()
        };
        assert_eq!(of("odd-dimension", ""), [Severity::Warning]);
        assert_eq!(of("odd-dimension", "severity odd-dimension off because \"x\""), [Severity::Warning]);
        assert_eq!(of("odd-dimension", "severity odd-dimension error"), [Severity::Error]);
        assert_eq!(of("circular-support", ""), [Severity::Error]);
        assert_eq!(
            of("circular-support", "severity circular-support advice because \"x\""),
            [Severity::Error]
        );
    }
}

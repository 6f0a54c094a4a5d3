//! A finding accepted where it stands.

use crate::diagnostic::Diagnostic;
use crate::house::lines;
use crate::ide::actions::{Action, ActionKind};
use crate::snapshot::Snapshot;

/// The line that waives a finding on its element, for each that can be waived. Its reason is left empty: until a person says
/// why, it silences nothing, and a rule says so.
pub fn waivers(snapshot: &Snapshot, findings: &[&Diagnostic]) -> Vec<Action> {
    let house = &snapshot.house;
    let waived = findings.iter().filter_map(|finding| {
        finding.waiver.as_ref()?;
        let common = house.model.commons().find(|common| common.label() == finding.subject)?;
        if common.waivers.iter().any(|waiver| *waiver.rule == *finding.rule) {
            return None;
        }
        let edit = lines::added(house, common, &format!("waive {} because \"\"", finding.rule))?;
        let title = format!("waive `{}` on {}, because …", finding.rule, common.label());
        Some(Action::new(title, ActionKind::QuickFix, vec![edit]).mending(finding))
    });
    waived.collect()
}

#[cfg(test)]
mod tests {
    use crate::ide::actions::tests::{check, titles};
    use crate::testing::cursor::snapshot_of;

    const HOUSE: &str =
        "project\nfloor main\n  subfloor      100'-0 1/32\"$0\n  live          40 psf\n\nwall W1\n";

    #[test]
    fn an_empty_reason_silences_nothing_yet() {
        let after = check(HOUSE, "waive `unbuildable-fraction` on floor main, because …");
        let line = "  waive         unbuildable-fraction because \"\"\n";
        assert_eq!(after, HOUSE.replace("$0", "").replace("40 psf\n", &format!("40 psf\n{line}")));
        let rules = |text: &str| -> Vec<&'static str> {
            snapshot_of(text)
                .findings
                .iter()
                .flat_map(|it| it.with_consequences())
                .map(|it| it.rule)
                .collect()
        };
        let found = rules(&after);
        assert!(found.contains(&"unbuildable-fraction") && found.contains(&"waiver-without-reason"));
        let found = rules(&after.replace("because \"\"", "because \"as shot\""));
        assert!(!found.contains(&"unbuildable-fraction") && !found.contains(&"waiver-without-reason"));
    }

    #[test]
    fn what_cannot_be_read_cannot_be_waived() {
        let titles = titles("project\nfloor main\n  deck $07.5\n");
        assert!(titles.iter().all(|title| !title.starts_with("waive")), "{titles:?}");
    }
}

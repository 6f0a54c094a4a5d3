//! The cures that findings bring with them.

use crate::diagnostic::{Diagnostic, Remedy};
use crate::ide::actions::{Action, ActionKind};

/// The cure of each finding that has one answer. Where something stands already, another number on paper mends nothing on
/// site: the cure is offered and not preferred.
pub fn fixes(findings: &[&Diagnostic]) -> Vec<Action> {
    let mended = findings.iter().filter_map(|finding| Some((finding, finding.fix.as_ref()?)));
    mended
        .map(|(finding, fix)| Action {
            is_preferred: finding.remedy == Remedy::OnPaper,
            ..Action::new(&fix.title, ActionKind::QuickFix, fix.edits.clone()).mending(finding)
        })
        .collect()
}

/// The answers of findings that have several.
pub fn choices(findings: &[&Diagnostic]) -> Vec<Action> {
    let choices = findings.iter().flat_map(|finding| finding.choices.iter().map(move |it| (finding, it)));
    choices
        .map(|(finding, choice)| {
            Action::new(&choice.title, ActionKind::QuickFix, choice.edits.clone()).mending(finding)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use crate::ide::actions::tests::{check, titles};

    const STEEL: &str = r#"project "House"
floor main
  subfloor      100'-0"
  deck          3/4"
wall W1
  kind          concrete
  top           $098'-4"
  sill          1 of 2x6 treated
joists J1
  floor         main
  size          2x10 SPF No.2
  bears on      W1
"#;

    /// By hand: 100'-0" - 3/4" - 9-1/4" - 1-1/2" = 99'-0 1/2".
    #[test]
    fn the_level_that_closes_is_preferred() {
        let after = check(STEEL, "write 99'-0 1/2\"");
        assert_eq!(after, STEEL.replace("$098'-4\"", "99'-0 1/2\""));
        let first = crate::ide::actions::tests::offered(STEEL).remove(0);
        assert!(first.is_preferred);
        assert_eq!(first.mends[0].rule, "stack-does-not-close");
    }

    #[test]
    fn what_stands_already_is_not_mended_on_paper_first() {
        let poured = STEEL.replace("  sill ", "  status        poured\n  sill ");
        let offered = crate::ide::actions::tests::offered(&poured);
        assert_eq!(offered[0].title, "write 99'-0 1/2\"");
        assert!(!offered[0].is_preferred);
    }

    #[test]
    fn several_answers_are_choices() {
        let text = STEEL.replace("98'-4\"", "99'-2\"");
        let titles = titles(&text);
        assert!(titles.contains(&"move the subfloor to 100'-1 1/2\"".to_owned()), "{titles:?}");
        let text = "project\nfloor main\n  deck $07.5\n";
        assert_eq!(check(text, "write `7.5 in`"), "project\nfloor main\n  deck 7.5 in\n");
        assert_eq!(check(text, "write `7.5 ft`"), "project\nfloor main\n  deck 7.5 ft\n");
    }
}

//! Names that nothing has.

use crate::house::House;
use crate::model::problem::ModelProblemKind;
use crate::rules::names::{at_every_place, by_word, report};
use crate::rules::wording::{either, quoted};
use crate::rules::{Findings, rule};

/// More kinds than this are not told one by one.
const MOST_KINDS: usize = 4;

rule! {
    /// A name is used that no element has.
    ///
    /// ## Why
    /// What bears on it, hangs from it or stands on it has nothing under it, and is not checked.
    ///
    /// ## Source
    /// The format's own rule: a name means the element that is opened with it, somewhere in the spec.
    ///
    /// ## Examples
    /// ```framing,fires
    /// column C1
    ///   stands on  F2
    /// footing F1
    /// ```
    /// ```framing,passes
    /// column C1
    ///   stands on  F1
    /// footing F1
    /// ```
    "unknown-name", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (name, problems) in by_word(house, |kind| matches!(kind, ModelProblemKind::UnknownName(..))) {
        let Some((first, others)) = problems.split_first() else { continue };
        let ModelProblemKind::UnknownName(kinds, nearest) = &first.kind else { continue };
        let message = if kinds.is_empty() || kinds.len() > MOST_KINDS {
            format!("nothing is named {}", quoted(name))
        } else {
            let kinds: Vec<String> = kinds.iter().map(|kind| kind.word().to_owned()).collect();
            format!("no {} is named {}", either(&kinds), quoted(name))
        };
        at_every_place(report(findings, first, message), others, nearest.as_deref());
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::{check_rule, found};

    #[test]
    fn a_slip_that_shows_twice_is_one_finding() {
        check_rule(
            &RULE,
            "
beam B1
  bears on  Wall1
--          ^^^^^ nothing is named `Wall1`
-- | did you mean `Wall`?
-- | here too
beam B2
  bears on  Wall1
joists J1
  floor     mian
--          ^^^^ no floor is named `mian`
wall Wall
floor main
",
        );
    }

    #[test]
    fn the_fix_mends_every_place() {
        let found = found(&RULE, "floor main\njoists J1\n  floor mian\njoists J2\n  floor mian\n");
        let edits: Vec<&str> =
            found[0].fix.iter().flat_map(|fix| &fix.edits).map(|edit| edit.text.as_str()).collect();
        assert_eq!(edits, ["main", "main"]);
    }
}

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
        let meant = nearest.as_deref().filter(|nearest| is_slip(name, nearest));
        at_every_place(report(findings, first, message), others, meant);
    }
}

/// True when one name can be a slip for the other. Marks such as `F1` and `F2`, `W1` and `F1` are near to each other by
/// their nature, and mean different things.
fn is_slip(written: &str, nearest: &str) -> bool {
    let letters = |name: &str| name.replace(|character: char| character.is_ascii_digit(), "");
    written.eq_ignore_ascii_case(nearest)
        || (written.chars().count() > 2 && letters(written) != letters(nearest))
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
  bears on  girdr
--          ^^^^^ nothing is named `girdr`
-- | did you mean `girder`?
-- | here too
beam B2
  bears on  girdr
joists J1
  floor     mian
--          ^^^^ no floor is named `mian`
beam girder
floor main
",
        );
    }

    #[test]
    fn a_mark_is_no_slip_for_another() {
        let helps = |name: &str| {
            let text = format!("beam B1\n  bears on {name}\nwall W1\nwall W10\n");
            found(&RULE, &text)[0].help.len()
        };
        assert_eq!([helps("W2"), helps("F1"), helps("W11"), helps("w1"), helps("WW10")], [0, 0, 0, 1, 1]);
    }

    #[test]
    fn the_fix_mends_every_place() {
        let found = found(&RULE, "floor main\njoists J1\n  floor mian\njoists J2\n  floor mian\n");
        let edits: Vec<&str> =
            found[0].fix.iter().flat_map(|fix| &fix.edits).map(|edit| edit.text.as_str()).collect();
        assert_eq!(edits, ["main", "main"]);
    }
}

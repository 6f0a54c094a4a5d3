//! A rule that an element waives or a project weighs otherwise, or a limit that a project sets: what it is, and what it does here.

use crate::ide::hover::cursor::Cursor;
use crate::ide::hover::finding::reason;
use crate::ide::hover::markdown::escaped;
use crate::ide::hover::{Piece, Worth};
use crate::ide::meaning::{Meaning, named_at};
use crate::rules::{Finding, Findings};
use crate::syntax::value::Value;

/// The rule or the limit at the cursor.
pub fn piece(cursor: &Cursor<'_>) -> Option<Piece> {
    of_rule(cursor).or_else(|| of_limit(cursor))
}

fn of_rule(cursor: &Cursor<'_>) -> Option<Piece> {
    let house = cursor.house();
    let named = named_at(house, cursor.file, cursor.offset)?;
    let Meaning::Rule(rule) = named.meaning else { return None };
    let mut findings = Findings::new(house, rule);
    (rule.check)(house, &mut findings);
    let is_of_project = cursor.fact.is_some_and(|fact| fact.spec.phrase == "severity");
    let (among, place) =
        if is_of_project { ("in this house", "in this house") } else { ("here", "in this element") };
    let is_here = |finding: &Finding| is_of_project || finding.subject == cursor.element;
    let here: Vec<_> = findings.into_list().into_iter().filter(is_here).collect();
    let fires = match here.as_slice() {
        [] => format!("it finds nothing {place}"),
        [only] => format!("it finds {among}: {}", escaped(&only.diagnostic.message)),
        [first, ..] => {
            let (n, message) = (here.len(), escaped(&first.diagnostic.message));
            format!("it finds {n} things {among}; the first: {message}")
        }
    };
    let head = format!("**{}** `{}`", rule.severity.word(), rule.slug);
    let text = [head, fires, reason(rule.documentation)].join("\n\n");
    Some(Piece { span: named.span, worth: Worth::Much, text, has_figures: false })
}

fn of_limit(cursor: &Cursor<'_>) -> Option<Piece> {
    let (fact, part) = (cursor.fact?, cursor.part?);
    let (Value::Word(name), "limit") = (&part.value, fact.spec.phrase) else { return None };
    let limit = cursor.house().limits.profile().limit(name).ok()?;
    let text = format!(
        "**limit** `{}`\n\n{}\n\n- the profile's own: {} ({}; {})",
        limit.name, limit.meaning, limit.value, limit.section, limit.status
    );
    Some(Piece { span: cursor.span(part.span), worth: Worth::Much, text, has_figures: false })
}

#[cfg(test)]
mod tests {
    use crate::ide::hover::tests::{LOON_COVE, check};

    #[test]
    fn a_waived_rule_says_its_page_and_what_it_finds_here() {
        check(
            LOON_COVE,
            "waive         check-$0not-run",
            "check-not-run",
            &["**advice** `check-not-run`", "it finds here: 4 checks could not run", "## Why", "## Source"],
        );
        let text = LOON_COVE.replace("waive         check-not-run", "waive         beam-strength");
        check(
            &text,
            "waive         beam$0-strength",
            "waive         beam-strength because \"basement walls: by hand, from the code's own table\"",
            &["waiver-silences-nothing", "it finds nothing in this element"],
        );
    }

    #[test]
    fn a_rule_that_is_weighed_otherwise_says_what_it_finds_in_the_house() {
        let text = LOON_COVE.replace(
            "  frost         48\"\n",
            "  frost         48\"\n  severity      check-not-run warning\n  severity      beam-strength error\n",
        );
        check(
            &text,
            "severity      check-$0not-run",
            "check-not-run",
            &["**advice** `check-not-run`", "it finds in this house: 4 checks could not run", "## Why"],
        );
        check(&text, "severity      beam$0-strength", "beam-strength", &["it finds nothing in this house"]);
    }

    /// The residential code's R311.7.5.1, as the list of limits has it: 7-3/4".
    #[test]
    fn a_limit_says_the_profile_s_own_value() {
        let text = LOON_COVE.replace(
            "  frost         48\"\n",
            "  frost         48\"\n  limit         riser-height 7-1/2\"\n",
        );
        check(
            &text,
            "limit         riser$0-height",
            "riser-height",
            &["the profile's own: 7-3/4\" (R311.7.5.1;"],
        );
    }
}

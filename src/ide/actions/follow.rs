//! A stated number taken out where the house derives the same.

use crate::facts::answers::answer;
use crate::house::{House, lines};
use crate::ide::actions::{Action, ActionKind};
use crate::ide::meaning::element_at;
use crate::snapshot::{Snapshot, edited};
use crate::syntax::vocabulary::{CLAIM, FactSpec, Presence};
use crate::text::Span;

/// Takes the number under the cursor out, so that it follows from the rest. When the house would then come to another value,
/// or to none, the action says so and can't be taken.
pub fn follow(snapshot: &Snapshot, place: Span) -> Option<Action> {
    let house = &snapshot.house;
    let (chunk, fact) = lines::fact_at(house, place)?;
    let id = element_at(house, place.file, place.start)?;
    let words = if std::ptr::eq(fact.spec, &CLAIM) {
        house.text_at(fact.part("fact")?.span.within(place.file, chunk.start))
    } else if is_derived(fact.spec) {
        fact.spec.phrase
    } else {
        return None;
    };
    let now = answer(house, words, &[id]).ok()?.value;
    let edits = vec![lines::removed(house, fact.span.within(place.file, chunk.start))];
    let title = format!("let `{words}` follow from the rest");
    let after = edited::house_with(snapshot, &edits);
    let disabled = match answer(&after, words, &[id]) {
        Ok(then) if then.value == now && n_missing(&after) <= n_missing(house) => None,
        Ok(then) if then.value != now => Some(format!("without this line it comes to {}", then.value)),
        Ok(_) | Err(_) => Some("nothing else says it".to_owned()),
    };
    Some(Action { disabled, ..Action::new(title, ActionKind::Rewrite, edits) })
}

/// It may be left out, and then the house works it out.
fn is_derived(fact: &FactSpec) -> bool {
    fact.presence == Presence::Derived || fact.default.starts_with("derived")
}

/// A fact that some elements of the kind can't do without is asked for once it is gone.
fn n_missing(house: &House) -> usize {
    house.model.problems.len()
}

#[cfg(test)]
mod tests {
    use crate::ide::actions::tests::{check, offered};

    const HOUSE: &str = include_str!("../../../grammar/samples/loon-cove.framing");

    #[test]
    fn a_claim_goes_and_its_number_stays() {
        let text = HOUSE.replacen("cut should be", "cut $0should be", 1);
        let text = if text == HOUSE {
            HOUSE.replacen("cut           should", "cut           $0should", 1)
        } else {
            text
        };
        assert_ne!(text, HOUSE);
        let after = check(&text, "let `cut` follow from the rest");
        assert_eq!(after.lines().count(), HOUSE.lines().count() - 1);
    }

    #[test]
    fn what_nothing_else_says_can_not_go() {
        let text = "project\nwall W1\n  kind          concrete\n  top           98'-4\"$0\n";
        let action = offered(text).into_iter().find(|action| action.title.starts_with("let `top`")).unwrap();
        assert_eq!(action.disabled.as_deref(), Some("nothing else says it"));
    }
}

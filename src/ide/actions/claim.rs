//! A number that follows from the rest, written down so that the change which moves it is seen.

use crate::facts::answers::answer;
use crate::facts::{Answer, FactValue};
use crate::house::lines;
use crate::ide::actions::{Action, ActionKind};
use crate::ide::meaning::{element_at, facts_of};
use crate::snapshot::Snapshot;
use crate::syntax::vocabulary::spec_of;
use crate::text::Span;
use crate::units::Force;

/// So many claims are offered.
const MOST: usize = 6;

/// Each fact of the element that follows from the rest and that nothing of it states, as a claim; what has the words under
/// the cursor first.
pub fn claims(snapshot: &Snapshot, place: Span) -> Vec<Action> {
    let house = &snapshot.house;
    let Some(id) = element_at(house, place.file, place.start) else { return Vec::new() };
    let Some(common) = house.model.common(id) else { return Vec::new() };
    let here = lines::fact_at(house, place).map_or("", |(_, fact)| fact.spec.phrase);
    let is_stated = |words: &str| {
        common.claims.iter().any(|claim| &*claim.fact == words)
            || facts_of(house, id).any(|(fact, _)| fact.spec.phrase == words)
    };
    let claimable = spec_of(id.kind).claimable().filter(|name| !is_stated(name.words));
    let known = claimable.filter_map(|name| Some((name.words, answer(house, name.words, &[id]).ok()?)));
    let mut known: Vec<(&str, Answer)> = known.filter(|(_, answer)| follows(answer)).collect();
    known.sort_by_key(|(words, answer)| (!shares_a_word(words, here), is_of_strength(&answer.value)));
    let claims = known.into_iter().take(MOST).filter_map(|(words, answer)| {
        let fact = format!("{words} should be {}", answer.value.written("", None)?);
        let edit = lines::added(house, common, &fact)?;
        let caution =
            if is_of_strength(&answer.value) { ": a calculated value, have it checked" } else { "" };
        Some(Action::new(format!("claim `{fact}`{caution}"), ActionKind::Rewrite, vec![edit]))
    });
    claims.collect()
}

/// It is more than what the element says itself.
fn follows(answer: &Answer) -> bool {
    match &answer.value {
        FactValue::Elevation(_) | FactValue::Length(_) | FactValue::Area(_) => true,
        FactValue::Force { whole, .. } => *whole != Force::ZERO,
        FactValue::LineLoad(_) | FactValue::Pressure(_) | FactValue::Number(_) => true,
        FactValue::Count(_) | FactValue::Size(_) => false,
    }
}

const fn is_of_strength(value: &FactValue) -> bool {
    match value {
        FactValue::Force { .. } | FactValue::LineLoad(_) | FactValue::Pressure(_) | FactValue::Number(_) => {
            true
        }
        FactValue::Elevation(_)
        | FactValue::Length(_)
        | FactValue::Area(_)
        | FactValue::Count(_)
        | FactValue::Size(_) => false,
    }
}

fn shares_a_word(one: &str, other: &str) -> bool {
    one.split(' ').any(|word| other.split(' ').any(|another| another == word))
}

#[cfg(test)]
mod tests {
    use crate::ide::actions::tests::{check, titles};

    const HOUSE: &str = r#"project "House"
floor main
  subfloor      100'-0"
  deck          3/4"
  fin$0ish        oak 3/4"
"#;

    #[test]
    fn what_follows_and_is_not_stated() {
        let titles = titles(HOUSE);
        let claims: Vec<&str> = titles.iter().filter_map(|title| title.strip_prefix("claim ")).collect();
        assert_eq!(claims, ["`joist top should be 99'-11 1/4\"`"]);
    }

    #[test]
    fn the_claim_is_a_line_of_the_element_and_holds() {
        let after = check(HOUSE, "claim `joist top should be 99'-11 1/4\"`");
        assert_eq!(after, HOUSE.replace("$0", "") + "  joist top     should be 99'-11 1/4\"\n");
        let snapshot = crate::testing::cursor::snapshot_of(&after);
        assert!(snapshot.findings.iter().all(|finding| finding.rule != "claim-not-kept"));
    }
}

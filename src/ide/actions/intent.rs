//! A derived value made a promise of the design.

use crate::facts::FactValue;
use crate::facts::answers::answer;
use crate::house::{House, lines};
use crate::ide::actions::name::behind_element;
use crate::ide::actions::{Action, ActionKind};
use crate::ide::meaning::element_at;
use crate::model::element::ElementId;
use crate::model::promises::Intent;
use crate::snapshot::Snapshot;
use crate::syntax::value::Relation;
use crate::syntax::vocabulary::{FactNameSpec, spec_of};
use crate::text::Span;

/// What designs promise of heights: at least so much of what one walks under, the level itself of what one walks on.
const PROMISED: [(&str, Relation); 8] = [
    ("clear height", Relation::AtLeast),
    ("headroom", Relation::AtLeast),
    ("finish", Relation::Equal),
    ("subfloor", Relation::Equal),
    ("joist bottom", Relation::Equal),
    ("ceiling", Relation::Equal),
    ("top", Relation::Equal),
    ("bottom", Relation::Equal),
];

/// So many promises are offered.
const MOST: usize = 3;

/// Heights and levels of the element as promises: of a new intent behind it, or of the intent that speaks of it already. On a
/// line that states such a fact that one alone; on any other line none, but all on the heading.
pub fn intents(snapshot: &Snapshot, place: Span) -> Vec<Action> {
    let house = &snapshot.house;
    let Some(id) = element_at(house, place.file, place.start) else { return Vec::new() };
    let Some(common) = house.model.common(id) else { return Vec::new() };
    let stated = lines::fact_at(house, place)
        .map(|(chunk, fact)| match fact.part("fact") {
            Some(claimed) => house.text_at(claimed.span.within(place.file, chunk.start)),
            None => fact.spec.phrase,
        })
        .filter(|_| house.line_of(place).start > common.name_span.end);
    let names = spec_of(id.kind).claimable();
    let wanted: Vec<(&FactNameSpec, Relation)> = names
        .filter(|name| stated.is_none_or(|stated| stated == name.words))
        .filter_map(|name| {
            let (_, relation) = PROMISED.iter().find(|(words, _)| *words == name.words)?;
            Some((name, *relation))
        })
        .collect();
    let mut ranked = wanted;
    ranked.sort_by_key(|(name, _)| PROMISED.iter().position(|(words, _)| *words == name.words));
    let promises = ranked.into_iter().filter_map(|(name, relation)| {
        let value = answer(house, name.words, &[id]).ok()?.value;
        promise(house, id, name, relation, &value)
    });
    promises.take(MOST).collect()
}

fn promise(
    house: &House,
    id: ElementId,
    name: &FactNameSpec,
    relation: Relation,
    value: &FactValue,
) -> Option<Action> {
    let common = house.model.common(id)?;
    let fact = format!("{} {} {}", name.words, name.first.joined_by, common.name);
    let keep = format!("keep {fact} {} {}", relation.sign(), value.written("", None)?);
    let title = titled(&fact);
    let speaks_of_it = |intent: &&Intent| {
        *intent.common.name == *title
            || house.model.mentions.iter().any(|mention| {
                let place = intent.common.span;
                mention.target == id
                    && mention.span.file == place.file
                    && (place.start..place.end).contains(&mention.span.start)
            })
    };
    let edit = match house.model.intents.iter().find(speaks_of_it) {
        Some(intent) => lines::added(house, &intent.common, &keep)?,
        None => behind_element(house, common, &format!("intent \"{title}\"\n  {keep}\n"))?,
    };
    Some(Action::new(format!("promise `{keep}`"), ActionKind::Rewrite, vec![edit]))
}

/// `Clear height under main`.
fn titled(fact: &str) -> String {
    let mut letters = fact.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use crate::ide::actions::tests::{check, titles};

    const HOUSE: &str = r#"project "House"
floor main
  subfloor      100'-0"
  deck          3/4"
  finish      $0  oak 3/4"

sheet A-1
"#;

    #[test]
    fn a_new_intent_stands_behind_the_element() {
        let after = check(HOUSE, "promise `keep finish of main = 100'-0 3/4\"`");
        let intent = "\nintent \"Finish of main\"\n  keep          finish of main = 100'-0 3/4\"\n";
        assert_eq!(after, HOUSE.replace("$0", "").replace("oak 3/4\"\n", &format!("oak 3/4\"\n{intent}")));
    }

    #[test]
    fn an_intent_that_speaks_of_it_gets_the_line() {
        let text = format!("{HOUSE}intent \"Levels\"\n  keep          subfloor of main = 100'-0\"\n");
        let after = check(&text, "promise `keep finish of main = 100'-0 3/4\"`");
        assert_eq!(after, text.replace("$0", "") + "  keep          finish of main = 100'-0 3/4\"\n");
    }

    #[test]
    fn only_what_the_line_says() {
        let titles = titles(HOUSE);
        let promises: Vec<_> = titles.iter().filter(|title| title.starts_with("promise")).collect();
        assert_eq!(promises.len(), 1, "{promises:?}");
    }
}

//! Where what a name means is given.

use crate::house::House;
use crate::ide::jump::{Jump, Target, declared, elements, jump};
use crate::ide::meaning::{facts_of, mentions_in, named_at};
use crate::model::element::ElementId;
use crate::syntax::Fact;
use crate::syntax::value::{FactName, Value};
use crate::text::{FileId, Span};

/// Where the element, the grid line or the file that a place names is declared; a declaration leads to itself.
///
/// On a fact's words, as in `top of W2`, it is the line of that element which states the fact. A fact that is derived
/// leads to what it is about.
pub fn definition(house: &House, file: FileId, offset: u32) -> Option<Jump> {
    definition_of_name(house, file, offset).or_else(|| {
        let (from, fact) = fact_name_at(house, file, offset)?;
        let about = named_in(house, from);
        let stated = match about.as_slice() {
            [element] => stated(house, *element, &fact.fact),
            _ => None,
        };
        jump(from, stated.map_or_else(|| elements(house, about), |line| vec![line]))
    })
}

/// Where what a place names is declared. On a fact's words, always the elements that the fact is about.
pub fn declaration(house: &House, file: FileId, offset: u32) -> Option<Jump> {
    definition_of_name(house, file, offset).or_else(|| {
        let (from, _) = fact_name_at(house, file, offset)?;
        jump(from, elements(house, named_in(house, from)))
    })
}

fn definition_of_name(house: &House, file: FileId, offset: u32) -> Option<Jump> {
    let named = named_at(house, file, offset)?;
    jump(named.span, vec![declared(house, &named.meaning)?])
}

fn named_in(house: &House, place: Span) -> Vec<ElementId> {
    mentions_in(house, place).iter().map(|mention| mention.target).collect()
}

/// The fact of an element that is named at a place, and where.
fn fact_name_at(house: &House, file: FileId, offset: u32) -> Option<(Span, &FactName)> {
    let chunk = house.trees.get(file.0 as usize)?.chunk_at(offset)?;
    let named = chunk.body.facts.iter().flat_map(fact_names);
    named
        .map(|fact| (fact.span.within(file, chunk.start), fact))
        .find(|(span, fact)| span.touches(offset) && !fact.of.is_empty())
}

fn fact_names(fact: &Fact) -> Vec<&FactName> {
    let values = fact.parts.iter().map(|part| &part.value);
    let named = values.map(|value| match value {
        Value::FactName(name) => vec![&**name],
        Value::Comparison(comparison) => comparison.left.facts().chain(comparison.right.facts()).collect(),
        _ => Vec::new(),
    });
    named.flatten().collect()
}

/// The line of an element that states a fact.
fn stated(house: &House, element: ElementId, fact: &str) -> Option<Target> {
    let at = format!("{fact} at");
    let line = |phrase: &str| facts_of(house, element).find(|(line, _)| line.spec.phrase == phrase);
    let (line, whole) = line(&at).or_else(|| line(fact))?;
    let phrase = Span::new(whole.file, whole.start, whole.start + (line.phrase.end - line.phrase.start));
    Some(Target { name: phrase, whole })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::cursor::{at_cursor, text_around};

    type Question = fn(&House, FileId, u32) -> Option<Jump>;

    fn places(question: Question, fixture: &str) -> Vec<String> {
        let (snapshot, file, offset) = at_cursor(fixture);
        let jump = question(&snapshot.house, file, offset);
        let targets = jump.into_iter().flat_map(|jump| jump.to);
        targets.map(|target| text_around(&snapshot.house, target.name)).collect()
    }

    fn check(fixture: &str, expected: &str) {
        assert_eq!(places(definition, fixture), [expected]);
        assert_eq!(places(declaration, fixture), [expected]);
    }

    #[test]
    fn a_use_leads_to_the_heading() {
        check("project\ncolumn C1\n  stands on F$01\nfooting F1 \"Pad\"\n", "footing [F1] \"Pad\"");
        check("project\nbeam B1\n  size 3-ply L$0V\nproduct LV\n", "product [LV]");
        check(
            "project\ninclude \"b.framing\"\nsheet A-1\n  schedules B$01\n-- file b.framing\nbeam B1\n",
            "beam [B1]",
        );
        check("project\nfooting $0F1\n", "footing [F1]");
    }

    #[test]
    fn a_grid_line_leads_to_its_distance() {
        check("project\ngrid\n  x A 0', B 16'\n  y 1 0', 2 9'\ncolumn C1\n  at B$0/2\n", "x A 0', [B] 16'");
    }

    #[test]
    fn an_include_leads_to_the_first_line_of_its_file() {
        check("project\ninclude \"b.fra$0ming\"\n-- file b.framing\n-- Beams\nbeam B1\n", "[]-- Beams");
    }

    #[test]
    fn a_fact_leads_to_the_line_that_states_it() {
        let spec = "project\nwall W1\n  top  99'\n  thick 10\"\nsheet A-1\n  shows t$0op of W1 = 99'\n";
        assert_eq!(places(definition, spec), ["[top]  99'"]);
        assert_eq!(places(declaration, spec), ["wall [W1]"]);
        let derived = "project\nwall W1\n  stands on F1\nintent\n  keep half of bo$0ttom of W1 = 9'\n";
        check(derived, "wall [W1]");
        let two = "project\nfloor main\nfloor den\nhold point \"Sills\"\n  shoot dr$0op from main to den\n";
        assert_eq!(places(definition, two), ["floor [main]", "floor [den]"]);
        let placed = "project\nfloor main\n  finish oak 3/4\"\n  finish at 100'\nsheet A-1\n  shows fin$0ish of main = 100'\n";
        assert_eq!(places(definition, placed), ["[finish at] 100'"]);
    }

    #[test]
    fn nothing_leads_nowhere() {
        for fixture in [
            "project\nwall W1\n  thi$0ck 8\"\n",
            "project\nwall W1\n  stands on F$09\n",
            "project\nwall W1\n  cut sho$0uld be 8'\n",
            "$0",
        ] {
            assert_eq!(places(definition, fixture), [""; 0]);
        }
    }
}

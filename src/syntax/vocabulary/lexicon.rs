//! The words of the format by what they do, for whatever colours a text word by word.

use std::collections::BTreeSet;

use crate::syntax::facts::expressions;
use crate::syntax::facts::member::{GRADES, MAKES, SPECIES};
use crate::syntax::form::{Form, Kind};
use crate::syntax::lexer::unit_spellings;
use crate::syntax::names::JOINING;
use crate::syntax::value::Side;
use crate::syntax::vocabulary::{CLAIM, COMMON, ELEMENTS, ElementSpec, FACT_NAMES, FactSpec};

/// A word or several, as they stand in a text.
pub type Phrases = BTreeSet<&'static str>;

/// What opens a line in the first column and names a file: `include`.
pub const INCLUDE: &str = "include";

/// What opens an element.
pub fn openings(spec: &ElementSpec) -> Phrases {
    spec.also.iter().copied().chain([spec.keyword]).collect()
}

/// What begins a fact of an element, without its claims.
pub fn fact_phrases(spec: &ElementSpec) -> Phrases {
    spec.all_facts().map(|fact| fact.phrase).collect()
}

/// What names a fact in comparisons and claims: `clear span`.
pub fn fact_names() -> Phrases {
    FACT_NAMES.iter().map(|name| name.words).collect()
}

/// What narrows a named fact to one load case.
pub fn cases() -> Phrases {
    expressions::CASES.iter().copied().collect()
}

/// What joins the parts of a line and leaves no trace in the house: `for`, `dia at`, `should be`.
pub fn joining() -> Phrases {
    let mut words = JOINING.iter().copied().chain(["plus", "less", "times", "half of"]).collect();
    let arguments = FACT_NAMES.iter().flat_map(|name| name.arguments()).map(|argument| argument.joined_by);
    Phrases::extend(&mut words, arguments);
    each_form(|form| {
        if let Form::Words(phrase) = form {
            words.insert(phrase);
        }
    });
    words
}

/// What a line chooses among: `concrete`, `by grid`, `north`.
pub fn choices() -> Phrases {
    let mut words = sides();
    each_form(|form| match form {
        Form::Mark(phrase) => _ = words.insert(phrase),
        Form::Slot(_, Kind::Word(phrases)) => words.extend(*phrases),
        _ => {}
    });
    words
}

/// What a member is made of and made as, its grade, and the sections that a word gives away.
pub fn stuff() -> Phrases {
    let sections = ["treated", "HSS", "pipe", "filled pipe", "class"];
    [MAKES, SPECIES, GRADES, &sections].into_iter().flatten().copied().collect()
}

/// What a member is made as, when it is not sawn.
pub fn makes() -> Phrases {
    MAKES.iter().copied().collect()
}

/// Stamps of species and their groups.
pub fn species() -> Phrases {
    SPECIES.iter().copied().collect()
}

/// Grades that are words.
pub fn grades() -> Phrases {
    GRADES.iter().copied().collect()
}

/// The sides of a thing in plan.
pub fn sides() -> Phrases {
    Side::ALL.iter().map(|side| side.word()).collect()
}

/// The units written in letters.
pub fn units() -> Phrases {
    units_by_measure().into_iter().flatten().collect()
}

/// The units of lengths, loads, stresses and areas, in this order.
pub fn units_by_measure() -> [Phrases; 4] {
    unit_spellings().map(|spellings| spellings.into_iter().collect())
}

/// Calls `found` for every form of every fact, and for each form inside it.
fn each_form(mut found: impl FnMut(&Form)) {
    fn walk(form: &Form, found: &mut impl FnMut(&Form)) {
        found(form);
        match form {
            Form::Nothing | Form::Words(_) | Form::Mark(_) | Form::Slot(..) | Form::Comma => {}
            Form::Optional(inner) | Form::List(inner) => walk(inner, found),
            Form::Sequence(parts) | Form::OneOf(parts) => parts.iter().for_each(|part| walk(part, found)),
        }
    }
    let facts = ELEMENTS.iter().flat_map(|spec| spec.facts).chain(COMMON).chain([&CLAIM]);
    facts.for_each(|fact: &FactSpec| walk(&fact.form, &mut found));
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::syntax::vocabulary::{ElementKind, spec_of};

    #[test]
    fn a_word_is_found_where_it_belongs() {
        assert!(openings(spec_of(ElementKind::Column)).contains("post"));
        let beam = fact_phrases(spec_of(ElementKind::Beam));
        assert!(["bears on", "waive", "from"].iter().all(|phrase| beam.contains(phrase)), "{beam:?}");
        assert!(fact_names().contains("clear span") && cases().contains("all"));
        assert!(["for", "dia at", "times", "between"].iter().all(|word| joining().contains(word)));
        assert!(
            ["pony", "by grid", "north", "book room", "outside"].iter().all(|word| choices().contains(word))
        );
        assert!(["I-joist", "SPF", "No.2", "treated"].iter().all(|word| stuff().contains(word)));
        assert!(["mm", "kN/m", "ksi", "sq ft"].iter().all(|unit| units().contains(unit)));
    }
}

//! What a line says, apart from how it is spelled: `14 in` and `1'-2"` say the same, and so do a line and the same line
//! after a rename.

use std::collections::HashMap;

use crate::syntax::Fact;
use crate::syntax::value::{
    Comparison, Expression, FactName, GridRef, Load, Member, Point, Section, Sign, Term, Value, Within,
};
use crate::syntax::vocabulary::ElementKind;

/// The names of the old spec that the new one has otherwise.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Renames {
    /// Elements.
    pub elements: HashMap<Box<str>, Box<str>>,
    /// Grid lines.
    pub grid_lines: HashMap<Box<str>, Box<str>>,
}

impl Renames {
    /// The name that an element of the old spec has now.
    pub fn element<'n>(&'n self, name: &'n str) -> &'n str {
        self.elements.get(name).map_or(name, |name| name)
    }

    /// A text of the old spec, or about it, with the names that its elements have now.
    pub fn text(&self, text: &str) -> String {
        let is_of_name =
            |character: char| character.is_alphanumeric() || matches!(character, '_' | '-' | '.');
        let mut renamed = String::new();
        for word in text.split_inclusive(|character| !is_of_name(character)) {
            let name = word.trim_end_matches(|character| !is_of_name(character));
            renamed.push_str(self.element(name));
            renamed.push_str(word.get(name.len()..).unwrap_or(""));
        }
        renamed
    }

    /// The name that a grid line of the old spec has now.
    pub fn grid_line<'n>(&'n self, name: &'n str) -> &'n str {
        self.grid_lines.get(name).map_or(name, |name| name)
    }
}

/// Which of two specs a line is in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// The old one: its names are read as those of the new.
    Old,
    /// The new one.
    New,
}

/// The meaning of a fact in an element of this kind: equal texts for equal meanings. Words in quotes may speak of a
/// thing by its old name still, or by its new one: they mean the same.
pub fn meaning(kind: ElementKind, fact: &Fact, side: Side, renames: &Renames) -> String {
    let none = Renames::default();
    let mut writer = Writer {
        text: fact.spec.phrase.to_owned(),
        names: if side == Side::Old { renames } else { &none },
        in_texts: renames,
        names_are_lines: kind == ElementKind::Grid,
    };
    for part in &fact.parts {
        writer.word(part.label);
        writer.value(&part.value);
    }
    writer.text
}

struct Writer<'r> {
    text: String,
    names: &'r Renames,
    in_texts: &'r Renames,
    names_are_lines: bool,
}

impl Writer<'_> {
    fn word(&mut self, word: &str) {
        self.text.push('\u{1f}');
        self.text.push_str(word);
    }

    /// Loads in other units are equal to six figures, more than anyone writes.
    fn number(&mut self, number: f64) {
        self.word(&format!("{number:.5e}"));
    }

    fn element(&mut self, name: &str) {
        let names = self.names;
        self.word(names.element(name));
    }

    fn value(&mut self, value: &Value) {
        match value {
            Value::Mark => {}
            Value::Length(length) => self.word(&length.to_units().to_string()),
            Value::Load(load) => self.load(*load),
            Value::Stress(stress) => self.number(stress.to_psi()),
            Value::Area(area) => self.number(area.to_sq_ft()),
            Value::Date(date) => self.word(&date.to_string()),
            Value::Text(text) => {
                let text = self.in_texts.text(text);
                self.word(&text);
            }
            Value::Word(text) => self.word(text),
            Value::Count(count) => self.number(f64::from(*count)),
            Value::Number(number) | Value::Percent(number) => self.number(*number),
            Value::Name(name) if self.names_are_lines => self.grid_line(name),
            Value::Name(name) => self.element(name),
            Value::GridRef(place) => self.grid_ref(place),
            Value::Point(point) => self.point(point),
            Value::Rect(rect) => {
                [&rect.x_from, &rect.x_to, &rect.y_from, &rect.y_to]
                    .into_iter()
                    .for_each(|at| self.grid_ref(at));
            }
            Value::Line(line) => [&line.from, &line.to].into_iter().for_each(|at| self.point(at)),
            Value::Side(side) => self.word(side.word()),
            Value::Dimensions(lengths) => {
                lengths.iter().for_each(|length| self.word(&length.to_units().to_string()));
            }
            Value::Member(member) => self.member(member),
            Value::Bar(number) => self.word(&number.to_string()),
            Value::FactName(fact) => self.fact_name(fact),
            Value::Comparison(comparison) => self.comparison(comparison),
        }
    }

    fn load(&mut self, load: Load) {
        let (on, number) = match load {
            Load::Area(load) => ("area", load.to_psf()),
            Load::Line(load) => ("line", load.to_plf()),
            Load::Point(load) => ("point", load.to_lb()),
            Load::Volume(load) => ("volume", load.to_pcf()),
        };
        self.word(on);
        self.number(number);
    }

    fn grid_line(&mut self, name: &str) {
        let names = self.names;
        self.word(names.grid_line(name));
    }

    fn grid_ref(&mut self, place: &GridRef) {
        self.grid_line(&place.line);
        self.word(&place.offset.to_units().to_string());
    }

    fn point(&mut self, point: &Point) {
        self.grid_ref(&point.x);
        self.grid_ref(&point.y);
    }

    fn member(&mut self, member: &Member) {
        self.word(&member.plies.to_string());
        match &member.section {
            Section::Product(name) => self.element(name),
            section => self.word(&format!("{section:?}")),
        }
        for words in [&member.make, &member.species, &member.grade] {
            self.word(words.as_deref().unwrap_or_default());
        }
        self.word(if member.is_treated { "treated" } else { "" });
    }

    fn fact_name(&mut self, fact: &FactName) {
        self.word(fact.case.as_deref().unwrap_or_default());
        self.word(&fact.fact);
        fact.of.iter().for_each(|(name, _)| self.element(name));
    }

    fn comparison(&mut self, comparison: &Comparison) {
        self.expression(&comparison.left);
        self.word(comparison.relation.sign());
        self.expression(&comparison.right);
        match comparison.within {
            Some(Within::Length(length)) => self.word(&length.to_units().to_string()),
            Some(Within::Load(load)) => self.load(load),
            None => {}
        }
    }

    fn expression(&mut self, expression: &Expression) {
        for (sign, term) in &expression.terms {
            self.word(match sign {
                Sign::Plus => "plus",
                Sign::Less => "less",
            });
            self.term(term);
        }
    }

    fn term(&mut self, term: &Term) {
        match term {
            Term::Value(value) => self.value(value),
            Term::Fact(fact) => self.fact_name(fact),
            Term::Times(times, fact) => {
                self.number(*times);
                self.fact_name(fact);
            }
            Term::Half(inner) => {
                self.word("half");
                self.term(inner);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::syntax::{Opening, parse_fresh};

    /// The meaning of the only line of an element.
    fn meant(heading: &str, line: &str, side: Side, renames: &Renames) -> String {
        let tree = parse_fresh(&format!("{heading}\n  {line}\n"));
        let body = &tree.chunks[0].body;
        let Opening::Element(opening) = &body.opening else { panic!("{heading}") };
        meaning(opening.kind, &body.facts[0], side, renames)
    }

    #[test]
    fn spelling_does_not_count_and_sense_does() {
        let none = Renames::default();
        for (heading, one, other, same) in [
            ("wall W1", "thick 14 in", "thick 1'-2\"", true),
            ("wall W1", "thick 14\"", "thick 14-1/16\"", false),
            ("beam B1", "from A plus 12\" / 1 to C/1", "from  A plus 1' / 1 to C / 1", true),
            ("beam B1", "size W8x24", "size W8×24", true),
            ("beam B1", "size (2) 2x10 SPF #2", "size 2 of 2x10 SPF No.2", true),
            ("beam B1", "size 2 of 2x10 SPF No.2", "size 2 of 2x10 SPF No.1", false),
            ("floor main", "live 1.915 kPa", "live 1.915 kPa -- forty", true),
            ("floor main", "live 40 psf", "live 40 plf", false),
            ("intent \"I\"", "keep top of W1 >= 9' plus 0'", "keep top of W1 >= 108\" plus 0\"", true),
            ("intent \"I\"", "keep top of W1 >= 9'", "keep top of W1 > 9'", false),
        ] {
            assert_eq!(
                meant(heading, one, Side::Old, &none) == meant(heading, other, Side::New, &none),
                same,
                "{one} | {other}"
            );
        }
    }

    #[test]
    fn a_renamed_thing_means_the_same() {
        let renames = Renames {
            elements: HashMap::from([("W1".into(), "W9".into())]),
            grid_lines: HashMap::from([("A".into(), "P".into())]),
        };
        let none = Renames::default();
        for (heading, old, new) in [
            ("joists J1", "bears on W1 for 3\"", "bears on W9 for 3\""),
            ("sheet S-1", "shows top of W1 less top of A = 3\"", "shows top of W9 less top of A = 3\""),
            ("beam B1", "from A/1 to C/1", "from P/1 to C/1"),
            ("grid", "x A 0', B 12'", "x P 0', B 12'"),
            ("beam B1", "load 60 plf dead \"stair on W1\"", "load 60 plf dead \"stair on W9\""),
        ] {
            assert_eq!(
                meant(heading, old, Side::Old, &renames),
                meant(heading, new, Side::New, &renames),
                "{old}"
            );
            assert_ne!(meant(heading, old, Side::Old, &none), meant(heading, new, Side::New, &none), "{old}");
        }
    }
}

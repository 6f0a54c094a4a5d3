//! Facts in canonical words: one spelling for each meaning, whatever the text's own. `14 in` and `1'-2"` say the same.

use crate::compare::meaning::Renames;
use crate::syntax::Fact;
use crate::syntax::form::{Form, Kind};
use crate::syntax::value::{
    Comparison, Expression, FactName, GridRef, Load, Member, Point, Section, Sign, Term, Value, Within,
};
use crate::syntax::vocabulary::{ElementKind, FACT_NAMES};
use crate::units::Length;

/// From here up a length is told in feet and inches, but for an elevation, which always is.
const IN_FEET_FROM: Length = Length::feet(4);

/// Who tells values.
pub(super) struct Teller<'r> {
    /// How elements and grid lines are named.
    pub names: &'r Renames,
    /// How things are named inside quotes.
    pub in_texts: &'r Renames,
    /// A plain name is that of a grid line.
    pub names_are_lines: bool,
}

/// A fact that stands in an element of this kind: its phrase, and what stands behind it. `text` is the text of the chunk.
pub(super) fn line(kind: ElementKind, fact: &Fact, text: &str) -> String {
    let none = Renames::default();
    let teller = Teller { names: &none, in_texts: &none, names_are_lines: kind == ElementKind::Grid };
    let mut line = String::new();
    let mut told = fact.span.start;
    for part in &fact.parts {
        push_words(&mut line, between(text, told, part.span.start));
        push_words(
            &mut line,
            &match &part.value {
                Value::Mark => between(text, part.span.start, part.span.end).to_owned(),
                Value::Length(length) if is_elevation(&fact.spec.form, part.label) => in_feet(*length),
                value => teller.value(value),
            },
        );
        told = part.span.end.max(told);
    }
    push_words(&mut line, between(text, told, fact.span.end));
    line
}

fn between(text: &str, start: u32, end: u32) -> &str {
    text.get(start as usize..end as usize).unwrap_or("")
}

/// Puts words behind a text, with single blanks, and none before a comma.
fn push_words(line: &mut String, words: &str) {
    for word in words.split_whitespace() {
        if !line.is_empty() && !word.starts_with(',') {
            line.push(' ');
        }
        line.push_str(word);
    }
}

/// The value that a form keeps under this label is an elevation.
fn is_elevation(form: &Form, label: &str) -> bool {
    match form {
        Form::Slot(of, kind) => *of == label && *kind == Kind::Elevation,
        Form::Sequence(forms) | Form::OneOf(forms) => forms.iter().any(|form| is_elevation(form, label)),
        Form::Optional(form) | Form::List(form) => is_elevation(form, label),
        Form::Nothing | Form::Words(_) | Form::Mark(_) | Form::Comma => false,
    }
}

impl Teller<'_> {
    pub fn value(&self, value: &Value) -> String {
        match value {
            Value::Mark => String::new(),
            Value::Length(length) => self::length(*length),
            Value::Load(load) => self::load(*load),
            Value::Stress(stress) => format!("{} psi", figures(stress.to_psi())),
            Value::Area(area) => format!("{} sq ft", figures(area.to_sq_ft())),
            Value::Date(date) => date.to_string(),
            Value::Text(text) => format!("\"{}\"", self.in_texts.text(text)),
            Value::Word(text) => text.to_string(),
            Value::Count(count) => figures(f64::from(*count)),
            Value::Number(number) => figures(*number),
            Value::Percent(share) => format!("{}%", figures(*share)),
            Value::Name(name) if self.names_are_lines => self.names.grid_line(name).to_owned(),
            Value::Name(name) => self.names.element(name).to_owned(),
            Value::GridRef(place) => self.grid_ref(place),
            Value::Point(point) => self.point(point),
            Value::Rect(rect) => format!(
                "{} to {} by {} to {}",
                self.grid_ref(&rect.x_from),
                self.grid_ref(&rect.x_to),
                self.grid_ref(&rect.y_from),
                self.grid_ref(&rect.y_to)
            ),
            Value::Line(line) => format!("{} to {}", self.point(&line.from), self.point(&line.to)),
            Value::Side(side) => side.word().to_owned(),
            Value::Dimensions(lengths) => {
                lengths.iter().map(|side| self::length(*side)).collect::<Vec<_>>().join(" x ")
            }
            Value::Member(member) => self.member(member),
            Value::Bar(number) => format!("#{number}"),
            Value::FactName(fact) => self.fact_name(fact),
            Value::Comparison(comparison) => self.comparison(comparison),
        }
    }

    fn grid_ref(&self, place: &GridRef) -> String {
        let line = self.names.grid_line(&place.line);
        match place.offset {
            Length::ZERO => line.to_owned(),
            below if below.is_negative() => format!("{line} less {}", length(below.abs())),
            beyond => format!("{line} plus {}", length(beyond)),
        }
    }

    fn point(&self, point: &Point) -> String {
        let is_open = [&point.x, &point.y].iter().any(|place| place.offset != Length::ZERO);
        let slash = if is_open { " / " } else { "/" };
        format!("{}{slash}{}", self.grid_ref(&point.x), self.grid_ref(&point.y))
    }

    fn member(&self, member: &Member) -> String {
        let plies = (member.plies != 1).then(|| format!("{} of", member.plies));
        let treated = member.is_treated.then(|| "treated".to_owned());
        let stuff =
            [&member.make, &member.species, &member.grade].map(|words| words.as_deref().map(str::to_owned));
        let words = [plies, Some(self.section(&member.section))].into_iter().chain(stuff).chain([treated]);
        words.flatten().collect::<Vec<_>>().join(" ")
    }

    fn section(&self, section: &Section) -> String {
        match section {
            Section::Nominal(width, depth) => format!("{width}x{depth}"),
            Section::Built(width, depth) => format!("{} x {}", length(*width), length(*depth)),
            Section::Depth(depth) => length(*depth),
            Section::Rolled(mark) => mark.replace('X', "x"),
            Section::Tube(one, other, wall) => {
                format!("HSS {} x {} x {}", length(*one), length(*other), length(*wall))
            }
            Section::Pipe(outside, wall) => format!("pipe {} x {}", length(*outside), length(*wall)),
            Section::FilledPipe(outside) => format!("filled pipe {}", length(*outside)),
            Section::Product(name) => self.names.element(name).to_owned(),
        }
    }

    fn fact_name(&self, fact: &FactName) -> String {
        let spec = FACT_NAMES
            .iter()
            .find(|spec| *spec.words == *fact.fact && spec.arguments().count() == fact.of.len());
        let case = fact.case.as_ref().map(|case| format!("{case} ")).unwrap_or_default();
        let joined = spec.into_iter().flat_map(|spec| spec.arguments()).zip(&fact.of);
        let of: String = joined
            .map(|(argument, (name, _))| format!(" {} {}", argument.joined_by, self.names.element(name)))
            .collect();
        format!("{case}{}{of}", fact.fact)
    }

    fn comparison(&self, comparison: &Comparison) -> String {
        let sides = format!(
            "{} {} {}",
            self.expression(&comparison.left),
            comparison.relation.sign(),
            self.expression(&comparison.right)
        );
        match comparison.within {
            Some(Within::Length(by)) => format!("{sides} within {}", length(by)),
            Some(Within::Load(by)) => format!("{sides} within {}", load(by)),
            None => sides,
        }
    }

    fn expression(&self, expression: &Expression) -> String {
        let mut text = String::new();
        for (sign, term) in &expression.terms {
            match (sign, text.is_empty()) {
                (Sign::Plus, true) => {}
                (Sign::Plus, false) => text.push_str(" plus "),
                (Sign::Less, _) => text.push_str(" less "),
            }
            text.push_str(&self.term(term));
        }
        text
    }

    fn term(&self, term: &Term) -> String {
        match term {
            Term::Value(value) => self.value(value),
            Term::Fact(fact) => self.fact_name(fact),
            Term::Times(times, fact) => format!("{} times {}", figures(*times), self.fact_name(fact)),
            Term::Half(inner) => format!("half of {}", self.term(inner)),
        }
    }
}

/// Loads in other units are equal to six figures, more than anyone writes.
fn figures(number: f64) -> String {
    let shown = format!("{number:.5e}");
    shown.parse::<f64>().map_or(shown, |rounded| rounded.to_string())
}

fn load(load: Load) -> String {
    match load {
        Load::Area(load) => format!("{} psf", figures(load.to_psf())),
        Load::Line(load) => format!("{} plf", figures(load.to_plf())),
        Load::Point(load) => format!("{} lb", figures(load.to_lb())),
        Load::Volume(load) => format!("{} pcf", figures(load.to_pcf())),
    }
}

fn length(length: Length) -> String {
    if length.abs() < IN_FEET_FROM {
        exact(length, length.in_inches().to_the(64).to_string())
    } else {
        in_feet(length)
    }
}

fn in_feet(length: Length) -> String {
    exact(length, length.in_feet().to_the(64).to_string())
}

/// The print, unless it had to round: then decimals, which give back every length to the exact unit, in inches or in
/// millimetres.
fn exact(length: Length, print: String) -> String {
    // 203,200 units to the inch are 127 times a number that has no factors but 2 and 5.
    let is_decimal_inches = length.to_units() % 127 == 0;
    match print.ends_with('~') {
        false => print,
        true if is_decimal_inches => format!("{}\"", length.to_inches()),
        true => format!("{} mm", length.to_units() as f64 / Length::UNITS_PER_MM as f64),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::syntax::{Opening, parse_fresh};

    #[test]
    fn one_spelling_for_what_means_the_same() {
        for (heading, written, canonical) in [
            ("wall W1", "thick 14 in", "thick 14\""),
            ("wall W1", "thick 1'-2\"", "thick 14\""),
            ("wall W1", "thick 200 mm", "thick 200 mm"),
            ("wall W1", "thick 254mm", "thick 10\""),
            ("wall W1", "thick 7.93\"", "thick 7.93\""),
            ("wall W1", "top 18 in", "top 1'-6\""),
            ("wall W1", "top -14\"", "top -1'-2\""),
            ("wall W1", "from  A plus 30\"/1   to C/1", "from A plus 30\" / 1 to C/1"),
            ("joists J1", "size (2) 2x10 SPF #2", "size 2 of 2x10 SPF No.2"),
            ("joists J1", "fill A to B less 5'-0\" by 1 to 2", "fill A to B less 5'-0\" by 1 to 2"),
            ("joists J1", "spacing 16\" o.c. from A", "spacing 16\" from A"),
            ("beam B1", "size W8×24", "size W8x24"),
            ("beam B1", "set flush in main , held 1/2\" low", "set flush in main, held 1/2\" low"),
            ("beam B1", "size 1-3/4 x 16 LVL", "size 1-3/4\" x 16\" LVL"),
            ("column C1", "size HSS 4x4x3/16", "size HSS 4\" x 4\" x 3/16\""),
            (
                "column C1",
                "cut should be 96-5/16\" within 0.0625\"",
                "cut should be 8'-0 5/16\" within 1/16\"",
            ),
            ("footing F1", "bars 4 #5 each way, cover 3\"", "bars 4 #5 each way, cover 3\""),
            // 1 psf is 47.880259 Pa.
            ("floor main", "live 1.915 kPa", "live 39.9956 psf"),
            ("grid", "x A 0', B 16 ft", "x A 0\", B 16'-0\""),
            (
                "intent \"I\"",
                "keep top of W1 less half of 9\" >= 9'",
                "keep top of W1 less half of 9\" >= 9'-0\"",
            ),
            (
                "sheet S-1",
                "shows live reaction of B1 on C1 = 12 kip",
                "shows live reaction of B1 on C1 = 12000 lb",
            ),
        ] {
            let text = format!("{heading}\n  {written}\n");
            let body = &parse_fresh(&text).chunks[0].body;
            let Opening::Element(opening) = &body.opening else { panic!("{heading}") };
            let fact = body.facts.first().unwrap_or_else(|| panic!("{written}: {:?}", body.problems));
            assert_eq!(line(opening.kind, fact, &text), canonical, "{written}");
        }
    }
}

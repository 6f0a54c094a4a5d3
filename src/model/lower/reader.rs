//! Reads the facts of one element.

use crate::model::element::{Reference, SourceNote};
use crate::model::field::{Assumption, Field, Given};
use crate::model::lower::names::{Entry, Lowering};
use crate::model::problem::ModelProblemKind;
use crate::syntax::form::{Form, Kind};
use crate::syntax::value::{FactName, Load, Value};
use crate::syntax::vocabulary::{ElementKind, FACT_NAMES};
use crate::syntax::{Fact, Part};
use crate::text::{LocalSpan, Span};
use crate::units::{AreaLoad, Density, Force, Length, LineLoad};

/// Reads the facts of one element into the model.
pub struct Reader<'a, 't> {
    /// The model so far.
    pub lowering: &'a mut Lowering<'t>,
    /// The element.
    pub entry: &'a Entry<'t>,
    /// Some of its lines could not be read even as far as their phrase.
    pub has_unread_lines: bool,
}

impl<'a, 't> Reader<'a, 't> {
    /// A reader of one element.
    pub fn new(lowering: &'a mut Lowering<'t>, entry: &'a Entry<'t>) -> Self {
        let has_unread_lines = entry.chunk.body.broken.iter().any(|broken| broken.phrase.is_none());
        Self { lowering, entry, has_unread_lines }
    }

    /// The first fact of this phrase.
    pub fn fact(&self, phrase: &str) -> Option<&'t Fact> {
        self.facts(phrase).next()
    }

    /// Every fact of this phrase.
    pub fn facts<'p>(&self, phrase: &'p str) -> impl Iterator<Item = &'t Fact> + use<'p, 't> {
        self.entry.chunk.body.facts.iter().filter(move |fact| fact.spec.phrase == phrase)
    }

    /// The value of a fact that stands once; [`Field::Broken`] when its line can't be read or its value is `None`.
    pub fn field<T>(
        &mut self,
        phrase: &str,
        read: impl FnOnce(&mut Self, &'t Fact) -> Option<T>,
    ) -> Field<T> {
        match self.fact(phrase) {
            Some(fact) => self.field_of(fact, read),
            None => self.broken(phrase).map_or(Field::Missing, Field::Broken),
        }
    }

    /// The value of this fact.
    pub fn field_of<T>(
        &mut self,
        fact: &'t Fact,
        read: impl FnOnce(&mut Self, &'t Fact) -> Option<T>,
    ) -> Field<T> {
        let span = self.value_span(fact);
        read(self, fact).map_or(Field::Broken(span), |value| Field::Stated(value, span))
    }

    /// The values of a fact that may be repeated, each with its line.
    pub fn given<T>(
        &mut self,
        phrase: &str,
        mut read: impl FnMut(&mut Self, &'t Fact) -> Option<T>,
    ) -> Vec<Given<T>> {
        self.list(phrase, |reader, fact| {
            let span = reader.span(fact.span);
            read(reader, fact).map(|value| Given { value, span })
        })
    }

    /// The values of a fact that may be repeated and that hold their places themselves.
    pub fn list<T>(
        &mut self,
        phrase: &str,
        mut read: impl FnMut(&mut Self, &'t Fact) -> Option<T>,
    ) -> Vec<T> {
        self.facts(phrase).filter_map(|fact| read(self, fact)).collect()
    }

    /// The line of a fact of this phrase that can't be read.
    pub fn broken(&self, phrase: &str) -> Option<Span> {
        let broken = self.entry.chunk.body.broken.iter().find(|broken| broken.phrase == Some(phrase))?;
        Some(self.span(broken.span))
    }

    /// True when nothing says this fact: it does not stand, and no line that can't be read might be it.
    pub fn is_missing(&self, phrase: &str) -> bool {
        self.fact(phrase).is_none() && self.broken(phrase).is_none() && !self.has_unread_lines
    }

    /// Reports a fact that the element needs and that nothing says.
    pub fn need(&mut self, phrase: &'static str) {
        if self.is_missing(phrase) {
            let (_, name) = self.entry.name();
            self.report(name, ModelProblemKind::FactMissing(phrase));
        }
    }

    /// Reports the later of two facts that both decide the same thing.
    pub fn decide_once(&mut self, one: &'static str, other: &'static str) {
        let (Some(one), Some(other)) = (self.fact(one), self.fact(other)) else { return };
        let (first, second) = if one.span <= other.span { (one, other) } else { (other, one) };
        let kind = ModelProblemKind::DecidedTwice(first.spec.phrase, self.span(first.span));
        self.report(self.span(second.span), kind);
    }

    /// Notes what can't be made sense of in this element.
    pub fn report(&mut self, span: Span, kind: ModelProblemKind) {
        self.lowering.report(span, Some(self.entry.id), kind);
    }

    /// A place in the element's text as a place in its file.
    pub fn span(&self, local: LocalSpan) -> Span {
        self.entry.span(local)
    }

    /// Where a fact's value stands: its only or main value, else all behind the phrase.
    fn value_span(&self, fact: &Fact) -> Span {
        let mut main = fact.parts_of("value");
        let main = match (main.next(), main.next(), fact.parts.as_slice()) {
            (Some(value), None, _) | (None, _, [value]) => value.span,
            _ => fact.value,
        };
        self.span(main)
    }

    /// A length that must be more than nothing.
    pub fn positive(&mut self, fact: &Fact, label: &str) -> Option<Length> {
        let length = fact.length(label)?;
        self.is_positive(fact, label, &[length]).then_some(length)
    }

    /// A length that may be nothing.
    pub fn not_negative(&mut self, fact: &Fact, label: &str) -> Option<Length> {
        let part = fact.part(label)?;
        let length = fact.length(label)?;
        if length.is_negative() {
            self.report(self.span(part.span), ModelProblemKind::Negative(fact.spec.phrase));
            return None;
        }
        Some(length)
    }

    /// Lengths parted by ` x `, this many, all more than nothing.
    pub fn dimensions<const N: usize>(&mut self, fact: &Fact, label: &str) -> Option<[Length; N]> {
        let lengths: [Length; N] = fact.dimensions(label)?.try_into().ok()?;
        self.is_positive(fact, label, &lengths).then_some(lengths)
    }

    /// A whole number that must be more than nothing.
    pub fn count(&mut self, fact: &Fact, label: &str) -> Option<u32> {
        let count = fact.count(label)?;
        if count == 0 {
            let span = self.part_span(fact, label);
            self.report(span, ModelProblemKind::NotPositive(fact.spec.phrase));
            return None;
        }
        Some(count)
    }

    /// True when all are more than nothing; else it is reported.
    pub fn is_positive(&mut self, fact: &Fact, label: &str, lengths: &[Length]) -> bool {
        let is_positive = lengths.iter().all(|length| length.is_positive());
        if !is_positive {
            let span = self.part_span(fact, label);
            self.report(span, ModelProblemKind::NotPositive(fact.spec.phrase));
        }
        is_positive
    }

    /// Where a part stands; the whole fact when it does not.
    pub fn part_span(&self, fact: &Fact, label: &str) -> Span {
        self.span(fact.part(label).map_or(fact.span, |part| part.span))
    }

    /// Words, in quotes or not.
    pub fn words(&self, fact: &Fact, label: &str) -> Option<Box<str>> {
        words_of(fact.part(label)?)
    }

    /// A load of any kind; one that pulls up is reported.
    pub fn load(&mut self, fact: &Fact, label: &str) -> Option<Load> {
        let load = fact.load(label)?;
        let is_upward = match load {
            Load::Area(load) => load < AreaLoad::ZERO,
            Load::Line(load) => load < LineLoad::ZERO,
            Load::Point(force) => force < Force::ZERO,
            Load::Volume(density) => density < Density::ZERO,
        };
        if is_upward {
            let span = self.part_span(fact, label);
            self.report(span, ModelProblemKind::Negative(fact.spec.phrase));
            return None;
        }
        Some(load)
    }

    /// A load on an area.
    pub fn area_load(&mut self, fact: &Fact, label: &str) -> Option<AreaLoad> {
        match self.load(fact, label)? {
            Load::Area(load) => Some(load),
            Load::Line(_) | Load::Point(_) | Load::Volume(_) => self.other_load(fact, label, "psf"),
        }
    }

    /// A force.
    pub fn force(&mut self, fact: &Fact, label: &str) -> Option<Force> {
        match self.load(fact, label)? {
            Load::Point(force) => Some(force),
            Load::Area(_) | Load::Line(_) | Load::Volume(_) => self.other_load(fact, label, "lb"),
        }
    }

    /// Reports a load of another kind than the fact takes.
    pub fn other_load<T>(&mut self, fact: &Fact, label: &str, takes: &'static str) -> Option<T> {
        let span = self.part_span(fact, label);
        self.report(span, ModelProblemKind::LoadOfOtherKind(takes));
        None
    }

    /// Where the values of a fact come from.
    pub fn source(&self, fact: &Fact) -> Option<SourceNote> {
        let document = fact.text("source")?.into();
        Some(SourceNote { document, on: fact.date("source-date") })
    }

    /// The element that a part names; the fact's form says which kinds it can be.
    pub fn reference(&mut self, fact: &Fact, label: &str) -> Option<Reference> {
        let part = fact.part(label)?;
        self.reference_of(part, first_kinds(fact, label))
    }

    /// Every element that the parts of this label name.
    pub fn references(&mut self, fact: &'t Fact, label: &str) -> Vec<Reference> {
        let kinds = first_kinds(fact, label);
        fact.parts
            .iter()
            .filter(|part| part.label == label)
            .filter_map(|part| self.reference_of(part, kinds))
            .collect()
    }

    /// The element of one of these kinds that a part names.
    pub fn reference_of(&mut self, part: &Part, kinds: &'static [ElementKind]) -> Option<Reference> {
        let mut reference = self.carrying(part, kinds)?;
        if reference.target == Some(self.entry.id) {
            self.report(reference.span, ModelProblemKind::RefersToItself);
            reference.target = None;
        }
        Some(reference)
    }

    /// The element of one of these kinds that carries this one, or is said to; one that carries itself is a circle like
    /// any other in the load path.
    pub fn carrying(&mut self, part: &Part, kinds: &'static [ElementKind]) -> Option<Reference> {
        let Value::Name(name) = &part.value else { return None };
        let span = self.span(part.span);
        let target = self.lowering.resolve(name, span, kinds, self.entry.id);
        Some(Reference { name: name.clone(), span, target })
    }

    /// The elements that a fact's name is about, in the order named.
    pub fn elements_of(&mut self, name: &FactName) -> Vec<Reference> {
        let spec = FACT_NAMES
            .iter()
            .find(|spec| *spec.words == *name.fact && spec.arguments().count() == name.of.len());
        let mut kinds = spec.into_iter().flat_map(|spec| spec.arguments()).map(|argument| argument.kinds);
        let mut elements = Vec::new();
        for (element, span) in &name.of {
            let span = self.span(*span);
            let target = self.lowering.resolve(element, span, kinds.next().unwrap_or(&[]), self.entry.id);
            elements.push(Reference { name: element.clone(), span, target });
        }
        elements
    }
}

/// The words of a part, in quotes or not.
pub fn words_of(part: &Part) -> Option<Box<str>> {
    match &part.value {
        Value::Word(words) | Value::Text(words) | Value::Name(words) => Some(words.clone()),
        _ => None,
    }
}

/// The kinds that each slot of this label can name, in the order of the form.
pub fn kinds_named(form: &Form, label: &str) -> Vec<&'static [ElementKind]> {
    let mut found = Vec::new();
    collect_kinds(form, label, &mut found);
    found
}

/// The kinds that the first slot of this label can name.
pub fn first_kinds(fact: &Fact, label: &str) -> &'static [ElementKind] {
    kinds_named(&fact.spec.form, label).first().copied().unwrap_or(&[])
}

fn collect_kinds(form: &Form, label: &str, found: &mut Vec<&'static [ElementKind]>) {
    match form {
        Form::Slot(name, Kind::Name(kinds)) if *name == label => found.push(kinds),
        Form::Sequence(forms) | Form::OneOf(forms) => {
            for form in *forms {
                collect_kinds(form, label, found);
            }
        }
        Form::Optional(form) | Form::List(form) => collect_kinds(form, label, found),
        Form::Nothing | Form::Words(_) | Form::Mark(_) | Form::Slot(..) | Form::Comma => {}
    }
}

impl<T> Field<T> {
    /// The same, but a default in the place of a missing value.
    pub fn or_assumed(self, value: T, what: &'static str, ground: &'static str) -> Self {
        match self {
            Self::Missing => Self::Assumed(value, Assumption { what, ground }),
            Self::Stated(..) | Self::Assumed(..) | Self::Broken(_) => self,
        }
    }
}

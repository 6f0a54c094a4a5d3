//! What carries what, and declared loads.

use crate::model::field::{Field, Given};
use crate::model::lower::reader::{Reader, first_kinds, words_of};
use crate::model::plan::Axis;
use crate::model::site::DeclaredLoad;
use crate::model::support::{Carrier, Connector, Contact, Joint, Stand, Support};
use crate::syntax::Fact;

impl<'t> Reader<'_, 't> {
    /// What the element bears on and hangs from, in the order of the text.
    pub fn supports(&mut self) -> Vec<Support> {
        let mut facts: Vec<&'t Fact> = self.facts("bears on").chain(self.facts("hangs from")).collect();
        facts.sort_by_key(|fact| fact.span);
        facts.into_iter().filter_map(|fact| self.support(fact)).collect()
    }

    fn support(&mut self, fact: &'t Fact) -> Option<Support> {
        let on = self.carrier(fact, "support")?;
        let by = if fact.spec.phrase == "hangs from" {
            Contact::Hangs(self.connector(fact))
        } else {
            let length = self.positive(fact, "for");
            Contact::Bears(length.map(|value| Given { value, span: self.part_span(fact, "for") }))
        };
        Some(Support { on, by, span: self.span(fact.span) })
    }

    /// What carries: an element, or something that the spec leaves out.
    pub fn carrier(&mut self, fact: &Fact, label: &str) -> Option<Carrier> {
        if fact.has("outside") {
            return self.words(fact, "words").map(Carrier::Outside);
        }
        self.carrying(fact.part(label)?, first_kinds(fact, label)).map(Carrier::Element)
    }

    /// What holds a hanging member.
    pub fn connector(&mut self, fact: &Fact) -> Connector {
        // The words of something outside the spec come before the connector and are none of its own.
        let behind = fact.parts.iter().skip_while(|part| part.label != "connector");
        let words = behind.filter(|part| part.label == "words").find_map(words_of);
        match fact.word("connector") {
            Some("hanger") => {
                Connector::Hanger { capacity: self.force(fact, "capacity"), words, source: self.source(fact) }
            }
            Some("clip") => {
                let capacity = self.force(fact, "capacity");
                Connector::Clip { capacity, words, source: self.source(fact) }
            }
            Some(_) | None => self.reference(fact, "ledger").map_or(Connector::None, Connector::Ledger),
        }
    }

    /// What an upright stands on.
    pub fn stands_on(&mut self) -> Field<Stand> {
        self.field("stands on", |reader, fact| {
            let span = reader.span(fact.span);
            if fact.has("floor") {
                let floor = reader.reference(fact, "floor")?;
                let over = reader.reference(fact, "support");
                return Some(Stand { on: Carrier::Element(floor), over, span });
            }
            Some(Stand { on: reader.carrier(fact, "support")?, over: None, span })
        })
    }

    /// Where the pieces of a member end.
    pub fn joints(&mut self) -> Vec<Joint> {
        self.list("joint", |reader, fact| {
            let over = reader.reference(fact, "support")?;
            let lapped = reader.positive(fact, "lapped");
            let lapped = lapped.map(|value| Given { value, span: reader.part_span(fact, "lapped") });
            let is_spliced = fact.word("how") == Some("spliced");
            Some(Joint { over, lapped, is_spliced, span: reader.span(fact.span) })
        })
    }

    /// Loads declared on the element, whose stretch lies on this axis.
    pub fn declared_loads(&mut self, axis: Option<Axis>) -> Vec<DeclaredLoad> {
        self.list("load", |reader, fact| {
            let reach = match fact.has("from") {
                true => Some(reader.stretch(fact, axis)?),
                false => None,
            };
            let at = match fact.has("at") {
                true => Some(reader.station_on(fact, "at", axis)?),
                false => None,
            };
            Some(DeclaredLoad {
                amount: reader.load(fact, "value")?,
                case: fact.word("case")?.into(),
                reach,
                at,
                words: reader.words(fact, "words"),
                span: reader.span(fact.span),
            })
        })
    }
}

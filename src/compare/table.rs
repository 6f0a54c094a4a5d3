//! Every fact of a house that has a name, with its value: what follows from a change is what differs between two such
//! tables.

use indexmap::IndexMap;

use crate::compare::meaning::Renames;
use crate::compare::written::Written;
use crate::facts::FactValue;
use crate::facts::answers::answer_in_case;
use crate::house::House;
use crate::model::element::ElementId;
use crate::statics::action::Receiver;
use crate::syntax::value::{FactName, Value};
use crate::syntax::vocabulary::{FACT_NAMES, spec_of};

/// A fact by its words, its load case and the elements it is about.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct FactKey {
    /// Its words: `clear span`.
    pub words: Box<str>,
    /// The load case it is narrowed to.
    pub case: Option<Box<str>>,
    /// The names of its elements, those of the new spec.
    pub of: Vec<Box<str>>,
}

/// The facts that have a value.
pub type Table = IndexMap<FactKey, FactValue>;

/// Every fact about one element, what each member brings to what carries it, and whatever else the spec names.
/// `renames` turns the names of an old spec into those of the new one.
pub fn table(house: &House, elements: &[Written<'_>], renames: &Renames) -> Table {
    let mut asker = Asker { house, renames, table: Table::new() };
    for written in
        elements.iter().filter(|written| house.model.named(&written.common.name) == Some(written.id()))
    {
        for spec in spec_of(written.kind()).claimable() {
            asker.ask(spec.words, None, &[written.id()]);
        }
        asker.reactions(written.id());
        asker.drops(written.id());
    }
    for line in elements.iter().flat_map(|written| &written.lines) {
        for part in &line.fact.parts {
            asker.named_in(&part.value);
        }
    }
    asker.table
}

struct Asker<'h> {
    house: &'h House,
    renames: &'h Renames,
    table: Table,
}

impl Asker<'_> {
    fn ask(&mut self, words: &str, case: Option<&str>, of: &[ElementId]) {
        let Ok(answer) = answer_in_case(self.house, words, case, of) else { return };
        let names: Option<Vec<Box<str>>> = of.iter().map(|id| self.name_of(*id)).collect();
        let Some(names) = names else { return };
        let key = FactKey { words: words.into(), case: case.map(Into::into), of: names };
        self.table.insert(key, answer.value);
    }

    /// The name that an element has in the new spec.
    fn name_of(&self, id: ElementId) -> Option<Box<str>> {
        let common = self.house.model.common(id)?;
        Some(self.renames.element(&common.name).into())
    }

    fn reactions(&mut self, of: ElementId) {
        for handed in self.house.forces.handed_by(of) {
            match handed.to {
                Receiver::Element(on) => {
                    self.ask("reaction", None, &[of, on]);
                    self.ask("bearing", None, &[of, on]);
                }
                Receiver::Outside | Receiver::Soil | Receiver::Nothing(_) => {}
            }
        }
    }

    /// How far a floor lies below those from which it says steps.
    fn drops(&mut self, of: ElementId) {
        let Some(floor) = self.house.model.floor(of) else { return };
        let promised =
            floor.steps.value().into_iter().chain(floor.other_steps.iter().map(|given| &given.value));
        for steps in promised {
            if let Some(from) = steps.from.target {
                self.ask("drop", None, &[from, of]);
                self.ask("subfloor drop", None, &[from, of]);
            }
        }
    }

    fn named_in(&mut self, value: &Value) {
        match value {
            Value::FactName(fact) => self.named(fact),
            Value::Comparison(comparison) => {
                [&comparison.left, &comparison.right]
                    .into_iter()
                    .flat_map(|side| side.facts())
                    .for_each(|fact| self.named(fact));
            }
            _ => {}
        }
    }

    /// A fact that a sheet, an intent or a claim names. A claim leaves out its own element, which was asked already.
    fn named(&mut self, fact: &FactName) {
        let of: Option<Vec<ElementId>> =
            fact.of.iter().map(|(name, _)| self.house.model.named(name)).collect();
        let is_whole = FACT_NAMES
            .iter()
            .any(|spec| *spec.words == *fact.fact && spec.arguments().count() == fact.of.len());
        if let Some(of) = of.filter(|_| is_whole) {
            self.ask(&fact.fact, fact.case.as_deref(), &of);
        }
    }
}

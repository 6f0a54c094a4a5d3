//! The support lines read backwards: what each element carries.

use std::collections::HashMap;

use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::framing::{Beam, Joists};
use crate::model::support::{Connector, Contact, Support};

/// What each element carries, gathered once so that no question walks the whole house.
#[derive(Debug, Default)]
pub struct Carried<'a> {
    joists: HashMap<ElementId, Vec<(&'a Joists, &'a Support)>>,
    beams: HashMap<ElementId, Vec<(&'a Beam, &'a Support)>>,
    fields: HashMap<ElementId, Vec<&'a Joists>>,
}

impl<'a> Carried<'a> {
    /// Reads every support line of a house.
    pub fn of(model: &'a Model) -> Self {
        let mut carried = Self::default();
        for joists in &model.joists {
            if let Some(floor) = joists.floor.value().and_then(|floor| floor.target) {
                carried.fields.entry(floor).or_default().push(joists);
            }
            for support in &joists.supports {
                if let Some(on) = carrying_element(support) {
                    carried.joists.entry(on).or_default().push((joists, support));
                }
            }
        }
        for beam in &model.beams {
            for support in beam.supports.iter().filter(|support| matches!(support.by, Contact::Bears(_))) {
                if let Some(on) = carrying_element(support) {
                    carried.beams.entry(on).or_default().push((beam, support));
                }
            }
        }
        carried
    }

    /// Every joist field that bears on an element or hangs from it, with the line that says so.
    pub fn joists_on(&self, carrier: ElementId) -> &[(&'a Joists, &'a Support)] {
        self.joists.get(&carrier).map(Vec::as_slice).unwrap_or_default()
    }

    /// Every joist field that bears on an element, with the line that says so.
    pub fn joists_bearing_on(&self, carrier: ElementId) -> impl Iterator<Item = (&'a Joists, &'a Support)> {
        let bearing = self.joists_on(carrier).iter().copied();
        bearing.filter(|(_, support)| matches!(support.by, Contact::Bears(_)))
    }

    /// Every beam that bears on an element, with the line that says so.
    pub fn beams_on(&self, carrier: ElementId) -> &[(&'a Beam, &'a Support)] {
        self.beams.get(&carrier).map(Vec::as_slice).unwrap_or_default()
    }

    /// The joist fields of a floor.
    pub fn fields_of(&self, floor: ElementId) -> &[&'a Joists] {
        self.fields.get(&floor).map(Vec::as_slice).unwrap_or_default()
    }
}

/// The element whose strip carries at a support: the ledger of `hangs from W1 by ledger LG1`, else what is named.
pub fn carrying_element(support: &Support) -> Option<ElementId> {
    if let Contact::Hangs(Connector::Ledger(ledger)) = &support.by {
        return ledger.target;
    }
    support.on.reference().and_then(|reference| reference.target)
}

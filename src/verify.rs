//! Does it hold: for each member and limit state one [`check::Verification`], with every number on the way.
//!
//! This is where a member's size, its forces and the clauses of `design` meet. A check that could not run is a
//! verification too, and says why: it never counts as passed.

pub mod bearings;
pub mod check;
pub mod demands;
pub mod footings;
pub mod foundation_walls;
pub mod i_joist;
pub mod joists;
pub mod limit_state;
pub mod openings;
pub mod quantity;
pub mod sag;
pub mod second_opinion;
pub mod spanning;
pub mod steel;
pub mod steel_beams;
pub mod steel_columns;
pub mod steel_sizes;
pub mod transfers;
pub mod uplift;
pub mod wood_beams;
pub mod wood_bending;
pub mod wood_columns;
pub mod wood_shear;
pub mod wood_sizes;
pub mod wood_values;

use std::collections::HashMap;

use crate::geometry::Geometry;
use crate::model::Model;
use crate::model::element::ElementId;
use crate::profiles::Limits;
use crate::statics::takedown::Takedown;
use crate::verify::check::Verification;
use crate::verify::limit_state::LimitState;

/// What verifications are made from.
#[derive(Clone, Copy, Debug)]
pub struct Known<'a> {
    /// The house as written.
    pub model: &'a Model,
    /// Where everything is.
    pub geometry: &'a Geometry,
    /// What everything carries.
    pub forces: &'a Takedown,
    /// The limits that hold.
    pub limits: &'a Limits,
}

/// All verifications of a house.
#[derive(Clone, Debug, Default)]
pub struct Verifications {
    all: Vec<Verification>,
    of: HashMap<ElementId, Vec<usize>>,
}

impl Verifications {
    /// Every one, member by member.
    pub fn all(&self) -> &[Verification] {
        &self.all
    }

    /// Those of one member.
    pub fn of(&self, element: ElementId) -> impl Iterator<Item = &Verification> {
        let places = self.of.get(&element).map(Vec::as_slice).unwrap_or_default();
        places.iter().filter_map(|at| self.all.get(*at))
    }

    /// Those of one limit state.
    pub fn on(&self, limit_state: LimitState) -> impl Iterator<Item = &Verification> {
        self.all.iter().filter(move |verification| verification.limit_state == limit_state)
    }
}

/// Verifies a whole house.
pub fn of(known: &Known<'_>) -> Verifications {
    let mut all: Vec<Verification> = Vec::new();
    // Each file of this module adds what it verifies here.
    all.extend(bearings::of(known));
    all.extend(footings::of(known));
    all.extend(joists::of(known));
    all.extend(openings::of(known));
    all.extend(wood_beams::of(known));
    all.extend(steel_beams::of(known));
    all.extend(steel_columns::of(known));
    all.extend(foundation_walls::of(known));
    all.extend(wood_columns::of(known));
    let transfers = transfers::of(known, &all);
    all.extend(transfers);
    all.sort_by_key(|verification| (verification.of, verification.limit_state));
    let mut of: HashMap<ElementId, Vec<usize>> = HashMap::new();
    for (at, verification) in all.iter().enumerate() {
        of.entry(verification.of).or_default().push(at);
    }
    Verifications { all, of }
}

//! Footings: the soil below them, and whether the concrete holds what the soil presses up against it.
//!
//! Soil by the allowable stress combinations, concrete by the strength combinations. Live load lies everywhere, and
//! under a pad on some spans only where that brings more. Soil and slab on a footing are not counted as weight.

pub mod bars;
pub mod ground;
pub mod pads;
pub mod section;
pub mod slabs;
pub mod standing;
pub mod strip_section;
pub mod strips;

use crate::model::element::ElementId;
use crate::model::field::{Assumption, Field};
use crate::model::foundation::{Footing, FootingSize};
use crate::units::Length;
use crate::verify::Known;
use crate::verify::check::{Check, NotVerified, Verification};
use crate::verify::limit_state::LimitState;

/// Verifies every footing, and every slab that a column stands on.
pub fn of(known: &Known<'_>) -> Vec<Verification> {
    let footings = &known.model.footings;
    let mut all: Vec<Verification> = footings.iter().flat_map(|footing| pads::of(known, footing)).collect();
    all.extend(footings.iter().flat_map(|footing| strips::of(known, footing)));
    all.extend(slabs::of(known));
    all
}

/// The next size up under which the soil holds: sides 3 in. longer, or a pier 2 in. wider, as often as it takes.
/// `None` when nothing up to four times the size does.
pub fn next_size(known: &Known<'_>, footing: &Footing) -> Option<FootingSize> {
    let size = footing.size.get()?;
    (1..=MOST_STEPS).map(|step| larger(size, step)).find(|size| {
        let tried = Assumption { what: "a larger size", ground: "tried" };
        let resized = Footing { size: Field::Assumed(*size, tried), ..footing.clone() };
        let mut checks = pads::of(known, &resized)
            .into_iter()
            .chain(strips::of(known, &resized))
            .filter(|verification| verification.limit_state == LimitState::SoilPressure)
            .peekable();
        checks.peek().is_some() && checks.all(|verification| verification.holds())
    })
}

const MOST_STEPS: i64 = 40;

fn larger(size: FootingSize, step: i64) -> FootingSize {
    let by = Length::inches(3).times(step);
    match size {
        FootingSize::Pad(one, other, thickness) => FootingSize::Pad(one + by, other + by, thickness),
        FootingSize::Strip(width, thickness) => FootingSize::Strip(width + by, thickness),
        FootingSize::Round(diameter, thickness) => {
            FootingSize::Round(diameter + Length::inches(2).times(step), thickness)
        }
    }
}

/// One limit state of one part, worked out at several places or by several combinations: the one used most decides.
/// A place that could not be worked out decides over all that could.
#[derive(Debug, Default)]
pub struct Worst {
    outcome: Option<Result<Check, NotVerified>>,
    part: Option<Box<str>>,
    against: Option<ElementId>,
}

impl Worst {
    /// Takes one more outcome; `true` when it decides.
    pub fn take(&mut self, outcome: Result<Check, NotVerified>) -> bool {
        let decides = match (&self.outcome, &outcome) {
            (None, _) | (Some(Ok(_)), Err(_)) => true,
            (Some(Err(_)), _) => false,
            (Some(Ok(worst)), Ok(check)) => check.ratio() > worst.ratio(),
        };
        if decides {
            self.outcome = Some(outcome);
        }
        decides
    }

    /// Takes one more outcome, of this part and about that element.
    pub fn take_at(
        &mut self,
        outcome: Result<Check, NotVerified>,
        part: Option<Box<str>>,
        against: Option<ElementId>,
    ) {
        if self.take(outcome) {
            (self.part, self.against) = (part, against);
        }
    }

    /// What decided; nothing when nothing was taken.
    pub fn outcome(self) -> Option<Result<Check, NotVerified>> {
        self.outcome
    }

    /// The verification of what decided.
    pub fn verification(self, of: ElementId, limit_state: LimitState) -> Option<Verification> {
        let Self { outcome, part, against } = self;
        outcome.map(|outcome| Verification { of, part, against, limit_state, outcome })
    }
}

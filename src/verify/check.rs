//! One verification: demand against capacity, with every number on the way, or why it could not run.

use std::fmt;

use crate::design::NotCovered;
use crate::model::element::ElementId;
use crate::model::stuff::NoStuff;
use crate::units::Length;
use crate::verify::limit_state::LimitState;
use crate::verify::quantity::Quantity;

/// What became of one limit state of one member.
#[derive(Clone, Debug, PartialEq)]
pub struct Verification {
    /// The member.
    pub of: ElementId,
    /// Which part of it, when it has several: `piece 2`, `over C1`, `at W3`.
    pub part: Option<Box<str>>,
    /// The other element that the check is about: the support it crushes, the footing it punches.
    pub against: Option<ElementId>,
    /// Which limit state.
    pub limit_state: LimitState,
    /// Demand against capacity, or why it could not run.
    pub outcome: Result<Check, NotVerified>,
}

impl Verification {
    /// The ratio of demand to capacity, when it ran.
    pub fn ratio(&self) -> Option<f64> {
        self.outcome.as_ref().ok().map(Check::ratio)
    }

    /// True when it ran and holds: exactly full counts as holding.
    pub fn holds(&self) -> bool {
        self.ratio().is_some_and(|ratio| ratio <= 1.0 + FULL)
    }

    /// True when it ran and does not hold.
    pub fn fails(&self) -> bool {
        self.outcome.is_ok() && !self.holds()
    }
}

/// How much over full still counts as full: a millionth, far below any printed digit.
const FULL: f64 = 1e-6;

/// Demand against capacity.
#[derive(Clone, Debug, PartialEq)]
pub struct Check {
    /// What acts.
    pub demand: Quantity,
    /// What it can bear. Invariant: of the same kind as `demand`.
    pub capacity: Quantity,
    /// The load combination that governs: `D + 0.75L + 0.75S`.
    pub combination: &'static str,
    /// Which spans carry live load, when a pattern governs: `live on spans 1 and 3`.
    pub pattern: Option<Box<str>>,
    /// Where along the member, from its beginning.
    pub at: Option<Length>,
    /// The clause that gives the capacity: `NDS 2018 3.3.1`.
    pub clause: &'static str,
    /// Every value on the way, in the order in which it was worked out.
    pub steps: Vec<Step>,
    /// Values that nobody stated: `soil 1500 psf gross`, `grade No.2`.
    pub assumed: Vec<Box<str>>,
}

impl Check {
    /// Demand over capacity; above any limit when the two are no numbers, so that nothing passes by accident.
    pub fn ratio(&self) -> f64 {
        self.demand.over(self.capacity).filter(|ratio| ratio.is_finite()).unwrap_or(f64::INFINITY)
    }
}

/// One line of a calculation: `fb = M / S = 29,100 lb-ft / 21.4 in3 = 1,632 psi`.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// The symbol of the result: `fb`.
    pub symbol: &'static str,
    /// The formula in symbols, blanks round each of them: `M / S`. Empty for a value that is read, not worked out.
    pub formula: &'static str,
    /// What stands for each symbol of the formula.
    pub values: Vec<(&'static str, Quantity)>,
    /// The result.
    pub result: Quantity,
    /// Clause, table or plain words: where formula or value is from.
    pub source: &'static str,
}

impl Step {
    /// A value that is read, not worked out.
    pub fn read(symbol: &'static str, result: impl Into<Quantity>, source: &'static str) -> Self {
        Self { symbol, formula: "", values: Vec::new(), result: result.into(), source }
    }

    /// A value that is worked out of others.
    pub fn worked(
        symbol: &'static str,
        formula: &'static str,
        values: Vec<(&'static str, Quantity)>,
        result: impl Into<Quantity>,
        source: &'static str,
    ) -> Self {
        Self { symbol, formula, values, result: result.into(), source }
    }
}

/// Why a check could not run.
#[derive(Clone, Debug, PartialEq)]
pub enum NotVerified {
    /// The clause gives no value.
    NotCovered(NotCovered),
    /// Something is not stated, or its line can't be read: the element and the words of the fact.
    Missing(ElementId, &'static str),
    /// The values of its stuff are not known.
    Stuff(NoStuff),
    /// The forces of the member are not known: what it is waiting for.
    NoForces(Box<str>),
}

impl From<NotCovered> for NotVerified {
    fn from(not_covered: NotCovered) -> Self {
        Self::NotCovered(not_covered)
    }
}

impl From<NoStuff> for NotVerified {
    fn from(no_stuff: NoStuff) -> Self {
        Self::Stuff(no_stuff)
    }
}

impl fmt::Display for NotVerified {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotCovered(not_covered) => not_covered.fmt(f),
            Self::Missing(_, fact) => write!(f, "`{fact}` is not known"),
            Self::Stuff(no_stuff) => no_stuff.fmt(f),
            Self::NoForces(why) => f.write_str(why),
        }
    }
}

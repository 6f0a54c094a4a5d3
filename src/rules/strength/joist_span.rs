//! Joists or rafters that do not bear their load.

use crate::house::House;
use crate::rules::strength::{JOISTS, failing, report_strength};
use crate::rules::{Findings, rule};
use crate::verify::limit_state::LimitState;

rule! {
    /// Joists or rafters that do not bear their load.
    ///
    /// Bending, shear and reactions of the most loaded joist, by the combinations of allowable stress, with live load on the bays
    /// that make it worst; three or more joists under one deck help one another.
    ///
    /// ## Why
    /// A floor that breaks, or that creeps until it does.
    ///
    /// ## Source
    /// NDS 2018 chapters 3, 4 and 7; I-joists: ANSI/APA PRI-400, from memory, or the product's declared values.
    /// Each value's certainty stands on the calculation sheet (`storyrod calc`). Load combinations: ASCE 7-16 2.4.1, read in a secondary copy.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 16'
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    ///   live        40 psf
    ///   dead        10 psf
    /// joists J1
    ///   floor       main
    ///   size        2x8 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    ///   spacing     16" from A
    ///   span        by grid
    ///   bears on    W1
    ///   bears on    W2
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   line        centre
    ///   thick       8"
    ///   stands on   outside "rock"
    /// wall W2
    ///   kind        concrete
    ///   from        A/2 to B/2
    ///   line        centre
    ///   thick       8"
    ///   stands on   outside "rock"
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 16'
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    ///   live        40 psf
    ///   dead        10 psf
    /// joists J1
    ///   floor       main
    ///   size        2x12 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    ///   spacing     16" from A
    ///   span        by grid
    ///   bears on    W1
    ///   bears on    W2
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   line        centre
    ///   thick       8"
    ///   stands on   outside "rock"
    /// wall W2
    ///   kind        concrete
    ///   from        A/2 to B/2
    ///   line        centre
    ///   thick       8"
    ///   stands on   outside "rock"
    /// ```
    "joist-span", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    const STATES: &[LimitState] = &[LimitState::Bending, LimitState::Shear, LimitState::SupportReaction];
    for (verification, check) in failing(house, JOISTS, STATES) {
        report_strength(house, verification, check, findings);
    }
}

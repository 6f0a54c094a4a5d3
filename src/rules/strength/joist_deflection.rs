//! Joists or rafters that sag too far.

use crate::house::House;
use crate::rules::strength::{JOISTS, report_sags};
use crate::rules::{Findings, rule};

rule! {
    /// Joists or rafters that sag too far.
    ///
    /// Live load alone against the live limit, and all load against the total one; a limit is a share of the span, of an overhang
    /// of twice its reach.
    ///
    /// ## Why
    /// Floors that slope and shake, ceilings that crack.
    ///
    /// ## Source
    /// Limits: `deflection-live` (R301.7) and `deflection-total` (IBC 1604.3); each one's certainty stands in the table of limits.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 15'
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
    ///   y           1 0', 2 15'
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
    "joist-deflection", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    report_sags(house, JOISTS, findings);
}

//! Base plates that bend.

use crate::house::House;
use crate::rules::wording::plate_needs;
use crate::rules::{Findings, rule};
use crate::verify::limit_state::LimitState;

rule! {
    /// A base plate is too thin for what the column brings down on it.
    ///
    /// ## Why
    /// Past the column the plate is a cantilever that the concrete presses up. A thin one bends, and all of the load goes
    /// into the concrete right under the column.
    ///
    /// ## Source
    /// AISC Design Guide 1; AISC 360 F11.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0'
    ///   y           1 0'
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   length      8'-0"
    ///   base        plate 10" x 10" x 3/8", grout 1"
    ///   stands on   F1
    ///   load        25000 lb live
    /// footing F1
    ///   at          A/1
    ///   size        3'-9" x 3'-9" x 15"
    ///   top         90'-0"
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0'
    ///   y           1 0'
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   length      8'-0"
    ///   base        plate 10" x 10" x 1/2", grout 1"
    ///   stands on   F1
    ///   load        25000 lb live
    /// footing F1
    ///   at          A/1
    ///   size        3'-9" x 3'-9" x 15"
    ///   top         90'-0"
    /// ```
    "base-plate-too-thin", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for verification in house.verifications.on(LimitState::BasePlate).filter(|found| found.fails()) {
        let (Ok(check), Some(column)) = (&verification.outcome, house.model.column(verification.of)) else {
            continue;
        };
        let place = column.base.span().unwrap_or(column.common.name_span);
        let message = plate_needs(check, &format!("the base plate of {}", column.common.label()));
        let finding = findings.about(column.common.id, place, message);
        finding.help("a thicker plate").note(format!("decided by {}", check.combination));
        for assumed in &check.assumed {
            finding.note(format!("assumed: {assumed}"));
        }
        finding.basis(check.clause);
    }
}

//! Plates that lie flat under a post.

use crate::house::House;
use crate::rules::wording::pressed_on;
use crate::rules::{Findings, rule};
use crate::verify::limit_state::LimitState;

rule! {
    /// A post stands on a plate, nailer or sill that lies flat, and presses it harder than it bears.
    ///
    /// ## Why
    /// Wood bears far less across its grain than along it: the post has room, the plate below it is crushed.
    ///
    /// ## Source
    /// NDS 2018 3.10.2; values of the species from memory of the NDS Supplement 2018.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0'
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   thick       8"
    ///   sill        1 of 2x6 HF treated, centred
    /// column P1
    ///   at          A plus 10' / 1
    ///   size        4x4 SPF No.2
    ///   length      8'-0"
    ///   base        bare
    ///   stands on   W1
    ///   load        6000 lb snow
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0'
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   thick       8"
    ///   sill        1 of 2x6 HF treated, centred
    /// column P1
    ///   at          A plus 10' / 1
    ///   size        4x4 SPF No.2
    ///   length      8'-0"
    ///   base        bare
    ///   stands on   W1
    ///   load        3000 lb snow
    /// ```
    "flat-plate-in-column-line", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for verification in house.verifications.on(LimitState::PlateBearing).filter(|found| found.fails()) {
        let (Ok(check), Some(column)) = (&verification.outcome, house.model.column(verification.of)) else {
            continue;
        };
        let place = column.base.span().or(column.stands_on.span()).unwrap_or(column.common.name_span);
        findings
            .about(column.common.id, place, pressed_on(house, verification, check))
            .help("a larger post, or let it run through to what bears it")
            .note(format!("decided by {}", check.combination))
            .basis(check.clause);
    }
}

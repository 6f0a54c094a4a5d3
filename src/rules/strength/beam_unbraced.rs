//! A beam whose compression edge is held too seldom.

use crate::house::House;
use crate::rules::strength::{BEAMS, failing, size_of};
use crate::rules::wording::decided_by;
use crate::rules::{Findings, rule};
use crate::verify::limit_state::LimitState;
use crate::verify::quantity::Quantity;

rule! {
    /// A beam whose compression edge is held too seldom.
    ///
    /// A beam keeps all of its strength while its compression edge is held at short distances: by joists that bear on it through a
    /// nailer, by joists that hang from it, or as its `braced` line says. A line `braced none` says that it was meant so.
    ///
    /// ## Why
    /// It rolls over sideways long before it would break.
    ///
    /// ## Source
    /// AISC 360 F2: Lp, the length without brace that leaves all of the strength. Wood: NDS 2018 4.4.1.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 16'
    ///   y           1 0', 2 10', 3 20'
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    ///   live        40 psf
    ///   dead        10 psf
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 3
    ///   run         along y
    ///   spacing     16" from A
    ///   bears on    W1
    ///   bears on    B1
    ///   bears on    W3
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   line        centre
    ///   thick       8"
    ///   stands on   outside "rock"
    /// wall W3
    ///   kind        concrete
    ///   from        A/3 to B/3
    ///   line        centre
    ///   thick       8"
    ///   stands on   outside "rock"
    /// beam B1
    ///   size        W8x24
    ///   from        A/2 to B/2
    ///   set         dropped under main
    ///   bears on    C1
    ///   bears on    C2
    /// column C1
    ///   at          A/2
    ///   size        HSS 4 x 4 x 1/4
    ///   stands on   outside "pier"
    /// column C2
    ///   at          B/2
    ///   size        HSS 4 x 4 x 1/4
    ///   stands on   outside "pier"
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 16'
    ///   y           1 0'
    /// beam B1
    ///   size        W8x24
    ///   from        A/1 to B/1
    ///   braced      at 4'-0"
    ///   load        400 plf live
    ///   bears on    C1
    ///   bears on    C2
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   stands on   outside "pier"
    /// column C2
    ///   at          B/1
    ///   size        HSS 4 x 4 x 1/4
    ///   stands on   outside "pier"
    /// ```
    "beam-unbraced", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    // Joists that can't be read may well brace it.
    if house.has_unread_names() {
        return;
    }
    for (verification, check) in failing(house, BEAMS, &[LimitState::LateralSupport]) {
        let Some(common) = house.model.common(verification.of) else { continue };
        let message = match (check.demand, check.capacity) {
            (Quantity::Length(unbraced), Quantity::Length(most)) => format!(
                "{} goes {unbraced} with nothing that holds its compression edge; up to {most} it keeps all of its strength",
                common.label()
            ),
            (demand, capacity) => format!(
                "{} has a slenderness RB of {demand} between what holds its compression edge, and {capacity} is the most",
                common.label()
            ),
        };
        let place = size_of(house, common.id).unwrap_or(common.name_span);
        let finding = findings.about(common.id, place, message);
        finding.note(decided_by(verification, check));
        finding.help("fasten a nailer on top of it, hang the joists from it, or say `braced` and by what");
        finding.basis(check.clause);
    }
}

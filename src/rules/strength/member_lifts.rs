//! A member that lifts off one of its supports.

use crate::house::House;
use crate::rules::wording::decided_by;
use crate::rules::{Findings, rule};
use crate::verify::limit_state::LimitState;
use crate::verify::quantity::Quantity;

rule! {
    /// A member that lifts off one of its supports.
    ///
    /// With live load on some spans only, or on an overhang, the far end of a beam or joist wants to rise. The finding says how much
    /// it pulls.
    ///
    /// ## Why
    /// Without a strap or an anchor it lifts, and the floor rocks.
    ///
    /// ## Source
    /// Statics: the reaction of a continuous member (ASCE 7-16 4.3.3, partial loading, from memory).
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 8', C 12'
    ///   y           1 0'
    /// beam B1
    ///   size        6x10 DF-L No.1
    ///   from        A/1 to C/1
    ///   span        by grid
    ///   load        2000 lb live at C
    ///   bears on    C1
    ///   bears on    C2
    /// column C1
    ///   at          A/1
    ///   size        6x6 DF-L No.1
    ///   stands on   outside "pier"
    /// column C2
    ///   at          B/1
    ///   size        6x6 DF-L No.1
    ///   stands on   outside "pier"
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0'
    /// beam B1
    ///   size        W8x24
    ///   from        A/1 to B/1
    ///   span        by grid
    ///   braced      at 2'
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
    "member-lifts", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for verification in house.verifications.on(LimitState::Uplift).filter(|found| found.fails()) {
        let (Ok(check), Some(common)) = (&verification.outcome, house.model.common(verification.of)) else {
            continue;
        };
        let Quantity::Force(pull) = check.demand else { continue };
        let on = verification.against.and_then(|against| house.model.common(against));
        let from = on.map(|on| format!(" off {}", on.label())).unwrap_or_default();
        let finding = findings.about(
            common.id,
            common.name_span,
            format!(
                "{} {}{from} with {}: nothing is said to hold {} down",
                common.label(),
                common.verb("lifts", "lift"),
                Quantity::from(pull.abs()),
                common.verb("it", "them")
            ),
        );
        if let Some(on) = on {
            finding.related(on.name_span, on.label());
        }
        finding.note(decided_by(verification, check));
        finding.basis(check.clause);
    }
}

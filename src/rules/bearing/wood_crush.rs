//! Wood that is crushed across its grain.

use crate::house::House;
use crate::rules::wording::pressed_on;
use crate::rules::{Findings, rule};
use crate::syntax::vocabulary::ElementKind;
use crate::verify::limit_state::LimitState;

rule! {
    /// Wood is pressed across its grain by more than it bears.
    ///
    /// Joists, beams, headers, jacks and posts press on what they lie or stand on. The weakest layer decides: the member's
    /// own underside, the plate or nailer below it, the sill. A load that lasts short helps nothing here.
    ///
    /// ## Why
    /// The fibres are crushed, the floor settles over the years, doors stick and board cracks.
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
    ///   kind        framed
    ///   from        A/1 to B/1
    ///   studs       2x6 SPF No.2 at 16"
    ///   sole        1 of 2x6 SPF
    ///   plates      2 of 2x6 SPF
    ///   height      8'-1"
    ///   stands on   W2
    ///   load        1200 plf snow
    /// wall W2
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   thick       8"
    ///   sill        1 of 2x6 HF treated, centred
    /// opening O1
    ///   in          W1
    ///   at          A plus 10' / 1
    ///   size        12'-0" x 6'-8"
    /// header H1
    ///   over        O1
    ///   size        3-ply 2x12 DF No.1
    ///   bears on    JK1
    /// jacks JK1
    ///   at          O1 both sides
    ///   size        2 of 2x6 SPF No.2
    ///   stands on   W2
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0'
    /// wall W1
    ///   kind        framed
    ///   from        A/1 to B/1
    ///   studs       2x6 SPF No.2 at 16"
    ///   sole        1 of 2x6 SPF
    ///   plates      2 of 2x6 SPF
    ///   height      8'-1"
    ///   stands on   W2
    ///   load        1200 plf snow
    /// wall W2
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   thick       8"
    ///   sill        1 of 2x6 HF treated, centred
    /// opening O1
    ///   in          W1
    ///   at          A plus 10' / 1
    ///   size        12'-0" x 6'-8"
    /// header H1
    ///   over        O1
    ///   size        3-ply 2x12 DF No.1
    ///   bears on    JK1
    /// jacks JK1
    ///   at          O1 both sides
    ///   size        3 of 2x6 SPF No.2
    ///   stands on   W2
    /// ```
    "wood-crush", Error, danger
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for verification in house.verifications.on(LimitState::WoodBearing).filter(|found| found.fails()) {
        let (Ok(check), Some(common)) = (&verification.outcome, house.model.common(verification.of)) else {
            continue;
        };
        let finding = findings.about(
            common.id,
            size_of(house, verification).unwrap_or(common.name_span),
            pressed_on(house, verification, check),
        );
        let more = check.steps.iter().find(|step| step.symbol == "fc-perp with one jack more");
        match more {
            Some(step) => finding.help(format!("one jack more makes it {}", step.result)),
            None => finding.help("a longer or wider bearing, or wood there that bears more"),
        };
        finding.note(format!("decided by {}", check.combination));
        finding.basis(check.clause);
    }
}

fn size_of(house: &House, verification: &crate::verify::check::Verification) -> Option<crate::text::Span> {
    let id = verification.of;
    match id.kind {
        ElementKind::Jacks => house.model.jacks_of(id)?.size.span(),
        ElementKind::Joists => house.model.joists_of(id)?.size.span(),
        ElementKind::Beam => house.model.beam(id)?.size.span(),
        ElementKind::Column => house.model.column(id)?.size.span(),
        _ => None,
    }
}

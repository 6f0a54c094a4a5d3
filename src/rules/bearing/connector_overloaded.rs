//! Hangers, clips and ledgers under more than they bear.

use crate::house::House;
use crate::rules::{Findings, rule};
use crate::syntax::vocabulary::ElementKind;
use crate::verify::limit_state::LimitState;

rule! {
    /// A hanger, a clip or the fastening of a ledger has more to bear than is declared for it.
    ///
    /// A hanger bears the end of one joist or beam, a ledger's fastening so much on each foot.
    ///
    /// ## Why
    /// What hangs has nothing below it: when the connector gives way, it falls.
    ///
    /// ## Source
    /// The declared capacity; statics.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor    100'-0"
    ///   live        40 psf
    ///   dead        12 psf
    /// grid
    ///   x           A 0', B 16'
    ///   y           1 0', 2 12'
    /// beam B1
    ///   size        W8x24
    ///   from        A/1 to B/1
    /// beam B2
    ///   size        W8x24
    ///   from        A/2 to B/2
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    ///   spacing     16" from A
    ///   hangs from  B1 by hanger 300 lb "face mount" source "own"
    ///   hangs from  B2 by hanger 900 lb "face mount" source "own"
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor    100'-0"
    ///   live        40 psf
    ///   dead        12 psf
    /// grid
    ///   x           A 0', B 16'
    ///   y           1 0', 2 12'
    /// beam B1
    ///   size        W8x24
    ///   from        A/1 to B/1
    /// beam B2
    ///   size        W8x24
    ///   from        A/2 to B/2
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    ///   spacing     16" from A
    ///   hangs from  B1 by hanger 500 lb "face mount" source "own"
    ///   hangs from  B2 by hanger 900 lb "face mount" source "own"
    /// ```
    "connector-overloaded", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for verification in house.verifications.on(LimitState::Connector).filter(|found| found.fails()) {
        let (Ok(check), Some(common)) = (&verification.outcome, house.model.common(verification.of)) else {
            continue;
        };
        let on = verification.against.and_then(|on| house.model.common(on));
        let on = on.map(|on| on.label()).unwrap_or_default();
        let (message, place) = if verification.of.kind == ElementKind::Ledger {
            let ledger = house.model.ledger(verification.of);
            let place = ledger.and_then(|ledger| ledger.fastened.span());
            (
                format!(
                    "the fastening of {} to {on} bears {}, and {} hang on it",
                    common.label(),
                    check.capacity,
                    check.demand
                ),
                place,
            )
        } else if verification.of.kind == ElementKind::Opening {
            let part = verification.part.as_deref().unwrap_or("pieces");
            (
                format!(
                    "the hangers of the {part} at {} bear {} each, and {} hang on one",
                    common.label(),
                    check.capacity,
                    check.demand
                ),
                house.model.opening(verification.of).and_then(|opening| match part {
                    "tails" => opening.tails.span(),
                    _ => opening.headers.span(),
                }),
            )
        } else {
            let hung = |supports: &[crate::model::support::Support]| {
                let support = supports
                    .iter()
                    .find(|support| support.on.reference().and_then(|on| on.target) == verification.against);
                support.map(|support| support.span)
            };
            let joists = house.model.joists_of(verification.of).and_then(|joists| hung(&joists.supports));
            let beam = house.model.beam(verification.of).and_then(|beam| hung(&beam.supports));
            (
                format!(
                    "what holds {} to {on} bears {}, and {} hang on it",
                    common.label(),
                    check.capacity,
                    check.demand
                ),
                joists.or(beam),
            )
        };
        findings
            .about(common.id, place.unwrap_or(common.name_span), message)
            .help("a stronger connector, or more of them")
            .note(format!("decided by {}", check.combination))
            .basis("declared capacity");
    }
}

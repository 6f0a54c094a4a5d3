//! Concrete that is crushed under a plate or a post.

use crate::house::House;
use crate::rules::{Findings, rule};
use crate::syntax::vocabulary::ElementKind;
use crate::verify::limit_state::LimitState;

rule! {
    /// A base plate, a bearing plate or a post presses harder on the concrete than it bears.
    ///
    /// Concrete that goes on past the plate on all sides helps, up to twice. In a pocket, which opens to a face of its wall,
    /// it helps nothing.
    ///
    /// ## Why
    /// Concrete under a plate that is too small breaks at its edge, and the beam or column settles.
    ///
    /// ## Source
    /// AISC 360 J8. The concrete of walls, which no line states, is taken as 2500 psi (from memory of ACI 318).
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
    ///   base        plate 5" x 5" x 2", grout 1"
    ///   stands on   F1
    ///   load        60000 lb live
    /// footing F1
    ///   at          A/1
    ///   size        6'-0" x 6'-0" x 24"
    ///   top         90'-0"
    ///   concrete    2500 psi
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0'
    ///   y           1 0'
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   length      8'-0"
    ///   base        plate 8" x 8" x 2", grout 1"
    ///   stands on   F1
    ///   load        60000 lb live
    /// footing F1
    ///   at          A/1
    ///   size        6'-0" x 6'-0" x 24"
    ///   top         90'-0"
    ///   concrete    2500 psi
    /// ```
    "concrete-crushed", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for verification in house.verifications.on(LimitState::ConcreteBearing).filter(|found| found.fails()) {
        let (Ok(check), Some(common)) = (&verification.outcome, house.model.common(verification.of)) else {
            continue;
        };
        let place = match common.id.kind {
            ElementKind::Pocket => house.model.pocket(common.id).and_then(|pocket| pocket.plate.span()),
            _ => house.model.column(common.id).and_then(|column| column.base.span()),
        };
        let area = check.steps.iter().find(|step| step.symbol == "A").map(|step| step.result.to_string());
        let message = format!(
            "{} presses {} on {} of concrete, which bears {}",
            common.label(),
            check.demand,
            area.unwrap_or_default(),
            check.capacity
        );
        let finding = findings.about(common.id, place.unwrap_or(common.name_span), message);
        finding.help("a larger plate").note(format!("decided by {}", check.combination));
        for assumed in &check.assumed {
            finding.note(format!("assumed: {assumed}"));
        }
        finding.basis(check.clause);
    }
}

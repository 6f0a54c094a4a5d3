//! Caps that leave too little to lie on.

use crate::house::House;
use crate::rules::{Findings, rule};
use crate::verify::limit_state::LimitState;

rule! {
    /// A cap or saddle gives a beam, or a piece of one, too little length to lie on.
    ///
    /// Two pieces that meet on a cap have half of it each. Wood needs as much as its reaction asks of its fibres; every
    /// member needs 1-1/2".
    ///
    /// ## Why
    /// Each piece stands on its own share alone. What is too short crushes the end of the beam, or lets it slip off.
    ///
    /// ## Source
    /// NDS 2018 3.10.2; 1-1/2" is common practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// grid
    ///   x           A 0', C 12', D 24'
    ///   y           1 0'
    /// beam B1
    ///   size        W8x24
    ///   from        A/1 to D/1
    ///   set         flush in main
    ///   joint       over C2
    ///   bears on    C1
    ///   bears on    C2
    ///   bears on    C3
    ///   load        600 plf live
    ///   braced      at 16"
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   cap         plate 6" x 6" x 3/4"
    /// column C2
    ///   at          C/1
    ///   size        HSS 2 x 2 x 1/4
    ///   cap         plate 6-1/2" x 2" x 3/4"
    /// column C3
    ///   at          D/1
    ///   size        HSS 4 x 4 x 1/4
    ///   cap         plate 6" x 6" x 3/4"
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// grid
    ///   x           A 0', C 12', D 24'
    ///   y           1 0'
    /// beam B1
    ///   size        W8x24
    ///   from        A/1 to D/1
    ///   set         flush in main
    ///   joint       over C2
    ///   bears on    C1
    ///   bears on    C2
    ///   bears on    C3
    ///   load        600 plf live
    ///   braced      at 16"
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   cap         plate 6" x 6" x 3/4"
    /// column C2
    ///   at          C/1
    ///   size        HSS 4 x 4 x 1/4
    ///   cap         plate 6-1/2" x 6" x 3/4"
    /// column C3
    ///   at          D/1
    ///   size        HSS 4 x 4 x 1/4
    ///   cap         plate 6" x 6" x 3/4"
    /// ```
    "cap-too-short", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for verification in house.verifications.on(LimitState::CapLength).filter(|found| found.fails()) {
        let (Ok(check), Some(column)) = (&verification.outcome, house.model.column(verification.of)) else {
            continue;
        };
        let beam = verification.against.and_then(|beam| house.model.common(beam));
        let force = check.steps.iter().find(|step| step.symbol == "R").map(|step| step.result.to_string());
        let place = column.cap.span().unwrap_or(column.common.name_span);
        let message = format!(
            "the cap of {} gives {} of length to {}, which needs {} for its {}",
            column.common.label(),
            check.capacity,
            beam.map_or_else(|| "what lies on it".to_owned(), |beam| beam.label()),
            check.demand,
            force.unwrap_or_default()
        );
        findings
            .about(column.common.id, place, message)
            .help("a longer cap along the beam")
            .note(format!("decided by {}", check.combination))
            .basis(check.clause);
    }
}

//! Caps that bend.

use crate::house::House;
use crate::rules::wording::plate_needs;
use crate::rules::{Findings, rule};
use crate::verify::limit_state::LimitState;

rule! {
    /// A cap plate or saddle is too thin for what lies on it past the column.
    ///
    /// ## Why
    /// What lies on the cap beyond the column bends it down. A thin cap gives way there, and the member loses its bearing.
    ///
    /// ## Source
    /// Statics of the overhang; AISC 360 F11. That the load is spread evenly is common practice.
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
    ///   load        1200 plf live
    ///   braced      at 16"
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   cap         plate 6" x 6" x 3/4"
    /// column C2
    ///   at          C/1
    ///   size        HSS 4 x 4 x 1/4
    ///   cap         plate 6-1/2" x 10" x 1/4", long side along B1
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
    ///   load        1200 plf live
    ///   braced      at 16"
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   cap         plate 6" x 6" x 3/4"
    /// column C2
    ///   at          C/1
    ///   size        HSS 4 x 4 x 1/4
    ///   cap         plate 6-1/2" x 10" x 3/4", long side along B1
    /// column C3
    ///   at          D/1
    ///   size        HSS 4 x 4 x 1/4
    ///   cap         plate 6" x 6" x 3/4"
    /// ```
    "cap-too-thin", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for verification in house.verifications.on(LimitState::CapBending).filter(|found| found.fails()) {
        let (Ok(check), Some(column)) = (&verification.outcome, house.model.column(verification.of)) else {
            continue;
        };
        let place = column.cap.span().unwrap_or(column.common.name_span);
        let message = plate_needs(check, &format!("the cap of {}", column.common.label()));
        let finding = findings.about(column.common.id, place, message);
        finding.help("a thicker cap, or a shorter one").note(format!("decided by {}", check.combination));
        for assumed in &check.assumed {
            finding.note(format!("assumed: {assumed}"));
        }
        finding.basis(check.clause);
    }
}

//! Beams that press unevenly on one cap.

use crate::house::House;
use crate::rules::wording::decided_by;
use crate::rules::{Findings, rule};
use crate::verify::check::Check;
use crate::verify::limit_state::LimitState;
use crate::verify::quantity::Quantity;
use crate::verify::steel_sizes::next_column;

rule! {
    /// What lies on a column's cap presses further off its axis than the column bears.
    ///
    /// Two pieces that meet on a cap each press in the middle of their own half. The heavier one bends the column; with
    /// live load on its span alone, it does so most. A sixth of the column's side is let pass in any case. Of a listed
    /// steel shape the column's own strength in bending counts; nobody declares any of a filled pipe.
    ///
    /// ## Why
    /// Columns are drawn as if all load ran down their middle. A long span beside a short one moves it out to one side, and
    /// a column that has room for the load alone may have none for the moment.
    ///
    /// ## Source
    /// Statics; AISC 360-16, -22 H1.1 (from memory). The middle third of a section is common practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// grid
    ///   x           A 0', C 16', D 26'
    ///   y           1 0'
    /// beam B1
    ///   size        W10x49
    ///   from        A/1 to D/1
    ///   set         flush in main
    ///   joint       over C2
    ///   bears on    C1
    ///   bears on    C2
    ///   bears on    C3
    ///   load        2000 plf live
    ///   braced      at 16"
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   cap         plate 6" x 6" x 1/2"
    /// column C2
    ///   at          C/1
    ///   size        HSS 3 x 3 x 1/8
    ///   cap         plate 6" x 16" x 1", long side along B1
    ///   base        plate 8" x 8" x 1/2", grout 1"
    ///   stands on   F1
    /// column C3
    ///   at          D/1
    ///   size        HSS 4 x 4 x 1/4
    ///   cap         plate 6" x 6" x 1/2"
    /// footing F1
    ///   at          C/1
    ///   top         91'-0"
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// grid
    ///   x           A 0', C 16', D 26'
    ///   y           1 0'
    /// beam B1
    ///   size        W10x49
    ///   from        A/1 to D/1
    ///   set         flush in main
    ///   joint       over C2
    ///   bears on    C1
    ///   bears on    C2
    ///   bears on    C3
    ///   load        2000 plf live
    ///   braced      at 16"
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   cap         plate 6" x 6" x 1/2"
    /// column C2
    ///   at          C/1
    ///   size        HSS 5 x 5 x 1/4
    ///   cap         plate 6" x 10" x 1", long side along B1
    ///   base        plate 8" x 8" x 1/2", grout 1"
    ///   stands on   F1
    /// column C3
    ///   at          D/1
    ///   size        HSS 4 x 4 x 1/4
    ///   cap         plate 6" x 6" x 1/2"
    /// footing F1
    ///   at          C/1
    ///   top         91'-0"
    /// ```
    "cap-unbalanced", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let failing = house.verifications.on(LimitState::CapBalance).filter(|verification| verification.fails());
    for verification in failing {
        let (Ok(check), Some(column)) = (&verification.outcome, house.model.column(verification.of)) else {
            continue;
        };
        let finding = findings.about(
            column.common.id,
            column.cap.span().or(column.size.span()).unwrap_or(column.common.name_span),
            format!(
                "what lies on the cap of {} presses {} off its axis, {} is what it bears",
                column.common.label(),
                check.demand,
                check.capacity
            ),
        );
        finding.note(shares(check)).note(decided_by(verification, check));
        for assumed in &check.assumed {
            finding.note(format!("assumed: {assumed}"));
        }
        finding
            .help("make the cap shorter, let the heavier beam run through, or splice the pieces for moment");
        if let Some(size) = next_column(&house.known(), column) {
            finding.help(format!("the next size that bears it is {}", size.mark));
        }
        finding.basis(check.clause);
    }
}

/// Each reaction with its arm: `19,583 lb 3" to one side, 1,602 lb 3" to the other`.
fn shares(check: &Check) -> String {
    let of = |symbol: &'static str| check.steps.iter().filter(move |step| step.symbol == symbol);
    let pairs = of("R").zip(of("a")).map(|(reaction, arm)| {
        let (side, arm) = match arm.result {
            Quantity::Length(arm) if arm.is_negative() => ("west or south", Quantity::Length(arm.abs())),
            arm => ("east or north", arm),
        };
        format!("{} at {arm} {side}", reaction.result)
    });
    pairs.collect::<Vec<_>>().join(", ")
}

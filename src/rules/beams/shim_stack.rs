//! Packing under beams.

use crate::house::House;
use crate::model::element::Common;
use crate::model::field::Field;
use crate::model::framing::BeamSet;
use crate::profiles::foundations::SHIM_MOST;
use crate::rules::{Findings, rule};
use crate::text::Span;
use crate::units::Length;

rule! {
    /// A beam stands on, or carries through, a stack of shims.
    ///
    /// Shims on a column's cap, on a pocket's plate, and the packing between a dropped beam and its joists.
    ///
    /// ## Why
    /// A thin shim takes up what the saw left. A stack of them walks out under load, and shows that a column was cut to
    /// the wrong number.
    ///
    /// ## Source
    /// Common practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// column C1
    ///   size        HSS 4 x 4 x 1/4
    ///   shim        1-3/8"
    /// ```
    /// ```framing,passes
    /// column C1
    ///   size        HSS 4 x 4 x 1/4
    ///   shim        1/2"
    /// ```
    "shim-stack", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let most = house.limits.of(&SHIM_MOST);
    let mut report = |of: &Common, shim: Length, span: Span, what: &str, cure: String| {
        if shim > most.value {
            findings
                .about(of.id, span, format!("{shim} of {what} {}: {} at the most", of.label(), most.value))
                .help(cure)
                .basis(most.basis())
                .follows(of.id);
        }
    };
    let stated = |shim: &Field<Length>| shim.stated().map(|(shim, span)| (*shim, span));
    for column in &house.model.columns {
        if let Some((shim, span)) = stated(&column.shim) {
            report(&column.common, shim, span, "shims on", format!("cut the column {shim} longer"));
        }
    }
    for pocket in &house.model.pockets {
        if let Some((shim, span)) = stated(&pocket.shim) {
            report(
                &pocket.common,
                shim,
                span,
                "shims in",
                "take a thicker plate, or raise the seat".to_owned(),
            );
        }
    }
    for beam in &house.model.beams {
        if let Some((BeamSet::Dropped(_, packed), span)) = beam.set.stated() {
            report(&beam.common, *packed, span, "packing on", format!("set the beam {packed} higher"));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// 1/2" passes (common practice).
    #[test]
    fn looks_under_and_over_the_beam() {
        check_rule(
            &RULE,
            "
floor main
  subfloor    100'-0\"
beam B1
  set         dropped under main, packed 1/2\"
beam B2
  set         dropped under main, packed 5/8\"
--            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ 5/8\" of packing on beam B2: 1/2\" at the most
pocket PK1
  shim        9/16\"
--            ^^^^^ 9/16\" of shims in pocket PK1: 1/2\" at the most
",
        );
    }
}

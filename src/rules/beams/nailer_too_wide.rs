//! Nailers against the flanges they lie on.

use crate::house::House;
use crate::profiles::framing::NAILER_OVERHANG;
use crate::rules::{Findings, rule};

rule! {
    /// A nailer is much wider than the flange under it.
    ///
    /// It may stand over by the limit `nailer-overhang` on either side.
    ///
    /// ## Why
    /// Joists that end on the overhang bend it down and roll the plate off its bolts.
    ///
    /// ## Source
    /// Common practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// beam B1
    ///   size        W8x18
    ///   nailer      2x8 SPF flat on top, bolted
    /// ```
    /// ```framing,passes
    /// beam B1
    ///   size        W8x18
    ///   nailer      2x6 SPF flat on top, bolted
    /// ```
    "nailer-too-wide", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let overhang = house.limits.of(&NAILER_OVERHANG);
    for beam in &house.model.beams {
        let Some((nailer, span)) = beam.nailer.stated() else { continue };
        let Some(size) = beam.size.value().filter(|size| size.is_steel() == Some(true)) else { continue };
        let (Some(width), Some(flange)) = (nailer.member.depth(), size.width()) else { continue };
        let most = flange + overhang.value.times(2);
        if width <= most {
            continue;
        }
        findings
            .about(
                beam.common.id,
                span,
                format!(
                    "the nailer of {} is {width} wide on a flange of {flange}: {most} at the most",
                    beam.common.label()
                ),
            )
            .help("take a narrower plate")
            .basis(overhang.basis());
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// The flange of a W8x24 is 6-1/2" wide (published): with 1/4" over on both sides 7" at the most; a 2x8 is 7-1/4".
    #[test]
    fn says_both_widths() {
        check_rule(
            &RULE,
            "
beam B1
  size        W8x24
  nailer      2x8 SPF flat on top, bolted
--            ^^^^^^^^^^^^^^^^^^^^^^^^^^^ the nailer of beam B1 is 7-1/4\" wide on a flange of 6-1/2\": 7\" at the most
",
        );
    }
}

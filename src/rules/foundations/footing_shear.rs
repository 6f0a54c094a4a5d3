//! Footings that shear through beside what stands on them.

use crate::house::House;
use crate::rules::wording::explain;
use crate::rules::{Findings, rule};
use crate::verify::limit_state::LimitState;

rule! {
    /// A footing can shear off beside what stands on it.
    ///
    /// The pressure beyond a line one depth out from the column or wall, at strength level, against what the concrete bears
    /// across the whole width.
    ///
    /// ## Why
    /// A thin wide pad breaks along a line beside its column long before its soil gives way.
    ///
    /// ## Source
    /// Concrete code ACI 318, the edition of the limit `concrete-code`, both read in secondary copies.
    /// §22.5.5 with bars, §14.5.5 without. The size effect is waived for footings, §13.2.6.2.
    ///
    /// ## Examples
    /// ```framing,fires
    /// project "Shed"
    ///   profile     irc-2021
    ///   soil        2000 psf source "soils report"
    /// grid
    ///   x           A 0'
    ///   y           1 0'
    /// footing F1
    ///   at          A/1
    ///   size        6'-0" x 6'-0" x 8"
    ///   top         90'-0"
    ///   concrete    2500 psi
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   base        plate 8" x 8" x 1/2"
    ///   stands on   F1
    ///   load        40000 lb live
    /// ```
    /// ```framing,passes
    /// project "Shed"
    ///   profile     irc-2021
    ///   soil        2000 psf source "soils report"
    /// grid
    ///   x           A 0'
    ///   y           1 0'
    /// footing F1
    ///   at          A/1
    ///   size        6'-0" x 6'-0" x 18"
    ///   top         90'-0"
    ///   concrete    2500 psi
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   base        plate 8" x 8" x 1/2"
    ///   stands on   F1
    ///   load        40000 lb live
    /// ```
    "footing-shear", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let failing =
        house.verifications.on(LimitState::FootingShear).filter(|verification| verification.fails());
    for verification in failing {
        let (Ok(check), Some(footing)) = (&verification.outcome, house.model.footing(verification.of)) else {
            continue;
        };
        let finding = findings.about(
            footing.common.id,
            footing.size.span().unwrap_or(footing.common.name_span),
            format!(
                "shear across {} is {}, its concrete bears {}",
                footing.common.label(),
                check.demand,
                check.capacity
            ),
        );
        finding.suspects(footing.common.id, "shear");
        explain(house, verification, check, " stands on it", finding);
        finding.help("make it thicker");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::found;

    fn pad(size: &str, bars: &str, load: &str) -> String {
        format!(
            "
project \"Shed\"
  profile   irc-2021
  soil      4000 psf source \"report\"
grid
  x         A 0'
  y         1 0'
footing F1
  at        A/1
  size      {size}
  top       90'-0\"
{bars}  concrete  2500 psi
column C1
  at        A/1
  size      HSS 4 x 4 x 1/4
  base      plate 8\" x 8\" x 1/2\"
  stands on F1
  load      {load} lb live
"
        )
    }

    /// By hand: 40,000 lb live is Pu 64,000, on 36 sq ft 1,777.8 psf; the cut is (72 - 6)/2 = 33 in. in, h counts 6 in.: 27 in. x 72 in. =
    /// 13.5 sq ft press 24,000 lb; plain bears 0.6 x 4/3 x 50 x 72 x 6 = 17,280 lb.
    #[test]
    fn a_thin_wide_pad_shears() {
        let found = found(&RULE, &pad("6'-0\" x 6'-0\" x 8\"", "", "40000"));
        let [only] = found.as_slice() else { panic!("{found:?}") };
        assert_eq!(only.message, "shear across footing F1 is 24,000 lb, its concrete bears 17,280 lb");
    }
}

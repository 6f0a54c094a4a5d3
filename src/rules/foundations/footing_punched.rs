//! Columns that press through their footings.

use crate::house::House;
use crate::rules::wording::explain;
use crate::rules::{Findings, rule};
use crate::verify::limit_state::LimitState;

rule! {
    /// A column can press a block of concrete out of its footing.
    ///
    /// The load at strength level, less what presses up inside of the punched perimeter, against what the concrete bears
    /// on that perimeter: at half the depth round the column and its plate. A pad without bars counts as plain concrete.
    ///
    /// ## Why
    /// Punching comes without a sign: the column drops, and what it carries drops with it.
    ///
    /// ## Source
    /// Concrete code ACI 318, the edition of the limit `concrete-code`, both read in secondary copies.
    /// §22.6.5 with bars, §14.5.5 without. The size effect is waived for footings, §13.2.6.2.
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
    ///   size        4'-0" x 4'-0" x 8"
    ///   top         90'-0"
    ///   concrete    2500 psi
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   base        plate 8" x 8" x 1/2"
    ///   stands on   F1
    ///   load        24000 lb live
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
    ///   size        4'-0" x 4'-0" x 12"
    ///   top         90'-0"
    ///   concrete    2500 psi
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   base        plate 8" x 8" x 1/2"
    ///   stands on   F1
    ///   load        24000 lb live
    /// ```
    "footing-punched", Error, danger
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let failing = house.verifications.on(LimitState::Punching).filter(|verification| verification.fails());
    for verification in failing {
        let (Ok(check), Some(footing)) = (&verification.outcome, house.model.footing(verification.of)) else {
            continue;
        };
        let above = verification.against.and_then(|above| house.model.common(above));
        let above = above.map_or_else(|| "what stands on it".to_owned(), |above| above.label());
        let finding = findings.about(
            footing.common.id,
            footing.size.span().unwrap_or(footing.common.name_span),
            format!(
                "{above} presses {} through {}, which bears {}",
                check.demand,
                footing.common.label(),
                check.capacity
            ),
        );
        explain(house, verification, check, " stands on it", finding);
        finding.help("make it thicker, or the plate under the column wider");
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

    /// By hand: 8 in. plain count 6: bo = 4 (6 + 6) = 48 in.; 0.6 x 2.66 x 50 x 48 x 6 = 22,982 lb. Pu 1.6 x 24,000 = 38,400 lb (no dead
    /// load: the column has no length), less (12/48)^2 of it: 36,000 lb.
    #[test]
    fn a_thin_plain_pad_is_punched() {
        let found = found(&RULE, &pad("4'-0\" x 4'-0\" x 8\"", "", "24000"));
        let [only] = found.as_slice() else { panic!("{found:?}") };
        assert_eq!(only.message, "column C1 presses 36,000 lb through footing F1, which bears 22,982 lb");
    }

    /// By hand: #4 both ways in 12 in.: d = 12 - 3 - 1/2 = 8.5 in the mean; bo = 4 (6 + 8.5) = 58; 0.75 x 4 x 50 x 58 x 8.5 = 73,950 lb.
    #[test]
    fn bars_and_thickness_hold() {
        assert!(
            found(&RULE, &pad("4'-0\" x 4'-0\" x 12\"", "  bars 5 #4 each way, cover 3\"\n", "40000"))
                .is_empty()
        );
    }
}

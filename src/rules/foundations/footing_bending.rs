//! Footings that break under what the soil presses up.

use crate::house::House;
use crate::rules::wording::explain;
use crate::rules::{Findings, rule};
use crate::verify::limit_state::LimitState;
use crate::verify::quantity::Quantity;

rule! {
    /// A footing bends more than it bears, or a plain one reaches too far.
    ///
    /// The moment of the soil's pressure, at strength level, at the face of the wall or halfway to the edge of the column's
    /// plate, against what the bars bear, or plain concrete. Bars too short to be held count in proportion. A plain
    /// footing reaches no further past what stands on it than it is thick: the limit `footing-projection-per-thickness`.
    ///
    /// ## Why
    /// Concrete without bars breaks off where it reaches far: the column is then left on the broken middle.
    ///
    /// ## Source
    /// Concrete code ACI 318, the edition of the limit `concrete-code`, both read in secondary copies.
    /// §22.2 with bars, §14.5.2 without; projection: residential code R403.1.1, read in a secondary copy.
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
    ///   size        4'-0" x 4'-0" x 12"
    ///   top         90'-0"
    ///   concrete    2500 psi
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   base        plate 8" x 8" x 1/2"
    ///   stands on   F1
    ///   load        12000 lb live
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
    ///   bars        5 #4 each way, cover 3"
    ///   concrete    2500 psi
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   base        plate 8" x 8" x 1/2"
    ///   stands on   F1
    ///   load        12000 lb live
    /// ```
    "footing-bending", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let failing =
        house.verifications.on(LimitState::FootingBending).filter(|verification| verification.fails());
    for verification in failing {
        let (Ok(check), Some(footing)) = (&verification.outcome, house.model.footing(verification.of)) else {
            continue;
        };
        let label = footing.common.label();
        let message = match check.demand {
            Quantity::Length(reach) => {
                format!(
                    "{label} reaches {reach} past what stands on it; plain, {} at the most",
                    check.capacity
                )
            }
            _ => format!("bending of {label} is {}, it bears {}", check.demand, check.capacity),
        };
        let finding = findings.about(
            footing.common.id,
            footing.size.span().unwrap_or(footing.common.name_span),
            message,
        );
        finding.suspects(footing.common.id, "bending");
        explain(house, verification, check, " stands on it", finding);
        finding.help("make it thicker, or lay bars both ways at its bottom");
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

    /// By hand: (48 - 8)/2 = 20 in. past the plate, 12 thick. With #4 bars: cut (48 - 6)/2 = 21 in., d = 12 - 3 - 3/4 = 8.25; 2,000 psf at
    /// 1.6 on 4 ft over 1.75 ft: 12,000 x 1.6 / 16 x 4 x 1.75^2 / 2 = 7,350 lb-ft; As 5 x 0.2 = 1.0 sq in bears over 30,000 lb-ft.
    #[test]
    fn a_plain_pad_reaches_too_far() {
        let wide = |bars| found(&RULE, &pad("4'-0\" x 4'-0\" x 12\"", bars, "12000"));
        let plain = wide("");
        let [only] = plain.as_slice() else { panic!("{plain:?}") };
        let says = "footing F1 reaches 1'-8\" past what stands on it; plain, 1'-0\" at the most";
        assert_eq!(only.message, says);
        assert!(wide("  bars 5 #4 each way, cover 3\"\n").is_empty());
    }

    /// By hand: 6 by 6 ft, 24 in. thick, plain: (72 - 8)/2 = 32 in. past; two #3 bear 0.9 x 0.22 x 60,000 x 20 in. = 19,800 lb-ft at the
    /// most. 90,000 lb live: 4,000 psf on 6 ft over 2.75 ft: 90,750 lb-ft.
    #[test]
    fn too_few_bars_do_not_bear_it() {
        let found =
            found(&RULE, &pad("6'-0\" x 6'-0\" x 24\"", "  bars 2 #3 each way, cover 3\"\n", "90000"));
        let [only] = found.as_slice() else { panic!("{found:?}") };
        assert!(only.message.contains("footing F1"), "{}", only.message);
    }
}

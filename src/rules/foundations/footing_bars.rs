//! Bars of footings that are too few, too far apart or too near the ground.

use crate::house::House;
use crate::rules::wording::explain;
use crate::rules::{Findings, rule};
use crate::verify::limit_state::LimitState;

rule! {
    /// A footing relies on bars that are not what the code asks for.
    ///
    /// Least steel, spacing and cover of the bars of a pad that would not hold as plain concrete. A pad that holds without
    /// bars may have any.
    ///
    /// ## Why
    /// Where concrete cracks, too little steel snaps at once; bars near the ground rust.
    ///
    /// ## Source
    /// Concrete code ACI 318, the edition of the limit `concrete-code`, both read in secondary copies.
    /// §7.6.1.1, §7.7.2.3 and §25.2.1 (the last two from memory); cover: residential code R403.1.3.5.3, read in a secondary copy.
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
    ///   bars        3 #4 each way, cover 3"
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
    ///   bars        6 #4 each way, cover 3"
    ///   concrete    2500 psi
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   base        plate 8" x 8" x 1/2"
    ///   stands on   F1
    ///   load        12000 lb live
    /// ```
    "footing-bars", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let failing = house.verifications.on(LimitState::FootingBars).filter(|verification| verification.fails());
    for verification in failing {
        let (Ok(check), Some(footing)) = (&verification.outcome, house.model.footing(verification.of)) else {
            continue;
        };
        let span = footing.bars.first().map_or(footing.common.name_span, |bars| bars.span);
        let finding = findings.about(
            footing.common.id,
            span,
            format!(
                "bars of {}: {} against {} ({})",
                footing.common.label(),
                check.demand,
                check.capacity,
                check.clause
            ),
        );
        explain(house, verification, check, " stands on it", finding);
        finding.help("more bars, nearer together, or a pad thick enough to do without");
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

    /// By hand: 3 #4 are 0.60 sq in; 0.0018 x 48 x 12 = 1.04 (ratio 1.73). They lie (48 - 6 - 1/2)/2 = 20.75 in. apart, 18 at the most.
    #[test]
    fn too_little_steel() {
        let found =
            found(&RULE, &pad("4'-0\" x 4'-0\" x 12\"", "  bars 3 #4 each way, cover 3\"\n", "12000"));
        let [only] = found.as_slice() else { panic!("{found:?}") };
        let says = "bars of footing F1: 1.04 sq in against 0.600 sq in (ACI 318 7.6.1.1, least steel)";
        assert_eq!(only.message, says);
    }

    /// A 2 ft pad 12 in. thick reaches 8 in.: it holds as plain concrete.
    #[test]
    fn a_pad_that_needs_none_may_have_few() {
        assert!(
            found(&RULE, &pad("2'-0\" x 2'-0\" x 12\"", "  bars 2 #3 each way, cover 2\"\n", "8000"))
                .is_empty()
        );
    }
}

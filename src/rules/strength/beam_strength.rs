//! A beam or header that does not bear its load.

use crate::house::House;
use crate::rules::strength::{BEAMS, failing, report_strength};
use crate::rules::{Findings, rule};
use crate::verify::limit_state::LimitState;

rule! {
    /// A beam or header that does not bear its load.
    ///
    /// Bending, shear and the reactions of a product that publishes them, by the combinations of allowable stress and with live load on the spans that make it
    /// worst, each piece by itself.
    ///
    /// ## Why
    /// Its load has no other way down: what stands on it comes down with it.
    ///
    /// ## Source
    /// Wood: NDS 2018 chapters 3 to 5 and 8. Steel: AISC 360 chapters F and G.
    /// Each value's certainty stands on the calculation sheet (`storyrod calc`). Load combinations: ASCE 7-16 2.4.1, read in a secondary copy.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0'
    /// beam B1
    ///   size        W8x10
    ///   from        A/1 to B/1
    ///   span        by grid
    ///   braced      at 2'
    ///   load        900 plf live
    ///   bears on    C1
    ///   bears on    C2
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   stands on   outside "pier"
    /// column C2
    ///   at          B/1
    ///   size        HSS 4 x 4 x 1/4
    ///   stands on   outside "pier"
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0'
    /// beam B1
    ///   size        W8x24
    ///   from        A/1 to B/1
    ///   span        by grid
    ///   braced      at 2'
    ///   load        900 plf live
    ///   bears on    C1
    ///   bears on    C2
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   stands on   outside "pier"
    /// column C2
    ///   at          B/1
    ///   size        HSS 4 x 4 x 1/4
    ///   stands on   outside "pier"
    /// ```
    "beam-strength", Error, danger
}

fn check(house: &House, findings: &mut Findings<'_>) {
    const STATES: &[LimitState] = &[LimitState::Bending, LimitState::Shear, LimitState::SupportReaction];
    for (verification, check) in failing(house, BEAMS, STATES) {
        report_strength(house, verification, check, findings);
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::found;

    /// By hand: a W8x10 (Zx 8.87 in3, Fy 50) braced every 2 ft bears 21.9 kip-ft, its noncompact flange counted (published
    /// figures of the shape; the table of capacities is derived). On 20 ft: w l2 / 8 with the beam's own 10 plf, 428 plf in all.
    #[test]
    fn at_what_the_beam_bears() {
        let beam = |load: &str| {
            format!(
                "
grid
  x         A 0', B 20'
  y         1 0'
beam B1
  size      W8x10
  from      A/1 to B/1
  span      by grid
  braced    at 2'
  load      {load} plf snow
  bears on  C1
  bears on  C2
column C1
  at        A/1
  size      HSS 4 x 4 x 1/4
  stands on outside \"pier\"
column C2
  at        B/1
  size      HSS 4 x 4 x 1/4
  stands on outside \"pier\"
"
            )
        };
        assert!(found(&RULE, &beam("425")).is_empty());
        let over = found(&RULE, &beam("432"));
        assert!(matches!(over.as_slice(), [one] if one.message.contains("22,1")), "{over:?}");
    }
}

//! A beam or header that sags too far.

use crate::house::House;
use crate::rules::strength::{BEAMS, report_sags};
use crate::rules::{Findings, rule};

rule! {
    /// A beam or header that sags too far.
    ///
    /// Live load alone against the live limit, and all load, lasting load with its creep, against the total one. A limit is a share
    /// of the span, of an overhang of twice its reach.
    ///
    /// ## Why
    /// Floors slope, doors bind, tile and plaster crack.
    ///
    /// ## Source
    /// Limits: `deflection-live` (R301.7) and `deflection-total` (IBC 1604.3); each one's certainty stands in the table of limits.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0'
    /// beam B1
    ///   size        W8x24
    ///   from        A/1 to B/1
    ///   span        by grid
    ///   braced      at 2'
    ///   load        700 plf live
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
    ///   size        W10x49
    ///   from        A/1 to B/1
    ///   span        by grid
    ///   braced      at 2'
    ///   load        700 plf live
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
    "beam-deflection", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    report_sags(house, BEAMS, findings);
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::found;

    /// By hand: 5wL4/384EI of a W8x24 (I 82.7 in4, E 29,000 ksi) on 20 ft is L/360 at 444 plf of live load.
    #[test]
    fn at_a_share_of_the_span() {
        let beam = |load: &str| {
            format!(
                "
grid
  x         A 0', B 20'
  y         1 0'
beam B1
  size      W8x24
  from      A/1 to B/1
  span      by grid
  braced    at 2'
  load      {load} plf live
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
        assert!(found(&RULE, &beam("442")).is_empty());
        let over = found(&RULE, &beam("447"));
        assert!(matches!(over.as_slice(), [one] if one.message.contains("L/358, and L/360")), "{over:?}");
    }
}

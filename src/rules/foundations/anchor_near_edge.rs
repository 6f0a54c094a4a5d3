//! Anchor bolts against the edge of the concrete.

use crate::geometry::anchors::bolts;
use crate::house::House;
use crate::profiles::foundations::ANCHOR_EDGE;
use crate::rules::{Findings, rule};

rule! {
    /// An anchor bolt stands too near the edge of its concrete.
    ///
    /// The bolt is taken to stand in the middle of its sill. On a shelf the edge is the shelf's nose; on a wall that a
    /// shelf cuts into, the thin part that is left has two.
    ///
    /// ## Why
    /// A bolt near the edge breaks a piece out when it is pulled, or already when the nut is turned.
    ///
    /// ## Source
    /// Common practice; the limit `anchor-edge`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0'
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   line        north face
    ///   thick       8"
    /// shelf SH1
    ///   in          W1 from south face
    ///   width       4"
    ///   sill        1 of 2x3 treated, flush with south face
    ///   anchor      1/2" x 10" at 6'-0"
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0'
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   line        north face
    ///   thick       8"
    /// shelf SH1
    ///   in          W1 from south face
    ///   width       4"
    ///   sill        1 of 2x4 treated, flush with south face
    ///   anchor      1/2" x 10" at 6'-0"
    /// ```
    "anchor-near-edge", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let least = house.limits.of(&ANCHOR_EDGE);
    for line in bolts(&house.model) {
        let Some(edge) = line.edge.filter(|edge| *edge < least.value) else { continue };
        findings
            .about(
                line.of.id,
                line.span,
                format!(
                    "the bolts of {} stand {edge} from the edge of the concrete: {} at the least",
                    line.of.label(),
                    least.value
                ),
            )
            .note("a bolt stands in the middle of its sill")
            .help("hold the sill in from the edge, or take a wider one")
            .basis(least.basis());
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// A shelf of 6" in a wall of 10" leaves 4" (common practice: a 2x4 is 3-1/2" wide): a sill flush with the face has its
    /// middle 1-3/4" from it, one held in 3/4" only 1-1/2" from the shelf.
    #[test]
    fn what_a_shelf_leaves_has_two_edges() {
        let house = |place: &str, mark: &str| {
            format!(
                "
grid
  x           A 0', B 20'
  y           1 0'
wall W1
  kind        concrete
  from        A/1 to B/1
  line        north face
  thick       10\"
  sill        1 of 2x4 treated, {place}
  anchor      1/2\" x 10\" at 6'-0\"
{mark}shelf SH1
  in          W1 from south face
  width       6\"
"
            )
        };
        check_rule(&RULE, &house("flush with north face", ""));
        check_rule(
            &RULE,
            &house(
                "held in 3/4\" from north face",
                "--            ^^^^^^^^^^^^^^^^^^^ the bolts of wall W1 stand 1-1/2\" from the edge of the concrete: 1-3/4\" at the least\n",
            ),
        );
    }
}

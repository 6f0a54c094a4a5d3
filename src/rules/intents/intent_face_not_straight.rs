//! Wall faces that were to go straight on.

use crate::geometry::wall_face::{Break, breaks};
use crate::house::House;
use crate::model::promises::Promise;
use crate::rules::{Findings, rule};

rule! {
    /// A wall's face that was to be straight has a jog or a gap.
    ///
    /// `keep face of W2 straight from A/3 to C/3` follows the face on which W2's line lies, over all walls of its kind along
    /// the way.
    ///
    /// ## Why
    /// Siding, forms and waterproofing run through, or stop at every jog.
    ///
    /// ## Source
    /// Common practice: the plan's own coordinates.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 12', C 24'
    ///   y           1 0', 2 10'
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   line        south face
    ///   thick       8"
    /// wall W2
    ///   kind        concrete
    ///   from        B/1 to C/1
    ///   line        south face, held in 1"
    ///   thick       8"
    /// intent "One face"
    ///   keep        face of W1 straight from A/1 to C/1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 12', C 24'
    ///   y           1 0', 2 10'
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   line        south face
    ///   thick       8"
    /// wall W2
    ///   kind        concrete
    ///   from        B/1 to C/1
    ///   line        south face
    ///   thick       10"
    /// intent "One face"
    ///   keep        face of W1 straight from A/1 to C/1
    /// ```
    "intent-face-not-straight", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for intent in &house.model.intents {
        for promise in &intent.promises {
            let Promise::StraightFace(reference, line, span) = promise else { continue };
            let wall = reference.target.and_then(|wall| house.model.wall(wall));
            let Some((wall, found)) = wall.and_then(|wall| Some((wall, breaks(&house.model, wall, line)?)))
            else {
                continue;
            };
            for broken in found {
                let message = match broken {
                    Break::Off(other, off) => {
                        let name = house.model.common(other).map(|common| common.label()).unwrap_or_default();
                        let way = if off.is_positive() { "outside" } else { "inside" };
                        format!(
                            "\"{}\" is not kept: the face of {name} lies {} {way} of the line",
                            intent.common.name,
                            off.abs()
                        )
                    }
                    Break::Gap(from, to) => {
                        format!(
                            "\"{}\" is not kept: no wall stands along {} of the line",
                            intent.common.name,
                            to - from
                        )
                    }
                };
                let finding = findings.about(intent.common.id, *span, message);
                if let Break::Off(other, _) = broken
                    && let Some(common) = house.model.common(other)
                {
                    finding.related(common.name_span, common.label());
                }
                finding.follows(wall.common.id).basis("common practice");
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(end: &str, line: &str, mark: &str) -> String {
        format!(
            "
grid
  x           A 0', B 12', C 24'
  y           1 0', 2 10'
wall W1
  kind        concrete
  from        A/1 to B/1
  line        south face
  thick       8\"
wall W2
  kind        concrete
  from        {end} to C/1
  line        {line}
  thick       8\"
intent \"One face\"
  keep        face of W1 straight from A/1 to C/1
{mark}"
        )
    }

    /// About its centre on line 1 the face of W2 lies 4\" further south.
    #[test]
    fn measures_jogs_and_gaps() {
        check_rule(&RULE, &house("B/1", "south face", ""));
        check_rule(
            &RULE,
            &house(
                "B/1",
                "centre",
                "--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ \"One face\" is not kept: the face of wall W2 lies 4\" outside of the line\n",
            ),
        );
        check_rule(
            &RULE,
            &house(
                "B plus 2' / 1",
                "south face",
                "--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ \"One face\" is not kept: no wall stands along 2'-0\" of the line\n",
            ),
        );
    }
}

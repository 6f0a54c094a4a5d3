//! Ducts that run from one floor into another.

use crate::geometry::carried::Carried;
use crate::geometry::passages::{Way, passages};
use crate::house::House;
use crate::rules::{Findings, rule};

rule! {
    /// A duct runs across the step between two floors, and the joists of the two leave it no straight way.
    ///
    /// Among joists a duct goes on straight only over the height that the joists of both floors share. Below them it
    /// goes on only where the undersides are level.
    ///
    /// ## Why
    /// On the plan it is one line. On site it meets a rim, a deck or the open room.
    ///
    /// ## Source
    /// Arithmetic of the two stacks.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 10', 3 20'
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// floor den
    ///   subfloor    98'-10"
    ///   deck        3/4"
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 2 to 3
    /// joists J2
    ///   floor       den
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 2
    /// duct DU1
    ///   floor       main
    ///   from        A plus 4' / 1 plus 2' to A plus 4' / 3 less 2'
    ///   size        10" x 6"
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 10', 3 20'
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// floor den
    ///   subfloor    99'-10"
    ///   deck        3/4"
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 2 to 3
    /// joists J2
    ///   floor       den
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 2
    /// duct DU1
    ///   floor       main
    ///   from        A plus 4' / 1 plus 2' to A plus 4' / 3 less 2'
    ///   size        10" x 6"
    /// ```
    "duct-blocked-at-step", Advice
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let carried = Carried::of(&house.model);
    for duct in &house.model.ducts {
        let (Some((line, span)), Some([_, height]), Some(floor)) =
            (duct.from.stated(), duct.size.get(), duct.floor.value())
        else {
            continue;
        };
        let (Some(axis), Some(own)) = (line.axis(), floor.target) else { continue };
        let way =
            Way { axis, from: line.from.on(axis), to: line.to.on(axis), at: line.from.on(axis.across()) };
        for passage in passages(&house.model, &house.geometry, &carried, own, &way) {
            let Some(other) = house.model.common(passage.to) else { continue };
            if passage.is_level_below || passage.shared >= height {
                continue;
            }
            let joists = if passage.shared.is_positive() {
                format!("share {} of height", passage.shared)
            } else {
                "share no height".to_owned()
            };
            findings
                .about(
                    duct.common.id,
                    span,
                    format!(
                        "{} is {height} high and runs from floor {} to {}, whose joists {joists}",
                        duct.common.label(),
                        floor.name,
                        other.label()
                    ),
                )
                .related(other.name_span, other.label())
                .help("stop it before the step, give each floor a run of its own, or draw the offset between them")
                .follows(passage.to)
                .basis("arithmetic of the two stacks");
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// Undersides 100'-0" − 3/4" − 9-1/4" = 99'-2" and 98'-11"; tops 99'-11 1/4" and 99'-8 1/4": they share 99'-2" to
    /// 99'-8 1/4", 6-1/4".
    #[test]
    fn measures_what_both_share() {
        let house = |height: &str, mark: &str| {
            format!(
                "
grid
  x           A 0', B 12'
  y           1 0', 2 10', 3 20'
floor main
  subfloor    100'-0\"
  deck        3/4\"
floor den
  subfloor    99'-9\"
  deck        3/4\"
joists J1
  floor       main
  size        2x10 SPF No.2
  fill        A to B by 2 to 3
joists J2
  floor       den
  size        2x10 SPF No.2
  fill        A to B by 1 to 2
duct DU1
  floor       main
  from        B less 4' / 3 less 2' to B less 4' / 1 plus 2'
{mark}  size        10\" x {height}
"
            )
        };
        check_rule(&RULE, &house("6-1/4\"", ""));
        check_rule(
            &RULE,
            &house(
                "6-1/2\"",
                "--            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ duct DU1 is 6-1/2\" high and runs from floor main to floor den, whose joists share 6-1/4\" of height\n",
            ),
        );
    }
}

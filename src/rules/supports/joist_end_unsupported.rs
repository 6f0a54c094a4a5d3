//! Ends of joists that nothing carries.

use crate::house::House;
use crate::model::plan::Axis;
use crate::rules::{Findings, rule};
use crate::units::Length;

rule! {
    /// An end of a joist field lies on nothing.
    ///
    /// Along both ends of each bay the named supports, taken together, have to reach across the whole field; where the
    /// joists run on past a support, `cantilever` says so.
    ///
    /// ## Why
    /// Joists that end in the air hang on the deck's nails.
    ///
    /// ## Source
    /// Common practice: equilibrium; residential code R502.6 asks for a bearing at each end.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 10'
    /// beam B1
    ///   size        W8x18
    ///   from        A/1 to B/1
    /// joists J1
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    ///   bears on    B1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 10'
    /// beam B1
    ///   size        W8x18
    ///   from        A/1 to B/1
    /// beam B2
    ///   size        W8x18
    ///   from        A/2 to B/2
    /// joists J1
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    ///   bears on    B1
    ///   bears on    B2
    /// ```
    "joist-end-unsupported", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (joists, contacts) in house.model.joists.iter().zip(&house.geometry.contacts.joists) {
        let Some(run) = joists.run.get() else { continue };
        for bay in &contacts.bays {
            for (side, loose) in ends_of(run).into_iter().zip([&bay.loose_low, &bay.loose_high]) {
                let Some((from, to)) = whole(loose) else { continue };
                let length: Length = loose.iter().map(|(from, to)| *to - *from).sum();
                let (low, high) = bay.rect.on(run.across());
                let all = length == high - low;
                let stretch = if all {
                    "all along".to_owned()
                } else {
                    format!("for {length} between {} and {}", (from - low), (to - low))
                };
                let finding = findings.about(
                    joists.common.id,
                    bay.rect.span,
                    format!("the {side} end of {} lies on nothing {stretch}", joists.common.label()),
                );
                if joists.supports.is_empty() {
                    finding.note("no `bears on` or `hangs from` line says what carries it");
                }
                finding.suspects(joists.common.id, "plan");
                finding.help("say what carries it there, move the edge of the field, or say `cantilever`");
                finding.basis("common practice; R502.6");
            }
        }
    }
}

fn whole(loose: &[(Length, Length)]) -> Option<(Length, Length)> {
    Some((loose.first()?.0, loose.last()?.1))
}

const fn ends_of(run: Axis) -> [&'static str; 2] {
    match run {
        Axis::X => ["west", "east"],
        Axis::Y => ["south", "north"],
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn names_the_stretch() {
        check_rule(
            &RULE,
            "
grid
  x           A 0', B 12'
  y           1 0', 2 10'
beam B1
  size        W8x18
  from        A/1 to B/1
beam B2
  size        W8x18
  from        A/2 to A plus 9' / 2
joists J1
  size        2x10 SPF No.2
  fill        A to B by 1 to 2
--            ^^^^^^^^^^^^^^^^ the north end of joists J1 lies on nothing for 3'-0\" between 9'-0\" and 12'-0\"
  run         along y
  bears on    B1
  bears on    B2
",
        );
    }

    #[test]
    fn two_supports_can_share_an_end() {
        check_rule(
            &RULE,
            "
grid
  x           A 0', B 12'
  y           1 0', 2 10'
beam B1
  size        W8x18
  from        A/1 to B/1
beam B2
  size        W8x18
  from        A/2 to A plus 9' / 2
beam B3
  size        W8x18
  from        A plus 9' / 2 to B/2
joists J1
  size        2x10 SPF No.2
  fill        A to B by 1 to 2
  run         along y
  bears on    B1
  bears on    B2
  bears on    B3
",
        );
    }
}

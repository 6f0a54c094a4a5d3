//! Heavy point loads on strip footings.

use crate::house::House;
use crate::profiles::foundations::POINT_LOAD_ON_STRIP;
use crate::rules::{Findings, rule};
use crate::verify::limit_state::LimitState;

rule! {
    /// A heavy point load comes down on a strip footing that has no local pad there.
    ///
    /// All of it at once, dead, live and snow, against the limit `point-load-on-strip`. The pressure on the soil, with the
    /// load spread down through the wall, is `soil-pressure`.
    ///
    /// ## Why
    /// A wall spreads a point load only as well as its concrete is cast: under a beam's seat the strip settles more than
    /// beside it, and the wall cracks there.
    ///
    /// ## Source
    /// Common practice: 8,000 lb.
    ///
    /// ## Examples
    /// ```framing,fires
    /// project "Shed"
    ///   profile     irc-2021
    ///   soil        4000 psf source "soils report"
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0'
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   line        centre
    ///   thick       8"
    ///   top         95'-0"
    ///   stands on   F1
    /// load LD1
    ///   on          W1
    ///   at          A plus 10'-0" / 1
    ///   amount      9000 lb
    ///   case        live
    /// footing F1
    ///   under       W1
    ///   size        20" x 10"
    ///   top         90'-0"
    /// ```
    /// ```framing,passes
    /// project "Shed"
    ///   profile     irc-2021
    ///   soil        4000 psf source "soils report"
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0'
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   line        centre
    ///   thick       8"
    ///   top         95'-0"
    ///   stands on   F1
    /// load LD1
    ///   on          W1
    ///   at          A plus 10'-0" / 1
    ///   amount      9000 lb
    ///   case        live
    /// footing F1
    ///   under       W1
    ///   size        20" x 10"
    ///   local pad   3'-0" x 3'-0" x 14" at A plus 10'-0" / 1
    ///   top         90'-0"
    /// ```
    "point-load-on-strip", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let limit = house.limits.of(&POINT_LOAD_ON_STRIP);
    let failing =
        house.verifications.on(LimitState::StripPointLoad).filter(|verification| verification.fails());
    for verification in failing {
        let (Ok(check), Some(footing)) = (&verification.outcome, house.model.footing(verification.of)) else {
            continue;
        };
        let above = verification.against.and_then(|above| house.model.common(above));
        let under = above.map(|above| format!(" under {}", above.label())).unwrap_or_default();
        let finding = findings.about(
            footing.common.id,
            footing.common.name_span,
            format!(
                "{} takes {} at one place{under}; {} at the most without a local pad",
                footing.common.label(),
                check.demand,
                check.capacity
            ),
        );
        if let Some(above) = above {
            finding.related(above.name_span, format!("{} brings it", above.label()));
        }
        let cases: Vec<String> =
            check.steps.iter().map(|step| format!("{} {}", step.symbol, step.result)).collect();
        finding.note(cases.join(", "));
        finding.help("write a `local pad` there, wider than the strip");
        finding.basis(limit.basis());
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// 3,000 lb dead, 4,000 live and 2,000 snow are 9,000 together; 8,000 is common practice.
    #[test]
    fn counts_all_cases_at_once() {
        check_rule(
            &RULE,
            "
grid
  x           A 0', B 20'
  y           1 0'
wall W1
  kind        concrete
  from        A/1 to B/1
  line        centre
  thick       8\"
  top         95'-0\"
  stands on   F1
load LD1
  on          W1
  at          A plus 10'-0\" / 1
  amount      3000 lb
  case        dead
load LD2
  on          W1
  at          A plus 10'-0\" / 1
  amount      4000 lb
  case        live
load LD3
  on          W1
  at          A plus 10'-0\" / 1
  amount      2000 lb
  case        snow
load LD4
  on          W1
  at          A plus 14'-0\" / 1
  amount      7900 lb
  case        dead
footing F1
--      ^^ footing F1 takes 9,000 lb at one place under load LD2; 8,000 lb at the most without a local pad
-- | D 3,000 lb, L 4,000 lb, S 2,000 lb
  under       W1
  size        20\" x 10\"
  top         90'-0\"
",
        );
    }
}

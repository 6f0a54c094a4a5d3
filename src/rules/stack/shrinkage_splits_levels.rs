//! Floors that step and dry by different amounts.

use crate::diagnostic::Severity;
use crate::geometry::carried::Carried;
use crate::geometry::drops::stepping_floors;
use crate::geometry::drying::{Drying, at_step, shrunk};
use crate::house::House;
use crate::model::element::ElementId;
use crate::model::site::Below;
use crate::profiles::levels::{DRYING_APART, DRYING_APART_AT_STEPS, SHRINKAGE};
use crate::rules::{Findings, rule};
use crate::units::Length;

rule! {
    /// Two floors that step from one another dry down by different amounts.
    ///
    /// Adds the wood that lies across the grain between concrete and deck on both sides of the step, where the two floors
    /// come nearest: sills, plates, sawn joists and beams. Engineered members, studs, posts and steel do not count, nor do
    /// floors outdoors, which never get as dry. Beyond the limit `drying-apart` it is a warning, beyond
    /// `drying-apart-at-steps` an error.
    ///
    /// ## Why
    /// Steps cut true in spring are off by next winter, and all of it ends up in one riser.
    ///
    /// ## Source
    /// Common practice: 0.25 % of the thickness for each percent of moisture lost; the project's `moisture`, or 19 to 9 %.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 12'
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// floor den
    ///   subfloor    98'-6"
    ///   deck        3/4"
    ///   steps down  from main by 3 risers
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   thick       10"
    ///   sill        1 of 2x6 treated
    /// shelf SH1
    ///   in          W1 from south face
    ///   width       6"
    ///   sill        1 of 2x6 treated
    /// joists J1
    ///   floor       main
    ///   size        11-7/8 I-joist class 40
    ///   bears on    W1
    /// joists J2
    ///   floor       den
    ///   size        2x8 SPF No.2
    ///   bears on    SH1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 12'
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// floor den
    ///   subfloor    98'-6"
    ///   deck        3/4"
    ///   steps down  from main by 3 risers
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   thick       10"
    ///   sill        1 of 2x6 treated
    /// shelf SH1
    ///   in          W1 from south face
    ///   width       6"
    ///   sill        1 of 2x6 treated
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   bears on    W1
    /// joists J2
    ///   floor       den
    ///   size        2x8 SPF No.2
    ///   bears on    SH1
    /// ```
    "shrinkage-splits-levels", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let share = house.limits.of(&SHRINKAGE);
    let (worth_a_word, most) = (house.limits.of(&DRYING_APART), house.limits.of(&DRYING_APART_AT_STEPS));
    let Some(lost) = house.model.moisture_lost() else { return };
    let carried = Carried::of(&house.model);
    for (upper, lower) in stepping_floors(&house.model, &house.geometry) {
        let floors = house.model.floor(upper).zip(house.model.floor(lower));
        let Some((above, below)) = floors else { continue };
        if [above, below].iter().any(|floor| matches!(floor.over.value(), Some(Below::Outside))) {
            continue;
        }
        let Some((one, other)) = at_step(&house.model, &house.geometry, &carried, (upper, lower)) else {
            continue;
        };
        let drops = |drying: &Drying| shrunk(drying.thickness, share.value, lost);
        let apart = (drops(&one) - drops(&other)).abs();
        if apart <= worth_a_word.value {
            continue;
        }
        let print = |length: Length| length.rounded_to(Length::sixteenths(0, 1));
        let span = below.steps.span().or(above.steps.span()).unwrap_or(below.common.name_span);
        let finding = findings.about(
            if below.steps.span().is_some() { lower } else { upper },
            span,
            format!(
                "{} will dry down by about {}, {} by {}: the steps between them change by {}",
                above.common.label(),
                print(drops(&one)),
                below.common.label(),
                print(drops(&other)),
                print(apart)
            ),
        );
        let label = |id: ElementId| house.model.common(id).map(|common| common.label()).unwrap_or_default();
        for drying in [&one, &other] {
            finding.note(format!(
                "{} on {}: {} across the grain × {} × {:.0} points of moisture",
                label(drying.joists),
                label(drying.carrier),
                drying.thickness,
                share.value.0,
                lost.0
            ));
        }
        finding
            .help("take joists of one kind on both sides, or set the floor that dries more half of it high")
            .basis(share.basis());
        if apart > most.value {
            finding.severity(Severity::Error);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    const MARKS: &str = "--            ^^^^^^^^^^^^^^^^^^^^^ floor main will dry down by about 1/16\", floor den by 1/4\": the steps between them change by 1/4\"
-- | joists J2 on shelf SH1: 10-3/4\" across the grain × 0.0025 × 10 points of moisture
";

    fn house(project: &str, marks: &str) -> String {
        format!(
            "
{project}
grid
  x           A 0', B 12'
  y           1 0'
floor main
  subfloor    100'-0\"
  deck        3/4\"
floor den
  subfloor    98'-6\"
  deck        3/4\"
  steps down  from main by 3 risers
{marks}wall W1
  kind        concrete
  from        A/1 to B/1
  thick       10\"
  sill        1 of 2x6 treated
shelf SH1
  in          W1 from south face
  width       6\"
  sill        1 of 2x6 treated
joists J1
  floor       main
  size        11-7/8 I-joist class 40
  bears on    W1
joists J2
  floor       den
  size        2x10 SPF No.2
  bears on    SH1
"
        )
    }

    /// 0.0025 × 10 × (9-1/4" + 1-1/2") = 0.269", about 1/4"; the sill alone dries by 0.0375", about 1/16"; apart 0.231",
    /// about 1/4" (common practice).
    #[test]
    fn adds_up_both_sides() {
        check_rule(&RULE, &house("", MARKS));
    }

    /// By hand: wood that is set at 14% loses 5 points, 0.134" and 0.019": less than 1/8" apart. A line and a limit say the
    /// same.
    #[test]
    fn drier_wood_dries_less() {
        check_rule(&RULE, &house("project \"Hut\"\n  limit       moisture-at-install 14%", ""));
        check_rule(&RULE, &house("project \"Hut\"\n  moisture    install 14% service 9%", ""));
    }
}

//! Lower roofs that snow drifts onto.

use crate::geometry::roof_steps::roof_steps;
use crate::house::House;
use crate::model::field::Field;
use crate::profiles::loads::{DRIFT_REACH, DRIFT_STEP};
use crate::rules::{Findings, rule};
use crate::units::AreaLoad;

rule! {
    /// A roof lies beside a higher one, and its snow is the house's own, without drift.
    ///
    /// A roof is as high as what it bears on. Drifted snow is not worked out here: a roof that states its own `snow` has
    /// said what lies on it. A higher wall that carries no roof is not seen.
    ///
    /// ## Why
    /// Wind and the roof above put their snow down on the lower one, where it lies several times as deep.
    ///
    /// ## Source
    /// ASCE 7, sections 7.7 to 7.9 (from memory), the limit `drift-reach`; `drift-step` is common practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// project "Alder House"
    ///   snow        40 psf on roof
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 10', 3 30'
    /// wall W1
    ///   top         118'-0"
    /// wall W2
    ///   top         108'-0"
    /// roof R1
    ///   fill        A to B by 2 to 3
    ///   bears on    W1
    /// roof R2
    ///   fill        A to B by 1 to 2
    ///   bears on    W2
    /// ```
    /// ```framing,passes
    /// project "Alder House"
    ///   snow        40 psf on roof
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 10', 3 30'
    /// wall W1
    ///   top         118'-0"
    /// wall W2
    ///   top         108'-0"
    /// roof R1
    ///   fill        A to B by 2 to 3
    ///   bears on    W1
    /// roof R2
    ///   fill        A to B by 1 to 2
    ///   snow        95 psf source "drift, letter, invented"
    ///   bears on    W2
    /// ```
    "roof-drift-not-covered", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let (reach, least) = (house.limits.of(&DRIFT_REACH), house.limits.of(&DRIFT_STEP));
    for step in roof_steps(&house.model, &house.geometry, reach.value) {
        // Snow of the roof's own line has been thought about; the project's has not.
        let Field::Assumed(snow, _) = step.lower.snow else { continue };
        if step.by <= least.value || snow <= AreaLoad::ZERO {
            continue;
        }
        let place = match step.apart.is_positive() {
            true => format!("{} beside", step.apart.in_feet()),
            false => "against".to_owned(),
        };
        findings
            .about(
                step.lower.common.id,
                step.lower.common.name_span,
                format!(
                    "{} lies {place} {} and {} lower, and counts {} psf of snow without drift",
                    step.lower.common.label(),
                    step.upper.common.label(),
                    step.by.in_feet(),
                    snow.to_psf()
                ),
            )
            .related(step.upper.common.name_span, step.upper.common.label())
            .note("drifted snow is not worked out here")
            .help("have the drift worked out, then write the roof's own `snow 95 psf source \"…\"`")
            .follows(step.upper.common.id)
            .basis(reach.basis());
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(low: &str, gap: &str, mark: &str) -> String {
        format!(
            "
project \"House\"
  snow        40 psf on roof
grid
  x           A 0', B 20'
  y           1 0', 2 10', 3 60'
wall W1
  top         110'-0\"
wall W2
  top         {low}
roof R1
  fill        A to B by 2 plus {gap} to 3
  bears on    W1
roof R2
{mark}  fill        A to B by 1 to 2
  bears on    W2
"
        )
    }

    /// 20' of reach is from memory of ASCE 7; 1' of height is common practice.
    #[test]
    fn from_memory_near_and_lower() {
        check_rule(&RULE, &house("109'-0\"", "0'", ""));
        check_rule(&RULE, &house("108'-0\"", "21'", ""));
        check_rule(
            &RULE,
            &house(
                "108'-0\"",
                "20'",
                "--   ^^ roof R2 lies 20'-0\" beside roof R1 and 2'-0\" lower, and counts 40 psf of snow without drift\n",
            ),
        );
        check_rule(
            &RULE,
            &house(
                "108'-11\"",
                "0'",
                "--   ^^ roof R2 lies against roof R1 and 1'-1\" lower, and counts 40 psf of snow without drift\n",
            ),
        );
    }
}

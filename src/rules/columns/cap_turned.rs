//! Which way a cap plate lies.

use crate::geometry::carried::Carried;
use crate::geometry::plan_contacts::axis_of;
use crate::house::House;
use crate::model::framing::Cap;
use crate::rules::{Findings, rule};

rule! {
    /// A cap plate lies across the beam whose two pieces meet on it.
    ///
    /// The plate's long side has to run along the beam: each piece needs its share of it.
    ///
    /// ## Why
    /// Turned by a quarter, each piece bears on half of the short side. The plate looks right on the shop drawing and is
    /// found out on the day of setting.
    ///
    /// ## Source
    /// Common practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 12'
    /// beam B1
    ///   size        W8x24
    ///   from        A/1 to B/1
    ///   joint       over C1
    ///   bears on    C1
    /// beam B2
    ///   size        W8x24
    ///   from        A/1 to A/2
    /// column C1
    ///   size        HSS 4 x 4 x 1/4
    ///   cap         plate 7" x 10" x 1/2", long side along B2
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 12'
    /// beam B1
    ///   size        W8x24
    ///   from        A/1 to B/1
    ///   joint       over C1
    ///   bears on    C1
    /// column C1
    ///   size        HSS 4 x 4 x 1/4
    ///   cap         plate 7" x 10" x 1/2", long side along B1
    /// ```
    "cap-turned", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let carried = Carried::of(&house.model);
    for column in &house.model.columns {
        let Some((Cap::Plate([width, length, _], Some(along)), span)) = column.cap.stated() else { continue };
        let Some(lies) = along.target.and_then(|along| axis_of(&house.model, along)) else { continue };
        if width == length {
            continue;
        }
        for (beam, _) in carried.beams_on(column.common.id) {
            let is_met = beam.joints.iter().any(|joint| joint.over.target == Some(column.common.id));
            let axis = beam.from.value().and_then(|line| line.axis());
            if !is_met || axis.is_none_or(|axis| axis == lies) {
                continue;
            }
            let finding = findings.about(
                    column.common.id,
                    span,
                    format!(
                        "the long side of the cap of {} lies across {}, whose pieces meet on it: each has half of {}, not of {}",
                        column.common.label(),
                        beam.common.label(),
                        (*width).min(*length),
                        (*width).max(*length)
                    ),
                );
            // With pieces that meet along the other axis too, neither way is right.
            if !carried.beams_on(column.common.id).iter().any(|(other, _)| {
                let is_met = other.joints.iter().any(|joint| joint.over.target == Some(column.common.id));
                is_met && other.from.value().and_then(|line| line.axis()) == Some(lies)
            }) {
                finding.write(along.span, &*beam.common.name);
            }
            finding
                .related(beam.common.name_span, "the beam that is in two pieces there")
                .help(format!("write `long side along {}`", beam.common.name))
                .basis("common practice");
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn knows_the_joists_too() {
        check_rule(
            &RULE,
            "
grid
  x           A 0', B 12'
  y           1 0', 2 12'
joists J1
  run         along y
beam B1
  size        W8x24
  from        A/1 to B/1
  joint       over C1
  bears on    C1
column C1
  size        HSS 4 x 4 x 1/4
  cap         plate 7\" x 10\" x 1/2\", long side along J1
--            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the long side of the cap of column C1 lies across beam B1, whose pieces meet on it: each has half of 7\", not of 10\"
-- | write `long side along B1`
",
        );
    }

    /// A beam that runs through may lie across the plate.
    #[test]
    fn leaves_a_beam_in_one_piece_alone() {
        check_rule(
            &RULE,
            "
grid
  x           A 0', B 12'
  y           1 0', 2 12'
joists J1
  run         along y
beam B1
  size        W8x24
  from        A/1 to B/1
  bears on    C1
column C1
  size        HSS 4 x 4 x 1/4
  cap         plate 7\" x 10\" x 1/2\", long side along J1
",
        );
    }
}

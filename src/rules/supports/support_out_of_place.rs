//! Supports that are named but lie somewhere else in plan.

use crate::geometry::plan_contacts::{BESIDE, BeamContact, FieldContact};
use crate::house::House;
use crate::model::plan::Axis;
use crate::model::support::Support;
use crate::rules::{Findings, rule};
use crate::syntax::vocabulary::ElementKind;

rule! {
    /// A member names a support that is not where the member is.
    ///
    /// Joists are compared with every wall, beam, shelf or ledger they name, beams with every wall, pocket and column:
    /// the thing must cross the member in plan.
    ///
    /// ## Why
    /// On paper the load has a way down; in the house the joists end in the air beside the wall.
    ///
    /// ## Source
    /// Common practice: the plan's own coordinates.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 10', 3 14'
    /// beam B1
    ///   size        W8x18
    ///   from        A/3 to B/3
    /// joists J1
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    ///   bears on    B1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 10', 3 14'
    /// beam B1
    ///   size        W8x18
    ///   from        A/3 to B/3
    /// joists J1
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 3
    ///   run         along y
    ///   bears on    B1
    /// ```
    "support-out-of-place", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (joists, contacts) in house.model.joists.iter().zip(&house.geometry.contacts.joists) {
        for (support, contact) in joists.supports.iter().zip(&contacts.supports) {
            let what = match contact {
                Ok(FieldContact::Misses { by, axis }) => {
                    format!("it lies {by} past the field, {}", directions(*axis))
                }
                Ok(FieldContact::RunsAlong) => "it runs beside the joists, not across them".to_owned(),
                Ok(FieldContact::Crosses { .. }) | Err(_) => continue,
            };
            let message = format!("{} do not reach {}: {what}", joists.common.label(), support.on.name());
            let finding = findings.about(joists.common.id, support.span, message);
            finding.suspects(joists.common.id, "plan");
            place(house, support, finding);
        }
    }
    for (beam, contacts) in house.model.beams.iter().zip(&house.geometry.contacts.beams) {
        for (support, contact) in beam.supports.iter().zip(&contacts.supports) {
            let what = match contact {
                Ok(BeamContact::FallsShort(by)) => format!("the beam ends {by} short of it"),
                Ok(BeamContact::PassesBeside(by)) => format!("the beam passes {by} beside it"),
                Ok(BeamContact::RunsAlong) => "it runs beside the beam, not across it".to_owned(),
                Ok(BeamContact::Meets { off_line, .. }) if *off_line > BESIDE => {
                    format!("it stands {off_line} beside the beam's line")
                }
                Ok(BeamContact::Meets { .. }) | Err(_) => continue,
            };
            let message = format!("{} does not reach {}: {what}", beam.common.label(), support.on.name());
            let finding = findings.about(beam.common.id, support.span, message);
            finding.suspects(beam.common.id, "plan");
            place(house, support, finding);
        }
    }
}

fn place(house: &House, support: &Support, finding: &mut crate::rules::Finding) {
    let on = support.on.reference().and_then(|reference| reference.target);
    if let Some(common) = on.and_then(|on| house.model.common(on)) {
        finding.related(common.name_span, format!("{} is here", common.label()));
        // A column or pocket that was moved is the mistake; a wall is rarely moved alone.
        if matches!(common.id.kind, ElementKind::Column | ElementKind::Pocket) {
            finding.follows(common.id);
        }
    }
    finding.help("move one of the two, or name what is really there").basis("common practice");
}

const fn directions(axis: Axis) -> &'static str {
    match axis {
        Axis::X => "east or west of it",
        Axis::Y => "north or south of it",
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// The beam's flange (5-1/4" wide) begins 4'-0" less 2-5/8" north of the field.
    #[test]
    fn says_by_how_much() {
        check_rule(
            &RULE,
            "
grid
  x           A 0', B 12'
  y           1 0', 2 10', 3 14'
beam B1
  size        W8x18
  from        A/3 to B/3
joists J1
  size        2x10 SPF No.2
  fill        A to B by 1 to 2
  run         along y
  bears on    B1
--^^^^^^^^^^^^^^ joists J1 do not reach B1: it lies 3'-9 3/8\" past the field, north or south of it
",
        );
    }

    #[test]
    fn sees_a_support_beside_the_joists() {
        check_rule(
            &RULE,
            "
grid
  x           A 0', B 12'
  y           1 0', 2 10'
beam B1
  size        W8x18
  from        A plus 6' / 1 to A plus 6' / 2
joists J1
  size        2x10 SPF No.2
  fill        A to B by 1 to 2
  run         along y
  bears on    B1
--^^^^^^^^^^^^^^ joists J1 do not reach B1: it runs beside the joists, not across them
",
        );
    }
}

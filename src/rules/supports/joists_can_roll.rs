//! What keeps joists upright where they bear.

use crate::geometry::bearing::is_at_end;
use crate::geometry::hung::beside;
use crate::geometry::plan_contacts::FieldContact;
use crate::house::House;
use crate::model::element::ElementId;
use crate::model::framing::{Joists, Rim};
use crate::model::support::Contact;
use crate::rules::{Findings, rule};
use crate::units::Length;

rule! {
    /// Nothing keeps joists from rolling over where they bear.
    ///
    /// At the ends of a field the rim does it, over a joint solid blocking, at a hanger the hanger. Under an overhang the
    /// rim is away at its tip: there it takes blocking over the support as well. Joists that run through over an inner
    /// support are held by their ends.
    ///
    /// ## Why
    /// A joist standing on its narrow edge falls over sideways as soon as the deck is pushed; a whole row falls at once.
    ///
    /// ## Source
    /// Residential code R502.7 (from memory).
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 10'
    /// beam B1
    ///   size        3-ply 2x10 SPF No.2
    ///   from        A/1 to B/1
    /// joists J1
    ///   size        2x8 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    ///   rim         none
    ///   bears on    B1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 10'
    /// beam B1
    ///   size        3-ply 2x10 SPF No.2
    ///   from        A/1 to B/1
    /// joists J1
    ///   size        2x8 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    ///   rim         none
    ///   bears on    B1
    ///   blocked     solid over B1
    /// ```
    "joists-can-roll", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (joists, contacts) in house.model.joists.iter().zip(&house.geometry.contacts.joists) {
        if joists.common.may_say("blocked") || joists.rim.is_broken() {
            continue;
        }
        for (support, contact) in joists.supports.iter().zip(&contacts.supports) {
            let Ok(FieldContact::Crosses { station, strip, .. }) = contact else { continue };
            let (Contact::Bears(_), Some(on)) =
                (&support.by, support.on.reference().and_then(|reference| reference.target))
            else {
                continue;
            };
            let is_beside = beside(&house.geometry.floors, &house.geometry.surfaces, joists, on)
                .is_ok_and(|meeting| meeting.is_side_by_side());
            // What meets a beam's side hangs there, whatever the line says: another rule's.
            if is_blocked(joists, on, *strip) || is_beside {
                continue;
            }
            let name = support.on.name();
            let overhang = joists.cantilevers.iter().find(|given| given.value.0.target == Some(on));
            let why = if let Some(overhang) = overhang {
                format!("the rim is {} away, at the tip of the overhang", overhang.value.1)
            } else if joists.joints.iter().any(|joint| joint.over.target == Some(on)) {
                "their pieces end there with nothing between them".to_owned()
            } else if is_at_end(joists, *station) && matches!(joists.rim.value(), Some(Rim::None)) {
                "they have neither rim nor blocking there".to_owned()
            } else {
                continue;
            };
            let finding = findings.about(
                joists.common.id,
                support.span,
                format!("nothing keeps {} from rolling over {name}: {why}", joists.common.label()),
            );
            finding
                .add(house, &joists.common, &format!("blocked solid over {name}"))
                .help(format!("block them: `blocked solid over {name}`"))
                .basis("R502.7 (from memory)");
        }
    }
}

/// True when blocking stands over a support, by name or by its place along the joists.
fn is_blocked(joists: &Joists, on: ElementId, (low, high): (Length, Length)) -> bool {
    joists.blocked.iter().any(|blocking| {
        let is_named = blocking.value.over.as_ref().is_some_and(|over| over.target == Some(on));
        let is_there = blocking
            .value
            .at
            .is_some_and(|at| Some(at.axis) == joists.run.get() && low <= at.at && at.at <= high);
        is_named || is_there
    })
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    const PLAN: &str = "
grid
  x           A 0', B 12'
  y           1 0', 2 10', 3 20'
beam B1
  size        3-ply 2x10 SPF No.2
  from        A/1 to B/1
beam B2
  size        3-ply 2x10 SPF No.2
  from        A/2 to B/2
beam B3
  size        3-ply 2x10 SPF No.2
  from        A/3 to B/3
";

    #[test]
    fn asks_for_blocking_at_joints_and_overhangs() {
        check_rule(
            &RULE,
            &format!(
                "{PLAN}joists J1
  size        2x8 SPF No.2
  fill        A to B by 1 less 1' to 3
  run         along y
  joint       over B2
  bears on    B1
--^^^^^^^^^^^^^^ nothing keeps joists J1 from rolling over B1: the rim is 1'-0\" away, at the tip of the overhang
  bears on    B2
--^^^^^^^^^^^^^^ nothing keeps joists J1 from rolling over B2: their pieces end there with nothing between them
  bears on    B3
  cantilever  past B1 by 1'-0\"
"
            ),
        );
    }

    #[test]
    fn is_content_with_blocking_rim_and_joists_that_run_through() {
        check_rule(
            &RULE,
            &format!(
                "{PLAN}joists J1
  size        2x8 SPF No.2
  fill        A to B by 1 less 1' to 3
  run         along y
  bears on    B1
  bears on    B2
  bears on    B3
  cantilever  past B1 by 1'-0\"
  blocked     solid at 1
"
            ),
        );
    }
}

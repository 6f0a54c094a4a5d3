//! A stated contact against what the surface gives.

use crate::diagnostic::Edit;
use crate::geometry::bearing::{self, Bearing};
use crate::house::House;
use crate::house::lines::part_at;
use crate::model::element::Common;
use crate::model::support::{Contact, Support};
use crate::profiles::levels::CLOSURE_TOLERANCE;
use crate::rules::{Findings, rule};

rule! {
    /// A member is said to bear for longer than its support is wide.
    ///
    /// A sill less the rim in front of it, the depth of a pocket, a cap along the beam: no contact is longer.
    ///
    /// ## Why
    /// The bearing was checked for a length that is not there.
    ///
    /// ## Source
    /// Common practice: subtraction.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 10'
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   line        centre
    ///   thick       8"
    ///   sill        1 of 2x6 treated
    /// joists J1
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    ///   bears on    W1 for 5-1/2"
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 10'
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   line        centre
    ///   thick       8"
    ///   sill        1 of 2x6 treated
    /// joists J1
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    ///   bears on    W1 for 4"
    /// ```
    "bearing-longer-than-support", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for joists in &house.model.joists {
        // An overhang that can't be read would make an inner support of an end.
        if joists.common.may_say("cantilever") {
            continue;
        }
        for support in &joists.supports {
            if let Ok(bearing) = bearing::of_joists(&house.model, joists, support) {
                let rim = bearing::rim_thickness(joists).filter(|rim| rim.is_positive());
                let rim = rim.map(|rim| format!("a rim of {rim} stands on it too where the field ends"));
                judge(house, &joists.common, support, &bearing, rim, findings);
            }
        }
    }
    for beam in &house.model.beams {
        for support in &beam.supports {
            if let Ok(bearing) = bearing::of_beam(&house.model, beam, support) {
                judge(house, &beam.common, support, &bearing, None, findings);
            }
        }
    }
}

fn judge(
    house: &House,
    member: &Common,
    support: &Support,
    bearing: &Bearing,
    note: Option<String>,
    findings: &mut Findings<'_>,
) {
    let (Contact::Bears(Some(stated)), Some(available)) = (&support.by, bearing.available) else { return };
    let tolerance = house.limits.of(&CLOSURE_TOLERANCE);
    if stated.value - available < tolerance.value {
        return;
    }
    let finding = findings.about(
        member.id,
        stated.span,
        format!(
            "{} {} said to lie on {} for {}, which gives {available}",
            member.label(),
            member.verb("is", "are"),
            support.on.name(),
            stated.value
        ),
    );
    if let Some(on) = support.on.reference().and_then(|reference| reference.target) {
        finding.follows(on);
        if let Some(common) = house.model.common(on) {
            finding.related(common.name_span, format!("{} gives {available}", common.label()));
        }
    }
    if let Some(note) = note {
        finding.note(note);
    }
    finding.help(format!("state {available} or less, or make the support wider")).basis(tolerance.basis());
    if let Some(place) = part_at(house, stated.span, "for").filter(|_| available.is_positive()) {
        finding.choice(format!("write `for {available}`"), Edit { span: place, text: available.to_string() });
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// A 2x6 sill is 5-1/2" wide (PS 20); a 1-1/8" rim leaves 4-3/8".
    #[test]
    fn takes_the_rim_off_the_sill() {
        check_rule(
            &RULE,
            "
grid
  x           A 0', B 12'
  y           1 0', 2 10'
wall W1
  kind        concrete
  from        A/1 to B/1
  line        centre
  thick       10\"
  sill        1 of 2x6 treated
joists J1
  size        9-1/2 I-joist PRI-40
  fill        A to B by 1 to 2
  run         along y
  rim         1-1/8\" rim board
  bears on    W1 for 4-1/2\"
--                   ^^^^^^ joists J1 are said to lie on W1 for 4-1/2\", which gives 4-3/8\"
",
        );
    }
}

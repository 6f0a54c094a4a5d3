//! The length of a contact against the least that wood and concrete need.

use crate::geometry::bearing::{self, Bearing, BearingOn};
use crate::house::House;
use crate::model::element::Common;
use crate::model::field::Field;
use crate::model::member::Member;
use crate::model::support::{Contact, Support};
use crate::products::section::Make;
use crate::profiles::Applied;
use crate::profiles::framing::{
    BEARING_ON_CONCRETE, BEARING_ON_WOOD, I_JOIST_END_BEARING, I_JOIST_INNER_BEARING,
};
use crate::rules::{Findings, rule};
use crate::units::Length;

rule! {
    /// A joist or beam lies on too little.
    ///
    /// Every `bears on` line is a contact of some length: the one stated, or all that the surface gives. Two pieces
    /// that butt over a support share it; of lapped ones each runs on past the middle by half of the lap. On wood or metal and on concrete or masonry different lengths are needed;
    /// I-joists need more.
    ///
    /// ## Why
    /// The end crushes, or slips off when the wall is a little out.
    ///
    /// ## Source
    /// Residential code R502.6 for joists, used for beams as well; the limits `bearing-on-wood`, `bearing-on-concrete`,
    /// `i-joist-end-bearing` and `i-joist-inner-bearing`.
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
    ///   bears on    W1 for 1-1/4"
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
    ///   bears on    W1 for 1-1/2"
    /// ```
    "bearing-short", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for joists in &house.model.joists {
        for support in &joists.supports {
            if let Ok(bearing) = bearing::of_joists(&house.model, joists, support) {
                judge(house, &joists.common, &joists.size, support, &bearing, findings);
            }
        }
    }
    for beam in &house.model.beams {
        for support in &beam.supports {
            if let Ok(bearing) = bearing::of_beam(&house.model, beam, support) {
                judge(house, &beam.common, &beam.size, support, &bearing, findings);
            }
        }
    }
}

fn judge(
    house: &House,
    member: &Common,
    size: &Field<Member>,
    support: &Support,
    bearing: &Bearing,
    findings: &mut Findings<'_>,
) {
    let Some(on) = bearing.on else { return };
    let needed = least(house, size.value(), bearing, on);
    let each = bearing.of_each;
    if each >= needed.value {
        return;
    }
    let surface = match on {
        BearingOn::Wood => "wood",
        BearingOn::Metal => "metal",
        BearingOn::Mineral => "concrete or masonry",
    };
    let shared = if each == bearing.length {
        String::new()
    } else if each == bearing.length.half() {
        format!(", half of {} for each piece", bearing.length)
    } else {
        format!(", half of {} and half of the lap for each piece", bearing.length)
    };
    let span = match &support.by {
        Contact::Bears(Some(given)) => given.span,
        Contact::Bears(None) | Contact::Hangs(_) => support.span,
    };
    let finding = findings.about(
        member.id,
        span,
        format!(
            "{} {} on {} for {each}{shared}: {} at the least on {surface}",
            member.label(),
            member.verb("lies", "lie"),
            support.on.name(),
            needed.value
        ),
    );
    if let Some(available) = bearing.available {
        finding.note(format!("{} gives {available} in all", support.on.name()));
    }
    finding.help(format!("bear on it for {} or more; a wider sill, seat or cap gives it", needed.value));
    finding.basis(needed.basis());
}

fn least(house: &House, member: Option<&Member>, bearing: &Bearing, on: BearingOn) -> Applied<Length> {
    if on == BearingOn::Mineral {
        return house.limits.of(&BEARING_ON_CONCRETE);
    }
    let is_i_joist = member
        .and_then(|member| member.section.as_ref())
        .is_some_and(|section| matches!(section.make, Make::IJoist(_)));
    match (is_i_joist, bearing.is_shared, bearing.is_inner) {
        (false, ..) => house.limits.of(&BEARING_ON_WOOD),
        (true, false, true) => house.limits.of(&I_JOIST_INNER_BEARING),
        (true, ..) => house.limits.of(&I_JOIST_END_BEARING),
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    const PLAN: &str = "
grid
  x           A 0', B 12'
  y           1 0', 2 10'
wall W1
  kind        concrete
  from        A/1 to B/1
  line        centre
  thick       8\"
";

    /// R502.6 (read in a copy of low grade): 3\" on concrete, and exactly 3\" is enough.
    #[test]
    fn asks_three_inches_on_concrete() {
        let beam = |length: &str, mark: &str| {
            format!(
                "{PLAN}beam B1
  size        4x10 DF No.2
  from        A plus 6' / 1 to A plus 6' / 2
  bears on    W1 for {length}
{mark}"
            )
        };
        check_rule(&RULE, &beam("3\"", ""));
        check_rule(
            &RULE,
            &beam(
                "2-7/8\"",
                "--                   ^^^^^^ beam B1 lies on W1 for 2-7/8\": 3\" at the least on concrete or masonry\n",
            ),
        );
    }

    /// Two pieces over one 2-1/2\" contact have 1-1/4\" each.
    #[test]
    fn shares_a_contact_at_a_joint() {
        check_rule(
            &RULE,
            &format!(
                "{PLAN}  sill        1 of 2x4 treated
joists J1
  size        2x10 SPF No.2
  fill        A to B by 1 less 5' to 2
  run         along y
  joint       over W1
  bears on    W1 for 2-1/2\"
--                   ^^^^^^ joists J1 lie on W1 for 1-1/4\", half of 2-1/2\" for each piece: 1-1/2\" at the least on wood
"
            ),
        );
    }
    /// Statics by hand: pieces that lap by 6\" lie side by side over a ply of 1-1/2\", each on all of it; butted they have
    /// 3/4\" each.
    #[test]
    fn lapped_pieces_lie_side_by_side() {
        let joists = |joint: &str, mark: &str| {
            format!(
                "{PLAN}beam B1
  size        2x10 SPF No.2
  from        A / 1 plus 5' to B / 1 plus 5'
joists J1
  size        2x8 SPF No.2
  fill        A to B by 1 to 2
  run         along y
  joint       {joint}over B1
  bears on    B1
{mark}"
            )
        };
        check_rule(&RULE, &joists("lapped 6\" ", ""));
        let mark = "--^^^^^^^^^^^^^^ joists J1 lie on B1 for 3/4\", half of 1-1/2\" for each piece: 1-1/2\" at the least on wood\n";
        check_rule(&RULE, &joists("", mark));
    }
}

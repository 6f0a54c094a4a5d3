//! Steps that only luck would make even.

use crate::geometry::carried::Carried;
use crate::geometry::drops::stepping_floors;
use crate::geometry::tolerances::{at_step, probable, worst};
use crate::house::House;
use crate::model::stairs::Foot;
use crate::profiles::stairs::RISER_DIFFERENCE;
use crate::rules::{Findings, rule};

rule! {
    /// The parts of two floors may be off together by more than the risers between them may differ.
    ///
    /// Each side has a wall top, a sill, joists, a deck and a finish, each a little off. What is likely is the root of the
    /// sum of their squares. A hold point that shoots the wall tops before the stringers are cut takes them out: they
    /// count then with its tolerance; one that has been shot counts no more. What carries both floors counts for neither.
    ///
    /// ## Why
    /// A step between floors cannot be guaranteed from drawings. It needs one measurement, then packing under a sill, then
    /// the saw.
    ///
    /// ## Source
    /// Common practice: the tolerances in the limits; the budget is the limit `riser-difference`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 12', C 24'
    ///   y           1 0', 2 12', 3 24'
    /// floor main
    ///   subfloor    100'-0"
    ///   finish      plank 3/4"
    /// floor den
    ///   steps down  from main by 2 risers at 7"
    ///   finish      plank 3/4"
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   bears on    W1
    /// joists J2
    ///   floor       den
    ///   size        2x10 SPF No.2
    ///   bears on    W2
    /// wall W1
    ///   kind        concrete
    ///   from        A/2 to B/2
    ///   thick       8"
    ///   sill        1 of 2x6 treated
    /// wall W2
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   thick       8"
    ///   sill        1 of 2x6 treated
    /// stair S1
    ///   from        den to main
    ///   risers      2
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 12', C 24'
    ///   y           1 0', 2 12', 3 24'
    /// floor main
    ///   subfloor    100'-0"
    ///   finish      plank 3/4"
    /// floor den
    ///   steps down  from main by 2 risers at 7"
    ///   finish      plank 3/4"
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   bears on    W1
    /// joists J2
    ///   floor       den
    ///   size        2x10 SPF No.2
    ///   bears on    W2
    /// wall W1
    ///   kind        concrete
    ///   from        A/2 to B/2
    ///   thick       8"
    ///   sill        1 of 2x6 treated
    /// wall W2
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   thick       8"
    ///   sill        1 of 2x6 treated
    /// stair S1
    ///   from        den to main
    ///   risers      2
    /// hold point HP1
    ///   before      cutting the stringers of S1
    ///   shoot       top of W1
    ///   shoot       top of W2
    ///   tolerance   1/8"
    /// ```
    "tolerance-eats-budget", Advice
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let budget = house.limits.of(&RISER_DIFFERENCE);
    let carried = Carried::of(&house.model);
    let is_hold_point_read = house.model.hold_points.iter().all(|point| point.common.is_read_whole());
    for (upper, lower) in stepping_floors(&house.model, &house.geometry) {
        let between = house.model.stairs.iter().find(|stair| {
            let foot = match stair.from.value() {
                Some(Foot::Floor(floor)) => floor.target,
                Some(Foot::Grade) | None => None,
            };
            foot == Some(lower) && stair.to.value().and_then(|floor| floor.target) == Some(upper)
        });
        let Some(stair) = between.filter(|_| is_hold_point_read) else { continue };
        let Some(parts) = at_step(&house.model, &house.limits, &carried, (upper, lower)) else { continue };
        let likely = probable(&parts);
        if likely <= budget.value {
            continue;
        }
        let listed: Vec<String> = parts.iter().map(|part| format!("{} {}", part.by, part.what)).collect();
        let unmeasured: Vec<String> = parts
            .iter()
            .filter(|part| part.is_unmeasured)
            .map(|part| format!("`shoot {}`", part.what))
            .collect();
        let help = if unmeasured.is_empty() {
            "let the hold point pass less, then pack the sills, then cut the stringers".to_owned()
        } else {
            format!("write a hold point before the stringers are cut: {}", unmeasured.join(", "))
        };
        findings
            .about(
                stair.common.id,
                stair.common.name_span,
                format!(
                    "what {} goes over may be off by {likely}, and its risers may differ by {}",
                    stair.common.label(),
                    budget.value
                ),
            )
            .note(format!("likely, of {}; {} if all are off one way", listed.join(", "), worst(&parts)))
            .help(help)
            .follows(upper)
            .follows(lower)
            .basis(budget.basis());
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// Trade arithmetic by hand, in 1/32": 8, 2, 2, 1 and 4 on each side; twice 89 are 178, whose root is 13.34: 7/16" to the
    /// nearest 1/16", more than 3/8". Shot to 1/8" it is 2 x (16 + 25) = 82, root 9.06.
    #[test]
    fn a_hold_point_is_the_answer() {
        let house = |carrier: &str, hold: &str, mark: &str| {
            format!(
                "
grid
  x           A 0', B 12'
  y           1 0', 2 12'
floor main
  subfloor    100'-0\"
  finish      plank 3/4\"
floor den
  steps down  from main by 2 risers at 7\"
  finish      plank 3/4\"
joists J1
  floor       main
  size        2x10 SPF No.2
  bears on    W1
joists J2
  floor       den
  size        2x10 SPF No.2
  bears on    {carrier}
wall W1
  kind        concrete
  from        A/2 to B/2
  thick       8\"
  sill        1 of 2x6 treated
wall W2
  kind        concrete
  from        A/1 to B/1
  thick       8\"
  sill        1 of 2x6 treated
stair S1
{mark}  from        den to main
  risers      2
{hold}"
            )
        };
        let hold = |tolerance: &str| {
            format!(
                "hold point HP1\n  shoot       top of W1\n  shoot       top of W2\n  tolerance   {tolerance}\n"
            )
        };
        let mark =
            "--    ^^ what stair S1 goes over may be off by 7/16\"~, and its risers may differ by 3/8\"\n";
        check_rule(&RULE, &house("W2", &hold("1/8\""), ""));
        check_rule(&RULE, &house("W1", "", ""));
        check_rule(
            &RULE,
            &house(
                "W2",
                "",
                &format!("{mark}-- | `shoot top of W1`, `shoot top of W2`\n-- | 1-1/16\" if all\n"),
            ),
        );
        check_rule(&RULE, &house("W2", &hold("1/4\""), mark));
    }

    /// In 1/32", without the two walls: 2, 2, 1 and 4 on each side, twice 25 are 50, whose root is 7.1: less than 3/8", 12. With
    /// one wall measured 64 + 50 are 114, root 10.7: less too. What was measured needs no hold point.
    #[test]
    fn what_was_measured_is_off_no_more() {
        let house = |shots: [&str; 2], mark: &str| {
            let wall = |name: &str, line: &str, shot: &str| {
                format!(
                    "wall {name}\n  kind concrete\n  from {line}\n  thick 8\"\n  sill 1 of 2x6 treated\n{shot}"
                )
            };
            format!(
                "grid\n  x A 0', B 12'\n  y 1 0', 2 12'\nfloor main\n  subfloor 100'-0\"\n  finish plank 3/4\"\nfloor den\n  steps down from main by 2 risers at 7\"\n  finish plank 3/4\"\njoists J1\n  floor main\n  size 2x10 SPF No.2\n  bears on W1\njoists J2\n  floor den\n  size 2x10 SPF No.2\n  bears on W2\n{}{}stair S1\n{mark}  from den to main\n  risers 2\n",
                wall("W1", "A/2 to B/2", shots[0]),
                wall("W2", "A/1 to B/1", shots[1]),
            )
        };
        let mark =
            "--    ^^ what stair S1 goes over may be off by 7/16\"~, and its risers may differ by 3/8\"\n";
        check_rule(&RULE, &house(["", ""], mark));
        check_rule(&RULE, &house(["", "  shot top 98' on 2027-04-03\n"], ""));
        check_rule(&RULE, &house(["", "  shot top 98' at A on 2027-04-03\n"], mark));
    }
}

//! Where floors step: the step in the wall against the one that the two floors need.

use crate::diagnostic::{Edit, Fix};
use crate::geometry::carried::Carried;
use crate::geometry::drops::{WallStep, wall_steps};
use crate::geometry::stack::Closure;
use crate::house::House;
use crate::model::element::ElementId;
use crate::profiles::levels::CLOSURE_TOLERANCE;
use crate::rules::{Finding, Findings, rule};

rule! {
    /// The concrete steps by another height than the two floors on it need.
    ///
    /// Where one floor steps from another, or one lies on a shelf of the other's wall: the drop of the decks, the deck,
    /// joists and sills of the lower floor less those of the upper.
    ///
    /// ## Why
    /// A drop of 18" between two finishes is 18" of concrete only when both floors have equal joists, sills, decks and
    /// finishes. Any difference goes into the step, and it is poured before anybody notices.
    ///
    /// ## Source
    /// Common practice: addition; the limit `closure-tolerance`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// floor den
    ///   subfloor    98'-6"
    ///   deck        3/4"
    ///   steps down  from main by 3 risers
    /// wall W1
    ///   kind        concrete
    ///   top         98'-10 1/2"
    ///   sill        1 of 2x6 treated
    /// shelf SH1
    ///   in          W1 from south face
    ///   top         97'-4 1/2"
    ///   sill        1 of 2x6 treated
    /// joists J1
    ///   floor       main
    ///   size        2x12 SPF No.2
    ///   bears on    W1
    /// joists J2
    ///   floor       den
    ///   size        2x8 SPF No.2
    ///   bears on    SH1
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// floor den
    ///   subfloor    98'-6"
    ///   deck        3/4"
    ///   steps down  from main by 3 risers
    /// wall W1
    ///   kind        concrete
    ///   top         98'-10 1/2"
    ///   sill        1 of 2x6 treated
    /// shelf SH1
    ///   in          W1 from south face
    ///   top         97'-8 1/2"
    ///   sill        1 of 2x6 treated
    /// joists J1
    ///   floor       main
    ///   size        2x12 SPF No.2
    ///   bears on    W1
    /// joists J2
    ///   floor       den
    ///   size        2x8 SPF No.2
    ///   bears on    SH1
    /// ```
    "floor-drop-not-at-wall", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let tolerance = house.limits.of(&CLOSURE_TOLERANCE);
    let carried = Carried::of(&house.model);
    for step in wall_steps(&house.model, &house.geometry, &carried) {
        let off = step.stated - step.needed();
        if off.abs() >= tolerance.value {
            report(house, &step, findings).basis(tolerance.basis());
        }
    }
}

fn report<'f>(house: &House, step: &WallStep, findings: &'f mut Findings<'_>) -> &'f mut Finding {
    let label = |id: ElementId| house.model.common(id).map(|common| common.label()).unwrap_or_default();
    let (upper, lower) = (&step.upper, &step.lower);
    let finding = findings.about(
        lower.carrier,
        lower.span,
        format!(
            "{} lies {} below {}; {} and {} need {}",
            label(lower.carrier),
            step.stated,
            label(upper.carrier),
            label(upper.floor),
            label(lower.floor),
            step.needed()
        ),
    );
    finding
        .related(upper.span, format!("the top of {}", label(upper.carrier)))
        .note(format!(
            "the decks are {} apart; {} of deck, joists and sill below, {} above: {} + {} − {} = {}",
            step.decks_apart(),
            lower.stack,
            upper.stack,
            step.decks_apart(),
            lower.stack,
            upper.stack,
            step.needed()
        ))
        .help(format!("step the concrete by {}", step.needed()));
    if let Some(finishes) = step.finishes_apart.filter(|finishes| *finishes == step.stated) {
        finding.note(format!("{finishes} is the drop between the finishes: the step was taken from there"));
    }
    // The loops of both sides say which of the two is wrong; this says what that does to the step.
    if let Some(fix) = one_side_wrong(house, step) {
        finding.fix(fix);
    }
    finding.follows(lower.carrier).follows(lower.joists).follows(upper.carrier).follows(upper.joists)
}

/// The edit that brings the side to its level which the rest says is wrong, with all that are off alike.
fn one_side_wrong(house: &House, step: &WallStep) -> Option<Fix> {
    let tolerance = house.limits.of(&CLOSURE_TOLERANCE).value;
    let failing: Vec<&Closure> =
        house.geometry.closures.iter().filter(|closure| !closure.closes(tolerance)).collect();
    let spans = [step.upper.span, step.lower.span];
    let mut wrong = failing.iter().filter(|closure| spans.contains(&closure.span));
    let (Some(wrong), None) = (wrong.next(), wrong.next()) else { return None };
    let key = |closure: &Closure| (closure.asked_by, closure.difference().abs());
    let alike = failing.iter().filter(|closure| key(closure) == key(wrong));
    let edits = alike.map(|closure| {
        let text = closure.one_answer(&house.geometry.closures, tolerance)?.in_feet().to_string();
        Some(Edit { span: closure.span, text })
    });
    Some(Fix {
        title: format!("write {}", wrong.derived.total().in_feet()),
        edits: edits.collect::<Option<_>>()?,
    })
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// Finishes 18" apart, cork 1/2" above, plank 3/4" below: decks 18 − 1/2 + 3/4 = 18-1/4" apart. One sill and a 2x12
    /// above 13-1/2", two sills and a 2x8 below 11": 18-1/4 + 11 − 13-1/2 = 15-3/4".
    #[test]
    fn a_drop_of_finishes_is_no_step() {
        let house = |shelf: &str, mark: &str| {
            format!(
                "
floor main
  subfloor    100'-0\"
  deck        3/4\"
  finish      cork 1/2\"
floor den
  deck        3/4\"
  finish      plank 3/4\"
  steps down  from main by 3 risers at 6\"
wall W1
  kind        concrete
  top         98'-10 1/2\"
  sill        1 of 2x6 treated
shelf SH1
  in          W1 from south face
  sill        2 of 2x6 treated
  top         {shelf}
{mark}joists J1
  floor       main
  size        2x12 SPF No.2
  bears on    W1
joists J2
  floor       den
  size        2x8 SPF No.2
  bears on    SH1
"
            )
        };
        check_rule(&RULE, &house("97'-6 3/4\"", ""));
        check_rule(
            &RULE,
            &house(
                "97'-4 1/2\"",
                "--            ^^^^^^^^^^ shelf SH1 lies 1'-6\" below wall W1; floor main and floor den need 1'-3 3/4\"\n-- | 1'-6\" is the drop between the finishes: the step was taken from there\n",
            ),
        );
    }
}

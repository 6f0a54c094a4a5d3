//! What a flight or a promise of steps says, against the two floors.

use crate::diagnostic::Edit;
use crate::diagnostic::Severity;
use crate::geometry::stack::Loop;
use crate::house::House;
use crate::house::lines::part_at;
use crate::model::stairs::Foot;
use crate::profiles::levels::CLOSURE_TOLERANCE;
use crate::profiles::stairs::RISER_DIFFERENCE;
use crate::rules::{Findings, rule};

rule! {
    /// A step between two floors is not the number of risers it is said to be.
    ///
    /// Compares the promise `steps down from F by N risers at H` with the two finishes, and what a flight is
    /// `laid out` for with the floors as they come out. It is advice while the risers stay within their limits.
    ///
    /// ## Why
    /// Floors are laid out in whole risers. A drop that is something else ends in one odd step.
    ///
    /// ## Source
    /// Common practice: division; residential code R311.7.5.1 for how far risers may differ.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor      100'-0"
    /// floor den
    ///   subfloor      98'-10"
    ///   steps down    from main by 2 risers at 6-1/2"
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor      100'-0"
    /// floor den
    ///   subfloor      98'-11"
    ///   steps down    from main by 2 risers at 6-1/2"
    /// ```
    "step-not-whole-risers", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    promised_steps(house, findings);
    flights_beside_promises(house, findings);
    flights_as_carried(house, findings);
}

fn promised_steps(house: &House, findings: &mut Findings<'_>) {
    let tolerance = house.limits.of(&CLOSURE_TOLERANCE);
    let spread = house.limits.of(&RISER_DIFFERENCE);
    for (floor, levels) in house.model.floors.iter().zip(&house.geometry.floors) {
        let Some((steps, span)) = floor.steps.stated() else { continue };
        let other = steps.from.target.and_then(|other| house.geometry.floors.get(other.index as usize));
        let Some((Ok(here), Ok(there))) = other.map(|other| (&levels.finish, &other.finish)) else {
            continue;
        };
        let up = here.total() - there.total();
        let is_wrong_way = up.is_positive() == steps.is_down && up.abs() >= tolerance.value;
        let promised = steps.rise();
        let off = promised.map(|promised| (promised - up).abs()).unwrap_or_default();
        if !is_wrong_way && off < tolerance.value {
            continue;
        }
        let way = if up.is_negative() { "below" } else { "above" };
        let riser = up.abs().shared_by(steps.risers).map(|riser| riser.to_string()).unwrap_or_default();
        let message = match promised {
            Some(promised) => format!(
                "{} is {} {way} {}, finish to finish, but {} risers at {} make {}: they would be {riser} each",
                floor.common.label(),
                up.abs(),
                steps.from.name,
                steps.risers,
                steps.riser.as_ref().map(|given| given.value).unwrap_or_default(),
                promised.abs()
            ),
            None => format!(
                "{} is said to step {} from {}, but its finish is {} {way}",
                floor.common.label(),
                if steps.is_down { "down" } else { "up" },
                steps.from.name,
                up.abs()
            ),
        };
        let finding = findings.about(floor.common.id, span, message);
        finding.note(format!("here: {here}")).note(format!("{}: {there}", steps.from.name));
        // Up to the whole difference could end up in one riser.
        if !is_wrong_way && off <= spread.value {
            finding.severity(Severity::Advice);
        }
        finding.help("change the number of risers, or the level or finish of one of the two floors");
        let each = up.abs().shared_by(steps.risers).map(|each| (each, each.rounded()));
        if let Some((each, riser)) = each
            && each.is(riser)
            && !is_wrong_way
            && let Some(place) = part_at(house, span, "at")
        {
            finding.choice(format!("write risers of {riser}"), Edit { span: place, text: riser.to_string() });
        }
        if let (Some(promised), Some((subfloor, place))) = (promised, floor.subfloor.stated()) {
            let moved = (*subfloor + promised - up).in_feet().to_string();
            if !moved.ends_with('~') {
                finding.choice(format!("move the subfloor to {moved}"), Edit { span: place, text: moved });
            }
        }
        finding.suspects(floor.common.id, "steps").basis(tolerance.basis());
    }
}

/// A flight between two floors has as many risers as the step between them is said to have.
fn flights_beside_promises(house: &House, findings: &mut Findings<'_>) {
    for stair in &house.model.stairs {
        let (Some((risers, risers_span)), Some(Foot::Floor(from)), Some(to)) =
            (stair.risers.stated(), stair.from.value(), stair.to.value())
        else {
            continue;
        };
        for (floor, other) in [(from, to), (to, from)] {
            let Some(floor) = floor.target.and_then(|floor| house.model.floor(floor)) else { continue };
            let Some((steps, span)) = floor.steps.stated() else { continue };
            if steps.from.target != other.target || steps.from.target.is_none() || steps.risers == *risers {
                continue;
            }
            let finding = findings.about(
                floor.common.id,
                span,
                format!(
                    "{} is said to be {} risers from {}, but {} between them has {risers}",
                    floor.common.label(),
                    steps.risers,
                    steps.from.name,
                    stair.common.label()
                ),
            );
            if let Some(place) = part_at(house, span, "risers") {
                finding.choice(
                    format!("write {risers} risers here"),
                    Edit { span: place, text: risers.to_string() },
                );
            }
            finding.choice(
                format!("write {} risers in {}", steps.risers, stair.common.label()),
                Edit { span: risers_span, text: steps.risers.to_string() },
            );
            finding
                .related(risers_span, format!("{} of {}", risers, stair.common.label()))
                .follows(stair.common.id)
                .suspects(floor.common.id, "steps")
                .help("make the two agree")
                .basis("common practice");
        }
    }
}

/// A floor whose joists rest on something at another level comes out at another level: what that does to its flights.
fn flights_as_carried(house: &House, findings: &mut Findings<'_>) {
    let tolerance = house.limits.of(&CLOSURE_TOLERANCE);
    let spread = house.limits.of(&RISER_DIFFERENCE);
    for closure in &house.geometry.closures {
        if closure.of != Loop::BeamUnderJoists || closure.closes(tolerance.value) {
            continue;
        }
        let joists = closure.asked_by.and_then(|joists| house.model.joists_of(joists));
        let Some(floor) = joists.and_then(|joists| joists.floor.value()).and_then(|floor| floor.target)
        else {
            continue;
        };
        for (stair, flight) in house.model.stairs.iter().zip(&house.geometry.flights) {
            let (Ok(rise), Some(to)) = (flight.rise, stair.to.value().and_then(|to| to.target)) else {
                continue;
            };
            let is_from = match stair.from.value() {
                Some(Foot::Floor(from)) => from.target == Some(floor),
                Some(Foot::Grade) | None => false,
            };
            let carried = match (to == floor, is_from) {
                (true, false) => rise + closure.difference(),
                (false, true) => rise - closure.difference(),
                (true, true) | (false, false) => continue,
            };
            if (carried - rise).abs() <= spread.value {
                continue;
            }
            let carrier =
                house.model.common(closure.subject).map(|common| common.label()).unwrap_or_default();
            let finding = findings.about(
                stair.common.id,
                stair.laid_out.span().unwrap_or(stair.common.name_span),
                format!("as {carrier} carries it, {} climbs {carried}, not {rise}", stair.common.label()),
            );
            if let Some(joists) = joists {
                finding.follows(joists.common.id);
            }
            finding.follows(closure.subject).basis(spread.basis());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// A drop of 19-1/2" shared by two is 9-3/4"; two risers of 6-1/2" make 13".
    #[test]
    fn says_what_the_risers_would_be() {
        check_rule(
            &RULE,
            "
floor main
  subfloor      100'-0\"
floor den
  subfloor      98'-4 1/2\"
  steps down    from main by 2 risers at 6-1/2\"
--              ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ floor den is 1'-7 1/2\" below main, finish to finish, but 2 risers at 6-1/2\" make 1'-1\": they would be 9-3/4\" each
",
        );
    }

    #[test]
    fn sees_a_step_the_wrong_way() {
        check_rule(
            &RULE,
            "
floor main
  subfloor      100'-0\"
floor den
  subfloor      101'-1\"
  steps down    from main by 2 risers
--              ^^^^^^^^^^^^^^^^^^^^^ floor den is said to step down from main, but its finish is 1'-1\" above
",
        );
    }
}

//! The tallest riser of a flight.

use crate::diagnostic::Edit;
use crate::house::House;
use crate::house::lines::part_at;
use crate::profiles::stairs::RISER_HEIGHT;
use crate::rules::{Findings, rule};
use crate::units::Length;
use crate::units::Ratio;

rule! {
    /// A riser is taller than people climb.
    ///
    /// Looks at the risers of every stair as they come out with the finishes of today, and at every promise
    /// `steps down from F by N risers`: the drop between the two finishes shared by that number.
    ///
    /// ## Why
    /// A tall riser tires and trips. One riser more makes all of them lower.
    ///
    /// ## Source
    /// Residential code R311.7.5.1; the limit `riser-height`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor      100'-0"
    /// floor den
    ///   subfloor      98'-6"
    ///   steps down    from main by 2 risers
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor      100'-0"
    /// floor den
    ///   subfloor      98'-6"
    ///   steps down    from main by 3 risers
    /// ```
    "riser-too-tall", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let limit = house.limits.of(&RISER_HEIGHT);
    for (stair, flight) in house.model.stairs.iter().zip(&house.geometry.flights) {
        let Ok(risers) = &flight.risers else { continue };
        if risers.tallest() <= limit.value {
            continue;
        }
        let finding = findings.about(
            stair.common.id,
            stair.risers.span().unwrap_or(stair.common.name_span),
            format!(
                "a riser of {} is {}: {} at the most",
                stair.common.label(),
                risers.tallest(),
                limit.value
            ),
        );
        if let (Ok(lower), Ok(upper)) = (&flight.lower, &flight.upper) {
            let rise = upper.total() - lower.total();
            finding.note(format!(
                "{} to {} is a rise of {rise}",
                lower.total().in_feet(),
                upper.total().in_feet()
            ));
            finding.help(more_risers(rise, limit.value));
            if let (Some((count, _)), Some((now, span))) =
                (risers_within(rise, limit.value), stair.risers.stated())
                && count > *now
            {
                finding.choice(format!("write {count} risers"), Edit { span, text: count.to_string() });
            }
        }
        finding.suspects(stair.common.id, "rise").basis(limit.basis());
    }
    for (floor, levels) in house.model.floors.iter().zip(&house.geometry.floors) {
        let Some((steps, span)) = floor.steps.stated() else { continue };
        let other = steps.from.target.and_then(|other| house.geometry.floors.get(other.index as usize));
        let Some((Ok(here), Ok(there))) = other.map(|other| (&levels.finish, &other.finish)) else {
            continue;
        };
        let drop = (here.total() - there.total()).abs();
        let Some(riser) = drop.shared_by(steps.risers).filter(|riser| *riser > limit.value) else { continue };
        let finding = findings.about(
            floor.common.id,
            span,
            format!(
                "{} and {} are {drop} apart, finish to finish: {} risers of {riser} each, {} at the most",
                floor.common.label(),
                steps.from.name,
                steps.risers,
                limit.value
            ),
        );
        if let Some((count, _)) = risers_within(drop, limit.value)
            && steps.riser.is_none()
            && let Some(place) = part_at(house, span, "risers")
        {
            finding.choice(format!("write {count} risers"), Edit { span: place, text: count.to_string() });
        }
        finding.suspects(floor.common.id, "steps").help(more_risers(drop, limit.value)).basis(limit.basis());
    }
}

fn risers_within(rise: Length, most: Length) -> Option<(u32, Ratio)> {
    (1..=40).find_map(|count| Some((count, rise.shared_by(count).filter(|riser| *riser <= most)?)))
}

/// The least number of risers that stay within the limit.
fn more_risers(rise: Length, most: Length) -> String {
    match risers_within(rise, most) {
        Some((count, riser)) => format!("{count} risers of {riser} do"),
        None => "the levels are too far apart for one stair".to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// R311.7.5.1 allows 7-3/4": two risers of it make 15-1/2".
    #[test]
    fn at_the_limit() {
        let house = |finish: &str, mark: &str| {
            format!(
                "
floor main
  subfloor      100'-0\"
  finish        tile {finish}
floor den
  subfloor      98'-8 1/2\"
  steps down    from main by 2 risers
{mark}"
            )
        };
        check_rule(&RULE, &house("0\"", ""));
        check_rule(
            &RULE,
            &house(
                "1/8\"",
                "--              ^^^^^^^^^^^^^^^^^^^^^ floor den and main are 1'-3 5/8\" apart, finish to finish: 2 risers of 7-13/16\" each, 7-3/4\" at the most\n-- | 3 risers of 5-3/16\"~ do\n",
            ),
        );
    }
}

//! Drops that are whole risers between the decks and not between the finishes.

use crate::geometry::drops::stepping_floors;
use crate::house::House;
use crate::house::lines::part_at;
use crate::model::element::ElementId;
use crate::profiles::levels::CLOSURE_TOLERANCE;
use crate::rules::{Findings, rule};
use crate::units::Length;

rule! {
    /// A step between floors is whole risers from deck to deck, not from finish to finish.
    ///
    /// Where a floor promises `steps … by N risers at LEN` and its own level says otherwise: whether the promise holds
    /// between the two decks tells how the level was found.
    ///
    /// ## Why
    /// People walk on finishes. Where those differ in thickness the risers do too, and it shows when the stringers are cut.
    ///
    /// ## Source
    /// Common practice: the rise of a stair counts from finish to finish.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    ///   finish      tile bed 1"
    /// floor den
    ///   subfloor    98'-4 1/2"
    ///   deck        3/4"
    ///   finish      cork 1/4"
    ///   steps down  from main by 3 risers at 6-1/2"
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    ///   finish      tile bed 1"
    /// floor den
    ///   subfloor    98'-5 1/4"
    ///   deck        3/4"
    ///   finish      cork 1/4"
    ///   steps down  from main by 3 risers at 6-1/2"
    /// ```
    "drop-measured-on-wrong-surface", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let tolerance = house.limits.of(&CLOSURE_TOLERANCE);
    let levels = |floor: ElementId| house.geometry.floors.get(floor.index as usize);
    for (upper, lower) in stepping_floors(&house.model, &house.geometry) {
        let Some((above, below)) = levels(upper).zip(levels(lower)) else { continue };
        let promise = [upper, lower].into_iter().find_map(|floor| {
            let floor = house.model.floor(floor)?;
            let (steps, span) = floor.steps.stated()?;
            let is_of_pair = [upper, lower].contains(&steps.from.target?);
            Some((floor, steps.rise()?.abs(), steps, span)).filter(|_| is_of_pair)
        });
        let Some((floor, rise, steps, span)) = promise else { continue };
        let (Ok(deck_up), Ok(deck_down), Ok(up), Ok(down)) =
            (&above.subfloor, &below.subfloor, &above.finish, &below.finish)
        else {
            continue;
        };
        let decks = deck_up.total() - deck_down.total();
        let finishes = up.total() - down.total();
        let agrees = |drop: Length| (drop - rise).abs() < tolerance.value;
        if !agrees(decks) || agrees(finishes) {
            continue;
        }
        let riser = finishes.shared_by(steps.risers).map(|riser| riser.to_string()).unwrap_or_default();
        let finding = findings.about(
                floor.common.id,
                span,
                format!(
                    "{rise} of risers are what lies between the decks; between the finishes lie {finishes}: risers of {riser}"
                ),
            );
        finding
            .note(format!("upper finish: {up}"))
            .note(format!("lower finish: {down}"))
            .help(format!(
                "move one of the floors by {}, so that the finishes are {rise} apart",
                (finishes - rise).abs()
            ))
            .basis("common practice")
            .follows(floor.common.id);
        let exact = finishes.shared_by(steps.risers).map(|each| (each, each.rounded()));
        if let Some((each, riser)) = exact
            && each.is(riser)
            && riser.rounded_to(Length::sixteenths(0, 1)) == riser
            && let Some(place) = part_at(house, span, "at")
        {
            finding.write(place, riser.to_string());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// Three risers of 6-1/2" are 19-1/2". Decks 100'-0" and 98'-4 1/2" are 19-1/2" apart; with 1" on top and 1/4" below
    /// the finishes are 20-1/4" apart, 6-3/4" a riser.
    #[test]
    fn says_what_the_risers_become() {
        check_rule(
            &RULE,
            "
floor main
  subfloor    100'-0\"
  finish      tile bed 1\"
floor den
  subfloor    98'-4 1/2\"
  finish      cork 1/4\"
  steps down  from main by 3 risers at 6-1/2\"
--            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ 1'-7 1/2\" of risers are what lies between the decks; between the finishes lie 1'-8 1/4\": risers of 6-3/4\"
-- | so that the finishes are 1'-7 1/2\" apart
",
        );
    }

    /// Equal finishes leave no other surface to measure from.
    #[test]
    fn equal_finishes_agree() {
        check_rule(
            &RULE,
            "
floor main
  subfloor    100'-0\"
floor den
  subfloor    98'-4 1/2\"
  steps down  from main by 3 risers at 6-1/2\"
",
        );
    }
}

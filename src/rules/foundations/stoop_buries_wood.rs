//! Landings outside, against the sill and rim behind them.

use std::collections::HashSet;

use crate::geometry::doorways::threshold;
use crate::geometry::surfaces::Surface;
use crate::geometry::wood::walls_under_wood;
use crate::house::House;
use crate::model::element::{Common, ElementId};
use crate::model::stairs::LandingBody;
use crate::profiles::foundations::{SILL_ABOVE_GRADE, STOOP_GAP};
use crate::profiles::stairs::THRESHOLD_DROP;
use crate::rules::{Findings, rule};
use crate::units::Length;

rule! {
    /// A stoop or landing lies against wood.
    ///
    /// Its top is compared with the sill on the wall it touches. Where it lies less than the limit `sill-above-grade`
    /// below that, an open gap of `stoop-gap` has to part the two, or flashing.
    ///
    /// ## Why
    /// The door wants the landing high, the rim wants it low, and with a plain wall top both cannot be had. Concrete cast
    /// against a rim rots it within years, behind a step that looks sound.
    ///
    /// ## Source
    /// Residential code R317.1 for the distance and R311.3.1 for the door, both read in secondary copies; the gap is
    /// common practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W1
    ///   kind        concrete
    ///   top         99'-0"
    ///   sill        1 of 2x6 treated
    /// stoop SP1
    ///   kind        concrete
    ///   top         99'-6"
    ///   gap         1/2" filled to W1
    /// ```
    /// ```framing,passes
    /// wall W1
    ///   kind        concrete
    ///   top         99'-0"
    ///   sill        1 of 2x6 treated
    /// stoop SP1
    ///   kind        concrete
    ///   top         99'-6"
    ///   gap         2" open to W1
    /// ```
    "stoop-buries-wood", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let under_wood = walls_under_wood(&house.model);
    for stoop in &house.model.stoops {
        check_landing(house, &stoop.common, &stoop.body, &under_wood, findings);
    }
    for landing in &house.model.landings {
        check_landing(house, &landing.common, &landing.body, &under_wood, findings);
    }
}

fn check_landing(
    house: &House,
    common: &Common,
    body: &LandingBody,
    under_wood: &HashSet<ElementId>,
    findings: &mut Findings<'_>,
) {
    let (clear, apart) = (house.limits.of(&SILL_ABOVE_GRADE), house.limits.of(&STOOP_GAP));
    let is_mineral = body.kind.value().is_some_and(|kind| &**kind != "framed");
    let (Some((gap, gap_span)), Some((top, top_span))) = (body.gap.stated(), body.top.stated()) else {
        return;
    };
    let wall = gap.wall.as_ref().and_then(|wall| house.model.wall(wall.target?));
    let Some(wall) = wall.filter(|wall| under_wood.contains(&wall.common.id)) else { return };
    let Ok(wood) = house.geometry.surfaces.of(wall.common.id, Surface::Top) else { return };
    let wood = wood.total();
    let is_apart = &*gap.how == "flashed" || (&*gap.how == "open" && gap.width >= apart.value);
    if !is_mineral || is_apart || *top <= wood - clear.value {
        return;
    }
    let place = match *top - wood {
        above if above.is_negative() => format!("{} below", above.abs()),
        above => format!("{above} above"),
    };
    let finding = findings.about(
        common.id,
        gap_span,
        format!(
            "{} lies {place} the underside of the sill on {}, {} and {} away: {} open is the least",
            common.label(),
            wall.common.label(),
            gap.how,
            gap.width,
            apart.value
        ),
    );
    finding.related(top_span, format!("its top at {}", top.in_feet()));
    finding.related(
        wall.top.span().unwrap_or(wall.common.name_span),
        format!("the wood begins at {}", wood.in_feet()),
    );
    if let Some(threshold) = threshold_of(house, body) {
        let lowest = threshold - house.limits.of(&THRESHOLD_DROP).value;
        let highest = wood - clear.value;
        if lowest > highest {
            finding.note(format!(
                "the door wants it at {} or higher, the wood at {} or lower: against this wall no level will do",
                lowest.in_feet(),
                highest.in_feet()
            ));
        }
    }
    finding
        .help(format!(
            "leave {} open, raise the wall beside it to a shelf inside, or have the rim flashed",
            apart.value
        ))
        .basis(clear.basis());
}

/// The threshold of the door a landing lies at.
fn threshold_of(house: &House, body: &LandingBody) -> Option<Length> {
    let door = house.model.door(body.door.value()?.target?)?;
    let threshold = threshold(&house.model, &house.geometry.floors, door).ok()?;
    Some(threshold.total())
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// 99'-0" less 8" is 98'-4": a landing there may touch the wall, 1/16" higher it may not (R317.1, read in a secondary
    /// copy).
    #[test]
    fn eight_inches_below_the_wood_pass() {
        let house = |top: &str, mark: &str| {
            format!(
                "
wall W1
  kind        concrete
  top         99'-0\"
  sill        1 of 2x6 treated
stoop SP1
  kind        concrete
  top         {top}
  gap         0\" filled to W1
{mark}"
            )
        };
        check_rule(&RULE, &house("98'-4\"", ""));
        check_rule(
            &RULE,
            &house(
                "98'-4 1/16\"",
                "--            ^^ stoop SP1 lies 7-15/16\" below the underside of the sill on wall W1, filled and 0\" away: 2\" open is the least\n",
            ),
        );
    }

    /// The door asks for 100'-0" less 7-3/4" = 99'-4 1/4", the wood for 99'-0 1/2" less 8" = 98'-4 1/2".
    #[test]
    fn says_when_no_level_will_do() {
        check_rule(
            &RULE,
            "
floor main
  subfloor    100'-0\"
  deck        3/4\"
wall W1
  kind        concrete
  top         99'-0 1/2\"
  sill        1 of 2x6 treated
wall UW1
  kind        framed
  stands on   main over W1
door DR1
  in          UW1
stoop SP1
  kind        concrete
  at          DR1
  top         99'-6\"
  gap         1\" open to W1
--            ^^ stoop SP1 lies 5-1/2\" above the underside of the sill on wall W1, open and 1\" away: 2\" open is the least
-- | the door wants it at 99'-4 1/4\" or higher, the wood at 98'-4 1/2\" or lower
",
        );
    }
}

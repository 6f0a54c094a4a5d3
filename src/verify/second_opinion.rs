//! What the code's own span tables say of the same joists, beside the computed check.

use crate::design::prescriptive::joist_spans::{self, Joist};
use crate::design::wood::repetitive::Row;
use crate::model::framing::Joists;
use crate::model::stuff::{Stuff, Values, WoodKind};
use crate::profiles::framing::DEFLECTION_LIVE;
use crate::units::Length;
use crate::verify::Known;
use crate::verify::check::{Check, Step, Verification};
use crate::verify::limit_state::LimitState;
use crate::verify::quantity::Quantity;
use crate::verify::wood_values::Adjusting;

/// Adds to the check of sag of sawn joists the longest span that the code's table procedure gives them, and whether the two
/// agree. Engineered joists stand in no table.
pub fn add(known: &Known<'_>, joists: &Joists, stuff: &Stuff, checks: &mut [Verification]) {
    let Some(longest) = longest_span(known, joists, stuff) else { return };
    let holds = checks
        .iter()
        .filter(|it| matches!(it.limit_state, LimitState::Bending | LimitState::LiveDeflection))
        .all(Verification::holds);
    let sags = checks.iter_mut().filter(|it| it.limit_state == LimitState::LiveDeflection);
    for check in sags.filter_map(|it| it.outcome.as_mut().ok()) {
        let Some(span) = span_of(check) else { continue };
        let source = if holds == (span <= longest) {
            "longest clear span by the procedure of IRC R502.3.1, a second opinion: it agrees"
        } else {
            "longest clear span by the procedure of IRC R502.3.1, a second opinion: it differs, since it counts clear spans \
             under the floor's load alone, each bay by itself"
        };
        check.steps.push(Step::read("l by table", longest, source));
    }
}

fn span_of(check: &Check) -> Option<Length> {
    let step = check.steps.iter().find(|step| step.symbol == "l")?;
    match step.result {
        Quantity::Length(span) => Some(span),
        _ => None,
    }
}

fn longest_span(known: &Known<'_>, joists: &Joists, stuff: &Stuff) -> Option<Length> {
    let Values::Wood(wood) = &stuff.values else { return None };
    let WoodKind::Dimension(..) = wood.kind else { return None };
    let floor = known.model.floor(joists.floor.value()?.target?)?;
    let spacing = joists.spacing.get()?.step;
    let adjusting = Adjusting::of(known.model, stuff, wood).ok()?;
    let row = Row { members: 3, spacing, is_joined: true };
    let joist = Joist {
        bending: adjusting.bending(1.0, row, false, false).ok()?.value,
        modulus: wood.modulus? * adjusting.share_of_modulus(),
        breadth: stuff.section.width(),
        depth: stuff.section.depth,
        spacing,
    };
    let sag = f64::from(known.limits.of(&DEFLECTION_LIVE).value.0);
    let found = joist_spans::span(&joist, floor.live.get()?, floor.dead.get()?, sag).ok()?;
    Some(found.printed)
}

#[cfg(test)]
mod tests {
    use crate::testing::rule_check::house;
    use crate::verify::limit_state::LimitState;

    /// Published, IRC table R502.3.1(2), read in a secondary copy: SPF No.2 2x10 at 16 in., 40 psf live and 10 psf dead: 15'-5".
    #[test]
    fn the_table_stands_beside_the_check() {
        let house = house(
            "
grid
  x  A 0', B 20'
  y  1 0', 2 14'
floor main
  subfloor  100'-0\"
  deck      3/4\"
  live      40 psf
  dead      10 psf
joists J1
  floor     main
  size      2x10 SPF No.2
  fill      A to B by 1 to 2
  run       along y
  spacing   16\" from A
  span      by grid
  bears on  W1
  bears on  W2
wall W1
  kind      concrete
  from      A/1 to B/1
  line      centre
  thick     8\"
  stands on outside \"rock\"
wall W2
  kind      concrete
  from      A/2 to B/2
  line      centre
  thick     8\"
  stands on outside \"rock\"
",
        );
        let joists = house.model.named("J1").unwrap();
        let sag = house.verifications.of(joists).find(|it| it.limit_state == LimitState::LiveDeflection);
        let check = sag.unwrap().outcome.as_ref().unwrap();
        let table = check.steps.iter().find(|step| step.symbol == "l by table").unwrap();
        assert_eq!(table.result.to_string(), "15'-5\"");
        assert!(table.source.ends_with("it agrees"), "{}", table.source);
    }
}

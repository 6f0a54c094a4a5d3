//! The house as it was built: what was measured in place of what was drawn, and the rest derived anew.
//!
//! A measured level is stated in the copy, so that it stops the flow as any stated one does. What stands already and was
//! not measured stays where it was drawn. Grout takes up what it can.

mod lines_as_built;
mod measured;

use std::sync::Arc;

use crate::diagnostic::Edit;
use crate::geometry::stack::{Closure, Loop};
use crate::house::House;
use crate::house::edited::inputs_with;
use crate::house::lines::{part_at, removed};
use crate::model::element::{Common, ElementId};
use crate::model::framing::Base;
use crate::profiles::foundations::{GROUT_LEAST, GROUT_MOST};
use crate::profiles::levels::CLOSURE_TOLERANCE;
use crate::syntax::ElementCache;
use crate::text::Span;
use crate::units::Length;

pub use measured::Measured;

/// The house as it was built.
#[derive(Debug)]
pub struct AsBuilt {
    /// The house with every measured number in place of the drawn one. It has no shots itself.
    pub house: House,
    /// The last measurement of each thing, in the order of the model.
    pub measured: Vec<Measured>,
    /// Where in plan something stands was measured: nothing follows from it. The lines.
    pub in_plan: Vec<(ElementId, Span)>,
    /// The grout that would take up what was measured, where it is another than drawn.
    pub grouts: Vec<Grout>,
}

/// Grout under a plate as the measured levels leave it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Grout {
    /// The column or the pocket.
    pub of: ElementId,
    /// How thick it is drawn.
    pub drawn: Length,
    /// How thick it has to be, when what lies on it is cut as drawn. Negative where there is no room.
    pub wanted: Length,
    /// It can be that thick: the house as built has it so. Else what stands on it is cut anew.
    pub is_taken_up: bool,
    /// Its place in the text.
    span: Span,
}

/// Where the stack does not close in the house as built, and does in the drawn one, or by another amount.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Gap {
    /// What is too high or too low.
    pub of: ElementId,
    /// For what.
    pub asked_by: Option<ElementId>,
    /// How far it lies too high.
    pub by: Length,
    /// Which loop of the stack.
    pub at: Loop,
}

impl AsBuilt {
    /// The gaps to pack and the heights to take off. Levels agree when they differ by less than the limit
    /// `closure-tolerance`.
    pub fn gaps(&self, drawn: &House) -> Vec<Gap> {
        let tolerance = drawn.limits.of(&CLOSURE_TOLERANCE).value;
        let before = |closure: &Closure| {
            let mut all = drawn.geometry.closures.iter();
            let same = |it: &&Closure| {
                (it.of, it.subject, it.asked_by) == (closure.of, closure.subject, closure.asked_by)
            };
            all.find(same).map(Closure::difference).unwrap_or_default()
        };
        let closures = self.house.geometry.closures.iter();
        let new = closures.filter(|closure| {
            closure.of != Loop::Datum
                && !closure.closes(tolerance)
                && (closure.difference() - before(closure)).abs() >= tolerance
        });
        new.map(|closure| Gap {
            of: closure.subject,
            asked_by: closure.asked_by,
            by: closure.difference(),
            at: closure.of,
        })
        .collect()
    }
}

/// The house as it was built; `None` when nothing was measured.
pub fn of(house: &House) -> Option<AsBuilt> {
    let has_shots = |common: &Common| !common.shots.is_empty() || !common.plan_shots.is_empty();
    if !house.model.commons().any(has_shots) {
        return None;
    }
    let mut measured = measured::of(house);
    let mut edits: Vec<Edit> = Vec::new();
    for at in 0..measured.len() {
        let Some(shot) = measured.get(at) else { continue };
        match lines_as_built::of(house, &measured, shot) {
            Ok(more) => edits.extend(more),
            Err(why) => {
                if let Some(shot) = measured.get_mut(at) {
                    shot.not_followed = Some(why);
                }
            }
        }
    }
    edits.extend(lines_as_built::of_what_stands(house, &measured));
    let mut in_plan = Vec::new();
    for common in house.model.commons().filter(|common| has_shots(common)) {
        in_plan.extend(common.plan_shots.iter().map(|span| (common.id, *span)));
        let lines = common.shots.iter().map(|shot| shot.span).chain(common.plan_shots.iter().copied());
        edits.extend(lines.map(|line| removed(house, line)));
    }
    let mut built = with(house, &edits);
    let grouts = grouts(house, &built, &measured);
    let taken_up = grouts.iter().filter(|grout| grout.is_taken_up);
    let n_before = edits.len();
    edits
        .extend(taken_up.map(|grout| Edit { span: grout.span, text: lines_as_built::exactly(grout.wanted) }));
    if edits.len() > n_before {
        built = with(house, &edits);
    }
    Some(AsBuilt { house: built, measured, in_plan, grouts })
}

fn with(house: &House, edits: &[Edit]) -> House {
    House::of(&Arc::new(inputs_with(house, edits)), &mut ElementCache::default(), house.today)
}

/// The grout under every plate whose room is another in the house as built.
fn grouts(house: &House, built: &House, measured: &[Measured]) -> Vec<Grout> {
    let (least, most) = (house.limits.of(&GROUT_LEAST).value, house.limits.of(&GROUT_MOST).value);
    let grout = |of, drawn, wanted, span| {
        let is_taken_up = (least..=most).contains(&wanted);
        Grout { of, drawn, wanted, is_taken_up, span }
    };
    let mut grouts = Vec::new();
    let stacks = house.geometry.columns.iter().zip(&built.geometry.columns);
    for (column, (drawn, stack)) in house.model.columns.iter().zip(stacks) {
        let Some((Base::Plate(_, thick), base)) = column.base.stated() else { continue };
        let of = column.common.id;
        let cut = measured::length_of(measured, of).or(drawn.cut.as_ref().ok().map(|cut| cut.total()));
        let (Some(cut), Ok(room), Some(span)) = (cut, &stack.cut, part_at(house, base, "grout")) else {
            continue;
        };
        grouts.push(grout(of, *thick, *thick + room.total() - cut, span));
    }
    let off = |house: &House, pocket: ElementId| {
        let mut closures = house.geometry.closures.iter();
        let seat = closures.find(|it| it.subject == pocket && it.of == Loop::SeatUnderBeam);
        seat.map(|closure| closure.difference())
    };
    for pocket in &house.model.pockets {
        let Some((thick, span)) = pocket.grout.stated() else { continue };
        let of = pocket.common.id;
        let Some(now) = off(built, of) else { continue };
        let before = off(house, of).unwrap_or_default();
        grouts.push(grout(of, *thick, *thick - (now - before), span));
    }
    grouts.retain(|grout| grout.wanted != grout.drawn);
    grouts
}

#[cfg(test)]
mod tests {
    use crate::geometry::surfaces::Surface;
    use crate::house::House;
    use crate::testing::rule_check::house;
    use crate::units::Length;

    fn top(house: &House, name: &str) -> String {
        let id = house.model.named(name).unwrap();
        house.geometry.surfaces.of(id, Surface::Top).unwrap().total().in_feet().to_string()
    }

    fn not_followed(text: &str) -> Vec<&'static str> {
        let house = house(text);
        house.as_built().unwrap().measured.iter().filter_map(|shot| shot.not_followed).collect()
    }

    #[test]
    fn nothing_measured_is_no_second_house() {
        assert!(house("wall W1\n  top 99'\n").as_built().is_none());
    }

    /// The last day counts, whatever the order of the lines; the copy has no shots, and so no copy of its own.
    #[test]
    fn the_last_shot_stands_in_place_of_the_drawn_number() {
        let drawn = house(
            "wall W1\n  kind concrete\n  top 99'-0 1/2\"\n  shot top 99'-0 1/4\" on 2027-04-05\n  shot top 99'-1\" on 2027-04-03\n",
        );
        let built = drawn.as_built().unwrap();
        assert_eq!(
            (top(&drawn, "W1"), top(&built.house, "W1")),
            ("99'-0 1/2\"".into(), "99'-0 1/4\"".into())
        );
        assert!(built.house.as_built().is_none());
        let [shot] = built.measured.as_slice() else { panic!("{:?}", built.measured) };
        assert_eq!(shot.by(), Some(Length::sixteenths(0, -4)));
    }

    /// Den: subfloor 98', finish 3/4", measured 98'-1": the covering is 1" thick. Main stands 1/4" lower than drawn.
    #[test]
    fn a_floor_is_where_it_was_measured_and_its_covering_makes_up_the_rest() {
        let drawn = house(
            "floor main\n  finish at 100'-0\"\n  finish oak 3/4\"\n  shot subfloor 99'-11\" on 2027-05-01\nfloor den\n  subfloor 98'\n  finish tile 3/4\"\n  shot finish 98'-1\" on 2027-05-01\n",
        );
        let built = &drawn.as_built().unwrap().house;
        let level = |at: usize| {
            let levels = &built.geometry.floors[at];
            [&levels.subfloor, &levels.finish].map(|level| level.as_ref().unwrap().total().to_string())
        };
        assert_eq!(level(0), ["99'-11\"", "99'-11 3/4\""]);
        assert_eq!(level(1), ["98'-0\"", "98'-1\""]);
    }

    /// A pad 2" below the slab SL1: the slab was poured 1/2" high on it, the pad stays at 91'-0".
    #[test]
    fn what_stands_does_not_move_with_what_was_poured_later() {
        let text = |status: &str| {
            format!(
                "slab SL1\n  top 91'-2\"\n  thick 4\"\n  shot top 91'-2 1/2\" on 2027-05-01\nfooting F1\n  size 2' x 2' x 12\"\n  top 2\" below SL1\n{status}"
            )
        };
        let pad = |status: &str| top(&house(&text(status)).as_built().unwrap().house, "F1");
        assert_eq!(pad("  status poured 2027-04-01\n"), "91'-0\"");
        assert_eq!(pad(""), "91'-0 1/2\"");
    }

    #[test]
    fn a_shot_counts_in_whatever_file_it_stands() {
        let drawn = house(
            "include \"walls.framing\"\nproject \"P\"\n  benchmark \"nail\" at 99'\n-- file walls.framing\nwall W1\n  kind concrete\n  top 99'\n  shot top 98'-11\" on 2027-04-05\n  shot top 98'-10\" on 2027-04-04",
        );
        assert_eq!(top(&drawn.as_built().unwrap().house, "W1"), "98'-11\"");
    }

    #[test]
    fn what_cannot_be_followed_says_why() {
        assert_eq!(
            not_followed(
                "wall W1\n  kind concrete\n  top 99'\n  shot top 98'-11\" at A on 2027-04-05\nfooting F1\n  top 90'\n  shot bottom 89' on 2027-04-05\njoists J1\n  shot top 99' on 2027-04-05\nfloor den\n  subfloor 98'\n  shot finish 97'-11\" on 2027-04-05\n"
            ),
            [
                "the covering would lie below the deck",
                "no line states it",
                "it is the level of one place",
                "no line states it",
            ]
        );
        let of_plan = house("column C1\n  at A/1\n  shot at A/1 on 2027-04-05\n");
        assert_eq!(of_plan.as_built().unwrap().in_plan.len(), 1);
    }
}

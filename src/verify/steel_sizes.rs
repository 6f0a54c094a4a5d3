//! The next listed steel size that works where one fails.

use crate::model::framing::{Beam, Column};
use crate::model::member::Member;
use crate::model::stuff::{Stuff, Values};
use crate::products::rolled::{self, Outline, Rolled};
use crate::products::section::{Make, Section};
use crate::statics::action::{Acting, Action, Source};
use crate::statics::member_line::MemberLine;
use crate::statics::{beam as statics_of_beam, stiffness};
use crate::verify::check::Verification;
use crate::verify::steel_columns::Kind;
use crate::verify::{Known, steel, steel_beams, steel_columns};

/// The lightest heavier shape of the beam's own family and nominal depth that holds, else the lightest of any depth; with
/// its own weight and stiffness. `None` when none does, or the beam is none of a listed shape.
pub fn next_beam(known: &Known<'_>, beam: &Beam) -> Option<&'static Rolled> {
    let member = beam.size.value()?;
    let now = rolled_of(known, member)?;
    let mut heavier: Vec<&Rolled> = family(now).filter(|shape| shape.weight > now.weight).collect();
    heavier.sort_by(|one, other| {
        let rank = |shape: &Rolled| (series(shape) != series(now), shape.weight.to_plf());
        let (one, other) = (rank(one), rank(other));
        one.0.cmp(&other.0).then(one.1.total_cmp(&other.1))
    });
    heavier.into_iter().find(|shape| {
        let Some(lines) = lines_with(known, beam, member, shape) else { return false };
        steel::of(member, shape).is_ok_and(|steel| holds(&steel_beams::of_beam(known, beam, &steel, &lines)))
    })
}

/// The lightest heavier shape of the column's own family, no slimmer, that holds. `None` when none does, or the column is
/// none of a listed shape.
pub fn next_column(known: &Known<'_>, column: &Column) -> Option<&'static Rolled> {
    let member = column.size.value()?;
    let now = rolled_of(known, member)?;
    let stack = known.geometry.columns.get(column.common.id.index as usize)?;
    let mut heavier: Vec<&Rolled> = family(now)
        .filter(|shape| shape.weight > now.weight && shape.width() >= now.width())
        .filter(|shape| (shape.width() == shape.depth()) == (now.width() == now.depth()))
        .collect();
    heavier.sort_by(|one, other| one.weight.to_plf().total_cmp(&other.weight.to_plf()));
    heavier.into_iter().find(|shape| {
        steel::of(member, shape)
            .is_ok_and(|steel| holds(&steel_columns::of_column(known, column, stack, &Kind::Bare(steel))))
    })
}

fn rolled_of(known: &Known<'_>, member: &Member) -> Option<&'static Rolled> {
    match known.model.stuff_of(member).ok()?.values {
        Values::Rolled(shape) => Some(shape),
        Values::Wood(_) | Values::IJoist(_) | Values::DeclaredSteel(_) | Values::FilledPipe(_) => None,
    }
}

/// The shapes of the same outline.
fn family(now: &Rolled) -> impl Iterator<Item = &'static Rolled> {
    let outline = std::mem::discriminant(&now.outline);
    rolled::all().filter(move |shape| std::mem::discriminant(&shape.outline) == outline)
}

/// What a mark begins with: `W10` of `W10x49`; a tube's sides.
fn series(shape: &Rolled) -> &'static str {
    match shape.outline {
        Outline::WideFlange { .. } => shape.mark.split_once('x').map_or(shape.mark, |(series, _)| series),
        Outline::Tube { .. } => shape.mark.rsplit_once(" x ").map_or(shape.mark, |(sides, _)| sides),
        Outline::Pipe { .. } => shape.mark,
    }
}

/// The beam's pieces with another shape.
fn lines_with(
    known: &Known<'_>,
    beam: &Beam,
    member: &Member,
    shape: &'static Rolled,
) -> Option<Vec<MemberLine>> {
    let own = member.section?;
    let section = Section {
        pieces: own.pieces,
        piece_width: shape.width(),
        depth: shape.depth(),
        make: Make::Rolled(shape),
        piece_weight: shape.weight,
    };
    let share = section.weight() / own.weight();
    let actings: Vec<Acting> =
        known.forces.on(beam.common.id).iter().map(|action| reweighed(action, share)).collect();
    let stuff = Stuff {
        section,
        values: Values::Rolled(shape),
        is_treated: false,
        product: None,
        assumed: Vec::new(),
    };
    let stiffness = stiffness::of_stuff(&stuff, beam.is_laid_flat)?;
    let outcome = statics_of_beam::follow(known.model, known.geometry, beam, stiffness, &actings);
    Some(outcome.lines)
}

/// The beam's own weight times a share; anything else as it is.
fn reweighed(action: &Action, share: f64) -> Acting {
    match (action.source, action.acting) {
        (Source::Weight, Acting::Spread { axis, across, from, to, load }) => {
            Acting::Spread { axis, across, from, to, load: load * share }
        }
        (_, acting) => acting,
    }
}

/// Something could be verified, and nothing fails.
fn holds(verifications: &[Verification]) -> bool {
    verifications.iter().any(Verification::holds) && !verifications.iter().any(Verification::fails)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::rule_check::house;

    const LOON_COVE: &str = include_str!("../../grammar/samples/loon-cove.framing");
    const HOP_BARN: &str = include_str!("../../grammar/samples/hop-barn.framing");

    fn beam_after(text: &str, name: &str) -> Option<&'static str> {
        let house = house(text);
        let beam = house.model.beam(house.model.named(name).unwrap()).unwrap();
        next_beam(&house.known(), beam).map(|shape| shape.mark)
    }

    fn fails(text: &str, name: &str) -> bool {
        let house = house(text);
        let of = house.model.named(name).unwrap();
        house.verifications.of(of).any(Verification::fails)
    }

    /// By hand: of the sag of W8x24, L/415, W8x21 has 82.7 / 75.3 times as much, L/378, and W8x18 L/311, which fails L/360.
    #[test]
    fn the_beam_offered_holds_and_the_one_below_it_fails() {
        let with = |mark: &str| LOON_COVE.replace("W8x24", mark);
        assert_eq!(beam_after(&with("W8x15"), "B1"), Some("W8x21"));
        assert!(fails(&with("W8x18"), "B1"));
        assert!(!fails(&with("W8x21"), "B1"));
    }

    /// By hand: of the sag of W10x49, L/340, W10x33 has 272 / 171 times as much and W10x39 272 / 209, L/262: it holds.
    #[test]
    fn a_beam_with_a_post_on_it_finds_its_size() {
        assert_eq!(beam_after(&HOP_BARN.replace("W10x49", "W10x33"), "T1"), Some("W10x39"));
    }

    #[test]
    fn the_column_offered_holds_and_the_one_below_it_fails() {
        let with = |mark: &str| HOP_BARN.replace("HSS 4 x 4 x 1/4", mark);
        let slim = house(&with("HSS 3 x 3 x 1/4"));
        let column = slim.model.column(slim.model.named("C1").unwrap()).unwrap();
        let offered = next_column(&slim.known(), column).unwrap();
        assert!(!fails(&with(offered.mark), "C1"), "{}", offered.mark);
        let mut lighter: Vec<&Rolled> = rolled::TUBES
            .iter()
            .filter(|shape| shape.width() == shape.depth() && shape.weight < offered.weight)
            .filter(|shape| shape.width() >= crate::units::Length::inches(3) && shape.weight.to_plf() >= 8.81)
            .collect();
        lighter.sort_by(|one, other| one.weight.to_plf().total_cmp(&other.weight.to_plf()));
        assert!(fails(&with(lighter.last().unwrap().mark), "C1"));
    }
}

//! The next size of sawn lumber that works where one fails.

use crate::model::element::ElementId;
use crate::model::member::Member;
use crate::model::stuff::{Stuff, Values, WoodKind};
use crate::products::lumber;
use crate::products::section::{Make, Named, Size, section_of};
use crate::statics::continuous::Push;
use crate::statics::member_line::MemberLine;
use crate::statics::stiffness;
use crate::syntax::value::Section as Written;
use crate::syntax::vocabulary::ElementKind;
use crate::units::{Length, LineLoad};
use crate::verify::Known;
use crate::verify::check::Verification;
use crate::verify::{joists, wood_beams};

/// The next size of a member's own thickness, species and grade that passes all its checks: for a beam or header more plies of
/// the same depth before a deeper one, which moves what lies on it or under it. `None` when none of up to four plies does.
pub fn next(known: &Known<'_>, element: ElementId) -> Option<Box<str>> {
    let at = element.index as usize;
    let member = match element.kind {
        ElementKind::Beam => known.model.beam(element)?.size.value()?,
        ElementKind::Header => known.model.headers.get(at)?.size.value()?,
        ElementKind::Joists => known.model.joists_of(element)?.size.value()?,
        ElementKind::Roof => known.model.roofs.get(at)?.member.as_ref()?,
        _ => return None,
    };
    let now = known.model.stuff_of(member).ok()?;
    if !matches!(now.values, Values::Wood(wood) if matches!(wood.kind, WoodKind::Dimension(..))) {
        return None;
    }
    candidates(member, element.kind).into_iter().find_map(|(candidate, words)| {
        let stuff = known.model.stuff_of(&candidate).ok()?;
        let lines = lines_with(known, element, &now, &stuff)?;
        let verified = match element.kind {
            ElementKind::Beam => wood_beams::of_beam(known, known.model.beam(element)?, &stuff, &lines),
            ElementKind::Header => wood_beams::of_header(known, known.model.headers.get(at)?, &stuff, &lines),
            ElementKind::Joists => joists::of_joists(known, known.model.joists_of(element)?, &stuff, &lines),
            _ => joists::of_rafters(known, known.model.roofs.get(at)?, &stuff, &lines),
        };
        verified.iter().all(Verification::holds).then_some(words)
    })
}

/// Larger sizes, the nearest first, each with what it is called and what it moves.
fn candidates(member: &Member, kind: ElementKind) -> Vec<(Member, Box<str>)> {
    let Written::Nominal(thickness, width) = &member.written else { return Vec::new() };
    let most = match kind {
        ElementKind::Beam | ElementKind::Header => MOST_PLIES.max(member.plies),
        _ => member.plies,
    };
    let widths = lumber::DIMENSION.iter().find(|(of, _)| of == thickness).map_or(&[] as &[u32], |(_, it)| it);
    let mut found = Vec::new();
    for deeper in widths.iter().filter(|it| *it >= width) {
        for plies in member.plies..=most {
            if plies == member.plies && deeper == width {
                continue;
            }
            let named = Named {
                pieces: plies,
                size: Size::Nominal(*thickness, *deeper),
                make: None,
                species: member.species.as_deref(),
                grade: member.grade.as_deref(),
            };
            let Some(section) = section_of(&named).ok().filter(|it| matches!(it.make, Make::Sawn { .. }))
            else {
                continue;
            };
            let name = match plies {
                1 => format!("{thickness}x{deeper}"),
                _ => format!("{plies}-ply {thickness}x{deeper}"),
            };
            let deepened = section.depth - member.depth().unwrap_or(section.depth);
            let words = match deepened.is_positive() {
                true => format!("{name}, {deepened} deeper: the levels move with it"),
                false => name,
            };
            let candidate = Member {
                plies,
                written: Written::Nominal(*thickness, *deeper),
                section: Some(section),
                ..member.clone()
            };
            found.push((candidate, words.into()));
        }
    }
    found
}

/// Four plies are the most that are nailed into one beam without bolts. Common practice.
const MOST_PLIES: u32 = 4;

/// The lines of a member as if it were of other stuff: stiffer, and where its own weight counts by itself, heavier.
fn lines_with(known: &Known<'_>, of: ElementId, now: &Stuff, other: &Stuff) -> Option<Vec<MemberLine>> {
    let is_laid_flat = known.model.beam(of).is_some_and(|beam| beam.is_laid_flat);
    let stiffness = stiffness::of_stuff(other, is_laid_flat)?;
    let has_own_weight = matches!(of.kind, ElementKind::Beam | ElementKind::Header);
    let more = match has_own_weight {
        true => other.section.weight() - now.section.weight(),
        false => LineLoad::ZERO,
    };
    known
        .forces
        .lines_of(of)
        .iter()
        .map(|line| {
            let mut line = line.clone();
            if more != LineLoad::ZERO {
                let to = line.prepared.length();
                line.pushes.dead.push(Push::Spread { from: Length::ZERO, to, start: more, end: more });
            }
            line.with_stiffness(stiffness)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::rule_check::house;

    fn spec(size: &str) -> String {
        format!(
            "
grid
  x         A 0', B 10'
  y         1 0'
beam B1
  size      {size} SPF No.2
  from      A/1 to B/1
  span      by grid
  braced    at 16\"
  bears on  W1
  bears on  W2
  load      600 plf live
wall W1
  kind      concrete
  from      A / 1 less 5' to A / 1 plus 5'
  thick     8\"
wall W2
  kind      concrete
  from      B / 1 less 5' to B / 1 plus 5'
  thick     8\"
"
        )
    }

    /// By hand: M = 600 x 10^2 / 8 = 7,500 lb-ft and the beam's own weight; 2-ply 2x10 42.8 in3 x 963 psi = 3,430 lb-ft,
    /// 4-ply 6,860, 2-ply 2x12 63.3 x 875 = 4,614, 3-ply 6,921, 4-ply 9,228: only the last holds (SPF No.2, from memory).
    #[test]
    fn what_is_offered_holds_and_the_one_below_fails() {
        let fails = |size: &str| {
            let house = house(&spec(size));
            let failing: Vec<_> = house.verifications.all().iter().filter(|it| it.fails()).cloned().collect();
            (next(&house.known(), house.model.beams[0].common.id), failing.len())
        };
        let (offered, failing) = fails("2-ply 2x10");
        assert!(failing > 0);
        assert_eq!(offered.as_deref(), Some("4-ply 2x12, 2\" deeper: the levels move with it"));
        assert_eq!(fails("4-ply 2x12").1, 0);
        assert!(fails("3-ply 2x12").1 > 0);
    }
}

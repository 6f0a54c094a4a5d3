//! Wood columns, posts and jack studs under their load: crushing, and buckling about both axes.

use crate::design::loads::duration_factor;
use crate::design::wood::column::{
    self, Axis as Direction, BothAxes, ColumnStability, Ends, Fastening, Laminations, Straightness,
};
use crate::design::wood::combined::{self, Combined};
use crate::design::wood::rectangle::section_modulus;
use crate::design::wood::repetitive::Row;
use crate::geometry::plan_contacts::BeamContact;
use crate::geometry::surfaces::Surface;
use crate::model::element::{Common, ElementId};
use crate::model::framing::Column;
use crate::model::member::Member;
use crate::model::openings::Jacks;
use crate::model::stuff::{Stuff, Values, Wood, WoodKind};
use crate::products::lumber;
use crate::products::section::{Make, Named, Section, Size, section_of};
use crate::statics::action::{Acting, Action, Source, Spot};
use crate::statics::cases::ByCase;
use crate::syntax::value::Section as Written;
use crate::units::{Force, Length, Stress};
use crate::verify::Known;
use crate::verify::check::{Check, NotVerified, Step, Verification};
use crate::verify::demands::{acting, combinations, combined as factored};
use crate::verify::footings::Worst;
use crate::verify::limit_state::LimitState;
use crate::verify::wood_values::Adjusting;

/// Verifies every wood column and every pack of jacks.
pub fn of(known: &Known<'_>) -> Vec<Verification> {
    let columns = known.model.columns.iter().enumerate().filter_map(|(at, column)| {
        let member = column.size.value()?;
        let is_wood = member.is_steel() == Some(false);
        let outcome = is_wood.then(|| verify_column(known, at, column, member))?;
        Some(verification(&column.common, None, outcome))
    });
    let jacks = known.model.jacks.iter().filter_map(|jacks| {
        let (count, member) = jacks.size.value()?;
        Some(verification(&jacks.common, None, verify_jacks(known, jacks, *count, member)))
    });
    columns.chain(jacks).collect()
}

fn verification(
    common: &Common,
    part: Option<Box<str>>,
    outcome: Result<Check, NotVerified>,
) -> Verification {
    Verification { of: common.id, part, against: None, limit_state: LimitState::Compression, outcome }
}

/// The smallest larger stocked size of a sawn post that holds, of the same species and grade, no slimmer than 4x4. `None`
/// when none does, or the post is of other stuff.
pub fn next_size(known: &Known<'_>, column: &Column) -> Option<Box<str>> {
    let at = column.common.id.index as usize;
    let member = column.size.value()?;
    let Make::Sawn { .. } = member.section?.make else { return None };
    let mut candidates: Vec<(f64, u32, u32, Section)> = lumber::sizes()
        .filter(|(thickness, width)| *thickness >= 4 && width >= thickness)
        .filter_map(|(thickness, width)| {
            let named = Named {
                pieces: 1,
                size: Size::Nominal(thickness, width),
                make: None,
                species: member.species.as_deref(),
                grade: member.grade.as_deref(),
            };
            let section = section_of(&named).ok()?;
            Some(((section.width() * section.depth).to_sq_in(), thickness, width, section))
        })
        .collect();
    candidates.sort_by(|(one, ..), (other, ..)| one.total_cmp(other));
    let area = member.section.map(|section| (section.width() * section.depth).to_sq_in())?;
    candidates.into_iter().filter(|(larger, ..)| *larger > area).find_map(|(_, thickness, width, section)| {
        let tried = Member {
            plies: 1,
            written: Written::Nominal(thickness, width),
            section: Some(section),
            ..member.clone()
        };
        let check = verify_column(known, at, column, &tried).ok()?;
        (check.ratio() <= 1.0).then(|| format!("{thickness}x{width}").into())
    })
}

/// A post has no row of others beside it.
const ALONE: Row = Row { members: 1, spacing: Length::ZERO, is_joined: false };

/// A wood post, ready for any load.
struct Post<'a> {
    stuff: &'a Stuff,
    wood: &'a Wood,
    /// Between what holds it sideways, in both directions.
    unbraced: Length,
    /// Held all along against buckling across its weak axis.
    is_held_weak: bool,
    /// How far the load stands off its centre, across the beam.
    off_centre: Length,
}

fn verify_column(
    known: &Known<'_>,
    at: usize,
    column: &Column,
    member: &Member,
) -> Result<Check, NotVerified> {
    let id = column.common.id;
    let stuff = known.model.stuff_of(member)?;
    let Values::Wood(wood) = &stuff.values else {
        return Err(NotVerified::NoForces("it is no column of solid or glued wood".into()));
    };
    let cut = known.geometry.columns.get(at).and_then(|stack| stack.cut.as_ref().ok());
    let cut = cut.map(|cut| cut.total()).ok_or(NotVerified::Missing(id, "length"))?;
    // A brace parts the column in two: the longer part counts.
    let unbraced = match column.braced.value() {
        Some(Some(up)) if up.is_positive() && *up < cut => (*up).max(cut - *up),
        Some(_) | None => cut,
    };
    let post = Post { stuff: &stuff, wood, unbraced, is_held_weak: false, off_centre: off_centre(known, id) };
    // What comes down on its head: its own weight is nothing beside it where it bows.
    let mut force = known.forces.load_on(id);
    force.live += known.forces.partial.of(id, known.forces.on(id));
    post.verify(known, &force)
}

/// The most that the line of a beam passes beside the column's centre.
fn off_centre(known: &Known<'_>, column: ElementId) -> Length {
    let mut most = Length::ZERO;
    for (beam, contacts) in known.model.beams.iter().zip(&known.geometry.contacts.beams) {
        for (support, contact) in beam.supports.iter().zip(&contacts.supports) {
            let on = support.on.reference().and_then(|reference| reference.target);
            if let (true, Ok(BeamContact::Meets { off_line, .. })) = (on == Some(column), contact) {
                most = most.max(off_line.abs());
            }
        }
    }
    most
}

fn verify_jacks(known: &Known<'_>, jacks: &Jacks, count: u32, member: &Member) -> Result<Check, NotVerified> {
    let id = jacks.common.id;
    let mut stuff = known.model.stuff_of(member)?;
    stuff.section.pieces = stuff.section.pieces.saturating_mul(count);
    let Values::Wood(wood) = &stuff.values else {
        return Err(NotVerified::NoForces("they are no studs of solid wood".into()));
    };
    let post = Post {
        stuff: &stuff,
        wood,
        unbraced: height_of(known, jacks).ok_or(NotVerified::Missing(id, "size"))?,
        is_held_weak: true,
        off_centre: Length::ZERO,
    };
    let mut worst = Worst::default();
    for force in packs(known.forces.on(id)) {
        worst.take(post.verify(known, &force));
    }
    let nothing = || Err(NotVerified::NoForces("nothing comes down on them".into()));
    worst.outcome().unwrap_or_else(nothing)
}

/// From the sole to the underside of the header: the height of the opening.
fn height_of(known: &Known<'_>, jacks: &Jacks) -> Option<Length> {
    let hole = jacks.at.value()?.target?;
    let model = known.model;
    let size =
        model.door(hole).map(|door| &door.size).or_else(|| model.opening(hole).map(|opening| &opening.size));
    if let Some([_, height]) = size.and_then(|size| size.get()) {
        return Some(height);
    }
    // A window's sill is not stated: the whole wall, on the safe side.
    let window = model.windows.iter().find(|window| window.common.id == hole)?;
    let wall = window.wall.value()?.target?;
    let surface = |surface| known.geometry.surfaces.of(wall, surface).ok().map(|sum| sum.total());
    Some(surface(Surface::Top)? - surface(Surface::Bottom)?)
}

/// What comes down on each pack of jacks: those on both sides of an opening are two.
fn packs(actions: &[Action]) -> Vec<ByCase<Force>> {
    let mut packs: Vec<(Spot, ByCase<Force>)> = Vec::new();
    for action in actions.iter().filter(|action| action.source != Source::Weight) {
        let Acting::Point { at, force } = action.acting else { continue };
        match packs.iter_mut().find(|(spot, _)| *spot == at) {
            Some((_, sum)) => *sum += force,
            None => packs.push((at, force)),
        }
    }
    packs.into_iter().map(|(_, force)| force).collect()
}

impl Post<'_> {
    /// The combination that uses most of it.
    fn verify(&self, known: &Known<'_>, force: &ByCase<Force>) -> Result<Check, NotVerified> {
        let adjusting = Adjusting::of(known.model, self.stuff, self.wood)?;
        let mut worst = Worst::default();
        for combination in combinations(acting(force)) {
            let duration = duration_factor(combination, acting(force));
            let load = factored(combination, force);
            if load <= Force::ZERO {
                continue;
            }
            worst.take(self.check(&adjusting, load, combination.name, duration));
        }
        let nothing = || Err(NotVerified::NoForces("nothing comes down on it".into()));
        worst.outcome().unwrap_or_else(nothing)
    }

    fn check(
        &self,
        adjusting: &Adjusting<'_>,
        load: Force,
        combination: &'static str,
        duration: f64,
    ) -> Result<Check, NotVerified> {
        let section = &self.stuff.section;
        let (one, other) = (section.width(), section.depth);
        let area = one * other;
        let crushing = adjusting.compression(duration)?;
        let modulus = adjusting.modulus_for_stability(false)?;
        let stability = self.stability(crushing.value, modulus.value)?;
        let allowable = crushing.value * stability.factor;
        let le = column::effective_length(Ends::PinnedPinned, self.unbraced);
        let governing =
            if stability.weak.factor < stability.strong.factor { stability.weak } else { stability.strong };
        let mut steps = vec![
            Step::read("P", load, "from the takedown"),
            crushing.step,
            modulus.step,
            Step::read("le", le, "K = 1.0, NDS 2018 appendix G, from memory"),
            Step::read("le/d", governing.slenderness, "the larger of both directions"),
            Step::worked(
                "FcE",
                "0.822 Emin' / (le/d)^2",
                vec![("Emin'", modulus.value.into()), ("le/d", governing.slenderness.into())],
                governing.critical_buckling,
                "NDS 2018 3.7.1.5",
            ),
            Step::read("CP", stability.factor, "NDS 2018 Eq. 3.7-1"),
            Step::worked(
                "Fc'",
                "Fc* CP",
                vec![("Fc*", crushing.value.into()), ("CP", stability.factor.into())],
                allowable,
                "NDS 2018 table 4.3.1",
            ),
        ];
        let mut assumed = adjusting.assumed.clone();
        if section.pieces > 1 && !self.is_held_weak {
            assumed.push("plies nailed by NDS 2018 15.3.3".into());
        }
        let check = |demand, capacity, clause, steps| Check {
            demand,
            capacity,
            combination,
            pattern: None,
            at: None,
            clause,
            steps,
            assumed,
        };
        if self.off_centre == Length::ZERO {
            let capacity = allowable * area;
            steps.push(Step::worked(
                "P'",
                "Fc' A",
                vec![("Fc'", allowable.into()), ("A", area.into())],
                capacity,
                "NDS 2018 3.6.3",
            ));
            return Ok(check(load.into(), capacity.into(), "NDS 2018 3.7.1", steps));
        }
        let stress = load / area;
        let bending = adjusting.bending(duration, ALONE, false, false)?;
        let direction =
            |depth: Length, eccentricity: Length, stability: ColumnStability| combined::Direction {
                bending: Stress::ZERO,
                eccentricity,
                depth,
                allowable_bending: bending.value,
                critical_buckling: stability.critical_buckling,
            };
        let found = combined::interaction(&Combined {
            compression: stress,
            allowable_compression: allowable,
            strong: direction(one.max(other), Length::ZERO, stability.strong),
            weak: direction(one.min(other), self.off_centre, stability.weak),
            lateral_buckling: None,
        })?;
        steps.push(Step::worked(
            "fc",
            "P / A",
            vec![("P", load.into()), ("A", area.into())],
            stress,
            "NDS 2018 3.6.3",
        ));
        steps.push(Step::read("e", self.off_centre, "the beam's line off the column's centre"));
        steps.push(Step::read(
            "S",
            section_modulus(one.max(other), one.min(other)),
            "about the weak axis, on the safe side",
        ));
        steps.push(bending.step);
        Ok(check(found.ratio.into(), 1.0.into(), "NDS 2018 15.4.1", steps))
    }

    fn stability(&self, crushing: Stress, modulus: Stress) -> Result<BothAxes, NotVerified> {
        let section = &self.stuff.section;
        let (width, depth) = (section.width(), section.depth);
        let le = column::effective_length(Ends::PinnedPinned, self.unbraced);
        let direction = |depth: Length| Direction { effective_length: le, depth };
        let straightness = match self.wood.kind {
            WoodKind::Dimension(..) | WoodKind::Timber => Straightness::Sawn,
            WoodKind::Glulam { .. } | WoodKind::Composite { .. } => Straightness::Glued,
        };
        if self.is_held_weak {
            // The studs stand in a sheathed wall beside their kings: only out of the wall can they bow (common practice).
            let strong = column::column_stability(crushing, modulus, direction(depth), straightness)?;
            return Ok(BothAxes { strong, weak: strong, factor: strong.factor });
        }
        if section.pieces > 1 {
            let laminations = Laminations {
                count: section.pieces,
                thickness: section.piece_width,
                fastening: Fastening::Nailed,
            };
            return Ok(column::built_up_column(
                crushing,
                modulus,
                direction(depth),
                direction(width),
                laminations,
            )?);
        }
        let (strong, weak) = (direction(width.max(depth)), direction(width.min(depth)));
        Ok(column::solid_column(crushing, modulus, strong, weak, straightness)?)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::rule_check::house;

    fn ratio_of(spec: &str, name: &str) -> (Quantities, f64) {
        let house = house(spec);
        let id = house.model.named(name).unwrap();
        let found: Vec<_> = house
            .verifications
            .of(id)
            .filter(|verification| verification.limit_state == LimitState::Compression)
            .collect();
        let [found] = found.as_slice() else { panic!("{found:?}") };
        let check = found.outcome.as_ref().unwrap();
        ((check.demand.to_string(), check.capacity.to_string()), check.ratio())
    }

    type Quantities = (String, String);

    /// A timber post 14 ft tall under 14,592 lb of roof, by hand (values of DF-L No.1 posts from memory: Fc 1000, Emin 0.58M;
    /// under snow Fc* 1,150 psi):
    /// 6x6: le/d 30.55, FcE 0.822 x 580,000 / 933 = 511 psi, CP 0.3933, 452.3 psi on 30.25 sq in: 13,683 lb.
    /// 8x8: le/d 22.4, FcE 950.2 psi, CP 0.6218, 715.1 psi on 56.25 sq in: 40,222 lb.
    #[test]
    fn a_tall_post_by_hand() {
        let spec = |size: &str| {
            format!(
                "grid
  x  A 0', B 16'
  y  1 0', 2 16'
roof R1
  fill      A to B by 1 to 2
  dead      15 psf
  snow      42 psf
  bears on  P1
column P1
  at         A/1
  size       {size} DF No.1
  length     14'-0\"
  base       bare
  stands on  F1
footing F1
  at         A/1
  size       4' x 4' x 12\"
  top        90'
"
            )
        };
        let ((demand, capacity), ratio) = ratio_of(&spec("6x6"), "P1");
        assert_eq!(demand, "14,592 lb");
        assert!(capacity.starts_with("13,68"), "{capacity}");
        assert!(ratio > 1.0);
        let house = house(&spec("6x6"));
        let column = house.model.columns.first().unwrap();
        // By hand, 6x8: the same le/d of 30.55 on 41.25 sq in: 18,658 lb; nothing sold lies between.
        assert_eq!(next_size(&house.known(), column).as_deref(), Some("6x8"));
        let ((_, capacity), ratio) = ratio_of(&spec("8x8"), "P1");
        assert!(capacity.starts_with("40,22"), "{capacity}");
        assert!(ratio < 0.41, "{ratio}");
    }
}

//! Plates and posts on concrete: columns on footings, slabs and walls, beams in their pockets.

use crate::design::NotCovered;
use crate::design::steel::bearing::on_concrete;
use crate::geometry::bearing;
use crate::geometry::carried::Carried;
use crate::geometry::plan_contacts::foothold_on;
use crate::model::element::ElementId;
use crate::model::field::Field;
use crate::model::foundation::{FootingSize, Pocket};
use crate::model::framing::{Base, Column};
use crate::syntax::vocabulary::ElementKind;
use crate::units::{Length, Stress};
use crate::verify::Known;
use crate::verify::bearings::Pressing;
use crate::verify::bearings::standing::{heaviest_place, target};
use crate::verify::check::{Check, NotVerified, Step, Verification};
use crate::verify::limit_state::LimitState;

/// No line states the concrete of a wall: the least that codes let pass, ACI 318 table 19.2.1.1, from memory.
const OF_WALLS: Stress = Stress::psi(2_500.0);

/// Verifies every column that stands on concrete, and every pocket that a beam lies in.
pub fn of(known: &Known<'_>) -> Vec<Verification> {
    let carried = Carried::of(known.model);
    let columns = known.model.columns.iter().filter_map(|column| of_column(known, column));
    let pockets = known.model.pockets.iter().filter_map(|pocket| of_pocket(known, &carried, pocket));
    columns.chain(pockets).collect()
}

/// Concrete below a plate.
struct Below {
    strength: Stress,
    is_assumed: bool,
    /// How far it goes on past the plate on all sides.
    margin: Length,
}

fn of_column(known: &Known<'_>, column: &Column) -> Option<Verification> {
    let id = column.common.id;
    let on = target(&column.stands_on)?;
    let is_concrete = match on.kind {
        ElementKind::Footing | ElementKind::Slab => true,
        ElementKind::Wall => {
            let wall = known.model.wall(on)?;
            wall.kind.get()?.is_mineral() && wall.sill.is_missing()
        }
        _ => false,
    };
    if !is_concrete {
        return None;
    }
    let pressing = heaviest_place(known, id)?;
    let outcome = under_column(column).and_then(|sides| {
        let below = below_column(known, column, on, sides)?;
        bears(&pressing, sides, &below)
    });
    Some(Verification {
        of: id,
        part: None,
        against: Some(on),
        limit_state: LimitState::ConcreteBearing,
        outcome,
    })
}

/// The plate, or the post itself.
fn under_column(column: &Column) -> Result<[Length; 2], NotVerified> {
    let id = column.common.id;
    if column.base.is_broken() {
        return Err(NotVerified::Missing(id, "base"));
    }
    match column.base.value() {
        Some(Base::Plate([one, other, _], _)) => Ok([*one, *other]),
        Some(Base::Standoff(_) | Base::Bare { .. }) | None => {
            let sides = column.size.value().and_then(|size| size.width().zip(size.depth()));
            sides.map(<[Length; 2]>::from).ok_or(NotVerified::Missing(id, "size"))
        }
    }
}

fn below_column(
    known: &Known<'_>,
    column: &Column,
    on: ElementId,
    [one, other]: [Length; 2],
) -> Result<Below, NotVerified> {
    let missing = |fact| NotVerified::Missing(on, fact);
    let stated = |concrete: &Field<Stress>| -> Result<(Stress, bool), NotVerified> {
        let strength = concrete.get().ok_or(missing("concrete"))?;
        Ok((strength, matches!(concrete, Field::Assumed(..))))
    };
    let half = one.max(other).half();
    match on.kind {
        ElementKind::Footing => {
            let footing = known.model.footing(on).ok_or(missing("size"))?;
            let (strength, is_assumed) = stated(&footing.concrete)?;
            let at = column.at.value().ok_or(NotVerified::Missing(column.common.id, "at"))?;
            let off = foothold_on(known.model, at, on).ok_or(missing("size"))?.off_centre;
            let size = footing.size.get().ok_or(missing("size"))?;
            let (least, thickness) = match (footing.pedestal.value(), size) {
                (Some(pedestal), _) => {
                    let [x, y] = pedestal.size;
                    // It spreads no further than its own top.
                    (x.min(y), x.min(y))
                }
                (None, FootingSize::Pad(x, y, thickness)) => (x.min(y), thickness),
                (None, FootingSize::Strip(width, thickness)) => (width, thickness),
                // The square inside of the round top.
                (None, FootingSize::Round(diameter, thickness)) => {
                    (diameter.scaled(std::f64::consts::FRAC_1_SQRT_2), thickness)
                }
            };
            let margin = (least.half() - off - half).min(thickness.times(2));
            Ok(Below { strength, is_assumed, margin })
        }
        ElementKind::Slab => {
            let slab = known.model.slab(on).ok_or(missing("concrete"))?;
            let (strength, is_assumed) = match &slab.concrete {
                Field::Missing => (OF_WALLS, true),
                said => stated(said)?,
            };
            // How near its edge or a joint is stays out of it, on the safe side.
            Ok(Below { strength, is_assumed, margin: Length::ZERO })
        }
        _ => {
            let at = column.at.value().ok_or(NotVerified::Missing(column.common.id, "at"))?;
            let foothold = foothold_on(known.model, at, on).ok_or(missing("thick"))?;
            let margin = foothold.width.half() - foothold.off_centre - half;
            Ok(Below { strength: OF_WALLS, is_assumed: true, margin })
        }
    }
}

/// A pocket opens to a face of its wall: the plate has no concrete to spread to on that side.
fn of_pocket(known: &Known<'_>, carried: &Carried<'_>, pocket: &Pocket) -> Option<Verification> {
    let id = pocket.common.id;
    let pressing = heaviest_place(known, id)?;
    let sides = match &pocket.plate {
        Field::Stated([one, other, _], _) | Field::Assumed([one, other, _], _) => Ok([*one, *other]),
        Field::Broken(_) => Err(NotVerified::Missing(id, "plate")),
        Field::Missing => {
            let (beam, support) = carried.beams_on(id).first()?;
            let length = bearing::of_beam(known.model, beam, support).ok().map(|contact| contact.of_each);
            let width = beam.size.value().and_then(|size| size.width());
            let sides = width.zip(length).map(<[Length; 2]>::from);
            sides.ok_or(NotVerified::Missing(beam.common.id, "size"))
        }
    };
    let below = Below { strength: OF_WALLS, is_assumed: true, margin: Length::ZERO };
    let outcome = sides.and_then(|sides| bears(&pressing, sides, &below));
    let against = pocket.wall.value().and_then(|wall| wall.target);
    Some(Verification { of: id, part: None, against, limit_state: LimitState::ConcreteBearing, outcome })
}

fn bears(pressing: &Pressing, [one, other]: [Length; 2], below: &Below) -> Result<Check, NotVerified> {
    if below.margin.is_negative() {
        let what = "a plate that reaches past its concrete";
        return Err(NotCovered::NoRule { what, clause: "AISC 360 J8" }.into());
    }
    let plate = one * other;
    let spread = (one + below.margin.times(2)) * (other + below.margin.times(2));
    let bearing = on_concrete(below.strength, plate, spread)?;
    let allowable = bearing.strength.allowable();
    let assumed = format!("concrete {:.0} psi", below.strength.to_psi());
    Ok(Check {
        demand: pressing.force.into(),
        capacity: allowable.into(),
        combination: pressing.combination,
        pattern: None,
        at: None,
        clause: "AISC 360 J8",
        steps: vec![
            Step::read("R", pressing.force, "takedown"),
            Step::worked("A", "b l", vec![("b", one.into()), ("l", other.into())], plate, "the contact"),
            Step::read("A2", spread, "the like area that the concrete reaches on all sides"),
            Step::read("sqrt(A2/A1)", bearing.confinement, "AISC 360 J8, at most 2"),
            Step::read("f'c", below.strength, if below.is_assumed { "assumed" } else { "stated" }),
            Step::worked(
                "Pp/2.31",
                "0.85 f'c A1 sqrt(A2/A1) / 2.31",
                vec![("f'c", below.strength.into()), ("A1", plate.into())],
                allowable,
                "AISC 360 J8",
            ),
        ],
        assumed: if below.is_assumed { vec![assumed.into()] } else { Vec::new() },
    })
}

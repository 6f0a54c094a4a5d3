//! One layer of wood under a load, and the weakest of several.

use crate::design::NotCovered;
use crate::design::wood::bearing::{bearing_area_factor, bearing_stress};
use crate::geometry::band;
use crate::model::element::ElementId;
use crate::model::field::Field;
use crate::model::foundation::{Plates, Sill, Wall};
use crate::model::member::Member;
use crate::model::stuff::Values;
use crate::syntax::vocabulary::ElementKind;
use crate::units::{Area, Length, Stress};
use crate::verify::Known;
use crate::verify::bearings::Pressing;
use crate::verify::check::{Check, NotVerified, Step};
use crate::verify::wood_values::Adjusting;

/// Wood that load presses across its grain.
#[derive(Clone, Debug)]
pub struct Layer {
    /// What it is: `the sill of W1`.
    pub what: Box<str>,
    /// Fc-perp' without C_b.
    pub allowable: Stress,
    /// How that was worked out.
    pub step: Step,
    /// How wide it is, where it is narrower than what presses may be.
    pub width: Option<Length>,
}

/// A layer and how much of it is pressed.
#[derive(Clone, Debug)]
pub struct Pressed {
    /// The layer.
    pub layer: Layer,
    /// The contact: one side, the other.
    pub sides: [Length; 2],
    /// Along its grain, and from its nearer end, where C_b counts; without, C_b is 1.
    pub from_end: Option<(Length, Length)>,
}

/// A member's own wood. `None` when it is no solid or glued wood.
pub fn of_member(
    known: &Known<'_>,
    member: &Member,
    what: String,
    width: Option<Length>,
) -> Result<Option<Layer>, NotVerified> {
    let stuff = known.model.stuff_of(member)?;
    let Values::Wood(wood) = &stuff.values else { return Ok(None) };
    let adjusted = Adjusting::of(known.model, &stuff, wood)?.bearing()?;
    Ok(Some(Layer { what: what.into(), allowable: adjusted.value, step: adjusted.step, width }))
}

/// The wood on top of what carries: the sill, the plate, the nailer, the beam itself. `None` on concrete and steel.
pub fn on_top_of(known: &Known<'_>, on: ElementId) -> Result<Option<Layer>, NotVerified> {
    let width = band::bearing_surface(known.model, on).map(|band| band.width());
    let name = known.model.common(on).map(|common| common.name.to_string()).unwrap_or_default();
    match on.kind {
        ElementKind::Wall => {
            let wall = known.model.wall(on).ok_or(NotVerified::Missing(on, "kind"))?;
            let kind = wall.kind.get().ok_or(NotVerified::Missing(on, "kind"))?;
            if kind.is_mineral() {
                return of_sill(known, on, &wall.sill, &name);
            }
            of_plates(known, wall, &wall.plates, format!("the plate of {name}"), "plates")
        }
        ElementKind::Shelf => {
            let shelf = known.model.shelf(on).ok_or(NotVerified::Missing(on, "sill"))?;
            of_sill(known, on, &shelf.sill, &name)
        }
        ElementKind::Beam => {
            let beam = known.model.beam(on).ok_or(NotVerified::Missing(on, "size"))?;
            match &beam.nailer {
                Field::Stated(nailer, _) | Field::Assumed(nailer, _) => {
                    of_member(known, &nailer.member, format!("the nailer on {name}"), width)
                }
                Field::Broken(_) => Err(NotVerified::Missing(on, "nailer")),
                Field::Missing => {
                    let size = beam.size.value().ok_or(NotVerified::Missing(on, "size"))?;
                    of_member(known, size, format!("beam {name}"), width)
                }
            }
        }
        ElementKind::Pocket | ElementKind::Footing | ElementKind::Slab | ElementKind::Column => Ok(None),
        _ => Err(NotCovered::NoRule { what: "wood that bears on this", clause: "designed by itself" }.into()),
    }
}

/// The sole plate of a framed wall.
pub fn sole_of(known: &Known<'_>, wall: &Wall) -> Result<Option<Layer>, NotVerified> {
    of_plates(known, wall, &wall.sole, format!("the sole plate of {}", wall.common.name), "sole")
}

fn of_sill(
    known: &Known<'_>,
    on: ElementId,
    sill: &Field<Sill>,
    name: &str,
) -> Result<Option<Layer>, NotVerified> {
    match sill {
        Field::Stated(sill, _) | Field::Assumed(sill, _) => {
            of_member(known, &sill.member, format!("the sill of {name}"), sill.width())
        }
        Field::Missing => Ok(None),
        Field::Broken(_) => Err(NotVerified::Missing(on, "sill")),
    }
}

/// Plates are of the studs' stuff when no line says it.
fn of_plates(
    known: &Known<'_>,
    wall: &Wall,
    plates: &Field<Plates>,
    what: String,
    fact: &'static str,
) -> Result<Option<Layer>, NotVerified> {
    let missing = NotVerified::Missing(wall.common.id, fact);
    let plates = plates.value().ok_or(missing.clone())?;
    if plates.count == 0 {
        return Ok(None);
    }
    let studs = wall.studs.value().map(|studs| &studs.member);
    let member = plates.member.as_ref().or(studs).ok_or(missing)?;
    of_member(known, member, what, member.depth())
}

/// The contact of a rectangle with a layer no wider than this: turned as it presses hardest.
pub fn contact([one, other]: [Length; 2], width: Option<Length>) -> [Length; 2] {
    let Some(width) = width else { return [one, other] };
    let turned = [[one.min(width), other], [one, other.min(width)]];
    let [first, second] = turned;
    if first[0] * first[1] <= second[0] * second[1] { first } else { second }
}

/// Presses on every layer and takes that which is used most, with what it is.
pub fn weakest(pressing: &Pressing, pressed: &[Pressed]) -> Result<Option<(Check, Box<str>)>, NotVerified> {
    let mut worst: Option<(Check, Box<str>)> = None;
    for one in pressed {
        let check = crushed(pressing, one)?;
        if worst.as_ref().is_none_or(|(worst, _)| check.ratio() > worst.ratio()) {
            worst = Some((check, one.layer.what.clone()));
        }
    }
    Ok(worst)
}

fn crushed(pressing: &Pressing, pressed: &Pressed) -> Result<Check, NotVerified> {
    let [breadth, length] = pressed.sides;
    let area: Area = breadth * length;
    let is_something = breadth.is_positive() && length.is_positive();
    if !is_something {
        let quantity = "side of the contact";
        let (value, limit, clause) = (breadth.min(length), Length::ZERO, "NDS 2018 3.10.2");
        return Err(NotCovered::LengthOutOfRange { quantity, value, limit, clause }.into());
    }
    let stress = bearing_stress(pressing.force, breadth, length);
    let factor = match pressed.from_end {
        Some((along, from_end)) => bearing_area_factor(along, from_end)?,
        None => 1.0,
    };
    let allowable = pressed.layer.allowable * factor;
    Ok(Check {
        demand: stress.into(),
        capacity: allowable.into(),
        combination: pressing.combination,
        pattern: pressing.pattern.clone(),
        at: None,
        clause: "NDS 2018 3.10.2",
        steps: vec![
            Step::read("R", pressing.force, "takedown"),
            Step::worked(
                "A",
                "b l",
                vec![("b", breadth.into()), ("l", length.into())],
                area,
                "the contact with this layer",
            ),
            Step::worked(
                "fc-perp",
                "R / A",
                vec![("R", pressing.force.into()), ("A", area.into())],
                stress,
                "NDS 2018 3.10.2",
            ),
            pressed.layer.step.clone(),
            Step::read("Cb", factor, "NDS 2018 3.10.4"),
        ],
        assumed: Vec::new(),
    })
}

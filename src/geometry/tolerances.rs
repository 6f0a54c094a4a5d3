//! How far what is built may be off: each surface, and the parts of two floors together where steps go from one to the
//! other.

use crate::geometry::carried::{Carried, carrying_element};
use crate::geometry::drying::nearest_supports;
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::field::Field;
use crate::model::foundation::Sill;
use crate::model::framing::Joists;
use crate::model::member::Member;
use crate::products::section::Make;
use crate::profiles::levels::{
    COLUMN_CUT_TOLERANCE, DECK_TOLERANCE, ENGINEERED_DEPTH_TOLERANCE, FIELD_TOLERANCE, FINISH_TOLERANCE,
    LEDGER_TOLERANCE, PAD_TOP_TOLERANCE, POST_CUT_TOLERANCE, ROLLED_DEPTH_TOLERANCE, SAWN_DEPTH_TOLERANCE,
    SILL_TOLERANCE, WALL_TOP_TOLERANCE,
};
use crate::profiles::{Limit, Limits};
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

/// How far a measured fact of an element may lie from the drawn one.
pub fn tolerance_of(model: &Model, of: ElementId, fact: &str) -> &'static Limit<Length> {
    match (of.kind, fact) {
        (ElementKind::Footing, "top") => &PAD_TOP_TOLERANCE,
        (ElementKind::Wall, "top") => {
            // A wall that does not say of what it is is taken for concrete.
            let kind = model.wall(of).and_then(|wall| wall.kind.get());
            if kind.is_none_or(|kind| kind.is_mineral()) { &WALL_TOP_TOLERANCE } else { &FIELD_TOLERANCE }
        }
        (ElementKind::Shelf | ElementKind::Pocket, _) => &WALL_TOP_TOLERANCE,
        (ElementKind::Ledger, _) => &LEDGER_TOLERANCE,
        (ElementKind::Column, "length") => {
            let column = model.columns.get(of.index as usize);
            let size = column.and_then(|column| column.size.value());
            let is_steel = size.and_then(|size| size.is_steel()).unwrap_or(false);
            if is_steel { &COLUMN_CUT_TOLERANCE } else { &POST_CUT_TOLERANCE }
        }
        _ => &FIELD_TOLERANCE,
    }
}

/// One part of a stack that may be off.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// What, as a person says it.
    pub what: String,
    /// How far, up or down.
    pub by: Length,
    /// It is a surface that can be measured before the work goes on, and no hold point asks for it.
    pub is_unmeasured: bool,
}

/// The parts of both stacks between what carries the two floors nearest to each other and their finishes: upper floor
/// first. What carries both is off for both alike and counts for neither. `None` where a part isn't known.
pub fn at_step(
    model: &Model,
    limits: &Limits,
    carried: &Carried<'_>,
    (upper, lower): (ElementId, ElementId),
) -> Option<Vec<Part>> {
    let ((above, upper_support), (below, lower_support)) = nearest_supports(model, carried, (upper, lower))?;
    let (upper_on, lower_on) = (carrying_element(upper_support)?, carrying_element(lower_support)?);
    let mut parts = Vec::new();
    for (floor, joists, on) in [(upper, above, upper_on), (lower, below, lower_on)] {
        if upper_on != lower_on {
            put_carrier(model, limits, on, &mut parts)?;
        }
        put_floor(model, limits, floor, joists, &mut parts)?;
    }
    Some(parts)
}

/// How far all of them are off together in all likelihood: the root of the sum of their squares.
pub fn probable(parts: &[Part]) -> Length {
    let squares =
        parts.iter().map(|part| i128::from(part.by.to_units())).map(|units| units.saturating_mul(units));
    let sum = squares.fold(0_i128, i128::saturating_add);
    Length::from_units(i64::try_from(sum.isqrt()).unwrap_or(i64::MAX))
}

/// How far they are off when all are off the same way.
pub fn worst(parts: &[Part]) -> Length {
    parts.iter().map(|part| part.by).sum()
}

fn put_carrier(model: &Model, limits: &Limits, on: ElementId, parts: &mut Vec<Part>) -> Option<()> {
    let common = model.common(on)?;
    let name = &common.name;
    // What was measured is known: the seats are cut to it.
    let is_measured =
        common.shots.iter().any(|shot| shot.at.is_none() && matches!(&*shot.fact, "top" | "seat"));
    let mut surface = |what: String, by: Length| {
        if is_measured {
            return;
        }
        let shot = hold_point_tolerance(model, limits, name);
        parts.push(Part { what, by: shot.map_or(by, |shot| shot.min(by)), is_unmeasured: shot.is_none() });
    };
    match on.kind {
        ElementKind::Wall => {
            let wall = model.wall(on)?;
            if !wall.kind.get()?.is_mineral() {
                return None;
            }
            surface(format!("top of {name}"), limits.of(&WALL_TOP_TOLERANCE).value);
            put_sill(limits, &wall.sill, name, parts)
        }
        ElementKind::Shelf => {
            surface(format!("top of {name}"), limits.of(&WALL_TOP_TOLERANCE).value);
            put_sill(limits, &model.shelf(on)?.sill, name, parts)
        }
        ElementKind::Ledger => {
            surface(format!("top of {name}"), limits.of(&LEDGER_TOLERANCE).value);
            Some(())
        }
        ElementKind::Beam => {
            let beam = model.beam(on)?;
            surface(format!("what carries {name}"), limits.of(&COLUMN_CUT_TOLERANCE).value);
            let depth = depth_tolerance(limits, beam.size.value()?)?;
            if !is_measured {
                parts.push(sure(format!("depth of {name}"), depth));
            }
            Some(())
        }
        _ => None,
    }
}

fn put_sill(limits: &Limits, sill: &Field<Sill>, name: &str, parts: &mut Vec<Part>) -> Option<()> {
    if sill.is_broken() {
        return None;
    }
    if sill.value().is_some() {
        parts.push(sure(format!("sill on {name}"), limits.of(&SILL_TOLERANCE).value));
    }
    Some(())
}

fn put_floor(
    model: &Model,
    limits: &Limits,
    floor: ElementId,
    joists: &Joists,
    parts: &mut Vec<Part>,
) -> Option<()> {
    let floor = model.floor(floor)?;
    parts.push(sure(
        format!("depth of {}", joists.common.name),
        depth_tolerance(limits, joists.size.value()?)?,
    ));
    parts.push(sure(format!("deck of {}", floor.common.name), limits.of(&DECK_TOLERANCE).value));
    if floor.build_up()?.is_positive() {
        parts.push(sure(format!("finish of {}", floor.common.name), limits.of(&FINISH_TOLERANCE).value));
    }
    Some(())
}

const fn sure(what: String, by: Length) -> Part {
    Part { what, by, is_unmeasured: false }
}

fn depth_tolerance(limits: &Limits, member: &Member) -> Option<Length> {
    let limit = match member.section.as_ref()?.make {
        Make::Sawn { .. } => &SAWN_DEPTH_TOLERANCE,
        Make::Glulam | Make::Composite | Make::IJoist(_) | Make::RimBoard => &ENGINEERED_DEPTH_TOLERANCE,
        Make::Rolled(_) | Make::DeclaredSteel | Make::FilledPipe => &ROLLED_DEPTH_TOLERANCE,
    };
    Some(limits.of(limit).value)
}

/// What a hold point that shoots an element's surface lets pass: its own tolerance, else the field's.
fn hold_point_tolerance(model: &Model, limits: &Limits, name: &str) -> Option<Length> {
    let asks = |point: &&crate::model::promises::HoldPoint| {
        point.shoot.iter().any(|shoot| shoot.value.of.first().is_some_and(|(of, _)| **of == *name))
    };
    let point = model.hold_points.iter().find(asks)?;
    Some(point.tolerance.get().unwrap_or(limits.of(&FIELD_TOLERANCE).value))
}

#[cfg(test)]
mod tests {
    use super::{Part, probable, worst};
    use crate::units::Length;

    /// Trade arithmetic by hand: 1/4, 1/16, 1/16, 1/32 and 1/8 are 17/32 at worst; their squares in 1/32" are 64 + 4 + 4 +
    /// 1 + 16 = 89, whose root is 9.43: 0.295".
    #[test]
    fn the_likely_error_is_smaller_than_the_worst() {
        let parts: Vec<Part> = [8, 2, 2, 1, 4]
            .map(|count| Part {
                what: String::new(),
                by: Length::sixty_fourths(0, 2 * count),
                is_unmeasured: false,
            })
            .into();
        assert_eq!(worst(&parts), Length::sixty_fourths(0, 34));
        assert!((probable(&parts).to_inches() - 0.2948).abs() < 0.0001);
    }
}

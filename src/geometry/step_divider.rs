//! A step between two floors, divided: into whole risers, with the heights of the rough seats, and the drops at which
//! the lower joists end right under the upper ones.

use std::collections::HashSet;

use crate::geometry::Geometry;
use crate::geometry::carried::{Carried, carrying_element};
use crate::geometry::sum::Unknown;
use crate::geometry::surfaces::Surface;
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::stairs::Foot;
use crate::syntax::vocabulary::ElementKind;
use crate::units::{Length, Ratio};

/// The thickness of a tread where no stair says another.
const TREAD_STOCK: Length = Length::inches(1);

/// A plate or ledger between lower and upper joists.
const PLATE: Length = Length::sixteenths(1, 8);

/// A flight with lower risers is a ramp to the foot.
const LOWEST_RISER: Length = Length::inches(4);

/// Depths of joists on hand. The true depths of the lumber standard, and the usual depths of I-joists (common practice).
const STOCK: [(&str, Length); 7] = [
    ("2x8", Length::sixteenths(7, 4)),
    ("2x10", Length::sixteenths(9, 4)),
    ("9-1/2", Length::sixteenths(9, 8)),
    ("2x12", Length::sixteenths(11, 4)),
    ("11-7/8", Length::sixteenths(11, 14)),
    ("14", Length::inches(14)),
    ("16", Length::inches(16)),
];

/// One of the two floors of a step.
#[derive(Clone, Debug)]
pub struct Side {
    /// The floor.
    pub floor: ElementId,
    /// Its name.
    pub name: String,
    /// Top of its deck.
    pub subfloor: Length,
    /// Walking surface.
    pub finish: Length,
    /// Thickness of its deck; `None` for a slab.
    pub deck: Option<Length>,
    /// How deep its joists are, when all are of one depth.
    pub joists: Option<Length>,
}

impl Side {
    /// All that comes on top of the deck.
    pub fn build_up(&self) -> Length {
        self.finish - self.subfloor
    }
}

/// A step between two floors.
#[derive(Clone, Debug)]
pub struct Step {
    /// The higher floor.
    pub upper: Side,
    /// The lower floor.
    pub lower: Side,
    /// Thickness of the treads.
    pub tread_stock: Length,
}

impl Step {
    /// From finish to finish.
    pub fn drop(&self) -> Length {
        self.upper.finish - self.lower.finish
    }

    /// From deck to deck.
    pub fn subfloor_drop(&self) -> Length {
        self.upper.subfloor - self.lower.subfloor
    }
}

/// One way to divide a drop.
#[derive(Clone, Debug, PartialEq)]
pub struct Division {
    /// How many risers.
    pub risers: u32,
    /// Each of them.
    pub riser: Ratio,
    /// The rough seat of each tread, above the lower deck.
    pub seats: Vec<Length>,
    /// From the upper deck down to the last seat.
    pub below_upper: Length,
}

/// A drop at which the lower joists end right under the upper ones, or under a plate between them.
#[derive(Clone, Debug, PartialEq)]
pub struct FreeDrop {
    /// The size of the upper joists.
    pub size: &'static str,
    /// How deep they are.
    pub depth: Length,
    /// A plate between them: its thickness, or nothing.
    pub plate: Length,
    /// From finish to finish.
    pub drop: Length,
    /// The least number of risers that does.
    pub risers: u32,
    /// Each of them.
    pub riser: Ratio,
    /// They are lower than a foot expects.
    pub is_low: bool,
}

/// Something that lies elsewhere with another drop.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Move {
    /// What: `subfloor of den`, `top of W5`.
    pub what: String,
    /// Where it is.
    pub from: Length,
    /// Where it would be.
    pub to: Length,
}

/// The step between two floors, whichever of them is named first.
///
/// # Errors
/// [`Unknown`] when a level of one of the two isn't known.
pub fn between(
    model: &Model,
    geometry: &Geometry,
    one: ElementId,
    other: ElementId,
) -> Result<Step, Unknown> {
    let carried = Carried::of(model);
    let (one, other) = (side(model, geometry, &carried, one)?, side(model, geometry, &carried, other)?);
    let (upper, lower) = if one.finish >= other.finish { (one, other) } else { (other, one) };
    let tread_stock = tread_stock(model, upper.floor, lower.floor).unwrap_or(TREAD_STOCK);
    Ok(Step { upper, lower, tread_stock })
}

/// Every number of risers that divides the drop into risers people climb, the fewest first.
pub fn divisions(step: &Step, tallest: Length) -> Vec<Division> {
    let division = |risers: u32| {
        let riser = step.drop().shared_by(risers)?;
        if tallest < riser.rounded() || riser < LOWEST_RISER {
            return None;
        }
        let seat = |count: u32| step.lower.build_up() + riser.times(i64::from(count)) - step.tread_stock;
        Some(Division {
            risers,
            riser,
            seats: (1..risers).map(seat).collect(),
            below_upper: riser.times(1) + step.tread_stock - step.upper.build_up(),
        })
    };
    (1..=MOST_RISERS).filter_map(division).collect()
}

const MOST_RISERS: u32 = 40;

/// The drops at which the lower joists end right under the upper ones, for each depth of upper joists on hand: without
/// a plate between them, and with one.
pub fn free_drops(step: &Step, tallest: Length) -> Vec<FreeDrop> {
    let decks = step.upper.deck.unwrap_or_default() - step.lower.deck.unwrap_or_default();
    let finishes = step.upper.build_up() - step.lower.build_up();
    let free = |(size, depth): (&'static str, Length), plate: Length| {
        let drop = depth + plate + decks + finishes;
        let (risers, riser) = (1..=MOST_RISERS)
            .find_map(|risers| Some((risers, drop.shared_by(risers).filter(|riser| *riser <= tallest)?)))?;
        let is_low = riser < LOW_RISER;
        Some(FreeDrop { size, depth, plate, drop, risers, riser, is_low })
    };
    STOCK
        .into_iter()
        .flat_map(|joist| [Length::ZERO, PLATE].map(|plate| free(joist, plate)))
        .flatten()
        .collect()
}

/// Risers that people find low (common practice).
const LOW_RISER: Length = Length::inches(5);

/// What moves when the lower floor goes to another drop and the upper one stays: its deck and finish, and the top of
/// everything that carries its joists, or that a wall on it stands over.
pub fn moves(model: &Model, geometry: &Geometry, step: &Step, drop: Length) -> Vec<Move> {
    let up = step.drop() - drop;
    let lower = &step.lower;
    let mut moves = Vec::new();
    let mut add = |what: String, from: Length| moves.push(Move { what, from, to: from + up });
    add(format!("subfloor of {}", lower.name), lower.subfloor);
    add(format!("finish of {}", lower.name), lower.finish);
    let carried = Carried::of(model);
    let mut below: Vec<ElementId> = Vec::new();
    for joists in carried.fields_of(lower.floor) {
        below.extend(joists.supports.iter().filter_map(carrying_element));
    }
    // What stands on the floor over a wall or beam promises that its edge lies there.
    let standing = model.walls.iter().filter_map(|wall| wall.stands_on.value());
    for stand in standing.filter(|stand| stand.on.reference().and_then(|on| on.target) == Some(lower.floor)) {
        below.extend(stand.over.as_ref().and_then(|over| over.target));
    }
    let mut seen: HashSet<ElementId> = HashSet::new();
    for on in below {
        let Some(common) = model.common(on).filter(|_| seen.insert(on)) else { continue };
        if let Ok(top) = geometry.surfaces.of(on, Surface::Top) {
            add(format!("top of {}", common.name), top.total());
        }
    }
    moves
}

fn side(model: &Model, geometry: &Geometry, carried: &Carried<'_>, id: ElementId) -> Result<Side, Unknown> {
    let unknown = Unknown { of: Some(id), fact: "subfloor" };
    let floor = model.floor(id).ok_or(unknown)?;
    let levels = geometry.floors.get(id.index as usize).ok_or(unknown)?;
    let mut depths: Vec<Length> = carried
        .fields_of(id)
        .iter()
        .filter_map(|joists| joists.size.value().and_then(|size| size.depth()))
        .collect();
    depths.sort();
    depths.dedup();
    Ok(Side {
        floor: id,
        name: floor.common.name.to_string(),
        subfloor: levels.subfloor.clone()?.total(),
        finish: levels.finish.clone()?.total(),
        deck: floor.deck.get(),
        joists: match depths.as_slice() {
            [only] => Some(*only),
            _ => None,
        },
    })
}

/// The treads of the flight between two floors.
fn tread_stock(model: &Model, upper: ElementId, lower: ElementId) -> Option<Length> {
    let joins = |from: Option<ElementId>, to: Option<ElementId>| from == Some(lower) && to == Some(upper);
    let stair = model.stairs.iter().find(|stair| {
        let from = match stair.from.value() {
            Some(Foot::Floor(from)) => from.target.filter(|from| from.kind == ElementKind::Floor),
            Some(Foot::Grade) | None => None,
        };
        joins(from, stair.to.value().and_then(|to| to.target))
    })?;
    stair.tread_stock.get()
}

#[cfg(test)]
mod tests {
    use super::*;

    const TALLEST: Length = Length::sixteenths(7, 12);

    fn floor(name: &str, subfloor: Length, build_up: Length) -> Side {
        Side {
            floor: ElementId { kind: ElementKind::Floor, index: 0 },
            name: name.to_owned(),
            subfloor,
            finish: subfloor + build_up,
            deck: Some(Length::sixteenths(0, 12)),
            joists: Some(Length::sixteenths(9, 4)),
        }
    }

    fn step(subfloor_drop: Length, upper: Length, lower: Length) -> Step {
        Step {
            upper: floor("main", Length::feet(100), upper),
            lower: floor("den", Length::feet(100) - subfloor_drop, lower),
            tread_stock: TREAD_STOCK,
        }
    }

    /// Common practice: what the trade finds when upper and lower decks and finishes are equal.
    #[test]
    fn depths_that_make_a_drop_free() {
        let equal = step(Length::inches(18), Length::ZERO, Length::ZERO);
        let found: Vec<(&str, String, u32, String)> = free_drops(&equal, TALLEST)
            .into_iter()
            .map(|free| (free.size, free.drop.in_inches().to_string(), free.risers, free.riser.to_string()))
            .collect();
        let expected = [
            ("2x8", "7-1/4\"", 1, "7-1/4\""),
            ("2x8", "8-3/4\"", 2, "4-3/8\""),
            ("2x10", "9-1/4\"", 2, "4-5/8\""),
            ("2x10", "10-3/4\"", 2, "5-3/8\""),
            ("9-1/2", "9-1/2\"", 2, "4-3/4\""),
            ("9-1/2", "11\"", 2, "5-1/2\""),
            ("2x12", "11-1/4\"", 2, "5-5/8\""),
            ("2x12", "12-3/4\"", 2, "6-3/8\""),
            ("11-7/8", "11-7/8\"", 2, "5-15/16\""),
            ("11-7/8", "13-3/8\"", 2, "6-11/16\""),
            ("14", "14\"", 2, "7\""),
            ("14", "15-1/2\"", 2, "7-3/4\""),
            ("16", "16\"", 3, "5-5/16\"~"),
            ("16", "17-1/2\"", 3, "5-13/16\"~"),
        ];
        let expected: Vec<_> = expected
            .into_iter()
            .map(|(size, drop, risers, riser)| (size, drop.to_owned(), risers, riser.to_owned()))
            .collect();
        assert_eq!(found, expected);
    }

    /// A finish 1/2\" thicker above adds 1/2\" to the drop: 11-1/4 + 1/2 = 11-3/4, two risers of 5-7/8.
    #[test]
    fn a_thicker_finish_above_adds_to_the_drop() {
        let thicker = step(Length::inches(18), Length::sixteenths(1, 4), Length::sixteenths(0, 12));
        let found = free_drops(&thicker, TALLEST);
        let free = found.iter().find(|free| free.size == "2x12" && free.plate == Length::ZERO).unwrap();
        assert_eq!(
            (free.drop, free.riser.rounded()),
            (Length::sixteenths(11, 12), Length::sixteenths(5, 14))
        );
    }

    /// By hand: decks 19-3/8\" apart, 3/4\" on the upper and 5/8\" on the lower: a drop of 19-1/2\", three risers of
    /// 6-1/2\". Seats at 5/8 + 6-1/2 - 1 = 6-1/8 and 12-5/8; from the upper deck 6-1/2 + 1 - 3/4 = 6-3/4, and
    /// 12-5/8 + 6-3/4 = 19-3/8. Four risers are 4-7/8\" each; five would be less than 4\".
    #[test]
    fn divides_with_both_finishes() {
        let step = step(Length::sixteenths(19, 6), Length::sixteenths(0, 12), Length::sixteenths(0, 10));
        let found = divisions(&step, TALLEST);
        assert_eq!(found.iter().map(|division| division.risers).collect::<Vec<_>>(), [3, 4]);
        let three = found.first().unwrap();
        assert_eq!(three.riser.rounded(), Length::sixteenths(6, 8));
        assert_eq!(three.seats, [Length::sixteenths(6, 2), Length::sixteenths(12, 10)]);
        assert_eq!(three.below_upper, Length::sixteenths(6, 12));
    }

    /// 7-3/4\" is one riser, a sixteenth more two.
    #[test]
    fn at_the_tallest_riser() {
        let one = step(TALLEST, Length::ZERO, Length::ZERO);
        assert_eq!(divisions(&one, TALLEST).first().unwrap().risers, 1);
        let more = step(Length::sixteenths(8, 0), Length::ZERO, Length::ZERO);
        assert_eq!(divisions(&more, TALLEST).first().unwrap().risers, 2);
    }
}

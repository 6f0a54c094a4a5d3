//! Each fact's value.

use crate::facts::{Answer, FactValue, NoAnswer};
use crate::facts::{forces, spans};
use crate::geometry::bearing;
use crate::geometry::carried::Carried;
use crate::geometry::enclosure::outdoor_grades;
use crate::geometry::joist_space;
use crate::geometry::sum::{Derived, Sum, Unknown};
use crate::geometry::surfaces::{Surface, joist_bottom, joist_top};
use crate::house::House;
use crate::model::element::ElementId;
use crate::model::foundation::{FootingSize, Wall};
use crate::model::framing::Joists;
use crate::model::plan::PlanRect;
use crate::syntax::vocabulary::ElementKind;
use crate::units::{Area, Length};

/// The value of the fact of these words about these elements: `answer(house, "drop", &[main, den])`.
///
/// # Errors
/// [`NoAnswer`] says why there is none.
pub fn answer(house: &House, words: &str, of: &[ElementId]) -> Result<Answer, NoAnswer> {
    answer_in_case(house, words, None, of)
}

/// The value of a fact, of one load case where it has several: `dead`, `live`, `snow`, or `all` for their plain sum.
///
/// # Errors
/// [`NoAnswer`] says why there is none.
pub fn answer_in_case(
    house: &House,
    words: &str,
    case: Option<&str>,
    of: &[ElementId],
) -> Result<Answer, NoAnswer> {
    match (words, of) {
        ("reaction", [of, on]) => forces::reaction(house, *of, *on, case),
        ("load", [on]) => forces::load(house, *on, case),
        ("pressure", [under]) => forces::pressure(house, *under),
        ("utilisation", [of]) => forces::utilisation(house, *of),
        ("drop", [upper, lower]) => between(finish(house, *upper), finish(house, *lower)),
        ("rise", [lower, upper]) => between(finish(house, *upper), finish(house, *lower)),
        ("subfloor drop", [upper, lower]) => between(subfloor(house, *upper), subfloor(house, *lower)),
        ("step", [from, to]) => between(top(house, *to), top(house, *from)),
        ("gap", [one, other]) => gap(house, *one, *other),
        ("bearing", [member, on]) => bearing_on(house, *member, *on),
        (words, [element]) => of_one(house, words, *element),
        _ => Err(NoAnswer::NotAFactOfIt),
    }
}

fn of_one(house: &House, words: &str, element: ElementId) -> Result<Answer, NoAnswer> {
    match words {
        "top" => top(house, element).map(Answer::from),
        "bottom" => bottom(house, element).map(Answer::from),
        "finish" => finish(house, element).map(Answer::from),
        "subfloor" => subfloor(house, element).map(Answer::from),
        "joist top" => Ok(levels(house, element)?.joist_top.clone()?.into()),
        "joist bottom" => Ok(levels(house, element)?.joist_bottom.clone()?.into()),
        "ceiling" => Ok(levels(house, element)?.ceiling.clone()?.into()),
        "seat" => seat(house, element),
        "cut" => cut(house, element),
        "studs cut" => {
            let wall = house.model.wall(element).ok_or(NoAnswer::NotAFactOfIt)?;
            let cut = studs_cut(house, wall)?;
            Ok(Answer { value: FactValue::Length(cut.total()), sum: Some(cut) })
        }
        "length" => length(house, element),
        "span" => spans::span(house, element),
        "size" => size(house, element),
        "thick" => thickness(house, element),
        "sills" => sills(house, element),
        "cover" => frost_cover(house, element),
        "riser" | "rise" | "risers" | "run" | "headroom" => of_stair(house, words, element),
        "clear height" => clear_height(house, element),
        "spacing" => {
            let joists = house.model.joists_of(element).ok_or(NoAnswer::NotAFactOfIt)?;
            let spacing = joists.spacing.get().ok_or(unknown(element, "spacing"))?;
            Ok(Answer::length(spacing.step))
        }
        "area" => area(house, element),
        "count" if house.model.common(element).is_some_and(|common| common.may_say("at")) => {
            Err(unknown(element, "at"))
        }
        "count" => Ok(Answer { value: FactValue::Count(count(house, element)?), sum: None }),
        _ => Err(NoAnswer::NotAFactOfIt),
    }
}

const fn unknown(of: ElementId, fact: &'static str) -> NoAnswer {
    NoAnswer::Unknown(Unknown { of: Some(of), fact })
}

fn between(upper: Result<Sum, NoAnswer>, lower: Result<Sum, NoAnswer>) -> Result<Answer, NoAnswer> {
    Ok(Answer::length(upper?.total() - lower?.total()))
}

fn levels(house: &House, floor: ElementId) -> Result<&crate::geometry::levels::FloorLevels, NoAnswer> {
    if floor.kind != ElementKind::Floor {
        return Err(NoAnswer::NotAFactOfIt);
    }
    house.geometry.floors.get(floor.index as usize).ok_or(NoAnswer::NotAFactOfIt)
}

/// The walking surface of a floor, of a part of one, of a landing or stoop.
pub fn finish(house: &House, element: ElementId) -> Result<Sum, NoAnswer> {
    match element.kind {
        ElementKind::Floor => Ok(levels(house, element)?.finish.clone()?),
        ElementKind::Area => {
            let area = house.model.areas.get(element.index as usize).ok_or(NoAnswer::NotAFactOfIt)?;
            let floor = area.floor.value().and_then(|floor| floor.target).ok_or(unknown(element, "in"))?;
            match area.finish.stated() {
                Some((layer, span)) => {
                    let what = format!("finish of {}", area.common.name);
                    Ok(levels(house, floor)?.subfloor.clone()?.plus(
                        layer.thickness,
                        what,
                        element,
                        Some(span),
                    ))
                }
                None if area.finish.is_broken() => Err(unknown(element, "finish")),
                None => Ok(levels(house, floor)?.finish.clone()?),
            }
        }
        ElementKind::Landing | ElementKind::Stoop | ElementKind::Slab => top(house, element),
        _ => Err(NoAnswer::NotAFactOfIt),
    }
}

fn subfloor(house: &House, element: ElementId) -> Result<Sum, NoAnswer> {
    Ok(levels(house, element)?.subfloor.clone()?)
}

/// The upper surface of an element.
pub fn top(house: &House, element: ElementId) -> Result<Sum, NoAnswer> {
    let at = element.index as usize;
    let stated = |top: Option<Length>, span, name: &str| {
        let top = top.ok_or(unknown(element, "top"))?;
        Ok(Sum::start(top, format!("top of {name}"), element, span))
    };
    match element.kind {
        ElementKind::Joists => {
            let joists = house.model.joists_of(element).ok_or(NoAnswer::NotAFactOfIt)?;
            Ok(joist_top(&house.geometry.floors, joists)?)
        }
        ElementKind::Column => Ok(column_stack(house, element)?.head.clone()?),
        ElementKind::Pocket => Ok(house.geometry.surfaces.of(element, Surface::Seat)?),
        ElementKind::Landing => {
            let landing = house.model.landings.get(at).ok_or(NoAnswer::NotAFactOfIt)?;
            stated(landing.body.top.get(), landing.body.top.span(), &landing.common.name)
        }
        ElementKind::Stoop => {
            let stoop = house.model.stoops.get(at).ok_or(NoAnswer::NotAFactOfIt)?;
            stated(stoop.body.top.get(), stoop.body.top.span(), &stoop.common.name)
        }
        ElementKind::Header => {
            let header = house.model.headers.get(at).ok_or(NoAnswer::NotAFactOfIt)?;
            stated(header.top.get(), header.top.span(), &header.common.name)
        }
        ElementKind::Wall
        | ElementKind::Shelf
        | ElementKind::Ledger
        | ElementKind::Beam
        | ElementKind::Footing
        | ElementKind::Slab => Ok(house.geometry.surfaces.of(element, Surface::Top)?),
        _ => Err(NoAnswer::NotAFactOfIt),
    }
}

/// The lower surface of an element.
pub fn bottom(house: &House, element: ElementId) -> Result<Sum, NoAnswer> {
    match element.kind {
        ElementKind::Joists => {
            let joists = house.model.joists_of(element).ok_or(NoAnswer::NotAFactOfIt)?;
            Ok(joist_bottom(&house.geometry.floors, joists)?)
        }
        ElementKind::Column => Ok(column_stack(house, element)?.foot.clone()?),
        ElementKind::Wall
        | ElementKind::Ledger
        | ElementKind::Beam
        | ElementKind::Footing
        | ElementKind::Slab => Ok(house.geometry.surfaces.of(element, Surface::Bottom)?),
        _ => Err(NoAnswer::NotAFactOfIt),
    }
}

fn column_stack(
    house: &House,
    element: ElementId,
) -> Result<&crate::geometry::columns::ColumnStack, NoAnswer> {
    if element.kind != ElementKind::Column {
        return Err(NoAnswer::NotAFactOfIt);
    }
    house.geometry.columns.get(element.index as usize).ok_or(NoAnswer::NotAFactOfIt)
}

fn seat(house: &House, element: ElementId) -> Result<Answer, NoAnswer> {
    let derived: Derived = match element.kind {
        ElementKind::Pocket => house.geometry.surfaces.of(element, Surface::Seat),
        ElementKind::Shelf => house.geometry.surfaces.of(element, Surface::Top),
        ElementKind::Column => column_stack(house, element)?.head.clone(),
        _ => return Err(NoAnswer::NotAFactOfIt),
    };
    Ok(derived?.into())
}

fn cut(house: &House, element: ElementId) -> Result<Answer, NoAnswer> {
    match element.kind {
        ElementKind::Column => {
            let cut = column_stack(house, element)?.cut.clone()?;
            Ok(Answer { value: FactValue::Length(cut.total()), sum: Some(cut) })
        }
        ElementKind::Beam | ElementKind::Ledger => length(house, element),
        ElementKind::Squash => {
            let squash = house.model.squashes.get(element.index as usize).ok_or(NoAnswer::NotAFactOfIt)?;
            let carried = Carried::of(&house.model);
            let space = joist_space::of_block(&house.model, &carried, squash);
            let derived = space.map(|space| joist_space::block_length(&space));
            Ok(Answer::length(squash.length.get().or(derived).ok_or(unknown(element, "length"))?))
        }
        _ => Err(NoAnswer::NotAFactOfIt),
    }
}

/// How long the studs of a framed wall are cut: between its sole and its plates.
///
/// # Errors
/// [`NoAnswer`] when the wall has no studs or one of its ends isn't known.
pub fn studs_cut(house: &House, wall: &Wall) -> Result<Sum, NoAnswer> {
    let id = wall.common.id;
    if wall.kind.get().is_none_or(|kind| kind.is_mineral()) {
        return Err(NoAnswer::NotAFactOfIt);
    }
    let top = house.geometry.surfaces.of(id, Surface::Top)?;
    let base = house.geometry.surfaces.of(id, Surface::Bottom)?;
    let sole = wall.sole.value().and_then(|sole| sole.height()).ok_or(unknown(id, "sole"))?;
    let plates = wall.plates.value().and_then(|plates| plates.height()).ok_or(unknown(id, "plates"))?;
    Ok(top
        .less(base.total(), "what it stands on", id, wall.stands_on.span())
        .less(sole, "sole", id, wall.sole.span())
        .less(plates, "plates", id, wall.plates.span()))
}

fn length(house: &House, element: ElementId) -> Result<Answer, NoAnswer> {
    let of_line = |line: Option<&crate::model::plan::PlanLine>| {
        let line = line.ok_or(unknown(element, "from"))?;
        let axis = line.axis().ok_or(unknown(element, "from"))?;
        let (low, high) = line.on(axis);
        Ok(Answer::length(high - low))
    };
    let at = element.index as usize;
    match element.kind {
        ElementKind::Wall => of_line(house.model.wall(element).and_then(|wall| wall.from.value())),
        ElementKind::Beam => of_line(house.model.beam(element).and_then(|beam| beam.from.value())),
        ElementKind::Ledger => of_line(house.model.ledger(element).and_then(|ledger| ledger.from.value())),
        ElementKind::Duct => of_line(house.model.ducts.get(at).and_then(|duct| duct.from.value())),
        ElementKind::Column => cut(house, element),
        ElementKind::Squash => cut(house, element),
        _ => Err(NoAnswer::NotAFactOfIt),
    }
}

fn size(house: &House, element: ElementId) -> Result<Answer, NoAnswer> {
    let model = &house.model;
    let at = element.index as usize;
    let member = match element.kind {
        ElementKind::Joists => model.joists_of(element).and_then(|joists| joists.size.value()),
        ElementKind::Beam => model.beam(element).and_then(|beam| beam.size.value()),
        ElementKind::Column => model.column(element).and_then(|column| column.size.value()),
        ElementKind::Ledger => model.ledger(element).and_then(|ledger| ledger.size.value()),
        ElementKind::Header => model.headers.get(at).and_then(|header| header.size.value()),
        _ => return Err(NoAnswer::NotAFactOfIt),
    };
    let member = member.ok_or(unknown(element, "size"))?;
    Ok(Answer { value: FactValue::Size(member.text.clone()), sum: None })
}

fn thickness(house: &House, element: ElementId) -> Result<Answer, NoAnswer> {
    let thickness = match element.kind {
        ElementKind::Wall => house.model.wall(element).and_then(|wall| wall.thick.get()),
        ElementKind::Slab => house.model.slab(element).and_then(|slab| slab.thick.get()),
        ElementKind::Footing => {
            house.model.footing(element).and_then(|footing| footing.size.get()).map(|size| size.thickness())
        }
        _ => return Err(NoAnswer::NotAFactOfIt),
    };
    thickness.map(Answer::length).ok_or(unknown(element, "thick"))
}

fn sills(house: &House, element: ElementId) -> Result<Answer, NoAnswer> {
    let sill = match element.kind {
        ElementKind::Wall => house.model.wall(element).map(|wall| &wall.sill),
        ElementKind::Shelf => house.model.shelf(element).map(|shelf| &shelf.sill),
        _ => return Err(NoAnswer::NotAFactOfIt),
    };
    let sill = sill.ok_or(NoAnswer::NotAFactOfIt)?;
    if sill.is_broken() {
        return Err(unknown(element, "sill"));
    }
    let count = sill.value().map_or(0, |sill| sill.count);
    Ok(Answer { value: FactValue::Count(count), sum: None })
}

/// The least ground above a footing's underside, at the walls it carries.
fn frost_cover(house: &House, element: ElementId) -> Result<Answer, NoAnswer> {
    let footing = house.model.footing(element).ok_or(NoAnswer::NotAFactOfIt)?;
    let bottom = house.geometry.surfaces.of(element, Surface::Bottom)?.total();
    let walls = footing.under.iter().filter_map(|wall| house.model.wall(wall.target?));
    let grades = walls.flat_map(|wall| outdoor_grades(&house.model, wall));
    let lowest = grades.map(|grade| grade.elevation).min();
    lowest.map(|lowest| Answer::length(lowest - bottom)).ok_or(unknown(element, "grade"))
}

fn of_stair(house: &House, words: &str, element: ElementId) -> Result<Answer, NoAnswer> {
    let stair = house.model.stair(element).ok_or(NoAnswer::NotAFactOfIt)?;
    let flight = house.geometry.flights.get(element.index as usize).ok_or(NoAnswer::NotAFactOfIt)?;
    Ok(match words {
        "rise" => Answer::length(flight.rise?),
        "riser" => Answer::length(flight.risers?.between.rounded()),
        "run" => Answer::length(flight.run?),
        "headroom" => Answer::length(flight.headroom?),
        _ => {
            let count = stair.risers.get().ok_or(unknown(element, "risers"))?;
            Answer { value: FactValue::Count(count), sum: None }
        }
    })
}

/// From the finish of the floor below up to the underside of a ceiling, beam or joists.
fn clear_height(house: &House, element: ElementId) -> Result<Answer, NoAnswer> {
    let (underside, floor) = match element.kind {
        ElementKind::Floor => (levels(house, element)?.ceiling.clone()?.total(), Some(element)),
        ElementKind::Joists => {
            let joists = house.model.joists_of(element).ok_or(NoAnswer::NotAFactOfIt)?;
            (bottom(house, element)?.total(), joists.floor.value().and_then(|floor| floor.target))
        }
        ElementKind::Beam | ElementKind::Header => (bottom(house, element)?.total(), None),
        _ => return Err(NoAnswer::NotAFactOfIt),
    };
    let below = floor_below(house, underside, floor).ok_or(unknown(element, "over"))?;
    Ok(Answer::length(underside - finish(house, below)?.total()))
}

/// The floor whose finish is the next one below an elevation: the one that `over` names, else the highest below.
pub fn floor_below(house: &House, elevation: Length, over: Option<ElementId>) -> Option<ElementId> {
    use crate::model::site::Below;
    if let Some(floor) = over.and_then(|floor| house.model.floor(floor))
        && let Some(Below::Basement(below)) = floor.over.value()
    {
        return below.target;
    }
    let finishes = house.model.floors.iter().zip(&house.geometry.floors).filter_map(|(floor, levels)| {
        let finish = levels.finish.as_ref().ok()?.total();
        (finish < elevation).then_some((finish, floor.common.id))
    });
    finishes.max().map(|(_, floor)| floor)
}

fn gap(house: &House, one: ElementId, other: ElementId) -> Result<Answer, NoAnswer> {
    let edges = |element: ElementId| -> Result<(Length, Length), NoAnswer> {
        if element.kind == ElementKind::Floor {
            let levels = levels(house, element)?;
            // Between floors it is the joists that leave room for a pipe or have none.
            return Ok((levels.joist_top.clone()?.total(), levels.joist_bottom.clone()?.total()));
        }
        Ok((top(house, element)?.total(), bottom(house, element)?.total()))
    };
    let (one, other) = (edges(one)?, edges(other)?);
    let (upper, lower) = if one.0 >= other.0 { (one, other) } else { (other, one) };
    Ok(Answer::length(upper.1 - lower.0))
}

fn bearing_on(house: &House, member: ElementId, on: ElementId) -> Result<Answer, NoAnswer> {
    let names = |support: &crate::model::support::Support| {
        support.on.reference().and_then(|reference| reference.target) == Some(on)
    };
    let length = match member.kind {
        ElementKind::Joists => {
            let joists = house.model.joists_of(member).ok_or(NoAnswer::NotAFactOfIt)?;
            let support =
                joists.supports.iter().find(|support| names(support)).ok_or(NoAnswer::NotAFactOfIt)?;
            bearing::of_joists(&house.model, joists, support)?.length
        }
        ElementKind::Beam => {
            let beam = house.model.beam(member).ok_or(NoAnswer::NotAFactOfIt)?;
            let support =
                beam.supports.iter().find(|support| names(support)).ok_or(NoAnswer::NotAFactOfIt)?;
            bearing::of_beam(&house.model, beam, support)?.length
        }
        _ => return Err(NoAnswer::NotAFactOfIt),
    };
    Ok(Answer::length(length))
}

fn area(house: &House, element: ElementId) -> Result<Answer, NoAnswer> {
    let model = &house.model;
    let at = element.index as usize;
    let rects: &[PlanRect] = match element.kind {
        ElementKind::Joists => model.joists_of(element).map(|joists| joists.fill.as_slice()),
        ElementKind::Roof => model.roofs.get(at).map(|roof| roof.fill.as_slice()),
        ElementKind::Slab => model.slab(element).map(|slab| slab.fill.as_slice()),
        ElementKind::Area => model.areas.get(at).map(|area| area.fill.as_slice()),
        ElementKind::Opening => model.opening(element).map(|opening| opening.fill.as_slice()),
        ElementKind::Footing => return pad_area(house, element),
        _ => None,
    }
    .ok_or(NoAnswer::NotAFactOfIt)?;
    let square_inches =
        rects.iter().map(|rect| (rect.x.1 - rect.x.0).to_inches() * (rect.y.1 - rect.y.0).to_inches());
    if rects.is_empty() {
        return Err(unknown(element, "fill"));
    }
    Ok(Answer { value: FactValue::Area(Area::sq_in(square_inches.sum())), sum: None })
}

fn pad_area(house: &House, element: ElementId) -> Result<Answer, NoAnswer> {
    let footing = house.model.footing(element).ok_or(NoAnswer::NotAFactOfIt)?;
    let square_inches = match footing.size.get().ok_or(unknown(element, "size"))? {
        FootingSize::Pad(x, y, _) => x.to_inches() * y.to_inches(),
        FootingSize::Round(diameter, _) => std::f64::consts::FRAC_PI_4 * diameter.to_inches().powi(2),
        FootingSize::Strip(..) => return Err(NoAnswer::NotAFactOfIt),
    };
    Ok(Answer { value: FactValue::Area(Area::sq_in(square_inches)), sum: None })
}

/// How many pieces there are: one of most things, as many as places of a footing, as many joists as fit a field.
fn count(house: &House, element: ElementId) -> Result<u32, NoAnswer> {
    let of_places = |places: usize| u32::try_from(places.max(1)).unwrap_or(u32::MAX);
    match element.kind {
        ElementKind::Footing => {
            Ok(house.model.footing(element).map_or(1, |footing| of_places(footing.at.len())))
        }
        ElementKind::Joists => {
            house.model.joists_of(element).and_then(joists_in).ok_or(unknown(element, "spacing"))
        }
        _ => Ok(1),
    }
}

/// How many joists of a field's layout lie inside of it.
fn joists_in(joists: &Joists) -> Option<u32> {
    let spacing = joists.spacing.get().filter(|spacing| spacing.step.is_positive())?;
    let across = joists.run.get()?.across();
    if joists.fill.is_empty() {
        return None;
    }
    let mut count: i64 = 0;
    for rect in &joists.fill {
        let (low, high) = rect.on(across);
        let from = (low - spacing.origin.at).to_units();
        let to = (high - spacing.origin.at).to_units();
        let step = spacing.step.to_units();
        // Whole steps from the first at or after the low edge to the last at or before the high edge.
        let first = from.div_euclid(step) + i64::from(from.rem_euclid(step) != 0);
        let last = to.div_euclid(step);
        count = count.saturating_add((last - first + 1).max(0));
    }
    u32::try_from(count).ok()
}

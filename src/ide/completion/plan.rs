//! How far apart things lie in plan.

use crate::geometry::band;
use crate::ide::completion::Place;
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::field::Field;
use crate::model::foundation::Pocket;
use crate::model::plan::{Axis, PlanLine, PlanPoint, PlanRect};
use crate::model::site::Grid;
use crate::syntax::value::{GridRef, Point, Value};
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

/// An upright stretch of the plan; a point and a line are stretches too.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Stretch {
    x: (Length, Length),
    y: (Length, Length),
}

impl Stretch {
    /// The stretch between two places.
    fn between(one: (Length, Length), other: (Length, Length)) -> Self {
        Self { x: (one.0.min(other.0), one.0.max(other.0)), y: (one.1.min(other.1), one.1.max(other.1)) }
    }

    /// A single place.
    pub fn at(x: Length, y: Length) -> Self {
        Self::between((x, y), (x, y))
    }

    /// How far it lies from another; nothing when they meet.
    pub fn distance(&self, other: &Self) -> Length {
        let gap = |one: (Length, Length), other: (Length, Length)| {
            (one.0 - other.1).max(other.0 - one.1).max(Length::ZERO)
        };
        match (gap(self.x, other.x), gap(self.y, other.y)) {
            (Length::ZERO, only) | (only, Length::ZERO) => only,
            (x, y) => Length::decimal_inches(x.to_inches().hypot(y.to_inches())),
        }
    }

    /// Its middle.
    pub fn centre(&self) -> Self {
        Self::at((self.x.0 + self.x.1).half(), (self.y.0 + self.y.1).half())
    }

    /// The axis it runs along, when it is longer one way than the other.
    pub fn axis(&self) -> Option<Axis> {
        let (x, y) = (self.x.1 - self.x.0, self.y.1 - self.y.0);
        match x.cmp(&y) {
            std::cmp::Ordering::Greater => Some(Axis::X),
            std::cmp::Ordering::Less => Some(Axis::Y),
            std::cmp::Ordering::Equal => None,
        }
    }
}

/// The least distance between two things; `None` where one of them is nowhere in plan.
pub(super) fn distance(one: &[Stretch], other: &[Stretch]) -> Option<Length> {
    one.iter().flat_map(|one| other.iter().map(|other| one.distance(other))).min()
}

/// Where an element lies.
pub(super) fn of_element(model: &Model, id: ElementId) -> Vec<Stretch> {
    let at = id.index as usize;
    let point = |point: &Field<PlanPoint>| point.value().map(of_point).into_iter().collect::<Vec<_>>();
    let of = |other: Option<ElementId>| {
        // One step along: an element that stands at another one never stands at a third.
        let other = other.filter(|other| other.kind != id.kind);
        other.map(|other| of_element(model, other)).unwrap_or_default()
    };
    let target = |field: &Field<crate::model::element::Reference>| field.value().and_then(|it| it.target);
    match id.kind {
        ElementKind::Wall | ElementKind::Beam | ElementKind::Ledger | ElementKind::Shelf => {
            match band::of(model, id) {
                Some(band) => vec![Stretch { x: band.on(Axis::X), y: band.on(Axis::Y) }],
                None => line_of(model, id).map(of_line).into_iter().collect(),
            }
        }
        ElementKind::Joists => model.joists_of(id).map(|it| of_rects(&it.fill)).unwrap_or_default(),
        ElementKind::Area => model.areas.get(at).map(|it| of_rects(&it.fill)).unwrap_or_default(),
        ElementKind::Slab => model.slab(id).map(|it| of_rects(&it.fill)).unwrap_or_default(),
        ElementKind::Roof => model.roofs.get(at).map(|it| of_rects(&it.fill)).unwrap_or_default(),
        ElementKind::Column => model.column(id).map(|it| point(&it.at)).unwrap_or_default(),
        ElementKind::Pocket => model.pocket(id).and_then(|it| of_pocket(model, it)).into_iter().collect(),
        ElementKind::Door => model.door(id).map(|it| point(&it.at)).unwrap_or_default(),
        ElementKind::Window => model.windows.get(at).map(|it| point(&it.at)).unwrap_or_default(),
        ElementKind::Stair => model.stair(id).map(|it| point(&it.top)).unwrap_or_default(),
        ElementKind::Drain => model.drains.get(at).map(|it| point(&it.at)).unwrap_or_default(),
        ElementKind::Landing => model.landings.get(at).map(|it| point(&it.body.at)).unwrap_or_default(),
        ElementKind::Stoop => model.stoops.get(at).map(|it| point(&it.body.at)).unwrap_or_default(),
        ElementKind::Duct => {
            let line = model.ducts.get(at).and_then(|it| it.from.value());
            line.map(of_line).into_iter().collect()
        }
        ElementKind::Opening => model
            .opening(id)
            .map_or_else(Vec::new, |it| if it.fill.is_empty() { point(&it.at) } else { of_rects(&it.fill) }),
        ElementKind::Footing => model.footing(id).map_or_else(Vec::new, |footing| {
            let walls = footing.under.iter().filter_map(|wall| wall.target);
            let walls = walls.flat_map(|wall| of(Some(wall)));
            footing.at.iter().map(of_point).chain(walls).collect()
        }),
        ElementKind::Header => model.headers.get(at).map(|it| of(target(&it.over))).unwrap_or_default(),
        ElementKind::Jacks => model.jacks_of(id).map(|it| of(target(&it.at))).unwrap_or_default(),
        ElementKind::Squash => model.squashes.get(at).map(|it| of(target(&it.under))).unwrap_or_default(),
        ElementKind::Floor => {
            let fields = model.joists.iter();
            let fields = fields.filter(|it| it.floor.value().is_some_and(|floor| floor.target == Some(id)));
            fields.flat_map(|it| of_rects(&it.fill)).collect()
        }
        ElementKind::Project
        | ElementKind::Grid
        | ElementKind::Product
        | ElementKind::Load
        | ElementKind::Hole
        | ElementKind::Notch
        | ElementKind::Intent
        | ElementKind::Sheet
        | ElementKind::HoldPoint => Vec::new(),
    }
}

/// Where the element under the cursor lies by the text of now; where that says nothing, by the last house.
pub(super) fn of_cursor(place: &Place<'_>) -> Vec<Stretch> {
    let Some(house) = place.house() else { return Vec::new() };
    let grid = &house.model.grid;
    let facts = place.cursor.body.facts.iter();
    let own = facts.filter(|fact| matches!(fact.spec.phrase, "at" | "from" | "fill" | "top"));
    let values = own.flat_map(|fact| &fact.parts).map(|part| &part.value);
    let stretches: Vec<Stretch> = values.filter_map(|value| of_value(grid, value)).collect();
    match place.element {
        Some(element) if stretches.is_empty() => of_element(&house.model, element),
        _ => stretches,
    }
}

/// The coordinate of a grid reference.
pub(super) fn coordinate(grid: &Grid, reference: &GridRef) -> Option<Length> {
    Some(grid.lines.get(&reference.line)?.at + reference.offset)
}

fn of_value(grid: &Grid, value: &Value) -> Option<Stretch> {
    let point = |point: &Point| Some((coordinate(grid, &point.x)?, coordinate(grid, &point.y)?));
    match value {
        Value::Point(at) => point(at).map(|(x, y)| Stretch::at(x, y)),
        Value::Line(line) => Some(Stretch::between(point(&line.from)?, point(&line.to)?)),
        Value::Rect(rect) => Some(Stretch::between(
            (coordinate(grid, &rect.x_from)?, coordinate(grid, &rect.y_from)?),
            (coordinate(grid, &rect.x_to)?, coordinate(grid, &rect.y_to)?),
        )),
        _ => None,
    }
}

fn line_of(model: &Model, id: ElementId) -> Option<&PlanLine> {
    match id.kind {
        ElementKind::Wall => model.wall(id)?.from.value(),
        ElementKind::Beam => model.beam(id)?.from.value(),
        ElementKind::Ledger => model.ledger(id)?.from.value(),
        _ => None,
    }
}

/// A pocket reaches through its wall.
fn of_pocket(model: &Model, pocket: &Pocket) -> Option<Stretch> {
    let at = pocket.at.value()?;
    let wall = pocket.wall.value().and_then(|wall| model.wall(wall.target?));
    Some(match wall.and_then(band::of_wall) {
        Some(wall) if wall.axis == Axis::X => Stretch { x: (at.x, at.x), y: wall.across },
        Some(wall) => Stretch { x: wall.across, y: (at.y, at.y) },
        None => of_point(at),
    })
}

fn of_point(point: &PlanPoint) -> Stretch {
    Stretch::at(point.x, point.y)
}

fn of_line(line: &PlanLine) -> Stretch {
    Stretch::between((line.from.x, line.from.y), (line.to.x, line.to.y))
}

fn of_rects(rects: &[PlanRect]) -> Vec<Stretch> {
    rects.iter().map(|rect| Stretch { x: rect.x, y: rect.y }).collect()
}

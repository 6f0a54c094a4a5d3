//! The levels of floors: subfloor, finish, top of joists.

use crate::geometry::carried::Carried;
use crate::geometry::stack::{Closure, Loop};
use crate::geometry::sum::{Derived, Sum, Unknown};
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::framing::Joists;
use crate::model::site::{Datum, DatumSurface, Floor};
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

/// The levels of one floor.
#[derive(Clone, Debug)]
pub struct FloorLevels {
    /// Top of the structural deck, or of the slab the floor is.
    pub subfloor: Derived,
    /// Walking surface.
    pub finish: Derived,
    /// Top of the joists: under the deck. Unknown for a floor on a slab.
    pub joist_top: Derived,
    /// Bottom of its deepest joists.
    pub joist_bottom: Derived,
    /// Lower face of its ceiling; the bottom of its deepest joists when it has none.
    pub ceiling: Derived,
}

/// The levels of every floor, in the model's order.
pub fn of(model: &Model, carried: &Carried<'_>) -> Vec<FloorLevels> {
    let mut placed = Placed { model, subfloors: vec![State::Untouched; model.floors.len()], depth: 0 };
    (0..model.floors.len()).map(|at| levels_of(model, carried, at, &mut placed)).collect()
}

/// Where a floor's own number, the datum and a promise of steps meet.
pub fn closures(model: &Model, levels: &[FloorLevels]) -> Vec<Closure> {
    let mut closures = Vec::new();
    if let Some((datum, span)) = model.project.as_ref().and_then(|project| project.datum.stated())
        && let Some((id, floor, of_floor)) = datum_floor(model, datum, levels)
        && (floor.subfloor.stated().is_some() || floor.finish_at.stated().is_some())
    {
        let surface = match datum.surface {
            DatumSurface::Subfloor => &of_floor.subfloor,
            DatumSurface::Finish => &of_floor.finish,
        };
        if let Ok(derived) = surface {
            let subject = model.project.as_ref().map_or(id, |project| project.common.id);
            closures.push(Closure::new(Loop::Datum, subject, (datum.elevation, span), derived.clone(), None));
        }
    }
    closures
}

fn datum_floor<'a>(
    model: &'a Model,
    datum: &Datum,
    levels: &'a [FloorLevels],
) -> Option<(ElementId, &'a Floor, &'a FloorLevels)> {
    let id = datum.floor.target?;
    Some((id, model.floor(id)?, levels.get(id.index as usize)?))
}

/// How far the placing of a floor has come; a floor met while it is being placed steps from itself.
#[derive(Clone, Debug)]
enum State {
    Untouched,
    Underway,
    Done(Derived),
}

struct Placed<'a> {
    model: &'a Model,
    subfloors: Vec<State>,
    depth: u32,
}

/// The longest run of floors that each step from the next: a longer one is no house.
const MOST_STEPPED_FLOORS: u32 = 200;

impl Placed<'_> {
    fn subfloor(&mut self, at: usize) -> Derived {
        let id = floor_id(at);
        match self.subfloors.get(at) {
            Some(State::Done(derived)) => return derived.clone(),
            Some(State::Untouched) => {}
            Some(State::Underway) | None => return Err(Unknown { of: Some(id), fact: "steps" }),
        }
        if self.depth >= MOST_STEPPED_FLOORS {
            return Err(Unknown { of: Some(id), fact: "steps" });
        }
        if let Some(state) = self.subfloors.get_mut(at) {
            *state = State::Underway;
        }
        self.depth += 1;
        let derived =
            self.model.floors.get(at).map_or(Err(Unknown { of: None, fact: "subfloor" }), |floor| {
                self.placed_by_its_facts(floor, id)
            });
        self.depth -= 1;
        if let Some(state) = self.subfloors.get_mut(at) {
            *state = State::Done(derived.clone());
        }
        derived
    }

    fn placed_by_its_facts(&mut self, floor: &Floor, id: ElementId) -> Derived {
        let name = &floor.common.name;
        if let Some((subfloor, span)) = floor.subfloor.stated() {
            return Ok(Sum::start(*subfloor, format!("subfloor of {name}"), id, Some(span)));
        }
        let unknown = |fact| Unknown { of: Some(id), fact };
        if floor.subfloor.is_broken() {
            return Err(unknown("subfloor"));
        }
        if let Some((finish, span)) = floor.finish_at.stated() {
            let start = Sum::start(*finish, format!("finish of {name}"), id, Some(span));
            return without_finish(start, floor, id);
        }
        if let Some((slab, span)) = floor.on.stated() {
            let top = slab.target.and_then(|slab| self.model.slab(slab)).and_then(|slab| slab.top.get());
            let top = top.ok_or(Unknown { of: slab.target, fact: "top" })?;
            return Ok(Sum::start(
                top,
                format!("top of {}", slab.name),
                slab.target.unwrap_or(id),
                Some(span),
            ));
        }
        if let Some((datum, span)) = self.model.project.as_ref().and_then(|project| project.datum.stated())
            && datum.floor.target == Some(id)
        {
            let project = ElementId { kind: ElementKind::Project, index: 0 };
            let start =
                |what: &str| Sum::start(datum.elevation, format!("{what} of {name}"), project, Some(span));
            return match datum.surface {
                DatumSurface::Subfloor => Ok(start("subfloor")),
                DatumSurface::Finish => without_finish(start("finish"), floor, id),
            };
        }
        let Some((steps, span)) = floor.steps.stated() else { return Err(unknown("subfloor")) };
        let from =
            steps.from.target.filter(|from| from.kind == ElementKind::Floor).ok_or(unknown("steps"))?;
        let rise = steps.rise().ok_or(unknown("steps"))?;
        let other = self.subfloor(from.index as usize)?;
        let other_floor = self.model.floor(from).ok_or(unknown("steps"))?;
        let other_finish = with_finish(other, other_floor, from)?;
        let direction = if steps.is_down { "down" } else { "up" };
        let finish = other_finish.plus(rise, format!("{} risers {direction}", steps.risers), id, Some(span));
        without_finish(finish, floor, id)
    }
}

fn levels_of(model: &Model, carried: &Carried<'_>, at: usize, placed: &mut Placed<'_>) -> FloorLevels {
    let id = floor_id(at);
    let subfloor = placed.subfloor(at);
    let Some(floor) = model.floors.get(at) else {
        let unknown = || Err(Unknown { of: None, fact: "subfloor" });
        return FloorLevels {
            subfloor,
            finish: unknown(),
            joist_top: unknown(),
            joist_bottom: unknown(),
            ceiling: unknown(),
        };
    };
    let finish = subfloor.clone().and_then(|subfloor| with_finish(subfloor, floor, id));
    let joist_top = subfloor.clone().and_then(|subfloor| {
        let deck = floor.deck.get().ok_or(Unknown { of: Some(id), fact: "deck" })?;
        Ok(subfloor.less(deck, "deck", id, floor.deck.span()))
    });
    let joist_bottom = deepest_bottom(carried, id, &joist_top);
    let ceiling = joist_bottom.clone().and_then(|bottom| under_ceiling(bottom, floor, id));
    FloorLevels { subfloor, finish, joist_top, joist_bottom, ceiling }
}

fn with_finish(subfloor: Sum, floor: &Floor, id: ElementId) -> Derived {
    let build_up = floor.build_up().ok_or(Unknown { of: Some(id), fact: "finish" })?;
    Ok(subfloor.plus(build_up, format!("finish of {}", floor.common.name), id, floor.finish.span()))
}

fn without_finish(finish: Sum, floor: &Floor, id: ElementId) -> Derived {
    let build_up = floor.build_up().ok_or(Unknown { of: Some(id), fact: "finish" })?;
    Ok(finish.less(build_up, format!("finish of {}", floor.common.name), id, floor.finish.span()))
}

/// The bottom of the floor's deepest joists: what a ceiling has to clear.
fn deepest_bottom(carried: &Carried<'_>, floor: ElementId, joist_top: &Derived) -> Derived {
    let top = joist_top.clone()?;
    let mut deepest: Option<(Length, &Joists)> = None;
    for joists in carried.fields_of(floor) {
        let depth = joists.size.value().and_then(|size| size.depth());
        let depth = depth.ok_or(Unknown { of: Some(joists.common.id), fact: "size" })?;
        if deepest.is_none_or(|(most, _)| depth > most) {
            deepest = Some((depth, joists));
        }
    }
    let (depth, joists) = deepest.ok_or(Unknown { of: Some(floor), fact: "joists" })?;
    Ok(top.less(depth, format!("joists {}", joists.common.name), joists.common.id, joists.size.span()))
}

fn under_ceiling(bottom: Sum, floor: &Floor, id: ElementId) -> Derived {
    if floor.ceiling.is_broken() {
        return Err(Unknown { of: Some(id), fact: "ceiling" });
    }
    let layers = floor.ceiling.value().map(Vec::as_slice).unwrap_or_default();
    Ok(layers.iter().fold(bottom, |sum, layer| {
        let what = if layer.words.is_empty() { "ceiling" } else { &layer.words };
        sum.less(layer.thickness, what, id, floor.ceiling.span())
    }))
}

fn floor_id(at: usize) -> ElementId {
    ElementId { kind: ElementKind::Floor, index: u32::try_from(at).unwrap_or(u32::MAX) }
}

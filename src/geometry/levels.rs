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

impl FloorLevels {
    /// Underside and top of its joists, where both are known.
    pub fn joist_space(&self) -> Option<(Length, Length)> {
        Some((self.joist_bottom.as_ref().ok()?.total(), self.joist_top.as_ref().ok()?.total()))
    }
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

#[cfg(test)]
mod tests {
    use super::FloorLevels;
    use crate::testing::rule_check::house;

    fn levels(text: &str, name: &str) -> FloorLevels {
        let house = house(text);
        let floor = house.model.named(name).unwrap();
        house.geometry.floors[floor.index as usize].clone()
    }

    fn printed(derived: &super::Derived) -> String {
        derived.as_ref().map_or_else(|_| "?".to_owned(), |sum| sum.total().in_feet().to_string())
    }

    /// By hand: 100'-0" + 5/8" finish; − 3/4" deck − 9-1/4" of a dressed 2x10 = 99'-2"; 3/4" furring (common practice)
    /// and 1/2" board put the ceiling at 99'-0 3/4".
    #[test]
    fn a_floor_is_a_stack() {
        let main = levels(
            "
floor main
  subfloor    100'-0\"
  deck        3/4\"
  finish      cork 5/8\"
  ceiling     furring 3/4\", board 1/2\"
joists J1
  floor       main
  size        2x10 SPF No.2
",
            "main",
        );
        assert_eq!(printed(&main.finish), "100'-0 5/8\"");
        assert_eq!(printed(&main.joist_top), "99'-11 1/4\"");
        assert_eq!(printed(&main.joist_bottom), "99'-2\"");
        assert_eq!(printed(&main.ceiling), "99'-0 3/4\"");
    }

    /// A floor is placed by its finish, by the datum, or by steps from another: 100'-0 1/2" − 3 × 7" = 98'-3 1/2" of
    /// finish, less 3/4" of it.
    #[test]
    fn a_floor_is_placed_in_one_of_four_ways() {
        let text = "
project \"House\"
  datum         main finish 100'-0 1/2\"
floor main
  finish        cork 1/2\"
floor den
  steps down    from main by 3 risers at 7\"
  finish        plank 3/4\"
floor loft
  finish at     109'-0\"
  finish        plank 3/4\"
slab SL1
  top           91'-0\"
floor cellar
  on            SL1
  finish        1/4\"
";
        assert_eq!(printed(&levels(text, "main").subfloor), "100'-0\"");
        assert_eq!(printed(&levels(text, "den").subfloor), "98'-2 3/4\"");
        assert_eq!(printed(&levels(text, "loft").subfloor), "108'-11 1/4\"");
        assert_eq!(printed(&levels(text, "cellar").finish), "91'-0 1/4\"");
    }

    /// What a broken line would have said is unknown: nothing downstream guesses.
    #[test]
    fn a_broken_line_stops_the_flow() {
        let main = levels("floor main\n  subfloor  somewhere\n  deck  3/4\"\n", "main");
        assert_eq!(printed(&main.subfloor), "?");
        assert_eq!(printed(&main.joist_top), "?");
    }

    /// Two floors that step from each other are placed by nothing, and a thousand in a row don't exhaust the stack.
    #[test]
    fn steps_in_a_circle_place_nothing() {
        let circle = "
floor a
  steps up  from b by 1 risers at 7\"
floor b
  steps up  from a by 1 risers at 7\"
";
        assert_eq!(printed(&levels(circle, "a").subfloor), "?");
        let chain: String = (0..1000)
            .map(|at| format!("floor f{at}\n  steps up  from f{} by 1 risers at 7\"\n", at + 1))
            .collect();
        assert_eq!(printed(&levels(&chain, "f0").subfloor), "?");
    }
}

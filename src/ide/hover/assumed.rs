//! What holds for an element because no line says otherwise.

use crate::house::House;
use crate::ide::hover::markdown::escaped;
use crate::model::element::ElementId;
use crate::model::field::Field;
use crate::syntax::vocabulary::ElementKind;
use crate::verify::quantity::Quantity;

/// Each value that a default decided: its fact, the value, and the ground it stands on.
pub fn lines(house: &House, element: ElementId) -> Vec<String> {
    let (model, at) = (&house.model, element.index as usize);
    let mut list = List(Vec::new());
    match element.kind {
        ElementKind::Project => {
            let Some(project) = &model.project else { return list.0 };
            list.add("soil", &project.soil, |soil| Quantity::from(soil.pressure).to_string());
            list.add("moisture", &project.moisture, |moisture| {
                format!("{}% when built, {}% in use", moisture.install.0, moisture.service.0)
            });
        }
        ElementKind::Wall => {
            let Some(wall) = model.wall(element) else { return list.0 };
            list.add("line", &wall.line, no_value);
            list.add("thick", &wall.thick, |thick| thick.in_inches().to_string());
            list.add("sole", &wall.sole, no_value);
            list.add("plates", &wall.plates, no_value);
            list.add("bearing", &wall.bearing, no_value);
            list.add("weight", &wall.weight, no_value);
        }
        ElementKind::Footing => {
            let Some(footing) = model.footing(element) else { return list.0 };
            list.add("kind", &footing.kind, no_value);
            list.add("concrete", &footing.concrete, |concrete| Quantity::from(*concrete).to_string());
            // A footing without soil of its own stands on the project's.
            let of_project = model.project.as_ref().filter(|_| footing.soil.is_missing());
            if let Some(project) = of_project {
                list.add("soil", &project.soil, |soil| Quantity::from(soil.pressure).to_string());
            }
        }
        ElementKind::Floor => {
            let Some(floor) = model.floor(element) else { return list.0 };
            list.add("finish", &floor.finish, no_value);
            list.add("use", &floor.use_, |words| escaped(words));
            list.add("ceiling", &floor.ceiling, no_value);
        }
        ElementKind::Roof => {
            let Some(roof) = model.roofs.get(at) else { return list.0 };
            list.add("snow", &roof.snow, |snow| Quantity::from(*snow).to_string());
        }
        ElementKind::Opening => {
            let Some(opening) = model.opening(element) else { return list.0 };
            list.add("loads", &opening.keeps_load, no_value);
        }
        ElementKind::Jacks => {
            let Some(jacks) = model.jacks_of(element) else { return list.0 };
            list.add("kings", &jacks.kings, u32::to_string);
        }
        ElementKind::Stair => {
            let Some(stair) = model.stair(element) else { return list.0 };
            list.add("nosing", &stair.nosing, |nosing| nosing.in_inches().to_string());
            list.add("tread stock", &stair.tread_stock, |stock| stock.in_inches().to_string());
        }
        _ => {}
    }
    list.0
}

struct List(Vec<String>);

impl List {
    fn add<T>(&mut self, phrase: &str, field: &Field<T>, words: impl FnOnce(&T) -> String) {
        let Field::Assumed(value, assumption) = field else { return };
        let value = words(value);
        let value = if value.is_empty() { value } else { format!("{value}, ") };
        self.0.push(format!("- not stated: `{phrase}` — {value}{} ({})", assumption.what, assumption.ground));
    }
}

/// For a value that the assumption itself names.
const fn no_value<T>(_: &T) -> String {
    String::new()
}

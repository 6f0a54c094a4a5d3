//! What comes down on an element, and what it hands on.

use crate::house::House;
use crate::ide::figures::force_in_words;
use crate::ide::hover::markdown::escaped;
use crate::model::element::ElementId;
use crate::statics::action::{Receiver, Source};
use crate::statics::cases::ByCase;
use crate::syntax::vocabulary::ElementKind;
use crate::units::Force;
use crate::verify::quantity::Quantity;

/// So many carried or carrying elements are told one by one.
const MOST_TOLD: usize = 4;

/// What comes down on an element, by case and from where; then what it brings to each support.
pub fn lines(house: &House, element: ElementId) -> Vec<String> {
    // A floor's own load is stated in the text.
    if matches!(element.kind, ElementKind::Floor | ElementKind::Area | ElementKind::Roof) {
        return handed(house, element);
    }
    let mut lines = Vec::new();
    let load = house.forces.load_on(element);
    if load != ByCase::default() {
        lines.push(format!("- carries {}", force_in_words(&load)));
        let mut from: Vec<ElementId> = Vec::new();
        for action in house.forces.on(element) {
            if let Source::From(other) = action.source
                && !from.contains(&other)
            {
                from.push(other);
            }
        }
        // Of one alone it is the same number again.
        if from.len() > 1 {
            let each = from.iter().map(|other| {
                let brought = house.forces.reaction(*other, Receiver::Element(element));
                format!("{} {}", name_of(house, *other), pounds(brought.total()))
            });
            lines.push(format!("- of it: {}", told(each.collect())));
        }
    }
    lines.extend(handed(house, element));
    lines
}

fn handed(house: &House, element: ElementId) -> Vec<String> {
    let mut to: Vec<Receiver> = Vec::new();
    for handed in house.forces.handed_by(element) {
        if !to.contains(&handed.to) {
            to.push(handed.to);
        }
    }
    let mut lines: Vec<String> = to
        .iter()
        .take(MOST_TOLD)
        .map(|to| {
            let brought = force_in_words(&house.forces.reaction(element, *to));
            match to {
                Receiver::Element(on) => format!("- brings to {}: {brought}", name_of(house, *on)),
                Receiver::Outside => format!("- brings to what stands outside of the spec: {brought}"),
                Receiver::Soil => format!("- brings to the soil, its own weight with it: {brought}"),
                Receiver::Nothing(why) => format!("- **reaches nothing**, for {}: {brought}", why.words()),
            }
        })
        .collect();
    if to.len() > MOST_TOLD {
        lines.push(format!("- and something to {} more", to.len() - MOST_TOLD));
    }
    lines
}

fn name_of(house: &House, element: ElementId) -> String {
    house.model.common(element).map(|common| escaped(&common.name)).unwrap_or_default()
}

fn told(mut each: Vec<String>) -> String {
    let more = each.len().saturating_sub(MOST_TOLD);
    each.truncate(MOST_TOLD);
    if more > 0 {
        each.push(format!("and {more} more"));
    }
    each.join(", ")
}

fn pounds(force: Force) -> String {
    Quantity::from(force).to_string()
}

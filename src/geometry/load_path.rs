//! Who carries whom, down to the soil.

use std::collections::{HashMap, HashSet};

use crate::geometry::carried::Carried;
use crate::model::Model;
use crate::model::element::{ElementId, Reference};
use crate::model::field::Field;
use crate::model::support::{Carrier, Connector, Contact, Stand, Support};
use crate::syntax::vocabulary::ElementKind;

/// The graph of carriers, and where each element's load ends.
#[derive(Clone, Debug, Default)]
pub struct LoadPath {
    carriers: HashMap<ElementId, Vec<ElementId>>,
    carried: HashMap<ElementId, Vec<ElementId>>,
    ends: HashMap<ElementId, PathEnd>,
    /// Each loop of elements that carry one another, in order, each loop once.
    pub cycles: Vec<Vec<ElementId>>,
}

/// Where an element's load ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PathEnd {
    /// On soil, or on something outside the spec.
    Soil,
    /// It reaches this element, which nothing carries.
    Drops(ElementId),
    /// A line on the way can't be read or names nothing: reported there.
    Unknown,
    /// It runs in a circle.
    Circle,
}

impl LoadPath {
    /// Where an element's load ends.
    pub fn end_of(&self, element: ElementId) -> PathEnd {
        self.ends.get(&element).copied().unwrap_or(PathEnd::Unknown)
    }

    /// What carries an element, in the order of the text.
    pub fn carriers_of(&self, element: ElementId) -> &[ElementId] {
        self.carriers.get(&element).map(Vec::as_slice).unwrap_or_default()
    }

    /// What an element carries, kind by kind, each in the order of the text.
    pub fn carried_by(&self, element: ElementId) -> &[ElementId] {
        self.carried.get(&element).map(Vec::as_slice).unwrap_or_default()
    }
}

/// What an element's own lines say of its support.
enum Said {
    Carriers(Vec<ElementId>),
    Outside,
    Nothing,
    Unreadable,
    IsFooting,
}

/// The load path of a house.
pub fn of(model: &Model, carried: &Carried<'_>) -> LoadPath {
    let mut path = LoadPath::default();
    let mut said: HashMap<ElementId, Said> = HashMap::new();
    for (id, what) in everything(model, carried) {
        if let Said::Carriers(carriers) = &what {
            for carrier in carriers {
                path.carried.entry(*carrier).or_default().push(id);
            }
            path.carriers.insert(id, carriers.clone());
        }
        said.insert(id, what);
    }
    let mut order: Vec<ElementId> = said.keys().copied().collect();
    order.sort();
    for start in order {
        follow(start, &said, &mut path);
    }
    path
}

/// Walks down from one element without recursion, so that a chain of any length is fine.
fn follow(start: ElementId, said: &HashMap<ElementId, Said>, path: &mut LoadPath) {
    let mut stack: Vec<(ElementId, usize)> = vec![(start, 0)];
    let mut on_way: HashSet<ElementId> = HashSet::from([start]);
    while let Some((at, next)) = stack.last().copied() {
        if path.ends.contains_key(&at) {
            on_way.remove(&at);
            stack.pop();
            continue;
        }
        let carriers = match said.get(&at) {
            Some(Said::IsFooting | Said::Outside) => {
                path.ends.insert(at, PathEnd::Soil);
                continue;
            }
            Some(Said::Nothing) => {
                path.ends.insert(at, PathEnd::Drops(at));
                continue;
            }
            Some(Said::Unreadable) | None => {
                path.ends.insert(at, PathEnd::Unknown);
                continue;
            }
            Some(Said::Carriers(carriers)) => carriers,
        };
        if let Some(carrier) = carriers.get(next).copied() {
            if let Some(frame) = stack.last_mut() {
                frame.1 += 1;
            }
            if on_way.contains(&carrier) {
                let circle =
                    stack.iter().map(|(element, _)| *element).skip_while(|element| *element != carrier);
                note_cycle(circle.collect(), path);
            } else if !path.ends.contains_key(&carrier) {
                on_way.insert(carrier);
                stack.push((carrier, 0));
            }
            continue;
        }
        let end =
            worst(carriers.iter().map(|carrier| path.ends.get(carrier).copied().unwrap_or(PathEnd::Circle)));
        path.ends.insert(at, end);
        on_way.remove(&at);
        stack.pop();
    }
}

/// The end that matters of all the carriers': one that drops its load is not made good by another that holds.
fn worst(ends: impl Iterator<Item = PathEnd>) -> PathEnd {
    let rank = |end: &PathEnd| match end {
        PathEnd::Circle => 3,
        PathEnd::Drops(_) => 2,
        PathEnd::Unknown => 1,
        PathEnd::Soil => 0,
    };
    ends.max_by_key(rank).unwrap_or(PathEnd::Soil)
}

/// Keeps a loop once, whichever of its elements it was met from.
fn note_cycle(mut cycle: Vec<ElementId>, path: &mut LoadPath) {
    let least = cycle.iter().min().copied();
    if let Some(at) = cycle.iter().position(|element| Some(*element) == least) {
        cycle.rotate_left(at);
    }
    if !path.cycles.contains(&cycle) {
        path.cycles.push(cycle);
    }
}

fn everything(model: &Model, carried: &Carried<'_>) -> Vec<(ElementId, Said)> {
    let mut all = Vec::new();
    for joists in &model.joists {
        all.push((joists.common.id, of_supports(&joists.supports, joists.common.has_unread_lines)));
    }
    for beam in &model.beams {
        all.push((beam.common.id, of_supports(&beam.supports, beam.common.has_unread_lines)));
    }
    for header in &model.headers {
        all.push((header.common.id, of_supports(&header.supports, header.common.has_unread_lines)));
    }
    for roof in &model.roofs {
        all.push((roof.common.id, of_supports(&roof.supports, roof.common.has_unread_lines)));
    }
    for wall in &model.walls {
        all.push((wall.common.id, of_stand(model, carried, &wall.stands_on, wall.common.has_unread_lines)));
    }
    for column in &model.columns {
        all.push((
            column.common.id,
            of_stand(model, carried, &column.stands_on, column.common.has_unread_lines),
        ));
    }
    for jacks in &model.jacks {
        all.push((
            jacks.common.id,
            of_stand(model, carried, &jacks.stands_on, jacks.common.has_unread_lines),
        ));
    }
    for shelf in &model.shelves {
        all.push((shelf.common.id, of_reference(&shelf.wall)));
    }
    for pocket in &model.pockets {
        all.push((pocket.common.id, of_reference(&pocket.wall)));
    }
    for ledger in &model.ledgers {
        all.push((ledger.common.id, of_reference(&ledger.on)));
    }
    for footing in &model.footings {
        all.push((footing.common.id, Said::IsFooting));
    }
    for slab in &model.slabs {
        all.push((slab.common.id, Said::IsFooting));
    }
    all
}

fn of_supports(supports: &[Support], has_unread_lines: bool) -> Said {
    if supports.is_empty() {
        return if has_unread_lines { Said::Unreadable } else { Said::Nothing };
    }
    let mut carriers = Vec::new();
    for support in supports {
        let reference = match (&support.by, &support.on) {
            (Contact::Hangs(Connector::Ledger(ledger)), _) => ledger,
            (_, Carrier::Element(reference)) => reference,
            (_, Carrier::Outside(_)) => continue,
        };
        match reference.target {
            Some(target) => carriers.push(target),
            None => return Said::Unreadable,
        }
    }
    if carriers.is_empty() { Said::Outside } else { Said::Carriers(carriers) }
}

fn of_stand(model: &Model, carried: &Carried<'_>, stand: &Field<Stand>, has_unread_lines: bool) -> Said {
    match stand {
        Field::Stated(stand, _) | Field::Assumed(stand, _) => match (&stand.over, &stand.on) {
            (Some(over), _) => over.target.map_or(Said::Unreadable, |target| Said::Carriers(vec![target])),
            (None, Carrier::Outside(_)) => Said::Outside,
            (None, Carrier::Element(reference)) => match reference.target {
                Some(target) if target.kind == ElementKind::Floor => on_floor(model, carried, target),
                Some(target) => Said::Carriers(vec![target]),
                None => Said::Unreadable,
            },
        },
        Field::Missing if !has_unread_lines => Said::Nothing,
        Field::Missing | Field::Broken(_) => Said::Unreadable,
    }
}

/// What carries something that stands on a floor without saying over what: the slab the floor is, else its joists.
fn on_floor(model: &Model, carried: &Carried<'_>, floor: ElementId) -> Said {
    if let Some(slab) = model.floor(floor).and_then(|floor| floor.on.value()) {
        return slab.target.map_or(Said::Unreadable, |slab| Said::Carriers(vec![slab]));
    }
    let fields: Vec<ElementId> = carried.fields_of(floor).iter().map(|joists| joists.common.id).collect();
    if fields.is_empty() { Said::Unreadable } else { Said::Carriers(fields) }
}

fn of_reference(reference: &Field<Reference>) -> Said {
    match reference.value() {
        Some(reference) => reference.target.map_or(Said::Unreadable, |target| Said::Carriers(vec![target])),
        None => Said::Unreadable,
    }
}

#[cfg(test)]
mod tests {
    use super::PathEnd;
    use crate::house::House;
    use crate::testing::rule_check::house;

    fn end(house: &House, name: &str) -> PathEnd {
        house.geometry.load_path.end_of(house.model.named(name).unwrap())
    }

    #[test]
    fn a_load_ends_where_its_carriers_end() {
        let house = house(
            "
beam B1
  bears on    C1
  bears on    outside \"existing wall\"
column C1
  stands on   F1
footing F1
beam B2
  bears on    C2
column C2
beam B3
  bears on    what
",
        );
        assert_eq!(end(&house, "B1"), PathEnd::Soil);
        assert_eq!(end(&house, "B2"), PathEnd::Drops(house.model.named("C2").unwrap()));
        assert_eq!(end(&house, "B3"), PathEnd::Unknown);
    }

    #[test]
    fn a_circle_is_one_circle_from_wherever_it_is_met() {
        let house = house(
            "
beam B1
  bears on    B2
beam B2
  bears on    B3
beam B3
  bears on    B1
beam B4
  bears on    B1
",
        );
        assert_eq!(house.geometry.load_path.cycles.len(), 1);
        assert_eq!(end(&house, "B4"), PathEnd::Circle);
    }

    /// Five thousand beams, each on the next: no recursion, no second walk.
    #[test]
    fn a_long_way_down_is_walked_once() {
        let chain: String = (0..5_000).map(|at| format!("beam B{at}\n  bears on  B{}\n", at + 1)).collect();
        let house = house(&format!("{chain}beam B5000\n  bears on  outside \"rock\"\n"));
        assert_eq!(end(&house, "B0"), PathEnd::Soil);
    }
}
